import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { type Edge, lineEdge, type Source } from '../geometry/edge.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A region in two. */
export interface SplitRegion {
  /** What lies to the left of the line, as seen from its first place to its second. */
  readonly left: Region;
  readonly right: Region;
}

/** How far past the region the side reaches, as a share of half its diagonal; a larger one would coarsen the tolerance. */
const PAST = 1.1;

/**
 * A region split by the straight line through two places. Edges keep their names; those along the line have the one given.
 * @param source name of the new edges; none unless given
 * @throws RangeError if the places coincide.
 */
export function splitByLine(region: Region, a: Point, b: Point, source?: Source): SplitRegion {
  if (samePoint(a, b))
    throw new RangeError(`splitByLine: both places are (${a.x}, ${a.y}); a line needs two`);
  const box = boundsOf(region);
  if (box === null) return { left: [], right: [] };
  const length = distance(a, b);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const half = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const along = ux * (middle.x - a.x) + uy * (middle.y - a.y);
  const off = ux * (middle.y - a.y) - uy * (middle.x - a.x);
  if (off > half) return { left: region, right: [] };
  if (off < -half) return { left: [], right: region };
  const at = (s: number, t: number): Point => ({ x: a.x + s * ux - t * uy, y: a.y + s * uy + t * ux });
  const [left, right, top] = [along - PAST * half, along + PAST * half, 2 * PAST * half];
  const corners = [at(left, 0), at(right, 0), at(right, top), at(left, top)];
  const outer = corners.map((p, k): Edge => {
    const q = corners[(k + 1) % 4] as Point;
    return lineEdge(p, q, k === 0 ? source : undefined);
  });
  const side: Region = [{ outer, holes: [] }];
  return { left: intersect([region, side]), right: subtract(region, [side]) };
}
