import { extentOf } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOf } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';

/** The circle of a tool where it stands. */
export interface ToolCircle {
  readonly center: Point;
  readonly radius: number;
}

/** What a tool covers. */
export function discOf({ center, radius }: ToolCircle): Region {
  return disc(center, radius);
}

/** An area that rounding may leave along a tool's circle: the weld tolerance all round it. */
export function nothingOf(metal: Region, { center, radius }: ToolCircle): number {
  const box = boundsOf(metal);
  const extent = box === null ? radius : extentOf(box);
  const magnitude = Math.max(extent, Math.abs(center.x) / 100, Math.abs(center.y) / 100);
  return 2 * Math.PI * radius * weldTolerance(extent, magnitude);
}
