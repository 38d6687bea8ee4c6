import { disc, openOut, type PassOptions, subtract } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { HALF, obeysLaws, P } from './plan-laws.js';

/** How far a pass is from the nearest whole number of graduations short of the last. */
const offMark = (radius: number, last: number, mark: number) => {
  const count = (last - radius) / mark;
  return Math.abs(count - Math.round(count));
};

describe('passes of a head with a dial', () => {
  it('fall on its marks, and bite no deeper for it', () => {
    // By hand: the metal begins 5 from the centre, 12 to go; the allowance of 0.5 is 0.6 on the marks. Of 11.4 in steps of
    // 2 at most an even share is 1.9, which leaves 10.1: the mark before it is 10.2, and so on.
    const plan = openOut({ metal: HALF, center: P(0, 5), radius: 17, bite: 2, finish: 0.5, mark: 0.3 });
    expect(plan.passes.map(({ radius }) => Number(radius.toFixed(9)))).toEqual([
      6.8, 8.6, 10.4, 12.2, 13.4, 14.9, 16.4, 17,
    ]);
  });

  it('do so wherever the metal begins, and obey the laws of all passes', () => {
    fc.assert(
      fc.property(
        evenly(-6, 6),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (y, bite, finish, mark, rough) => {
          const metal = rough > 1 ? subtract(HALF, [disc(P(0, y), rough)]) : HALF;
          const own = mark * bite;
          const asked: PassOptions = { metal, center: P(0, y), radius: 17, bite, finish: finish * bite };
          const plan = openOut({ ...asked, mark: own });
          for (const { radius, bite: deep } of plan.passes) {
            expect(offMark(radius, 17, own)).toBeLessThan(1e-6);
            expect(deep?.size ?? 0).toBeLessThanOrEqual(bite * (1 + 1e-9));
          }
          expect(plan.passes.at(-1)?.radius).toBe(17);
          obeysLaws(asked, plan);
        },
      ),
      { numRuns: runs(60) },
    );
  });

  it('are refused where one graduation is over the bite, or none', () => {
    const asked = { metal: HALF, center: P(0, 5), radius: 17, bite: 0.1 };
    expect(() => openOut({ ...asked, mark: 0.2 })).toThrow(
      'openOut: a graduation changes the radius by 0.2, over the bite, 0.1; allow a bite of 0.2 at least',
    );
    expect(() => openOut({ ...asked, mark: 0 })).toThrow('mark is 0; it must be a finite number over 0');
  });
});
