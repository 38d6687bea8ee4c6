import type { Json } from '../document/json.js';
import { INCH } from '../document/place.js';

/** The unit that a length is typed in: that of its field, as long as none is written after it. */
export type Unit = 'mm' | 'inch';

/** A decimal number with a point or a comma, without signs between thousands. */
const DECIMAL = /(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?/iy;

/** A fraction, alone or after a whole number and a space or a hyphen: `3/8`, `1 3/8`, `1-3/8`. */
const FRACTION = /(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)(?![\d.,])/y;

/** Marks of a unit after a number: inches as drawings have them, and the names of both. */
const UNIT = /\s*(?:(mm)|("|\u201d|\u2033|''|in(?:ch(?:es)?)?\b))/iy;

const SIGN = /\s*(?:(\+)|([-\u2212])|([*\u00d7])|([/\u00f7]))\s*/iy;

/** Decimals that are kept of what was worked out: a millionth of the unit is the smallest size in a job. */
const DECIMALS = 9;

/**
 * The number that someone typed, or null if it is none: `12.5`, `12,5`, `.5`; fractions as inch sizes are written,
 * `1 3/8` and `1-3/8`; sums of such, `120-18`, `48/2`, `3*12,5+2`; each with its unit if that is another, `1.5"` in a
 * job in millimetres. Factors go before sums. A number is given back to the last digit as it was typed; what is worked
 * out, to nine decimals.
 * @param unit the unit of the field; null where it has no lengths, and no unit may be written
 */
export function numberOf(text: string, unit: Unit | null = null): number | null {
  const reader: Reader = { text: text.trim(), at: 0, unit, worked: false };
  const value = sum(reader);
  if (value === null || reader.at !== reader.text.length || !Number.isFinite(value)) return null;
  return (reader.worked ? Number(value.toFixed(DECIMALS)) : value) + 0;
}

interface Reader {
  readonly text: string;
  readonly unit: Unit | null;
  at: number;
  /** Whether the number is another than the one that was typed. */
  worked: boolean;
}

function sum(reader: Reader): number | null {
  let value = product(reader, true);
  for (let sign = signOf(reader, '+-'); value !== null && sign !== null; sign = signOf(reader, '+-')) {
    const next = product(reader, false);
    value = next === null ? null : sign === '+' ? value + next : value - next;
  }
  return value;
}

function product(reader: Reader, first: boolean): number | null {
  const from = reader.at;
  let value = term(reader, first);
  // `1/2/3` can be read in two ways, so it is read in none.
  const broken = reader.text.slice(from, reader.at).includes('/');
  for (let sign = signOf(reader, '*/'); value !== null && sign !== null; sign = signOf(reader, '*/')) {
    if (broken && sign === '/') return null;
    const next = term(reader, false);
    value = next === null ? null : sign === '*' ? value * next : value / next;
  }
  return value;
}

// Only the first number of all can have a sign of its own: of two signs in a row one is a slip.
function term(reader: Reader, first: boolean): number | null {
  const sign = first ? (/^[+\-\u2212]\s*/.exec(reader.text)?.[0] ?? '') : '';
  if (first) reader.at = sign.length;
  const size = fraction(reader) ?? decimal(reader);
  if (size === null) return null;
  const value = inUnit(size, reader);
  return value === null ? null : sign !== '' && !sign.startsWith('+') ? -value : value;
}

function fraction(reader: Reader): number | null {
  const from = reader.at;
  const match = matchAt(FRACTION, reader);
  if (match === null) return null;
  const [, whole, over, under] = match;
  // `120-18/2` is a sum: only a proper fraction goes with a whole number.
  if (whole !== undefined && Number(over) >= Number(under)) {
    reader.at = from;
    return null;
  }
  return Number(whole ?? 0) + Number(over) / Number(under);
}

function decimal(reader: Reader): number | null {
  const match = matchAt(DECIMAL, reader);
  return match === null ? null : Number(match[0].replace(',', '.'));
}

function inUnit(size: number, reader: Reader): number | null {
  const match = matchAt(UNIT, reader);
  if (match === null) return size;
  if (reader.unit === null) return null;
  const written: Unit = match[1] === undefined ? 'inch' : 'mm';
  if (written === reader.unit) return size;
  reader.worked = true;
  return written === 'inch' ? size * INCH : size / INCH;
}

/** The sign that comes next, if it is one of those. */
function signOf(reader: Reader, among: '+-' | '*/'): string | null {
  const from = reader.at;
  const match = matchAt(SIGN, reader);
  if (match === null) return null;
  const sign = '+-*/'.charAt(match.slice(1).findIndex((found) => found !== undefined));
  if (!among.includes(sign)) {
    reader.at = from;
    return null;
  }
  reader.worked = true;
  return sign;
}

function matchAt(pattern: RegExp, reader: Reader): RegExpExecArray | null {
  pattern.lastIndex = reader.at;
  const match = pattern.exec(reader.text);
  if (match !== null) reader.at += match[0].length;
  return match;
}

/**
 * What goes into the job for typed text: a number if it is one; else the text itself, which the job's checks then
 * name as a fault in its place; undefined for nothing typed where nothing is needed.
 */
export function entryOf(text: string, optional: boolean, unit: Unit | null = null): Json | undefined {
  const typed = text.trim();
  if (typed === '' && optional) return undefined;
  return numberOf(typed, unit) ?? typed;
}

/** Whether a text is a decimal number as it stands, so that there is no doubt how it is read. */
export function isPlain(text: string): boolean {
  return /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?$/i.test(text.trim());
}
