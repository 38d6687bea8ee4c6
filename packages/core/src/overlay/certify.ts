import type { Curves } from '../noding/gather.js';
import { edgeFault } from './certify-edges.js';
import { planeFault } from './certify-plane.js';
import type { Subdivision } from './label.js';

/**
 * What is wrong with a subdivision, in words, or null: then it is proven to be that of the operands with their edges moved by
 * a few tolerances. Every vertex lies on the curves that it is a place of; the boundary of each operand goes round what it
 * went round before; winding numbers agree across each edge; and edges meet in vertices only, with faces as said.
 * @param given the operands as they were laid out for the overlay
 */
export function certify(subdivision: Subdivision, given: Curves): string | null {
  return placeFault(subdivision, given) ?? edgeFault(subdivision, given) ?? planeFault(subdivision);
}

/** A seam may have been brought to the height of the place of touching beside it, by so many tolerances; see `level`. */
const LEVELLED = 2;

/** A place of the operands that is no longer where it was. */
function placeFault({ graph, rotation }: Subdivision, { points: before }: Curves): string | null {
  const { points, tolerance } = graph.curves;
  const most = LEVELLED * tolerance;
  for (let v = 0; v < before.x.length; v++) {
    if ((rotation.anyAt[v] as number) < 0) continue;
    const isThere =
      points.x[v] === before.x[v] && Math.abs((points.y[v] as number) - (before.y[v] as number)) <= most;
    if (!isThere) return 'a place that has been moved';
  }
  return null;
}
