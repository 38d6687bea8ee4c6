import type { ArcEdge } from '../geometry/edge.js';
import type { Loop } from './region.js';

/** An arc of the circle that a loop of two arcs is; null for all others. */
export function circleOf(loop: Loop): ArcEdge | null {
  const [one, other] = loop;
  if (loop.length !== 2 || one?.kind !== 'arc' || other?.kind !== 'arc') return null;
  return one.center === other.center && one.radius === other.radius && one.ccw === other.ccw ? one : null;
}
