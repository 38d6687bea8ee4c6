import type { ArcEdge, LineEdge } from './edge.js';
import type { Point } from './point.js';

/** A part of a line, under the same name. */
export function lineLike({ source }: LineEdge, a: Point, b: Point): LineEdge {
  return source === undefined ? { kind: 'line', a, b } : { kind: 'line', a, b, source };
}

/** A part of an arc's circle, under the same name. */
export function arcLike({ center, radius, source }: ArcEdge, a: Point, b: Point, ccw: boolean): ArcEdge {
  if (source === undefined) return { kind: 'arc', a, b, center, radius, ccw };
  return { kind: 'arc', a, b, center, radius, ccw, source };
}
