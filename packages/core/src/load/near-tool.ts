import { type Bounds, boxesMeet, middleOf } from '../geometry/bounds.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';

/**
 * The metal near a place: the same within a distance of it, without the parts and holes that lie further away. An
 * overlay of it costs no more than what is near.
 */
export function metalNear(metal: Region, center: Point, reach: number): Region {
  return metal.flatMap((part) => {
    if (!mayBeNear(part.outer, center, reach)) return [];
    const holes = part.holes.filter((hole) => mayBeNear(hole, center, reach));
    return [holes.length === part.holes.length ? part : { outer: part.outer, holes }];
  });
}

/** What fills a box: nothing but metal, or none; null where an edge comes near it. */
export function plainIn(metal: Region, box: Bounds): 'metal' | 'air' | null {
  if (loopsOf(metal).some((loop) => loop.some((edge) => boxesMeet(edgeBounds(edge), box)))) return null;
  return contains(metal, middleOf(box)) === 'outside' ? 'air' : 'metal';
}

/** Whether the box round a loop, with whole circles for arcs, comes within a distance of a place along both axes. */
function mayBeNear(loop: Loop, { x, y }: Point, reach: number): boolean {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const edge of loop) {
    const isArc = edge.kind === 'arc';
    const by = isArc ? edge.radius : 0;
    const { x: ax, y: ay } = isArc ? edge.center : edge.a;
    minX = Math.min(minX, ax - by);
    minY = Math.min(minY, ay - by);
    maxX = Math.max(maxX, ax + by);
    maxY = Math.max(maxY, ay + by);
  }
  return minX <= x + reach && maxX >= x - reach && minY <= y + reach && maxY >= y - reach;
}
