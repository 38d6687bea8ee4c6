import type { Edge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, sweep } from '../geometry/measure.js';
import { distance, type Vector } from '../geometry/point.js';

/** Under this sine a joint that turns back is taken for a cusp: where the edges go decides, not the rounded angle. */
const CUSP = 1e-3;

/**
 * Whether a chain turns to the left at the joint of two edges. At a cusp, where it goes back the way it came, the
 * angle is half a turn either way and rounding would choose: left is where the edge that leaves lies to the left of
 * the one that arrived, seen along both from the joint, half as far out as the shorter one goes: at its end they may
 * meet again.
 */
export function turnsLeft(arriving: Edge, leaving: Edge): boolean {
  const t = directionAtEnd(arriving);
  const u = directionAtStart(leaving);
  const cross = t.dx * u.dy - t.dy * u.dx;
  const dot = t.dx * u.dx + t.dy * u.dy;
  if (dot > 0 || Math.abs(cross) > CUSP) return cross > 0;
  const back: Vector = { dx: -t.dx, dy: -t.dy };
  const apart = Math.atan2(u.dx * back.dy - u.dy * back.dx, u.dx * back.dx + u.dy * back.dy);
  const reach = Math.min(reachOf(arriving), reachOf(leaving)) / 2;
  return apart + veer(arriving, reach, true) - veer(leaving, reach, false) > 0;
}

/** How far from its start a curve is sure to get with every place on the way passed once. */
function reachOf(edge: Edge): number {
  if (edge.kind === 'line') return distance(edge.a, edge.b);
  return sweep(edge) < Math.PI ? distance(edge.a, edge.b) : 2 * edge.radius;
}

/** Angle between an edge's first direction, run backwards if asked, and its place at a distance from there. */
function veer(edge: Edge, reach: number, backwards: boolean): number {
  if (edge.kind === 'line') return 0;
  const turned = Math.asin(Math.min(1, reach / (2 * edge.radius)));
  return edge.ccw === backwards ? -turned : turned;
}
