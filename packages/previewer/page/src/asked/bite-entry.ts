import { lengthText, numberText } from '@edgebite/svg';
import { snapped, tidied } from '../board/snap.js';
import { numberOf, type Unit } from '../form/entry.js';
import { stepFor } from '../form/new-cut.js';
import type { Face } from '../state/biting.js';

/** The numbers of a bite as they stand in its fields. */
export type BiteTexts = Readonly<Record<BiteKey, string>>;

export type BiteKey = 'along' | 'radius' | 'deep' | 'rough' | 'wall' | 'step';

/** A bite that can be put. */
export interface Bite {
  readonly face: Face;
  readonly along: number;
  readonly radius: number;
  readonly depth: number;
  /** The width in the face, where that was given and not the depth. */
  readonly opening: number | null;
  readonly rough: { readonly diameter: number; readonly wall: number } | null;
  /** The largest bite of a pass, where the bore steps in. */
  readonly step: number | null;
}

/** What is made of a face to begin with: a radius of an eighth of it, half of that deep. */
const SHARE = { radius: 1 / 8, depth: 1 / 2, opening: 3 / 2 };

/** A hollow cutter's wall as a share of its diameter, until another is typed. */
const WALL = 1 / 8;

/** What stands in the fields that nobody typed in yet; each follows those that it hangs on. */
export function usualTexts(
  { face, along, isOpening }: { face: Face | undefined; along: number; isOpening: boolean },
  typed: Partial<BiteTexts>,
  unit: Unit,
): BiteTexts {
  const read = (text: string | undefined) => (text === undefined ? null : numberOf(text, unit));
  const step = face === undefined ? 0 : stepFor(face.length);
  const radius =
    read(typed.radius) ?? (face === undefined ? null : roughly(face.length * SHARE.radius, step));
  const deep = radius === null ? null : radius * (isOpening ? SHARE.opening : SHARE.depth);
  const rough = read(typed.rough);
  return {
    along: face === undefined ? '' : textOf(along),
    radius: textOf(radius),
    deep: textOf(deep === null ? null : roughly(deep, stepFor(deep))),
    rough: '',
    wall: textOf(rough === null || rough <= 0 ? null : roughly(rough * WALL, stepFor(rough) / 2)),
    step: '',
  };
}

const roughly = (value: number, step: number): number => Math.max(snapped(value, step), step);

const textOf = (value: number | null): string => (value === null ? '' : String(tidied(value)));

/** The bite that the fields say, or what is still wrong with them. */
export function readBite(
  face: Face | undefined,
  texts: BiteTexts,
  isOpening: boolean,
  unit: Unit,
): Bite | { readonly fault: string } {
  const fault = (words: string) => ({ fault: words });
  if (face === undefined) return fault('No face is chosen yet.');
  const read = (key: BiteKey) => numberOf(texts[key], unit);
  const [along, radius, deep] = [read('along'), read('radius'), read('deep')];
  if (along === null || along < 0 || along > face.length)
    return fault(`Along the face takes a number from 0 to ${numberText(face.length, unit)}.`);
  if (radius === null || radius <= 0) return fault('The radius takes a number over 0.');
  if (deep === null || deep <= 0 || deep > 2 * radius)
    return fault(`The ${isOpening ? 'opening' : 'depth'} takes a number over 0, at most twice the radius.`);
  // The centre of an opening lies outside of the metal, or on the face.
  const depth = isOpening ? radius - Math.sqrt(radius ** 2 - (deep / 2) ** 2) : deep;
  const rough = readRough({ diameter: texts.rough, wall: texts.wall }, radius, depth, unit);
  if (rough !== null && 'fault' in rough) return rough;
  const isStepped = texts.step.trim() !== '';
  const step = read('step');
  if (isStepped && (step === null || step <= 0))
    return fault('The largest bite of a pass takes a number over 0.');
  return {
    face,
    along,
    radius,
    depth,
    opening: isOpening ? deep : null,
    rough,
    step: isStepped ? step : null,
  };
}

function readRough(
  texts: { readonly diameter: string; readonly wall: string },
  radius: number,
  depth: number,
  unit: Unit,
): Bite['rough'] | { readonly fault: string } {
  if (texts.diameter.trim() === '' && texts.wall.trim() === '') return null;
  const [diameter, wall] = [numberOf(texts.diameter, unit), numberOf(texts.wall, unit)];
  const least = Math.max(0, 2 * (radius - depth));
  if (diameter === null || diameter <= least || diameter > 2 * radius)
    return {
      fault: `The cutter takes a diameter over ${numberText(least, unit)}, so that it reaches the metal, and at most that of the bite.`,
    };
  if (wall === null || wall <= 0 || 2 * wall >= diameter)
    return { fault: 'The wall takes a number over 0 and under half of the cutter.' };
  return { diameter, wall };
}

/** What a bite comes to. */
export function biteWords({ radius, depth, rough, step }: Bite, unit: Unit): string {
  const opening = 2 * Math.sqrt(Math.max(0, radius ** 2 - (radius - depth) ** 2));
  const length = (value: number) => lengthText(value, unit);
  const left = rough === null ? '' : ` The cutter leaves ${length(radius - rough.diameter / 2)} all round.`;
  const passes = step === null ? '' : ` The bore steps in by ${length(step)} a pass at most.`;
  return `Radius ${length(radius)}, ${length(depth)} deep, opens ${length(opening)} of the face.${left}${passes}`;
}
