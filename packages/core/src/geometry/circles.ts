import type { Point } from './point.js';

/** A whole circle; an arc is one too. */
export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** How far two full circles are apart; below 0 if one reaches into the other. */
export function apartness(one: Circle, other: Circle): number {
  return centres(one, other) - (one.radius + other.radius);
}

/** How far the smaller of two full circles lies within the larger one; below 0 if it reaches out of it. */
export function withinness(one: Circle, other: Circle): number {
  return Math.abs(one.radius - other.radius) - centres(one, other);
}

function centres(one: Circle, other: Circle): number {
  const dx = other.center.x - one.center.x;
  const dy = other.center.y - one.center.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Two places, to the left and to the right of the way from one centre to the other. */
export interface Crossings {
  readonly left: Point;
  readonly right: Point;
}

/**
 * The places where two circles cross that do so.
 * Source: the height of the triangle of the centres and a crossing, by Heron's formula.
 */
export function circleCrossings(one: Circle, other: Circle): Crossings {
  const { x, y } = one.center;
  const r = one.radius;
  const s = other.radius;
  const dx = other.center.x - x;
  const dy = other.center.y - y;
  const d = centres(one, other);
  const along = (d + ((r - s) * (r + s)) / d) / (2 * d);
  const height = Math.sqrt((d + r + s) * (r + s - d) * (d - (r - s)) * (d + (r - s))) / (2 * d * d);
  return {
    left: { x: x + dx * along - dy * height, y: y + dy * along + dx * height },
    right: { x: x + dx * along + dy * height, y: y + dy * along - dx * height },
  };
}

/** Grows from 0 to 4 as a direction turns once round, as its angle would, but for less. */
export function turnKey(dx: number, dy: number): number {
  if (dy >= 0) return dx >= 0 ? dy / (dx + dy) : 1 - dx / (dy - dx);
  return dx < 0 ? 2 - dy / (-dx - dy) : 3 + dx / (dx - dy);
}
