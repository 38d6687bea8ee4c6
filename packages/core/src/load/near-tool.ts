import type { Point } from '../geometry/point.js';
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
