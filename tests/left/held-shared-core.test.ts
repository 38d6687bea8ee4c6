import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * Two rings that cross, both too shallow: what stands in both cores is a slug of the smaller one. Which is smaller is a
 * matter of their size, not of what else is drawn in them.
 */

const small = { id: 'small', kind: 'annular', center: [40, 30], diameter: 24, wall: 2, depth: 9 };
const large = { id: 'large', kind: 'annular', center: [52, 30], diameter: 26, wall: 2, depth: 9 };

/** Circles of radius 10 and 11, 12 apart: by the law of cosines and two segments (closed form of the lens). */
const LENS = (() => {
  const [r, s, d] = [10, 11, 12];
  const a = Math.acos((d * d + r * r - s * s) / (2 * d * r));
  const b = Math.acos((d * d + s * s - r * r) / (2 * d * s));
  return r * r * (a - Math.sin(2 * a) / 2) + s * s * (b - Math.sin(2 * b) / 2);
})();

function freedBy(cuts: readonly unknown[]): (string | null)[] {
  const part = { outline: { rectangle: [100, 60] }, thickness: 12 };
  const { pieces } = examine(parseJob({ edgebite: 1, units: 'mm', part, keep: [5, 5], cuts }));
  return pieces
    .filter(({ role, area }) => role === 'held slug' && Math.abs(area - LENS) < 8)
    .map((p) => p.freedBy);
}

/** Shallow dimples in the part of a core that the other one does not reach: they make more faces of it. */
const dimples = (x: number) =>
  [24, 30, 36].map((y, k) => ({ id: `dimple-${k}`, kind: 'bore', center: [x, y], diameter: 2, depth: 1 }));

describe('a slug in two cores', () => {
  it.each([
    ['alone', []],
    ['with dimples in the small core', dimples(34)],
    ['with dimples in the large core', dimples(59)],
  ])('is of the smaller one, %s', (_, more) => {
    expect(freedBy([small, large, ...more])).toEqual(['small']);
    expect(freedBy([...more, large, small])).toEqual(['small']);
  });
});
