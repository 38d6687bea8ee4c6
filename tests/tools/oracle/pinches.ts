import type { ArcEdge, Edge, Point, Region } from '@edgebite/core';
import { apartness, withinness } from '../../../packages/core/src/geometry/circles.js';
import { nearestOnEdge } from '../../../packages/core/src/geometry/distance.js';

/**
 * In how many places curves of operands all but touch: metal hangs together or falls apart there if they move by a
 * little. Each may change the number of pieces by one.
 */
export function pinchesOf(operands: readonly Region[], by: number): number {
  const edges = operands.flat().flatMap(({ outer, holes }) => [outer, ...holes].flat());
  const curves = edges.filter((edge, k) => edges.findIndex((other) => isSameCurve(edge, other)) === k);
  let count = 0;
  curves.forEach((one, k) => {
    for (const other of curves.slice(k + 1)) if (allButTouch(one, other, by)) count++;
  });
  for (const { a } of edges) {
    if (edges.some((edge) => !isEndOf(edge, a) && nearestOnEdge(edge, a).distance <= by)) count++;
  }
  return count;
}

function isSameCurve(one: Edge, other: Edge): boolean {
  if (one.kind === 'line' || other.kind === 'line') return one === other;
  return one.center.x === other.center.x && one.center.y === other.center.y && one.radius === other.radius;
}

function allButTouch(one: Edge, other: Edge, by: number): boolean {
  if (one.kind === 'line') return other.kind === 'arc' && allButTouchesLine(one, other, by);
  if (other.kind === 'line') return allButTouchesLine(other, one, by);
  return Math.abs(apartness(one, other)) <= by || Math.abs(withinness(one, other)) <= by;
}

function allButTouchesLine({ a, b }: Edge, { center, radius }: ArcEdge, by: number): boolean {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const away = Math.abs((center.x - a.x) * dy - (center.y - a.y) * dx) / Math.hypot(dx, dy);
  return Math.abs(away - radius) <= by;
}

function isEndOf({ a, b }: Edge, p: Point): boolean {
  return (a.x === p.x && a.y === p.y) || (b.x === p.x && b.y === p.y);
}
