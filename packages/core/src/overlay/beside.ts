import { ROW } from '../geometry/curves.js';
import { awayFrom } from '../noding/same-crossing.js';
import type { Subdivision } from './label.js';
import { endOf, startOf } from './rotate.js';

/**
 * Whether a circle and what is next to it at a seam of the circle run beside each other all the way, from one vertex to
 * another with nothing between them. Each has a seam of its own there, so that no edge of the one has both ends of one of
 * the other.
 */
export function runsBeside(subdivision: Subdivision, seam: number, neighbour: number): boolean {
  const { graph, rotation } = subdivision;
  const one = rotation.anyAt[seam] as number;
  const a = endOfChain(subdivision, one);
  const b = endOfChain(subdivision, rotation.ccw[one] as number);
  const c = endOfChain(subdivision, 2 * neighbour);
  const d = endOfChain(subdivision, 2 * neighbour + 1);
  if (a === b || !((a === c && b === d) || (a === d && b === c))) return false;
  const { curves, start, member } = graph;
  const piece = member[start[one >> 1] as number] as number;
  const { rows, points, tolerance } = curves;
  const o = piece * ROW;
  if (rows[o + 7] === 0) return false;
  // Furthest apart they are half way from the one end to the other: square to the chord, on the side that the seam is on.
  const dx = (points.x[b] as number) - (points.x[a] as number);
  const dy = (points.y[b] as number) - (points.y[a] as number);
  const across =
    dx * ((points.y[seam] as number) - (points.y[a] as number)) -
    dy * ((points.x[seam] as number) - (points.x[a] as number));
  const out = ((across > 0 ? 1 : -1) * (rows[o + 6] as number)) / Math.hypot(dx, dy);
  const x = (rows[o + 4] as number) - out * dy;
  const y = (rows[o + 5] as number) + out * dx;
  return awayFrom(rows, member[start[neighbour] as number] as number, x, y) <= tolerance;
}

/** The vertex that the way along a half-edge comes to that is no mere seam, or where it has begun. */
function endOfChain({ graph, rotation }: Subdivision, along: number): number {
  const { isSeam } = graph.curves.points;
  const first = startOf(graph, along);
  let half = along;
  for (;;) {
    const v = endOf(graph, half);
    const back = half ^ 1;
    const next = rotation.ccw[back] as number;
    if (v === first || isSeam[v] !== true || next === back || rotation.ccw[next] !== back) return v;
    half = next;
  }
}
