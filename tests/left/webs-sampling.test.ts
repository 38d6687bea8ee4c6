import { type Region, subtract, websOf } from '@edgebite/core';
import { type CutCase, cutRegions, extentOf, families, transformed } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { PLACEMENTS, roundingUnder } from './section-builder.js';
import { thinParts } from './thin-parts.js';
import { checkWebs, isFar, isTooFine } from './web-check.js';

/* Webs against an independent sampler (neck-sampler.ts): each neck that it sees is reported, each reported one is seen. */

/** Limits as shares of the extent: thin metal, and so much that most of the part counts as thin. */
const LIMITS = [0.03, 0.25];

describe('webs are what sampling finds', () => {
  it('in parts made to be thin', () => {
    let sampled = 0;
    fc.assert(
      fc.property(thinParts, (section) => {
        for (const limit of [0.02, 0.1, 0.4])
          sampled += checkWebs(section, limit * extentOf(section)).sampled;
      }),
      { numRuns: runs(150) },
    );
    expect(sampled).toBeGreaterThan(1000);
  });

  it.each(
    families.filter((family) => !isTooFine(family)).map((family) => [family.name, family.cases] as const),
  )('after cuts: %s', (_, cases) => {
    fc.assert(
      fc.property(
        cases.filter((cutCase: CutCase) => !isFar(cutCase.outline)),
        (cutCase) => {
          const section = subtract(cutCase.outline, cutRegions(cutCase));
          // It throws the neck that only one of the two has.
          for (const limit of LIMITS) {
            expect(() => checkWebs(section, limit * extentOf(cutCase.outline))).not.toThrow();
          }
        },
      ),
      { numRuns: runs(10) },
    );
  });

  it('wherever the part lies, in whatever unit', () => {
    fc.assert(
      fc.property(thinParts, fc.constantFrom(...PLACEMENTS), (section, [, by]) => {
        const limit = 0.15 * extentOf(section);
        const slack = 1e-9 * by.scale * extentOf(section) + roundingUnder(by);
        const here = thicknesses(section, limit).map((thickness) => thickness * by.scale);
        const there = thicknesses(transformed(section, by), limit * by.scale);
        const atLimit = (thickness: number) => Math.abs(thickness - limit * by.scale) <= slack;
        const [a, b] = [here.filter((t) => !atLimit(t)), there.filter((t) => !atLimit(t))];
        expect(b).toHaveLength(a.length);
        a.forEach((thickness, k) => {
          expect(Math.abs((b[k] as number) - thickness)).toBeLessThanOrEqual(slack);
        });
      }),
      { numRuns: runs(300) },
    );
  });
});

function thicknesses(section: Region, limit: number): number[] {
  return websOf(section, limit).map(({ thickness }) => thickness);
}
