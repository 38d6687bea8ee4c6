import type { Place } from './shapes.js';

/*
 * The part as it lies: turned over about an axis of the drawing, then turned counter-clockwise seen from above. The
 * machine's X grows to the right, its Y away from the person, and the spindle turns clockwise seen from above.
 */

export interface Lie {
  readonly flip: 'x' | 'y' | null;
  readonly turn: number;
}

/** Where a place of the drawing lies over the table. About the x axis turns y over, about the y axis x. */
export function laid({ flip, turn }: Lie, [x, y]: Place): Place {
  const u = flip === 'y' ? -x : x;
  const v = flip === 'x' ? -y : y;
  const [cos, sin] = cosSin(turn);
  return [u * cos - v * sin, u * sin + v * cos];
}

/** Which place of the drawing lies there. */
export function drawn({ flip, turn }: Lie, [x, y]: Place): Place {
  const [cos, sin] = cosSin(turn);
  const u = x * cos + y * sin;
  const v = -x * sin + y * cos;
  return [flip === 'y' ? -u : u, flip === 'x' ? -v : v];
}

function cosSin(turn: number): Place {
  const whole = ((turn % 360) + 360) % 360;
  if (whole === 0) return [1, 0];
  if (whole === 90) return [0, 1];
  if (whole === 180) return [-1, 0];
  if (whole === 270) return [0, -1];
  return [Math.cos((whole * Math.PI) / 180), Math.sin((whole * Math.PI) / 180)];
}

/** Degrees of a direction, from 0 up to 360. */
export function heading(dx: number, dy: number): number {
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

const EIGHTHS = [
  'to the right',
  'to the right and away from you',
  'away from you',
  'to the left and away from you',
  'to the left',
  'to the left and towards you',
  'towards you',
  'to the right and towards you',
] as const;

/** What a person at the machine calls a direction: the nearest of eight. */
export function inWords(degrees: number): string {
  return EIGHTHS[Math.round(degrees / 45) % 8] as string;
}

/** By how much two directions differ, degrees. */
export function between(one: number, other: number): number {
  const by = Math.abs(one - other) % 360;
  return Math.min(by, 360 - by);
}
