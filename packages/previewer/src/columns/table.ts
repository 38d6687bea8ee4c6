/*
 * Room: plain text in columns, lines and digits.
 * In: rows and sentences.
 * Out: lines of text.
 */

import { clean } from '@edgebite/svg';

/** A column of a text table: its head, and whether its entries stand at the left or at the right. */
export interface Column<Row> {
  readonly head: string;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
  /** What is wider than this goes on in the next line, word by word; a wider word stays whole. */
  readonly most?: number;
}

const GAP = '  ';

/** A table in aligned columns, heads first, without idle spaces at the ends of lines. */
export function tableText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map((c) => c.head),
    ...rows.flatMap((row) => linesOf(columns.map((c) => broken(clean(c.cell(row)), c.most)))),
  ];
  const widths = columns.map((_, i) => Math.max(...lines.map((cells) => (cells[i] as string).length)));
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
