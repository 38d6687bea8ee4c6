import { validateRegion } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenFamilies, WAYS, wrongIn } from '../tools/flatten-families.js';
import { longRun, runs } from '../tools/runs.js';

/** Cases a family here; the long run takes 1,000. */
const CASES = 200;

/** Reference: closed forms; for the grids the slab method (tests/tools/slabs.ts). */
describe('right where @flatten-js/core 1.6.15 was measured wrong', () => {
  it.each(flattenFamilies.map((family) => [family.name, family] as const))('%s', (name, { cases }) => {
    const property = fc.property(cases, (flattenCase) => {
      expect(wrongIn(flattenCase)).toBeNull();
      for (const way of WAYS) validateRegion(flattenCase.run(way), { extent: flattenCase.extent });
    });
    fc.assert(property, { ...(longRun() ? {} : { seed: name.length }), numRuns: runs(CASES) });
  });
});
