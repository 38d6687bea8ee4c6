import type { Point, Vector } from '../geometry/point.js';

/** How a part lies on the table: first turned over about an axis of the drawing, then turned. */
export interface Lie {
  /** The axis about which it is turned over, bottom up; null if it lies as drawn. */
  readonly flip: 'x' | 'y' | null;
  /** Degrees counter-clockwise, seen from above. */
  readonly turn: number;
}

/** Directions of the machine's axes on the part as drawn, each a unit vector: x to the right, y to the back. */
export interface Axes {
  readonly x: Vector;
  readonly y: Vector;
}

/**
 * The directions of the machine's axes on the part. Quarter turns are exact, to the last bit.
 *
 * Source: turning a plane, x' = x cos t - y sin t, y' = x sin t + y cos t, after a mirror in an axis; the rows of
 * that matrix are the machine's axes as the part sees them.
 */
export function axesOf({ flip, turn }: Lie): Axes {
  const { cos, sin } = cosSin(turn);
  const alongX = flip === 'y' ? -1 : 1;
  const alongY = flip === 'x' ? -1 : 1;
  return {
    x: { dx: cos * alongX + 0, dy: -sin * alongY + 0 },
    y: { dx: sin * alongX + 0, dy: cos * alongY + 0 },
  };
}

/** How far a place lies along a direction, from the zero of the drawing. */
export function along(p: Point, axis: Vector): number {
  return p.x * axis.dx + p.y * axis.dy;
}

/** The displacement on the part that is so far along each axis of the machine. */
export function onPart(axes: Axes, x: number, y: number): Vector {
  return { dx: axes.x.dx * x + axes.y.dx * y, dy: axes.x.dy * x + axes.y.dy * y };
}

const QUARTERS = [
  { cos: 1, sin: 0 },
  { cos: 0, sin: 1 },
  { cos: -1, sin: 0 },
  { cos: 0, sin: -1 },
] as const;

function cosSin(degrees: number): { readonly cos: number; readonly sin: number } {
  const turn = ((degrees % 360) + 360) % 360;
  const quarter = QUARTERS[turn / 90];
  if (quarter !== undefined) return quarter;
  const angle = (turn * Math.PI) / 180;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
}
