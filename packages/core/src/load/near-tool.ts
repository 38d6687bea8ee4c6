import { boxAround, boxesMeet } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import { loopBounds } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';

/**
 * The metal near a place: the same within a distance of it, without the parts and holes that lie further away. An
 * overlay of it costs no more than what is near.
 */
export function metalNear(metal: Region, center: Point, reach: number): Region {
  const box = boxAround(center, reach);
  const isNear = (loop: Loop): boolean => boxesMeet(loopBounds(loop), box);
  return metal.flatMap((part) => {
    if (!isNear(part.outer)) return [];
    const holes = part.holes.filter(isNear);
    return [holes.length === part.holes.length ? part : { outer: part.outer, holes }];
  });
}
