import type { Report } from '@edgebite/core';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { drawTable, HEAD_ROWS, ROW, type Table, tableHeight, tableWidth } from '../pen/table.js';
import { TYPE, wrapped, write } from '../pen/text.js';
import { gravestFirst } from '../pen/words.js';
import type { Box } from '../view/view.js';
import { cautionsOf, type FindingEntry, findingText } from './findings.js';
import type { PlacedTable } from './foot.js';
import { BETWEEN, drawEntry, INDENT, LINE, type SideText } from './side.js';
import { biteTable, cutTable, markTable, passTable, pathTable } from './tables.js';

/* What a drawing points at or lists, and its first sheet has no room for: whole, on sheets of its own, in columns of words and then tables. */

const PAD = 4;

/** Width of a column of words that is aimed at, mm. */
const COLUMN = 84;

/** Rows that a table has at least before it goes on at the top of the next sheet. */
const LEAST_ROWS = 3;

/** Sheets of lists at most; the last one says what there would be beyond. */
const MOST_SHEETS = 12;

/** Kept free at the foot of each sheet, for what the last one may have to say. */
const FOOT = LINE + 1;

/** Something on a sheet: how large it is, and how it is drawn under its upper left corner. */
interface Block {
  readonly width: number;
  readonly height: number;
  readonly draw: (parent: SvgNode, x: number, y: number, pen: Pen) => void;
}

/** A block in its place. */
interface Placed {
  readonly block: Block;
  readonly x: number;
  readonly y: number;
}

/** What goes on one sheet of lists. */
export type ListSheet = readonly Placed[];

/**
 * The sheets of lists of a drawing, in the same frame: findings and cautions that are not whole beside it, tables that are not
 * whole under it, and the paths of tools. None where all is on the drawing.
 */
export function listSheets(
  report: Report,
  side: SideText | null,
  tables: readonly PlacedTable[],
  whole: Box,
  prefix: string,
): readonly ListSheet[] {
  const body = { ...whole, height: whole.height - FOOT };
  const columns = Math.max(1, Math.round((body.width - PAD) / (COLUMN + PAD)));
  const width = (body.width - PAD) / columns - PAD;
  const sheets: Placed[][] = [];
  const words = [...findingsLeft(report, side, width), ...cautionsLeft(report, side, width)];
  const end = setWords(sheets, words, { columns, width }, body);
  setTables(sheets, tablesLeft(report, tables, prefix), { from: end, prefix }, body);
  return withinMost(sheets, body);
}

/** The first sheets, the last of which says how many are left out and where all of it is. */
function withinMost(sheets: readonly ListSheet[], body: Box): readonly ListSheet[] {
  const over = sheets.length - MOST_SHEETS;
  if (over <= 0) return sheets;
  const words = `${over} more ${over === 1 ? 'sheet is' : 'sheets are'} left out: read the rest in the report.`;
  const note: Placed = {
    block: {
      width: body.width,
      height: FOOT,
      draw: (parent, x, y) => write(parent, words, x, y + LINE, { size: TYPE.small, bold: true }),
    },
    x: body.x + PAD,
    y: body.y + body.height - PAD,
  };
  return sheets.slice(0, MOST_SHEETS).map((sheet, k) => (k === MOST_SHEETS - 1 ? [...sheet, note] : sheet));
}

/** Draws a sheet of lists. */
export function drawLists(parent: SvgNode, sheet: ListSheet, pen: Pen): void {
  const group = parent.group().attr({ id: `${pen.prefix}lists`, role: 'group', 'aria-label': 'Lists' });
  for (const { block, x, y } of sheet) block.draw(group, x, y, pen);
}

function findingsLeft(report: Report, side: SideText | null, width: number): readonly Block[] {
  const whole = new Set(side?.findings.filter((entry) => entry.whole).map(({ index }) => index));
  return gravestFirst(report).flatMap((finding, i): readonly Block[] => {
    const index = report.findings.indexOf(finding);
    if (whole.has(index)) return [];
    const lines = wrapped(findingText(finding), width - INDENT, TYPE.small);
    const entry: FindingEntry = { number: i + 1, index, level: finding.level, lines, whole: true };
    const draw: Block['draw'] = (parent, x, y, { theme }) => drawEntry(parent, entry, [x, y], theme);
    return [{ width, height: BETWEEN + lines.length * LINE, draw }];
  });
}

