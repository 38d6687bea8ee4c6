import { nearestOnEdge } from '../geometry/distance.js';
import { pointOf } from '../job/read-edges.js';
import type { Left } from '../left/left.js';
import { loopsOf } from '../region/measure.js';
import type { NearWeb } from './near-limits.js';

/**
 * Whether a part of a piece hangs by a web alone: both its ends are on one loop of the boundary, so that a cut across it parts
 * the piece, in all slabs in which the piece stands.
 * @param slabs those that the web goes through
 */
export function partsPiece(left: Left, web: NearWeb, slabs: readonly number[], near: number): boolean {
  const piece = left.pieces.pieces.find(({ id }) => id === web.piece);
  if (piece === undefined) return false;
  const ends = web.ends.map(pointOf);
  const through = new Set(slabs);
  return piece.sections.every(({ from, to, region }) => {
    const own = left.cells.slabs.flatMap((slab, k) => (slab.from >= from && slab.to <= to ? [k] : []));
    if (!own.every((k) => through.has(k))) return false;
    const [a, b] = ends.map((end) =>
      loopsOf(region).findIndex((loop) => loop.some((edge) => nearestOnEdge(edge, end).distance <= near)),
    );
    return a === b && a !== -1;
  });
}
