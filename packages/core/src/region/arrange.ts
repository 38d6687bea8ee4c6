import type { Bounds } from '../geometry/bounds.js';
import { type Curves, gather, type Operand } from './gather.js';
import { type Subdivision, subdivide } from './label.js';
import { merge } from './merge.js';
import { node } from './node.js';
import { isChain } from './rotate.js';

/** How often the tolerance may be raised before an overlay is given up. */
const ATTEMPTS = 6;

/** Thrown when an overlay cannot be built; it means a fault of the library, and says so. */
export class OverlayError extends Error {
  override readonly name = 'OverlayError';
}

/**
 * Cuts the plane along all loops of all operands.
 *
 * Where nearly coincident input has been rounded into an order that no plane can have, the overlay is done once
 * more with a tolerance ten times as large, which welds what was in doubt.
 * @param frame box that says how large the work is; that of all operands unless given
 */
export function arrange(operands: readonly Operand[], frame?: Bounds): Subdivision {
  const curves = gather(operands, frame);
  let tolerance = curves.tolerance;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const subdivision = subdivide(merge(node(fresh(curves, tolerance))));
    if (subdivision !== null) return subdivision;
    tolerance *= 10;
  }
  throw new OverlayError(
    `arrange: ${curves.count} edges in an extent of ${curves.tolerance} tolerances could not be put in order; ` +
      'this is a fault of the library, please report it with the input',
  );
}

/**
 * As `arrange`, for operands with runs of edges put away that lie beyond everything else. Takes one attempt, and only
 * where the runs need not be known: all hangs together, and nothing but its own loop meets the ends of a run.
 * @param isOuter whether what lies to the right of the runs is the unbounded face, not what lies to their left
 * @returns null where that is not so
 */
export function arrangeSparse(
  operands: readonly Operand[],
  frame: Bounds,
  isOuter: boolean,
): Subdivision | null {
  const graph = merge(node(gather(operands, frame)));
  const degree = new Int32Array(graph.curves.points.x.length);
  const isPutAway: number[] = [];
  let outside = -1;
  for (let e = 0; e < graph.count; e++) {
    const a = graph.from[e] as number;
    const b = graph.to[e] as number;
    degree[a] = (degree[a] as number) + 1;
    degree[b] = (degree[b] as number) + 1;
    if (!isChain(graph, 2 * e)) continue;
    isPutAway.push(a, b);
    outside = isOuter ? 2 * e + 1 : 2 * e;
  }
  for (const v of isPutAway) if (degree[v] !== 2) return null;
  return subdivide(graph, outside);
}

/** The same curves, without the points that an earlier attempt has added. */
function fresh(curves: Curves, tolerance: number): Curves {
  const { x, y, given, isSeam } = curves.points;
  const points = { x: x.slice(), y: y.slice(), given: given.slice(), isSeam: isSeam.slice() };
  return { ...curves, points, tolerance };
}
