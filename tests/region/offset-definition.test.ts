import { offset } from '@edgebite/core';
import { extentOf, outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetCases } from '../tools/offset-cases.js';
import { checkOffset } from '../tools/offset-check.js';
import { runs } from '../tools/runs.js';

/** The definition: all places within the distance, or all that are as far away from what is outside. */
describe('offset is what its definition says', () => {
  it('on outlines, the boundary where it belongs to 1e-9 of the size', () => {
    const holds = fc.property(outlines, fc.integer({ min: -300, max: 400 }), (region, thousandths) => {
      const distance = (thousandths / 1000) * extentOf(region);
      const { off } = checkOffset({ region, distance }, offset(region, distance));
      expect(off).toBeLessThanOrEqual(1e-9);
    });
    fc.assert(holds, { numRuns: runs(300) });
  });

  it('on cut outlines and heaps of shapes, at distances at which something just happens', () => {
    let probes = 0;
    const holds = fc.property(offsetCases, (one) => {
      probes += checkOffset(one, offset(one.region, one.distance)).probes;
    });
    fc.assert(holds, { numRuns: runs(500) });
    expect(probes).toBeGreaterThan(runs(500) * 20);
  });

  it('on its own results', () => {
    let probes = 0;
    const holds = fc.property(offsetCases, offsetCases, (first, { distance }) => {
      const region = offset(first.region, first.distance);
      if (region.length === 0) return;
      for (const again of [distance, -first.distance, first.distance]) {
        probes += checkOffset({ region, distance: again }, offset(region, again)).probes;
      }
    });
    fc.assert(holds, { numRuns: runs(100) });
    expect(probes).toBeGreaterThan(runs(100) * 20);
  });
});
