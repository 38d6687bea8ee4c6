import { type Bounds, joined, type RangeReport, type Report, type ReportCut } from '@edgebite/core';
import { millimetres } from '../pen/numbers.js';
import { boundsOfEdges, boundsOfPlace, type Place } from '../view/edges.js';
import { factorOf, largestScale, type Scale } from '../view/scale.js';
import { boundsOfRegion } from '../view/scan.js';
import type { Box, View } from '../view/view.js';
import { cautionsOf } from './findings.js';
import { type PlacedTable, placeTables } from './foot.js';
import { legendHeight } from './legend.js';
import { picturesOf } from './pictures.js';

/** Where the steps go: down the left side or across the top, in so many frames. */
export interface StepBand {
  readonly box: Box;
  readonly way: 'down' | 'across';
  readonly frames: number;
  /** The greatest length of a frame along the band, mm. */
  readonly most: number;
}

/** Where the findings go: at the right of the views, or under them. */
export interface SideBox extends Box {
  readonly at: 'right' | 'under';
}

/** Where everything goes on the sheet. All boxes in millimetres of the sheet. */
export interface Layout {
  readonly frame: Box;
  readonly heading: Box;
  readonly legend: Box;
  readonly footing: Box;
  /** Null where there is nothing to say beside the drawing. */
  readonly side: SideBox | null;
  /** Null where nothing is cut, and in a job that is too large for pictures of its steps. */
  readonly steps: StepBand | null;
  /** The plan and all that is drawn round it. */
  readonly plan: Box;
  /** Null where every cut goes through: then one plan says all. */
  readonly section: Box | null;
  readonly tables: readonly PlacedTable[];
  /** What is kept free over the legend, as high as was asked for; null if nothing was. */
  readonly band: Box | null;
  readonly scale: Scale;
  readonly view: View;
}

const HEADING = 12;
const FOOTING = 8;

/** Width of the findings at the right, and their height where they stand under the views, mm. */
const SIDE = 54;
const UNDER = 46;

const PAD = 3;

/** Room round the part on the plan for labels and dimensions, mm. */
export const ROUND = { left: 29, right: 18, top: 16, bottom: 24 } as const;

/** Room over and under the section for its title and its last depth, mm. */
const SECTION_ROOM = { over: 9, under: 5 } as const;

/** Centres off the part are shown if they are no farther off than this, as a share of its longer side. */
const OUTSTAND = 0.3;

/** Size of a step's frame, mm: across the band; least and greatest along it. */
const STEP = {
  down: { across: 46, least: 34, most: 46 },
  across: { across: 42, least: 46, most: 62 },
} as const;

/**
 * Lays out a drawing of a report in a frame, at the largest scale of ISO 5455 at which its views fit. A band of a height
 * can be kept free over the legend, from one side to the other.
 */
export function layOut(
  report: Report,
  frame: Box,
  prefix: string,
  range?: RangeReport,
  bandHeight = 0,
): Layout {
  const heading = { ...frame, height: HEADING };
  const footing = { ...frame, y: frame.y + frame.height - FOOTING, height: FOOTING };
  const legendHigh = legendHeight(report, frame.width - 2 * PAD, range);
  const legend = { ...frame, y: footing.y - legendHigh, height: legendHigh };
  const band = bandHeight === 0 ? null : bandOver(legend, bandHeight);
  const bottom = band?.y ?? legend.y;
  const tables = placeTables(report, frame, bottom, prefix);
  const tablesTop = Math.min(bottom, ...tables.map(({ y }) => y - PAD));
  const top = heading.y + HEADING;
  const body = { x: frame.x, y: top, width: frame.width, height: tablesTop - top };
  return { frame, heading, legend, footing, tables, band, ...bestArrangement(report, body) };
}

/** Width of a band in a frame, mm. */
export function bandWidth(frame: Box): number {
  return frame.width - 2 * PAD;
}

function bandOver(legend: Box, height: number): Box {
  return { x: legend.x + PAD, y: legend.y - height - PAD, width: bandWidth(legend), height };
}

type Arrangement = Pick<Layout, 'side' | 'steps' | 'plan' | 'section' | 'scale' | 'view'>;

// Steps and findings go where they leave the views the largest scale. For want of a difference findings stand at the
// right, and steps beside a part that is wide.
function bestArrangement(report: Report, body: Box): Arrangement {
  const box = boundsOfRegion(report.outline);
  const wide = box === null || box.maxX - box.minX >= box.maxY - box.minY;
  const pictures = picturesOf(report).length;
  const shown = shownBounds(report);
  const isTold = report.findings.length > 0 || cautionsOf(report).length > 0;
  const sides = isTold ? (['right', 'under'] as const) : [null];
  const ways = wide ? (['down', 'across'] as const) : (['across', 'down'] as const);
  const all = sides.flatMap((side) =>
    (pictures === 0 ? [null] : ways).map((way) => {
      const steps = way === null ? null : stepBand(pictures, body, way);
      return arranged(report, shown, body, side, steps);
    }),
  );
  return all.reduce((best, one) => (factorOf(one.scale) > factorOf(best.scale) ? one : best));
}

