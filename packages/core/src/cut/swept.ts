import { offsetPath } from '../combine/offset.js';
import type { Edge } from '../geometry/edge.js';
import { renamed } from '../geometry/parts.js';
import type { Region } from '../region/region.js';

/**
 * All places within `radius` of a path: what a round tool cuts whose centre is driven along it. Exact, of lines
 * and arcs: the Minkowski sum of path and disc. The path may close and may cross itself; it need not be connected.
 * @throws RangeError if the path is empty or the radius is not a finite number over 0.
 */
export function sweptRegion(path: readonly Edge[], radius: number, source?: string): Region {
  if (path.length === 0) throw new RangeError('sweptRegion: the path has no edges');
  if (!(radius > 0) || !Number.isFinite(radius)) {
    throw new RangeError(`sweptRegion: radius is ${radius}; it must be a finite number over 0`);
  }
  return offsetPath(source === undefined ? path : path.map((edge) => renamed(edge, source)), radius);
}