function cautionsLeft(report: Report, side: SideText | null, width: number): readonly Block[] {
  const left = cautionsOf(report).slice(side?.cautions.length ?? 0);
  if (left.length === 0) return [];
  const head: Block = {
    width,
    height: 2 * LINE,
    draw: (parent, x, y) => write(parent, 'Cautions', x, y + 2 * LINE, { size: TYPE.small, bold: true }),
  };
  const all = left.map((message): Block => {
    const lines = wrapped(message, width, TYPE.small);
    const draw: Block['draw'] = (parent, x, y) =>
      lines.forEach((line, i) => {
        write(parent, line, x, y + BETWEEN + (i + 1) * LINE, { size: TYPE.small });
      });
    return { width, height: BETWEEN + lines.length * LINE, draw };
  });
  // The head keeps with the first of them.
  const [first, ...rest] = all as [Block, ...Block[]];
  const headed: Block = {
    width,
    height: head.height + first.height,
    draw: (parent, x, y, pen) => {
      head.draw(parent, x, y, pen);
      first.draw(parent, x, y + head.height, pen);
    },
  };
  return [headed, ...rest];
}

/** Tables that are not on the drawing row for row, and the paths, which it never lists. */
function tablesLeft(report: Report, placed: readonly PlacedTable[], prefix: string): readonly Table[] {
  const all = [
    cutTable(report, prefix),
    biteTable(report, prefix),
    passTable(report, prefix),
    markTable(report, prefix, Number.POSITIVE_INFINITY),
    pathTable(report, prefix),
  ];
  const isWhole = (table: Table): boolean =>
    placed.some(({ table: { id, rows } }) => id === table.id && rows.length === table.rows.length);
  return all.filter((table) => table !== null).filter((table) => !isWhole(table));
}

/** Sets words in columns, as even as they come, on as many sheets as they need. Returns how far down the last is filled. */
function setWords(
  sheets: Placed[][],
  blocks: readonly Block[],
  { columns, width }: { readonly columns: number; readonly width: number },
  body: Box,
): number {
  let rest = blocks;
  let end = body.y;
  while (rest.length > 0) {
    const room = body.height - PAD;
    const whole = rest.reduce((sum, { height }) => sum + height, 0);
    const tallest = Math.max(...rest.map(({ height }) => height));
    const aim = Math.min(room, Math.max(whole / columns + tallest / 2, tallest));
    const sheet: Placed[] = [];
    let [column, y] = [0, 0];
    for (const block of rest) {
      if (y > 0 && y + block.height > aim) [column, y] = [column + 1, 0];
      if (column === columns) break;
      sheet.push({ block, x: body.x + PAD + column * (width + PAD), y: body.y + y });
      y += block.height;
    }
    end = Math.max(...sheet.map((one) => one.y + one.block.height));
    sheets.push(sheet);
    rest = rest.slice(sheet.length);
  }
  return end;
}

/** Sets tables one under the other below what is there, two beside each other where they fit, long ones over several sheets. */
function setTables(
  sheets: Placed[][],
  tables: readonly Table[],
  { from, prefix }: { readonly from: number; readonly prefix: string },
  body: Box,
): void {
  const bottom = body.y + body.height - PAD;
  let row: { readonly y: number; x: number; height: number } = { y: from + PAD, x: body.x + PAD, height: 0 };
  const anew = (): void => {
    sheets.push([]);
    row = { y: body.y + PAD, x: body.x + PAD, height: 0 };
  };
  if (sheets.length === 0 && tables.length > 0) anew();
  const set = (table: Table): void => {
    const [width, height] = [tableWidth(table), tableHeight(table)];
    if (row.x + width > body.x + body.width - PAD)
      row = { y: row.y + row.height + PAD, x: body.x + PAD, height: 0 };
    if (row.y + height > bottom) {
      const rows = Math.floor((bottom - row.y) / ROW) - HEAD_ROWS;
      if (rows < LEAST_ROWS && row.y > body.y + PAD) {
        anew();
        set(table);
        return;
      }
      set({ ...table, rows: table.rows.slice(0, rows) });
      anew();
      const title = table.title.replace(/(, continued)?$/, ', continued');
      set({ ...table, title, rows: table.rows.slice(rows) });
      return;
    }
    // Under an id of the sheet, since the drawing has a part of the same table.
    const name = table.id.slice(prefix.length);
    const draw: Block['draw'] = (parent, x, y, pen) =>
      drawTable(parent, { ...table, id: `${pen.prefix}${name}` }, x, y);
    const block: Block = { width, height, draw };
    sheets.at(-1)?.push({ block, x: row.x, y: row.y });
    row = { ...row, x: row.x + width + 2 * PAD, height: Math.max(row.height, height) };
  };
  for (const table of tables) set(table);
}
