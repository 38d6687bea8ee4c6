import { type Bounds, extentOf, middleOf } from '../geometry/bounds.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/**
 * So many weld tolerances two curves can be off each other and still be meant for one: an offset may move a joint by
 * one, so does the overlay that its result is put through, and both ends of an edge count.
 */
export const SLACK_IN_WELDS = 4;

/** The distance up to which two places are one, in work that reaches this far beyond a box. */
export function slackIn(box: Bounds, reach: number): number {
  const middle = middleOf(box);
  const extent = extentOf(box) + 2 * reach;
  const far = Math.max(Math.abs(middle.x), Math.abs(middle.y)) / 100;
  return SLACK_IN_WELDS * weldTolerance(extent, Math.max(extent, far));
}

/** The same for work that reaches this far beyond a region; what counts as nothing in an empty one is its reach's. */
export function slackFor(region: Region, reach: number): number {
  return slackIn(boundsOf(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }, reach);
}
