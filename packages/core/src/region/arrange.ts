import type { Bounds } from '../geometry/bounds.js';
import { type Curves, gather, type Operand } from './gather.js';
import { type Subdivision, subdivide } from './label.js';
import { merge } from './merge.js';
import { node } from './node.js';

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
    `arrange: ${curves.count} edges could not be put in order with a tolerance of ${curves.tolerance} to ${tolerance / 10}; ` +
      'this is a fault of the library, please report it with the input',
  );
}

/** The same curves, without the points that an earlier attempt has added. */
function fresh(curves: Curves, tolerance: number): Curves {
  const { x, y, given, isSeam } = curves.points;
  const points = { x: x.slice(), y: y.slice(), given: given.slice(), isSeam: isSeam.slice() };
  return { ...curves, points, tolerance };
}
