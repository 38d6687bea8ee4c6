import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { depthsText } from './words.js';

/** A plate 12 thick in three slabs: from the bottom up 0 to 3, 3 to 7 and 7 to 12, by a bore from below and one from above. */
const report = examine(
  parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 30] }, thickness: 12 },
    cuts: [
      { id: 'over', kind: 'bore', center: [20, 15], diameter: 10, depth: 5 },
      { id: 'under', kind: 'bore', center: [60, 15], diameter: 10, depth: 3, from: 'bottom' },
    ],
  }),
);

describe('depths of slabs', () => {
  // By hand, counted from the top face down: the uppermost slab is 5 deep, the lowest starts 9 deep.
  it.each([
    [[2], '0 to 5.000'],
    [[1], '5.000 to 9.000'],
    [[0], '9.000 to 12.000'],
    [[1, 2], '0 to 9.000'],
    [[0, 2], '0 to 5.000, 9.000 to 12.000'],
    [[0, 1, 2], 'all'],
  ] as const)('%o are %s', (slabs, text) => {
    expect(report.slabs.map(({ from, to }) => [from, to])).toEqual([
      [0, 3],
      [3, 7],
      [7, 12],
    ]);
    expect(depthsText(report, slabs)).toBe(text);
  });
});
