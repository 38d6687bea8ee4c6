import type { Point } from '../geometry/point.js';

/** Places under discussion: coordinates less the origin, and as given where they were given. */
export interface Points {
  readonly x: number[];
  readonly y: number[];
  readonly given: (Point | null)[];
  /** Whether it only parts two arcs of one circle and one name, which go on there as if it were not. */
  readonly isSeam: boolean[];
}

/** Adds a place and returns its number. */
export function addPoint(points: Points, x: number, y: number, given: Point | null, isSeam = false): number {
  points.x.push(x);
  points.y.push(y);
  points.given.push(given);
  points.isSeam.push(isSeam);
  return points.x.length - 1;
}

/** Whether a point is at a place, to within the tolerance. */
export function isNear(points: Points, p: number, x: number, y: number, tolerance: number): boolean {
  const dx = (points.x[p] as number) - x;
  const dy = (points.y[p] as number) - y;
  return dx * dx + dy * dy <= tolerance * tolerance;
}
