import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';

/** Sizes of type, mm: the height of capitals is about 0.7 of it, which gives 2.5 and 2 mm (ISO 3098 has 2.5 and 1.8). */
export const TYPE = { title: 5, label: 3.5, small: 2.8 } as const;

/** Height of capitals as a share of the type size, of the usual sans serif faces. */
export const CAPITALS = 0.72;

/** Where lettering ends, and how it is set. */
export interface TextStyle {
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
}

/**
 * Text that any XML may hold: control characters and halves of surrogate pairs, which XML 1.0 forbids even
 * as character references, become U+FFFD, and line ends and tabs become spaces. Marks that turn the direction
 * of writing go, since they could make one number look like another.
 */
export function clean(text: string): string {
  if (PLAIN.test(text)) return text;
  return (
    text
      .replace(/\p{Surrogate}/gu, '\ufffd')
      .replace(/[\t\n\r\u2028\u2029]+/g, ' ')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
      .replace(/[\u0000-\u001f\u007f-\u009f\ufffe\uffff]/g, '\ufffd')
      .replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
  );
}

/** Text in which there is nothing to clean: the printing signs of European alphabets, and dashes. */
const PLAIN = /^[\u0020-\u007e\u00a0-\u024f\u2013\u2014]*$/;

/** Writes one line of text; `y` is its base line. */
export function write(parent: SvgNode, text: string, x: number, y: number, style: TextStyle): SvgNode {
  const { size, anchor = 'start', bold = false } = style;
  const node = parent
    .element('text')
    .words(clean(text))
    .attr({ x: toMicron(x), y: toMicron(y), 'font-size': size });
  if (anchor !== 'start') node.attr({ 'text-anchor': anchor });
  return bold ? node.attr({ 'font-weight': 'bold' }) : node;
}

/** Gives lettering a rim of paper, which breaks the lines and hatching behind it. */
export function haloed(text: SvgNode, { paper }: { readonly paper: string }): SvgNode {
  return text.attr({
    stroke: paper,
    'stroke-width': HALO,
    'paint-order': 'stroke',
  });
}

/** Width of the rim of paper, both sides together, mm. */
const HALO = 1.3;

/**
 * About how wide a text gets, mm. Measured on wide sans serif faces, since which face a viewer has is not
 * known; so it is rather too wide than too narrow.
 */
export function textWidth(text: string, size: number, bold = false): number {
  let ems = 0;
  for (const sign of clean(text)) ems += WIDTHS[sign.charCodeAt(0)] ?? WIDEST;
  return ems * size * (bold ? BOLD : 1);
}

/** Widths of signs, ems: of the broadest letters, and of what is in no table. */
const BROAD = 0.95;
const WIDEST = 1;

/** By code of a sign its width, ems, for what European alphabets write; the dash and the mark of a cut among it. */
const WIDTHS = widths();

function widths(): Readonly<Record<number, number>> {
  const own: Record<number, number> = {};
  const give = (signs: string, width: number): void => {
    for (const sign of signs) own[sign.charCodeAt(0)] = width;
  };
  for (let code = 0x20; code <= 0x24f; code++) own[code] = 0.62;
  give('ABCDEFGHIJKLMNOPQRSTUVWXYZ', 0.7);
  give('mwMW@%—…', BROAD);
  give(' frtI()[]/\\-', 0.4);
  give("ilj|!'.,:;", 0.33);
  return own;
}

/** How much wider bold type is. */
const BOLD = 1.12;

/** The text, or as much of its beginning as goes into a width, with a mark that it goes on. */
export function fitted(text: string, room: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= room) return text;
  const width = bold ? room / BOLD : room;
  const signs = [...text];
  let used = BROAD * size;
  let count = 0;
  for (const sign of signs) {
    used += (WIDTHS[sign.charCodeAt(0)] ?? WIDEST) * size;
    if (used > width) break;
    count++;
  }
  return `${signs.slice(0, count).join('').trimEnd()}…`;
}

/** The text broken into lines that go into a width; a word that is too long for a line is cut short. */
export function wrapped(text: string, width: number, size: number, bold = false): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of clean(text).split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, bold) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line].map((l) => fitted(l, width, size, bold));
}
