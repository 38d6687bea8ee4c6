import { type Bounds, joined, type Report } from '@edgebite/core';
import { boundsOfEdges, boundsOfPlace, type Place } from './edges.js';
import { millimetres } from './numbers.js';
import { factorOf, largestScale, type Scale } from './scale.js';
import { boundsOfRegion } from './scan.js';
import { HEAD_ROWS, ROW, shortened, type Table, tableHeight, tableWidth } from './table.js';
import { cutTable, markTable } from './tables.js';
import type { Box, View } from './view.js';

/** A table and where its upper left corner goes. */
export interface PlacedTable {
  readonly table: Table;
  readonly x: number;
  readonly y: number;
}

/** Where everything goes on the sheet. All boxes in millimetres of the sheet. */
export interface Layout {
  readonly frame: Box;
  readonly heading: Box;
  readonly footing: Box;
  readonly side: Box;
  readonly plan: Box;
  /** Null where every cut goes through: then one plan says all. */
  readonly section: Box | null;
  readonly tables: readonly PlacedTable[];
  readonly scale: Scale;
  readonly view: View;
}

const HEADING = 12;
const FOOTING = 6;
const SIDE = 58;
const PAD = 3;

/** Room round the part on the plan for labels and the overall dimensions, mm. */
const ROUND = { left: 18, right: 18, top: 15, bottom: 20 } as const;

/** Room over and under the section for its title and its last depth, mm. */
const SECTION_ROOM = { over: 9, under: 5 } as const;

/** The tables get at most this share of the frame's height; a drawing is for looking at. */
const TABLES_SHARE = 0.42;

/** Centres off the part are shown if they are no farther off than this, as a share of its longer side. */
const OUTSTAND = 0.3;

/** Lays out a drawing of a report in a frame, at the largest scale of ISO 5455 at which its views fit. */
export function layOut(report: Report, frame: Box, prefix: string): Layout {
  const heading = { ...frame, height: HEADING };
  const footing = { ...frame, y: frame.y + frame.height - FOOTING, height: FOOTING };
  const tables = placeTables(report, frame, footing.y, prefix);
  const tablesTop = Math.min(footing.y, ...tables.map(({ y }) => y - PAD));
  const top = heading.y + HEADING;
  const side = { x: frame.x + frame.width - SIDE, y: top, width: SIDE, height: tablesTop - top };
  const views = { x: frame.x, y: top, width: frame.width - SIDE, height: tablesTop - top };

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
  return {
    frame,
    heading,
    footing,
    side,
    plan,
    section: needsSection ? { ...views, y: plan.y + plan.height, height: views.height - plan.height } : null,
    tables,
    scale,
    view: { middle: middleOf(box), at: middleOnSheet(plan), factor },
  };
}

/**
 * What the plan must show: the part, and the centres and paths of cuts beside it, within reason. Not whole
 * circles: a part shows what it loses better at a larger scale with a circle that runs off the plan.
 */
function shownBounds(report: Report): Bounds {
  const part = boundsOfRegion(report.outline) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const reach = OUTSTAND * Math.max(part.maxX - part.minX, part.maxY - part.minY);
  return report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .map((cut) => (cut.center === null ? boundsOfEdges(cut.path ?? []) : boundsOfPlace(cut.center)))
    .filter((box) => box !== null)
    .reduce((sum, box) => joined(sum, clipped(box, part, reach)), part);
}

// Kept within reach of the part; what lies wholly beyond it shrinks to the part's own side.
function clipped(box: Bounds, part: Bounds, reach: number): Bounds {
  const x = (value: number): number => Math.min(Math.max(value, part.minX - reach), part.maxX + reach);
  const y = (value: number): number => Math.min(Math.max(value, part.minY - reach), part.maxY + reach);
  const beyond =
    x(box.maxX) > box.maxX || x(box.minX) < box.minX || y(box.maxY) > box.maxY || y(box.minY) < box.minY;
  return beyond ? part : { minX: x(box.minX), minY: y(box.minY), maxX: x(box.maxX), maxY: y(box.maxY) };
}

function middleOf(box: Bounds): Place {
  return [box.minX + (box.maxX - box.minX) / 2, box.minY + (box.maxY - box.minY) / 2];
}

function middleOnSheet(plan: Box): Place {
  return [
    plan.x + (plan.width + ROUND.left - ROUND.right) / 2,
    plan.y + (plan.height + ROUND.top - ROUND.bottom) / 2,
  ];
}

// Side by side where they fit so, else one over the other; down at the footing.
function placeTables(report: Report, frame: Box, bottom: number, prefix: string): readonly PlacedTable[] {
  const room = Math.floor((frame.height * TABLES_SHARE) / ROW);
  const left = frame.x + PAD;
  const cuts = cutTable(report, prefix);
  const beside = [shortened(cuts, room - HEAD_ROWS), markTable(report, prefix, room - HEAD_ROWS)] as const;
  const [first, second] = beside;
  if (tableWidth(first) + tableWidth(second) + 4 * PAD <= frame.width) {
    const y = bottom - PAD - Math.max(tableHeight(first), tableHeight(second));
    return [
      { table: first, x: left, y },
      { table: second, x: frame.x + frame.width - PAD - tableWidth(second), y },
    ];
  }
  const half = Math.floor(room / 2) - HEAD_ROWS;
  const upper = shortened(cuts, Math.max(half, room - 2 * HEAD_ROWS - Math.max(second.rows.length, 1)));
  const lower = markTable(report, prefix, room - 2 * HEAD_ROWS - Math.max(upper.rows.length, 1));
  const y = bottom - PAD - tableHeight(lower);
  return [
    { table: upper, x: left, y: y - PAD - tableHeight(upper) },
    { table: lower, x: left, y },
  ];
}
