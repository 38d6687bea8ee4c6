import type { Axes } from '../datum/lie.js';
import { DEGREE } from '../geometry/angle.js';
import type { Vector } from '../geometry/point.js';

/** The eight ways that a person at the machine is told, from X+ counter-clockwise. */
export const DIRECTION_WORDS = [
  'to the right',
  'to the right and away from you',
  'away from you',
  'to the left and away from you',
  'to the left',
  'to the left and towards you',
  'towards you',
  'to the right and towards you',
] as const;

/** One of the eight ways. */
export type DirectionWords = (typeof DIRECTION_WORDS)[number];

/** A direction on the table: X+ to the right, Y+ away from the person. */
export interface MachineDirection {
  readonly words: DirectionWords;
  /** Counter-clockwise from X+, seen from above; from 0 up to 360, in steps of a millionth. */
  readonly degrees: number;
}

/** Steps in a degree. Finer than anyone can act on, and coarse against rounding, which must not change a word. */
const STEPS = 1e6;

/**
 * A direction on the drawing as a person at the machine sees it, where the part lies in a setup: in words, the nearest
 * of eight (halfway between two, the one further counter-clockwise), and in degrees. Of quarter turns, exact.
 *
 * Source: definition of the axes, common to milling machines (ISO 841 names them so).
 * @param axes directions of the machine's axes on the part as drawn, as `axesOf` gives them
 * @param drawn a vector of any length but 0, or degrees counter-clockwise from the x axis of the drawing
 * @throws RangeError if it is not finite, or a vector of length 0.
 */
export function machineDirection(axes: Axes, drawn: Vector | number): MachineDirection {
  const degrees = steady(typeof drawn === 'number' ? turnedBy(axes, drawn) : headingOf(axes, drawn));
  return { words: wordsFor(degrees), degrees };
}

/** Degrees brought to from 0 up to 360, in steps of a millionth. */
export function steady(degrees: number): number {
  const turn = Math.round((degrees % 360) * STEPS) / STEPS;
  const positive = turn < 0 ? turn + 360 : turn;
  // Once more, as the sum may have digits of its own.
  return ((Math.round(positive * STEPS) / STEPS) % 360) + 0;
}

/** The unit vector of a direction in degrees; of directions a quarter turn apart, the same numbers exchanged. */
export function alongDegrees(degrees: number): Vector {
  const quarter = Math.floor(degrees / 90);
  const rest = (degrees - 90 * quarter) * DEGREE;
  const [c, s] = [Math.cos(rest), Math.sin(rest)];
  switch (((quarter % 4) + 4) % 4) {
    case 0:
      return { dx: c, dy: s };
    case 1:
      return { dx: -s + 0, dy: c };
    case 2:
      return { dx: -c, dy: -s + 0 };
    default:
      return { dx: s, dy: -c };
  }
}

function headingOf({ x, y }: Axes, { dx, dy }: Vector): number {
  if (!Number.isFinite(dx) || !Number.isFinite(dy) || (dx === 0 && dy === 0)) {
    throw new RangeError(
      `machineDirection: drawn is (${dx}, ${dy}); it must be finite and not 0, to be a direction`,
    );
  }
  return Math.atan2(dx * y.dx + dy * y.dy, dx * x.dx + dy * x.dy) / DEGREE;
}

/** Degrees less those of the machine's X axis, counted the other way round where the part is turned over. */
function turnedBy({ x, y }: Axes, drawn: number): number {
  if (!Number.isFinite(drawn)) {
    throw new RangeError(`machineDirection: drawn is ${drawn}; it must be a finite number of degrees`);
  }
  const hand = x.dx * y.dy - x.dy * y.dx < 0 ? -1 : 1;
  return hand * ((drawn % 360) - Math.atan2(x.dy, x.dx) / DEGREE);
}

function wordsFor(degrees: number): DirectionWords {
  return DIRECTION_WORDS[Math.floor((degrees + 22.5) / 45) % 8] as DirectionWords;
}
