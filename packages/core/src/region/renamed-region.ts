import type { Source } from '../geometry/edge.js';
import { renamed } from '../geometry/parts.js';
import type { Loop, Region } from './region.js';

/** A region all of whose edges have one name. */
export function renamedRegion(region: Region, source: Source): Region {
  const loop = (edges: Loop): Loop => edges.map((edge) => renamed(edge, source));
  return region.map(({ outer, holes }) => ({ outer: loop(outer), holes: holes.map(loop) }));
}
