/*
 * Room: plain text in columns, lines and digits.
 * In: rows and sentences.
 * Out: lines of text.
 */

import { clean } from '@edgebite/svg';
import { COLUMNS } from './wrap.js';

/** A column of a text table: its head, and whether its entries stand at the left or at the right. */
export interface Column<Row> {
  readonly head: string;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
  /** What is wider than this goes on in the next line, word by word; a wider word stays whole. */
  readonly most?: number;
  /** Where the table is wider than a page, this column breaks its lines so that it is not. */
  readonly gives?: boolean;
}

const GAP = '  ';

/** A table in aligned columns, heads first, without idle spaces at the ends of lines. */
export function tableText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const whole = linesIn(columns, rows);
  const wide = widthsOf(whole);
  const over = wide.reduce((sum, width) => sum + GAP.length + width, -GAP.length) - COLUMNS;
  const lines = over <= 0 ? whole : linesIn(narrowed(columns, wide, over), rows);
  const widths = widthsOf(lines);
  return lines
    .map((cells) =>
      cells
        .map((cell, i) => {
          const width = widths[i] as number;
          return columns[i]?.align === 'right' ? cell.padStart(width) : cell.padEnd(width);
        })
        .join(GAP)
        .trimEnd(),
    )
    .join('\n');
}

function linesIn<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string[][] {
  return [
    columns.map((c) => c.head),
    ...rows.flatMap((row) => linesOf(columns.map((c) => broken(clean(c.cell(row)), c.most)))),
  ];
}

function widthsOf(lines: readonly (readonly string[])[]): number[] {
  const [heads = []] = lines;
  return heads.map((_, i) => Math.max(...lines.map((cells) => (cells[i] as string).length)));
}

/** The same columns, of which those that give are narrower by so much. */
function narrowed<Row>(
  columns: readonly Column<Row>[],
  widths: readonly number[],
  by: number,
): Column<Row>[] {
  return columns.map((c, i) => (c.gives ? { ...c, most: (widths[i] as number) - by } : c));
}

/** A cell in lines of at most so many characters. */
function broken(text: string, most = Number.POSITIVE_INFINITY): string[] {
  const lines: string[] = [];
  for (const word of text.length > most ? text.split(' ') : [text]) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

/** The lines of a row whose cells have some each. */
function linesOf(cells: readonly (readonly string[])[]): string[][] {
  const count = Math.max(...cells.map(({ length }) => length));
  return Array.from({ length: count }, (_, k) => cells.map((cell) => cell[k] ?? ''));
}
