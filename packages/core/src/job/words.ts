import type { Units } from './job.js';

/** Digits after the point: a micrometre, and a ten-thousandth of an inch. */
const DIGITS = { mm: 3, inch: 4 } as const;

const NAME = { mm: 'mm', inch: 'in' } as const;

/** A length for a sentence, with its unit: `1.250 mm`, `0.0500 in`. */
export function lengthWords(value: number, units: Units): string {
  return `${value.toFixed(DIGITS[units])} ${NAME[units]}`;
}

/** A place for a sentence: `(20.000, 15.000)`. */
export function placeWords([x, y]: readonly [number, number], units: Units): string {
  return `(${x.toFixed(DIGITS[units])}, ${y.toFixed(DIGITS[units])})`;
}

/** An angle for a sentence. */
export function angleWords(degrees: number): string {
  // An exact zero is a cusp, which is worse than an angle that rounds to it.
  return degrees === 0 ? '0°' : `${degrees.toFixed(1)}°`;
}

/** What two edges came from, for a sentence: `cut seat and outline edge 2`. */
export function sourceWords([a, b]: readonly [string, string]): string {
  return a === b ? `${nameWords(a)} and itself` : `${nameWords(a)} and ${nameWords(b)}`;
}

function nameWords(source: string): string {
  const [kind, ...rest] = source.split(':');
  const name = rest.join(':');
  if (kind === 'outline') return `outline edge ${name}`;
  if (kind === 'hole') return `hole ${rest[0]} edge ${rest[1]}`;
  return kind === 'cut' ? `cut ${name}` : source;
}
