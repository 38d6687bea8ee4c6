import { parseJob, rangeOf } from '@edgebite/core';
import { expect, it } from 'vitest';

it('a body that hangs, and of which a later cut leaves less than a weld, is none any more', () => {
  // A bore that runs along a slotted plate leaves an end hanging, which the next cut takes but for rounding.
  const job = parseJob({
    edgebite: 1,
    units: 'inch',
    part: { outline: { slot: [65, 27], angle: 90 }, thickness: 0.5 },
    limits: { web: 2.5, knifeEdge: 30 },
    cuts: [
      { id: 'bore', kind: 'bore', center: [-1, 5], diameter: 60, depth: 0.5 },
      {
        id: 'groove',
        kind: 'swept',
        diameter: 9,
        depth: 0.5,
        path: { edges: [{ kind: 'line', a: [-1, -9], b: [0, 65] }] },
      },
    ],
  });
  const { intervals } = rangeOf(job, { cut: 'bore', along: 'x', from: -30, to: 30 });
  expect(intervals.length).toBeGreaterThan(1);
  // Both rims of the plate are as far from its middle, so what is safe is as far to both sides of it.
  const [safe] = intervals.filter((one) => one.safe);
  expect((safe?.from ?? 0) + (safe?.to ?? 1)).toBeCloseTo(0, 6);
});
