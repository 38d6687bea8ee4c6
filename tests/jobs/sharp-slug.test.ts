import { examine, parseJob } from '@edgebite/core';
import { expect, test } from 'vitest';

/** A bore of 20, then a ring of 30 round a core of 24 whose centre lies so far to the left of the bore's. */
const crescent = (off: number) =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 50] }, thickness: 8 },
      keep: [70, 25],
      limits: { knifeEdge: 30 },
      cuts: [
        { id: 'bore', kind: 'bore', center: [35, 25], diameter: 20 },
        { id: 'ring', kind: 'annular', center: [35 - off, 25], diameter: 30, wall: 3, reach: 20 },
      ],
    }),
  );

const slugOf = (report: ReturnType<typeof examine>) =>
  report.findings.find(({ code }) => code === 'loose-slug')?.message ?? '';

test('a loose slug with a knife edge is told so, and not to be taken up by hand', () => {
  // By hand: circles of 12 and 10 whose centres are 5 apart cross at acos((144 + 100 - 25) / 240) = 24.15 degrees.
  expect(slugOf(crescent(5))).toMatch(
    / It has a knife edge of 24\.1°: take it up with pliers, never with the bare hand\.$/,
  );
});

test('one whose corners are blunter than the limit is not', () => {
  // With centres 8 apart: acos((144 + 100 - 64) / 240) = 41.41 degrees.
  const report = crescent(8);
  expect(slugOf(report)).toMatch(/^Cut ring sets slug-1 free/);
  expect(slugOf(report)).not.toMatch(/knife edge/);
});
