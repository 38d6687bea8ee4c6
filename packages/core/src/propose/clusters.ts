import type { Aim } from '../aim/aim.js';
import type { Patch } from '../feature/features.js';
import { boxesMeet, grown } from '../geometry/bounds.js';
import { gapBetween } from '../geometry/edge-gap.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/**
 * Patches in groups that have nothing to do with each other: between two groups there is metal thicker than any limit
 * everywhere, so what lets go or hangs in one does not depend on what has been cut in the other.
 */
export function clustersOf({ job }: Aim, patches: readonly Patch[]): Patch[][] {
  const limit = Math.max(job.limits.web, job.limits.hold);
  const groups: Patch[][] = [];
  for (const patch of patches) {
    const near = groups.filter((group) => group.some((other) => areNear(patch.region, other.region, limit)));
    for (const group of near) groups.splice(groups.indexOf(group), 1);
    groups.push([...near.flat(), patch]);
  }
  return groups;
}

function areNear(one: Region, other: Region, limit: number): boolean {
  const [a, b] = [boundsOf(one), boundsOf(other)];
  if (a === null || b === null || !boxesMeet(grown(a, limit), b)) return false;
  const others = loopsOf(other).flat();
  return loopsOf(one)
    .flat()
    .some((edge) => others.some((beside) => gapBetween(edge, beside, 0).distance <= limit));
}
