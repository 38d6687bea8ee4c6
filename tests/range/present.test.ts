import { parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* A bore of 10 at x = 40 in a plate of 100 by 60: nothing changes before it comes to an end, at 5 or 95. */

const presentIn = (from: number, to: number) =>
  rangeOf(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [100, 60] }, thickness: 10 },
      limits: { web: 1, knifeEdge: 20 },
      cuts: [{ id: 'a', kind: 'bore', center: [40, 30], diameter: 10 }],
    }),
    { cut: 'a', along: 'x', from, to },
  ).present;

const ALONE = { interval: 0, event: null, below: null, above: null };
const OUTSIDE = { interval: null, event: null, below: null, above: null };

describe('the present value', () => {
  it('is in a range that begins or ends at it', () => {
    expect(presentIn(30, 50)).toEqual(ALONE);
    expect(presentIn(40, 50)).toEqual(ALONE);
    expect(presentIn(30, 40)).toEqual(ALONE);
  });

  it('is outside of one that ends before it, or begins after it', () => {
    expect(presentIn(30, 39.999)).toEqual(OUTSIDE);
    expect(presentIn(40.001, 50)).toEqual(OUTSIDE);
  });

  it('is as far from what comes next as a drawing says, each way', () => {
    // A web of under 1 is left from 6 down and from 94 up; the circle touches an end at 5 and 95.
    const { below, above } = presentIn(3, 96);
    expect(below).toBeCloseTo(40 - 6, 9);
    expect(above).toBeCloseTo(94 - 40, 9);
  });
});