function arranged(
  report: Report,
  shown: Bounds,
  body: Box,
  at: 'right' | 'under' | null,
  steps: StepBand | null,
): Arrangement {
  const rest = steps === null ? body : besides(body, steps);
  if (at === null) return { side: null, steps, ...placeViews(report, shown, rest) };
  if (at === 'right') {
    const width = rest.width - SIDE;
    const side = { ...rest, x: rest.x + width, width: SIDE, at };
    return { side, steps, ...placeViews(report, shown, { ...rest, width }) };
  }
  const height = rest.height - UNDER;
  const side = { ...rest, y: rest.y + height, height: UNDER, at };
  return { side, steps, ...placeViews(report, shown, { ...rest, height }) };
}

function stepBand(pictures: number, body: Box, way: StepBand['way']): StepBand {
  const { across, least, most } = STEP[way];
  const length = way === 'down' ? body.height : body.width;
  const frames = Math.max(1, Math.min(pictures, Math.floor(length / least)));
  const box = way === 'down' ? { ...body, width: across } : { ...body, height: across };
  return { box, way, frames, most };
}

/** What a band of steps leaves of the room that it is in. */
function besides(body: Box, { box, way }: StepBand): Box {
  return way === 'down'
    ? { ...body, x: body.x + box.width, width: body.width - box.width }
    : { ...body, y: body.y + box.height, height: body.height - box.height };
}

function placeViews(report: Report, box: Bounds, views: Box): Omit<Arrangement, 'steps' | 'side'> {
  const millimetre = millimetres(report.units);
  const needsSection = report.slabs.length > 1;
  const sectionHeight = (factor: number): number =>
    needsSection ? report.thickness * factor + SECTION_ROOM.over + SECTION_ROOM.under : 0;
  const width = (box.maxX - box.minX) * millimetre;
  const height = (box.maxY - box.minY) * millimetre;
  const scale = largestScale(
    (f) =>
      width * f + ROUND.left + ROUND.right <= views.width &&
      height * f + ROUND.top + ROUND.bottom + sectionHeight(f * millimetre) <= views.height,
  );
  const factor = factorOf(scale) * millimetre;
  const lower = Math.min(sectionHeight(factor), views.height);
  const spare = Math.max(views.height - height * factorOf(scale) - ROUND.top - ROUND.bottom - lower, 0);
  const plan = { ...views, height: views.height - lower - (needsSection ? spare / 3 : 0) };
  const section = { ...views, y: plan.y + plan.height, height: views.height - plan.height };
  return {
    plan,
    section: needsSection ? section : null,
    scale,
    view: { middle: middleOf(box), at: middleOnSheet(plan), factor },
  };
}

/**
 * What the plan must show: the part, and the centres and paths of cuts beside it, within reason. Not whole
 * circles, unless asked for: a part shows what it loses better at a larger scale with a circle that runs off the plan.
 */
export function shownBounds(report: Report, whole = false): Bounds {
  return boundsWith(report, whole, whole ? OUTSTAND / 2 : OUTSTAND);
}

/** The part and the rims of its cuts, as far as they do not stand out beyond reason. */
export function rimBounds(report: Report): Bounds {
  return joined(shownBounds(report), boundsWith(report, true, OUTSTAND));
}

function boundsWith(report: Report, whole: boolean, share: number): Bounds {
  const part = boundsOfRegion(report.outline) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const reach = share * Math.max(part.maxX - part.minX, part.maxY - part.minY);
  return report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .map((cut) => boundsOfCut(cut, whole))
    .filter((box) => box !== null)
    .reduce((sum, box) => joined(sum, clipped(box, part, reach, whole)), part);
}

function boundsOfCut(cut: ReportCut, whole: boolean): Bounds | null {
  if (whole) return boundsOfRegion(cut.footprint);
  return cut.center === null ? boundsOfEdges(cut.path ?? []) : boundsOfPlace(cut.center);
}

// Kept within reach of the part; what lies wholly beyond it shrinks to the part's own side.
function clipped(box: Bounds, part: Bounds, reach: number, always: boolean): Bounds {
  const x = (value: number): number => Math.min(Math.max(value, part.minX - reach), part.maxX + reach);
  const y = (value: number): number => Math.min(Math.max(value, part.minY - reach), part.maxY + reach);
  const beyond =
    x(box.maxX) > box.maxX || x(box.minX) < box.minX || y(box.maxY) > box.maxY || y(box.minY) < box.minY;
  return beyond && !always
    ? part
    : { minX: x(box.minX), minY: y(box.minY), maxX: x(box.maxX), maxY: y(box.maxY) };
}

export function middleOf(box: Bounds): Place {
  return [box.minX + (box.maxX - box.minX) / 2, box.minY + (box.maxY - box.minY) / 2];
}

function middleOnSheet(plan: Box): Place {
  return [
    plan.x + (plan.width + ROUND.left - ROUND.right) / 2,
    plan.y + (plan.height + ROUND.top - ROUND.bottom) / 2,
  ];
}
