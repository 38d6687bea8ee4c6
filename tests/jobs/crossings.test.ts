import { JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** A plate with bores; each is a place and a diameter. */
const plateWith = (bores: readonly (readonly [number, number, number])[]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [400, 400] }, thickness: 10 },
  cuts: bores.map(([x, y, diameter], k) => ({ id: `c${k}`, kind: 'bore', center: [x, y], diameter })),
});

const times = <T>(count: number, make: (k: number) => T): T[] =>
  Array.from({ length: count }, (_, k) => make(k));

describe('cuts on top of each other', () => {
  // n circles that all cross make n (n - 1) / 2 pairs: 141 make 9,870 and 142 make 10,011.
  const heap = (count: number) => plateWith(times(count, (k) => [100 + k / 50, 100 + (k % 7) / 50, 60]));

  it('are taken up to ten thousand crossing pairs', () => {
    expect(parseJob(heap(141)).cuts).toHaveLength(141);
  });

  it('are refused beyond', () => {
    expect(() => parseJob(heap(142))).toThrow(JobError);
    expect(() => parseJob(heap(142))).toThrow(
      /\/cuts: more than 10000 pairs of circles cross each other; .* leave out/,
    );
  });

  it('do not count where they are the same, one in another, or apart', () => {
    expect(parseJob(plateWith(times(300, () => [100, 100, 60]))).cuts).toHaveLength(300);
    expect(parseJob(plateWith(times(300, (k) => [200, 200, 20 + k]))).cuts).toHaveLength(300);
    expect(
      parseJob(plateWith(times(900, (k) => [10 + 12 * (k % 30), 10 + 12 * Math.floor(k / 30), 8]))).cuts,
    ).toHaveLength(900);
  });
});
