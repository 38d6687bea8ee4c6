import { type Bounds, joined, type Report, type ReportCut } from '@edgebite/core';
import { boundsOfEdges, boundsOfPlace, type Place } from './edges.js';
import { type PlacedTable, placeTables } from './foot.js';
import { legendHeight } from './legend.js';
import { millimetres } from './numbers.js';
import { factorOf, largestScale, type Scale } from './scale.js';
import { boundsOfRegion } from './scan.js';
import type { Box, View } from './view.js';

/** Where the steps go: down the left side or across the top, in so many frames. */
export interface StepBand {
  readonly box: Box;
  readonly way: 'down' | 'across';
  readonly frames: number;
  /** The greatest length of a frame along the band, mm. */
  readonly most: number;
}

/** Where everything goes on the sheet. All boxes in millimetres of the sheet. */
export interface Layout {
  readonly frame: Box;
  readonly heading: Box;
  readonly legend: Box;
  readonly footing: Box;
  /** Null where there is nothing to find fault with. */
  readonly side: Box | null;
  /** Null where nothing is cut. */
  readonly steps: StepBand | null;
  /** The plan and all that is drawn round it. */
  readonly plan: Box;
  /** Null where every cut goes through: then one plan says all. */
  readonly section: Box | null;
  readonly tables: readonly PlacedTable[];
  readonly scale: Scale;
  readonly view: View;
}

const HEADING = 12;
const FOOTING = 8;
const SIDE = 54;
const PAD = 3;

/** Room round the part on the plan for labels and dimensions, mm. */
export const ROUND = { left: 29, right: 18, top: 16, bottom: 24 } as const;

/** Room over and under the section for its title and its last depth, mm. */
const SECTION_ROOM = { over: 9, under: 5 } as const;

/** Centres off the part are shown if they are no farther off than this, as a share of its longer side. */
const OUTSTAND = 0.3;

/** Size of a step's frame, mm: across the band; least and greatest along it. */
const STEP = {
  down: { across: 46, least: 24, most: 38 },
  across: { across: 36, least: 38, most: 62 },
} as const;

/** Lays out a drawing of a report in a frame, at the largest scale of ISO 5455 at which its views fit. */
export function layOut(report: Report, frame: Box, prefix: string): Layout {
  const heading = { ...frame, height: HEADING };
  const footing = { ...frame, y: frame.y + frame.height - FOOTING, height: FOOTING };
  const legendHigh = legendHeight(report, frame.width - 2 * PAD);
  const legend = { ...frame, y: footing.y - legendHigh, height: legendHigh };
  const tables = placeTables(report, frame, legend.y, prefix);
  const tablesTop = Math.min(legend.y, ...tables.map(({ y }) => y - PAD));
  const top = heading.y + HEADING;
  const sided = report.findings.length > 0 ? SIDE : 0;
  const body = { x: frame.x, y: top, width: frame.width, height: tablesTop - top };
  const views = bestViews(report, body, sided);
  // Steps across the top have the whole width; the findings then begin under them.
  const under = views.steps?.way === 'across' ? views.steps.box.height : 0;
  const side =
    sided === 0
      ? null
      : { x: body.x + body.width - SIDE, y: top + under, width: SIDE, height: body.height - under };
  return { frame, heading, legend, footing, side, tables, ...views };
}

type Views = Pick<Layout, 'steps' | 'plan' | 'section' | 'scale' | 'view'>;

// Steps go where they leave the views the larger scale; for want of a difference, beside a part that is wide.
function bestViews(report: Report, body: Box, sided: number): Views {
  const open = { ...body, width: body.width - sided };
  if (report.cuts.length === 0) return { steps: null, ...placeViews(report, open) };
  const down = withSteps(report, open, 'down', 0);
  const across = withSteps(report, body, 'across', sided);
  const more = factorOf(across.scale) / factorOf(down.scale);
  const box = boundsOfRegion(report.outline);
  const wide = box === null || box.maxX - box.minX >= box.maxY - box.minY;
  return more > 1 || (more === 1 && !wide) ? across : down;
}

function withSteps(report: Report, open: Box, way: StepBand['way'], sided: number): Views {
  const { across, least, most } = STEP[way];
  const length = way === 'down' ? open.height : open.width;
  const frames = Math.max(2, Math.min(report.cuts.length + 1, Math.floor(length / least)));
  if (way === 'down') {
    const box = { ...open, width: across };
    const rest = { ...open, x: open.x + across, width: open.width - across };
    return { steps: { box, way, frames, most }, ...placeViews(report, rest) };
  }
  const box = { ...open, height: across };
  const rest = { ...open, y: open.y + across, width: open.width - sided, height: open.height - across };
  return { steps: { box, way, frames, most }, ...placeViews(report, rest) };
}

function placeViews(report: Report, views: Box): Omit<Views, 'steps'> {
  const box = shownBounds(report);
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
  const part = boundsOfRegion(report.outline) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const reach = OUTSTAND * Math.max(part.maxX - part.minX, part.maxY - part.minY);
  return report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .map((cut) => boundsOfCut(cut, whole))
    .filter((box) => box !== null)
    .reduce((sum, box) => joined(sum, clipped(box, part, whole ? reach / 2 : reach, whole)), part);
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
