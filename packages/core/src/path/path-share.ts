import { withinTurn } from '../geometry/angle.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import { type Point, samePoint } from '../geometry/point.js';

/** Which share of the length of an edge lies before a place on it, from 0 to 1. */
export function shareAt(edge: Edge, p: Point): number {
  if (samePoint(p, edge.a)) return 0;
  if (samePoint(p, edge.b)) return 1;
  if (edge.kind === 'line') {
    const dx = edge.b.x - edge.a.x;
    const dy = edge.b.y - edge.a.y;
    return clamped(((p.x - edge.a.x) * dx + (p.y - edge.a.y) * dy) / (dx * dx + dy * dy));
  }
  return shareOfArc(edge, p);
}

function shareOfArc(arc: ArcEdge, p: Point): number {
  const whole = sweep(arc);
  const ux = arc.a.x - arc.center.x;
  const uy = arc.a.y - arc.center.y;
  const vx = p.x - arc.center.x;
  const vy = p.y - arc.center.y;
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * (arc.ccw ? 1 : -1);
  const angle = withinTurn(turn);
  // Past the end, by rounding or because the place is off the arc: the nearer end.
  if (angle > whole) return angle - whole < 2 * Math.PI - angle ? 1 : 0;
  return angle / whole;
}

function clamped(share: number): number {
  return Math.min(1, Math.max(0, share));
}
