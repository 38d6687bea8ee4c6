import type { KeepOut } from '../datum/keep-out.js';
import { gapBetweenRegions } from '../figure/between.js';
import { boxesMeet, grown } from '../geometry/bounds.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** Whether a gripping thing bears on a section: it lies over or under it, or against its edge, to within a slack over 0. */
export function bears({ region }: KeepOut, section: Region, slack: number): boolean {
  return comesWithin(region, section, slack);
}

/** Whether two regions overlap, or come closer to each other than by so much, over 0. */
export function comesWithin(one: Region, other: Region, by: number): boolean {
  const [p, q] = [boundsOf(one), boundsOf(other)];
  if (p === null || q === null || !boxesMeet(grown(p, by), q)) return false;
  const gap = gapBetweenRegions(one, other);
  return gap !== null && gap.distance < by;
}
