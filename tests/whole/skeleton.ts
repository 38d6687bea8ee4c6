import type { Report } from '@edgebite/core';

/*
 * What a reader acts on, without the sentences round it: numbers, units, signs, sides and ways. Wording may change
 * freely; a number or a side may not.
 */

/** Words by which a sentence would say the opposite, or another thing, if they were others. */
const TELLING = [
  ...['left', 'right', 'front', 'back', 'top', 'bottom', 'up', 'down', 'over', 'under', 'above', 'below'],
  ...['inside', 'outside', 'inner', 'outer', 'upper', 'lower', 'towards', 'away', 'beyond', 'between'],
  ...['clockwise', 'counter-clockwise', 'climb', 'conventional', 'X', 'Y', 'Z', 'x', 'y', 'z'],
  ...['before', 'after', 'first', 'last', 'next', 'start', 'starts', 'end', 'ends', 'earlier', 'later'],
  ...['more', 'less', 'most', 'least', 'larger', 'largest', 'smaller', 'smallest', 'thinner', 'thinnest'],
  ...['deeper', 'deepest', 'nearest', 'furthest', 'closer', 'longest', 'shortest', 'faster', 'slower'],
  ...['sharper', 'sharpest', 'high', 'higher', 'low', 'worst', 'squares', 'half', 'twice', 'about'],
  ...['no', 'not', 'never', 'only', 'without', 'nothing', 'none', 'both', 'safe', 'loose', 'holds'],
  ...['radius', 'diameter', 'thickness', 'depth', 'width', 'wide', 'long', 'thick', 'deep', 'middle', 'edge'],
  ...[
    'height',
    'heights',
    'length',
    'pass',
    'bite',
    'entry',
    'exit',
    'degrees',
    'minutes',
    'seconds',
    'mean',
  ],
  ...['wider', 'narrower', 'thicker', 'longer', 'shorter', 'shallower', 'finer', 'coarser', 'raise', 'lift'],
  ...['against', 'along', 'across', 'through', 'danger', 'check', 'note'],
];

/** Such words by themselves, in a text. */
export const TELLING_WORDS = new RegExp(`(?<![\\w-])(?:${TELLING.join('|')})(?![\\w-])`, 'gi');

/** Numbers with sign and unit; a time of day or of a run as well. */
const FIGURES =
  /(?<![\w.])[±+−-]?\d+(?:[.:]\d+)*[%°]?(?: (?:mm[²³]?|in[²³]?|inch|lb|lbf|g|N|N m|lbf in|min)(?![\w-]))?/g;

const TOKENS = new RegExp(`${FIGURES.source}|${TELLING_WORDS.source}`, 'gi');

/** How many characters of a skeleton stand in a line. */
const WIDTH = 110;

/** The numbers and words that count, in lines. */
export function skeletonOf(text: string): string {
  const lines: string[] = [];
  let line = '';
  for (const [token] of text.matchAll(TOKENS)) {
    if (line.length + token.length + 1 > WIDTH) {
      lines.push(line);
      line = '';
    }
    line += line === '' ? token : ` ${token}`;
  }
  return [...lines, line].join('\n');
}

/** Text of a page without its marks. */
export const withoutTags = (html: string): string =>
  html.replace(/<style[\s\S]*?<\/style>/g, '').replace(/<[^>]*>/g, ' ');

/** Numbers of a drawing by the group that they stand in: how many, and a sum in which no two can change places unseen. */
export function drawnFigures(svg: string): string {
  const groups = new Map<string, { count: number; sum: number; words: string[] }>();
  const open: string[] = [];
  for (const [, close, tag = '', inner = '', text = ''] of svg.matchAll(
    /<(\/?)([a-z]\w*)([^>]*)>([^<]*)/gi,
  )) {
    if (close === '/') {
      if (tag === 'g') open.pop();
      continue;
    }
    const id = /\bid="([^"]*)"/.exec(inner)?.[1] ?? open.at(-1) ?? 'sheet';
    if (tag === 'g' && !inner.endsWith('/')) open.push(id);
    const group = groups.get(id) ?? { count: 0, sum: 0, words: [] };
    groups.set(id, group);
    for (const [number] of inner
      .replace(/(?:id|class|data-[\w-]+)="[^"]*"/g, '')
      .matchAll(/-?\d+(?:\.\d+)?/g)) {
      group.count += 1;
      group.sum += Number(number) * (1 + (group.count % 7));
    }
    const words = skeletonOf(text);
    if (words !== '') group.words.push(words);
  }
  return [...groups]
    .filter(([, { count, words }]) => count + words.length > 0)
    .map(([id, { count, sum, words }]) => `${id}: ${count} ${sum.toFixed(1)} ${words.join(' ')}`.trimEnd())
    .join('\n');
}

/** Seven digits: fewer than rounding of another order of sums can change. */
const shown = (value: number): string => String(Number((Math.abs(value) < 1e-9 ? 0 : value).toPrecision(7)));

/** Long lists of edges stand as how many, and the sums of their numbers. */
const SHAPES = new Set(['outline', 'view', 'footprint', 'region', 'cut', 'path', 'leadIn', 'leadOut']);

function flat(value: unknown, key: string): string {
  if (typeof value === 'number') return shown(value);
  if (typeof value !== 'object' || value === null) return String(value);
  if (Array.isArray(value) && SHAPES.has(key)) return shapeOf(value);
  if (Array.isArray(value)) return `[${value.map((one) => flat(one, '')).join(' ')}]`;
  return `{${Object.entries(value)
    .filter(([name]) => !WORDY.has(name))
    .map(([name, one]) => `${name} ${flat(one, name)}`)
    .join(', ')}}`;
}

/** Sentences: `skeletonOf` has what counts in them. */
const WORDY = new Set(['message', 'words', 'why', 'leaves', 'text', 'source']);

/** A sum in which no two can change places unseen. */
const summed = (values: readonly number[]): number =>
  values.reduce((total, value, k) => total + value * (1 + (k % 7)), 0);

/** How many numbers, their sum, and that of the letters of what the edges are named after. */
function shapeOf(shape: readonly unknown[]): string {
  const text = JSON.stringify(shape);
  const names = [...text.matchAll(/"source":"([^"]*)"/g)].map(([, name]) => name).join(' ');
  const numbers = (text.replaceAll(/"source":"[^"]*"/g, '').match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g) ?? []).map(
    Number,
  );
  const letters = summed([...names].map((letter) => letter.codePointAt(0) ?? 0));
  return `<${numbers.length} ${Number(summed(numbers).toPrecision(6))} ${letters}>`;
}

/** All figures of a report, a line a row. */
export function figuresOf(report: Report): string {
  return Object.entries(report)
    .flatMap(([key, value]) =>
      Array.isArray(value) && !SHAPES.has(key)
        ? value.map((row, k) => `${key} ${k} ${flat(row, key)}`)
        : [`${key} ${flat(value, key)}`],
    )
    .join('\n');
}
