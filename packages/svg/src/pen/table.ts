import { lined, NARROW } from './lines.js';
import type { SvgNode } from './node.js';
import { fitted, TYPE, textWidth, write } from './text.js';

/** A column: its head, the side its entries stand at, and the greatest width it may take, mm. */
export interface Column {
  readonly head: string;
  readonly align: 'start' | 'end';
  readonly widest: number;
}

/** A table with a title. */
export interface Table {
  readonly id: string;
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** What stands in place of heads and rows when there are none. */
  readonly none: string;
}

/** Height of a row, mm. */
export const ROW = 4.2;

/** Rows of a table that are not entries: its title and its heads. */
export const HEAD_ROWS = 2;

const GAP = 2.2;
const SIZE = TYPE.small;

/** The table with at most so many rows; what is left out is said in the last one. */
export function shortened(table: Table, rows: number): Table {
  if (table.rows.length <= rows) return table;
  const shown = Math.max(rows - 1, 0);
  return { ...table, rows: [...table.rows.slice(0, shown), [moreText(table.rows.length - shown)]] };
}

/** What the last row says of those for which there is no room. */
export function moreText(count: number): string {
  return `and ${count} more on sheet 2`;
}

/** Widths of the columns, mm: as their entries need it. */
function widthsOf(table: Table): readonly number[] {
  return table.columns.map((column, i) => {
    const texts = table.rows.filter((row) => row.length > 1).map((row) => row[i] ?? '');
    const needed = Math.max(...[column.head, ...texts].map((text) => textWidth(text, SIZE)));
    return Math.min(needed, column.widest);
  });
}

function columnsWidth(table: Table): number {
  const widths = widthsOf(table);
  return widths.reduce((sum, width) => sum + width, 0) + GAP * (widths.length - 1);
}

/** Width of a table, mm. */
export function tableWidth(table: Table): number {
  const title = textWidth(table.title, SIZE, true);
  return Math.max(title, table.rows.length === 0 ? textWidth(table.none, SIZE) : columnsWidth(table));
}

/** Height of a table, mm. */
export function tableHeight(table: Table): number {
  return (table.rows.length === 0 ? 2 : HEAD_ROWS + table.rows.length) * ROW;
}

/** Draws a table with its upper left corner at a place. */
export function drawTable(parent: SvgNode, table: Table, x: number, y: number): void {
  const group = parent.group().attr('id', table.id);
  const widths = widthsOf(table);
  const baseline = (row: number): number => y + (row + 0.72) * ROW;
  write(group, table.title, x, baseline(0), { size: SIZE, bold: true });
  if (table.rows.length === 0) {
    write(group, table.none, x, baseline(1), { size: SIZE });
    return;
  }
  drawRow(
    group,
    table,
    widths,
    table.columns.map((column) => column.head),
    x,
    baseline(1),
  );
  const under = y + HEAD_ROWS * ROW - 0.2;
  lined(group.line(x, under, x + columnsWidth(table), under), NARROW);
  table.rows.forEach((row, i) => {
    const at = baseline(HEAD_ROWS + i);
    if (row.length === 1) write(group, row[0] as string, x, at, { size: SIZE });
    else drawRow(group, table, widths, row, x, at);
  });
}

function drawRow(
  group: SvgNode,
  table: Table,
  widths: readonly number[],
  row: readonly string[],
  x: number,
  y: number,
): void {
  let left = x;
  table.columns.forEach((column, i) => {
    const width = widths[i] as number;
    const text = fitted(row[i] ?? '', width + 0.01, SIZE);
    const at = column.align === 'start' ? left : left + width;
    write(group, text, at, y, { size: SIZE, anchor: column.align });
    left += width + GAP;
  });
}
