import type { ReportEdge } from '@edgebite/core';
import { between, lengthOf, unitOf } from './vector.js';

/** What rounding may come to, as a share of the length of a face. */
const SLACK = 1e-9;

/** What a shop calls a straight face that bounds a part in a direction of the drawing, square to it; null of any other. */
export function sideOfEdge({ kind, a, b }: ReportEdge, all: readonly ReportEdge[]): string | null {
  if (kind !== 'line') return null;
  const way = between(a, b);
  const [x, y] = unitOf(way);
  // With the metal to the left of it, a face that runs up is at the right.
  const isOutermost = (axis: 0 | 1, sign: number): boolean =>
    all.every((edge) => farthest(edge, axis, sign) <= sign * a[axis] + SLACK * lengthOf(way));
  if (x === 0 && isOutermost(0, y)) return y > 0 ? 'right end' : 'left end';
  if (y === 0 && isOutermost(1, -x)) return x > 0 ? 'front' : 'back';
  return null;
}

// How far an edge goes that way; an arc at most as far as its whole circle.
function farthest(edge: ReportEdge, axis: 0 | 1, sign: number): number {
  return edge.kind === 'arc' ? sign * edge.center[axis] + edge.radius : sign * edge.a[axis];
}
