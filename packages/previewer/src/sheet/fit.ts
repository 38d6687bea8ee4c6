import { clean } from '@edgebite/svg';

/** Width of a page of text. Terminals and printers have had 80 columns since there were any. */
export const PAGE = 80;

/** Signs that take up two columns on a terminal: those of East Asian scripts, and pictures (Unicode Annex 11, roughly). */
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Extended_Pictographic}/u;

/** Signs that take up none. */
const NARROW = /\p{Mark}|\p{Cf}/u;

/** How many columns a text takes up. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const sign of text) columns += widthOf(sign);
  return columns;
}

function widthOf(sign: string): number {
  if (NARROW.test(sign)) return 0;
  return WIDE.test(sign) ? 2 : 1;
}

/** A text broken into lines of so many columns at most: between words, and within a word that is longer. */
export function fitted(text: string, columns: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of clean(text).split(/ +/)) {
    for (const part of partsOf(word, columns)) {
      const joined = line === '' ? part : `${line} ${part}`;
      if (columnsOf(joined) <= columns) line = joined;
      else {
        lines.push(line);
        line = part;
      }
    }
  }
  return [...lines, line];
}

function partsOf(word: string, columns: number): string[] {
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && columnsOf(part) + widthOf(sign) > columns) {
      parts.push(part);
      part = '';
    }
    part += sign;
  }
  return [...parts, part];
}

/** A text in lines up to a page's width: the first after `lead`, the others indented as far. */
export function paragraph(lead: string, text: string): string {
  const room = PAGE - columnsOf(lead);
  const [first = '', ...rest] = fitted(text, room);
  const indent = ' '.repeat(columnsOf(lead));
  return [`${lead}${first}`, ...rest.map((line) => indent + line)].map((line) => line.trimEnd()).join('\n');
}

/** A column of a table of fixed widths. */
export interface FixedColumn<Row> {
  readonly head: string;
  readonly width: number;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
}

/** A table whose columns keep their widths: what does not fit goes on in the next line, in its column. */
export function fixedTable<Row>(columns: readonly FixedColumn<Row>[], rows: readonly Row[]): string {
  const line = (texts: readonly string[]): string => {
    const cells = texts.map((text, i) => fitted(text, (columns[i] as FixedColumn<Row>).width));
    const height = Math.max(...cells.map(({ length }) => length));
    return Array.from({ length: height }, (_, k) =>
      cells
        .map((lines, i) => padded(lines[k] ?? '', columns[i] as FixedColumn<Row>))
        .join(' ')
        .trimEnd(),
    ).join('\n');
  };
  return [
    line(columns.map(({ head }) => head)),
    ...rows.map((row) => line(columns.map(({ cell }) => cell(row)))),
  ].join('\n');
}

/**
 * Columns with widths that make a table as wide as the page. Each is as wide as its longest word, so that no number is
 * broken; the elastic one takes what is left.
 */
export function inPage<Row>(
  columns: readonly Omit<FixedColumn<Row>, 'width'>[],
  elastic: string,
  rows: readonly Row[],
): FixedColumn<Row>[] {
  const isElastic = ({ head }: { readonly head: string }) => head === elastic;
  const widest = (texts: readonly string[]) =>
    texts.reduce((most, text) => Math.max(most, columnsOf(text)), NARROWEST);
  const widths = columns.map(({ head, cell }) =>
    widest([head, ...rows.flatMap((row) => clean(cell(row)).split(/ +/))]),
  );
  const others = columns.reduce((sum, column, i) => sum + (isElastic(column) ? 0 : (widths[i] as number)), 0);
  const rest = Math.max(1, PAGE - others - (columns.length - 1));
  const wanted = widest(rows.map((row) => columns.find(isElastic)?.cell(row) ?? ''));
  const air = Math.min(MOST_AIR, Math.max(0, Math.floor((rest - wanted) / (columns.length - 1))));
  return columns.map((column, i) => ({
    ...column,
    width: isElastic(column)
      ? Math.min(rest - air * (columns.length - 1), wanted)
      : (widths[i] as number) + air,
  }));
}

/** Most columns by which a table is spread where the page has room. */
const MOST_AIR = 3;

/** Narrower columns stand too close for the eye. */
const NARROWEST = 5;

function padded<Row>(text: string, { width, align }: FixedColumn<Row>): string {
  const space = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return align === 'left' ? text + space : space + text;
}
