import { coverageOf } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { dice } from './counting.js';

describe('the interval of a sum of evenly spread values', () => {
  it('is that of the distribution, where that is known', () => {
    // One value: a share of its width. Two like ones: a triangle, 2 (1 - sqrt(0.05)).
    expect(coverageOf([3], 0.95)).toBeCloseTo(2.85, 9);
    expect(coverageOf([1, 1], 0.95)).toBeCloseTo(2 * (1 - Math.sqrt(0.05)), 5);
    // Three: (3 - x)³ / 24 = 0.05 beyond x on both sides together (Irwin and Hall, from memory).
    expect(coverageOf([1, 1, 1], 0.95)).toBeCloseTo(3 - Math.cbrt(1.2), 5);
  });

  it('is that of the worked examples of JCGM 101', () => {
    // JCGM 101:2008, 9.2.3.2: four values of standard deviation 1, 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.88; from memory.
    const one = Math.sqrt(3);
    const sum = coverageOf([one, one, one, one], 0.95);
    expect(sum).toBeCloseTo(2 * Math.sqrt(3) * (2 - 0.6 ** 0.25), 4);
    expect(sum).toBeCloseTo(3.88, 2);
    // 9.2.4, table 3: three of 1 and one of 10, printed as 17.0; from memory.
    expect(coverageOf([one, one, one, 10 * one], 0.95)).toBeCloseTo(17, 1);
  });

  it('holds as many of drawn sums as it says, whatever the widths', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 7 }),
        fc.integer({ min: 1, max: 1e6 }),
        (some, seed) => {
          const widths = [1, ...some];
          const half = coverageOf(widths, 0.95);
          const roll = dice(seed);
          const draws = 20_000;
          let held = 0;
          for (let k = 0; k < draws; k++) {
            const sum = widths.reduce((all, width) => all + width * (2 * roll() - 1), 0);
            if (Math.abs(sum) <= half) held += 1;
          }
          // Six standard deviations of 20,000 draws are 0.9 of 100.
          expect(Math.abs(held / draws - 0.95)).toBeLessThan(0.01);
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('does not mind nothing, and widths too small to show', () => {
    expect(coverageOf([], 0.95)).toBe(0);
    expect(coverageOf([0, 0], 0.95)).toBe(0);
    expect(coverageOf([1, 1e-12, 0], 0.95)).toBeCloseTo(0.95, 9);
  });
});
