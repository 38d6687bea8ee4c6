import type { Place } from '../worker/sketch.js';

/** From one place to another. */
export const between = (from: Place, to: Place): Place => [to[0] - from[0], to[1] - from[1]];

export const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1];

/** Over 0 where the second leads to the left of the first. */
export const cross = (a: Place, b: Place): number => a[0] * b[1] - a[1] * b[0];

export const lengthOf = ([x, y]: Place): number => Math.hypot(x, y);

/** The same direction, one long; to the right where there is none. */
export function unitOf(vector: Place): Place {
  const length = lengthOf(vector);
  return length === 0 ? [1, 0] : [vector[0] / length, vector[1] / length];
}

/** The other way. */
export const turned = ([x, y]: Place): Place => [-x, -y];

/** To the left of it, square: into the metal, for an edge. */
export const leftward = ([x, y]: Place): Place => [-y, x];
