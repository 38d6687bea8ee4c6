/*
 * Room: the second half of an overlay: the faces into which the curves divide the plane.
 * In: split curves.
 * Out: a subdivision with a winding number for each operand and face, certified; regions collected from its faces.
 */

import type { Bounds } from '../geometry/bounds.js';
import { type Curves, gather, type Operand } from '../noding/gather.js';
import { type Noding, node } from '../noding/node.js';
import { OverlayError } from '../noding/overlay-error.js';
import { settle } from '../noding/settle.js';
import { certify } from './certify.js';
import { type Subdivision, subdivide } from './label.js';
import { merge } from './merge.js';

/**
 * Cuts the plane along all loops of all operands. What is returned is proven, see `certify`: it is the exact answer for
 * operands whose edges have been moved by a few tolerances.
 *
 * Most work is done at once. Where that is not proven, because what is nearly coincident has been moved into what was next
 * to it, pieces are cut until they rest.
 * @param frame box that says how large the work is; that of all operands unless given
 */
export function arrange(operands: readonly Operand[], frame?: Bounds): Subdivision {
  const given = gather(operands, frame);
  const quick = proven(node(withOwnPoints(given)), given);
  if (typeof quick !== 'string') return quick;
  const settled = settle(given);
  const sure = settled === null ? 'pieces that do not come to rest' : proven(settled, given);
  if (typeof sure !== 'string') return sure;
  throw new OverlayError(
    `arrange: ${given.count} edges could not be put in order with a tolerance of ${given.tolerance} (${sure}); ` +
      'this is a fault of the library, please report it with the input',
  );
}

/** The subdivision along pieces, or why it is none. */
function proven(noding: Noding, given: Curves): Subdivision | string {
  const subdivision = subdivide(merge(noding));
  if (subdivision === null) return 'an order that no plane has';
  return certify(subdivision, given) ?? subdivision;
}

/** The same curves; points that an attempt adds are its own. */
function withOwnPoints(curves: Curves): Curves {
  const { x, y, given, isSeam } = curves.points;
  const points = { x: x.slice(), y: y.slice(), given: given.slice(), isSeam: isSeam.slice() };
  return { ...curves, points };
}
