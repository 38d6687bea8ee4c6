import { originOf } from '../geometry/source.js';
import type { PartName, Units } from '../job/job.js';

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

/** The two sources of a web or knife edge, for people: `cut seat and the right end`; one name if both are the same. */
export function betweenText(between: readonly [string, string], names: readonly PartName[] = []): string {
  const [a, b] = [...between].sort() as [string, string];
  const one = sourceText(a, names);
  return a === b ? `${one} and itself` : `${one} and ${sourceText(b, names)}`;
}

/**
 * A source for people: its name in the report's `names`, else `outline edge 2`, `hole 0 edge 1`, `cut seat`; a jaw, stop,
 * parallel or clamp by its own id.
 */
export function sourceText(source: string, names: readonly PartName[] = []): string {
  const own = names.find(({ of }) => of === source);
  if (own !== undefined) return own.name;
  const origin = originOf(source);
  switch (origin.kind) {
    case 'cut':
      return `cut ${origin.id}`;
    case 'outline':
      return `outline edge ${origin.edge}`;
    case 'hole': {
      const owner = names.find(({ of }) => of === `hole:${origin.hole}`);
      return `${owner?.name ?? `hole ${origin.hole}`} edge ${origin.edge}`;
    }
    case 'other':
      return origin.name.replace(/^keepOut:/, '');
  }
}

/** Speeds of a spindle for a sentence: `250 to 310 turns a minute`; one figure if both ends round to it. */
export function speedWords([least, most]: readonly [number, number]): string {
  const [low, high] = [speedText(least), speedText(most)];
  return `${low === high ? low : `${low} to ${high}`} turns a minute`;
}

function speedText(speed: number): string {
  return speed < 10 ? speed.toPrecision(2) : speed.toFixed(0);
}

/** A text with its first letter as a capital one. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A volume for a sentence, to three digits: `168 mm³`, `0.0125 in³`. */
export function volumeWords(value: number, units: Units): string {
  return `${threeDigits(value)} ${units === 'mm' ? 'mm³' : 'in³'}`;
}

/** A mass for a sentence, to three digits: `1.32 g`. */
export function massWords(value: number, unit: 'g' | 'lb'): string {
  return `${threeDigits(value)} ${unit}`;
}

/** Three digits, without an exponent. */
function threeDigits(value: number): string {
  const digits = value > 0 ? 2 - Math.floor(Math.log10(value)) : 0;
  return value.toFixed(Math.min(12, Math.max(0, digits)));
}
