import type { Report } from '@edgebite/core';
import { HEAD_ROWS, ROW, shortened, type Table, tableHeight, tableWidth } from '../pen/table.js';
import type { Box } from '../view/view.js';
import { biteTable, cutTable, markTable, passTable } from './tables.js';

/** A table and where its upper left corner goes. */
export interface PlacedTable {
  readonly table: Table;
  readonly x: number;
  readonly y: number;
}

/** Room between tables and round them, mm. */
const PAD = 3;

/** The tables get at most this share of the frame's height; a drawing is for looking at. */
const TABLES_SHARE = 0.34;

/**
 * The tables at the foot of the sheet, over the legend: cuts, bites and passes one under the other, and thin metal at their right
 * where it fits, if need be without its places; else under them. Bites are told by each step as well, so that their table
 * is there only where no other one is cut short for it.
 */
export function placeTables(
  report: Report,
  frame: Box,
  bottom: number,
  prefix: string,
): readonly PlacedTable[] {
  const bites = biteTable(report, prefix);
  const without = placed(report, frame, bottom, prefix, null);
  if (bites === null) return without;
  const all = placed(report, frame, bottom, prefix, bites);
  const others = all.filter(({ table }) => table.id !== bites.id);
  return rowsIn(others) < rowsIn(without) ? without : all;
}

function rowsIn(tables: readonly PlacedTable[]): number {
  return tables.reduce((sum, { table }) => sum + table.rows.length, 0);
}

function placed(
  report: Report,
  frame: Box,
  bottom: number,
  prefix: string,
  bites: Table | null,
): readonly PlacedTable[] {
  const room = Math.floor((frame.height * TABLES_SHARE) / ROW);
  const left = frame.x + PAD;
  const more = [bites, passTable(report, prefix)].filter((table) => table !== null);
  const own = [cutTable(report, prefix), ...more];
  const marks: Marks = (rows, compact) => markTable(report, prefix, rows, compact);
  // Bites and passes under the cuts or under the marks, whichever takes less height.
  const beside = [...own.keys()]
    .map((k) => own.length - k)
    .flatMap((count) => pairsOf(sharing(own.slice(0, count), room), own.slice(count), frame, marks, room))
    .sort((a, b) => highest(a) - highest(b))[0];
  if (beside !== undefined) {
    const top = bottom - PAD - highest(beside);
    const x = frame.x + frame.width - PAD - Math.max(...beside[1].map(tableWidth));
    return [...stacked(beside[0], left, top), ...stacked(beside[1], x, top)];
  }
  const all = sharing([...own, marks(room, true)], room);
  // Of the last, webs and knife edges share what room it has.
  const last = all.length - 1;
  const shared = marks(Math.max(all[last]?.rows.length ?? 0, 1), true);
  const tables = [...all.slice(0, last), shared];
  return stacked(tables, left, bottom - PAD - stackHeight(tables));
}

/** Makes the table of webs and knife edges in so many rows, with or without their places. */
type Marks = (rows: number, compact: boolean) => Table;

type Columns = readonly [readonly Table[], readonly Table[]];

/** Two columns of tables, the table of marks first in the right one, if they fit so: with its places, else without. */
function pairsOf(
  leftOnes: readonly Table[],
  under: readonly Table[],
  frame: Box,
  marks: Marks,
  room: number,
): readonly Columns[] {
  const most = room - HEAD_ROWS;
  const right = (compact: boolean): readonly Table[] => {
    const first = marks(most, compact);
    if (under.length === 0) return [first];
    const shared = sharing([first, ...under], room);
    return [marks(Math.max(shared[0]?.rows.length ?? 0, 1), compact), ...shared.slice(1)];
  };
  const wide = (tables: readonly Table[]): number => Math.max(...tables.map(tableWidth));
  const fits = (tables: readonly Table[]): boolean => wide(leftOnes) + wide(tables) + 3 * PAD <= frame.width;
  const found = [right(false), right(true)].find(fits);
  return found === undefined ? [] : [[leftOnes, found]];
}

function highest(columns: Columns): number {
  return Math.max(...columns.map(stackHeight));
}

/** Tables in so many rows together, heads included: those with fewer rows than their share leave the rest to others. */
function sharing(tables: readonly Table[], room: number): readonly Table[] {
  let rows = room - tables.length * (HEAD_ROWS + 1);
  const order = [...tables.keys()].sort(
    (a, b) => (tables[a]?.rows.length ?? 0) - (tables[b]?.rows.length ?? 0),
  );
  const share = new Map<number, number>();
  order.forEach((index, i) => {
    const wanted = Math.max(tables[index]?.rows.length ?? 0, 1);
    const own = Math.max(Math.min(wanted, Math.floor(rows / (order.length - i))), 1);
    share.set(index, own);
    rows -= own;
  });
  return tables.map((table, i) => shortened(table, share.get(i) ?? 1));
}

function stackHeight(tables: readonly Table[]): number {
  return tables.reduce((sum, table) => sum + tableHeight(table), 0) + PAD * (tables.length - 1);
}

function stacked(tables: readonly Table[], x: number, top: number): readonly PlacedTable[] {
  let y = top;
  return tables.map((table) => {
    const placed = { table, x, y };
    y += tableHeight(table) + PAD;
    return placed;
  });
}
