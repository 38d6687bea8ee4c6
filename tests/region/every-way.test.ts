import { areaOf, everyWay, extentOf, validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { cutsOf, exactCases, outlineOf } from '../tools/exact-cases.js';
import { subtract } from './kernel.js';

/** Points closer than this share of the extent are one to the kernel. */
const WELD = 1e-9;

/** Source of the areas and numbers of pieces: CGAL, Boolean set operations (tests/cases/boolean-exact.jsonl). */
describe('exact cases give the same from every start, mirrored, turned, far away and at any scale', () => {
  it.each(exactCases().map((exact) => [exact.id, exact] as const))('%s', (_, exact) => {
    const outline = outlineOf(exact);
    const cuts = cutsOf(exact);
    const extent = extentOf(outline, ...cuts);
    const stable = exact.expect.topologyStableTo > WELD * extent;
    const whole = exact.expect.outlineArea;
    for (const { name, change, scale } of everyWay(outline, ...cuts)) {
      const left = subtract(change(outline), cuts.map(change));
      validateRegion(left, { extent: extent * scale });
      const off = Math.abs(areaOf(left) / (scale * scale) - exact.expect.remainingArea);
      expect(off, name).toBeLessThanOrEqual((stable ? 1e-9 : 1e-6) * whole);
      if (stable) expect(left.length, name).toBe(exact.expect.pieces.length);
    }
  });
});
