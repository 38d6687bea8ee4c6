import { area, boundsOf, disc, extentOf, pointAlong, ring, splitByLine } from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaBeyond } from '../../packages/core/src/region/beyond.js';
import { runs } from '../tools/runs.js';

const origin = { x: 0, y: 0 };

describe('what of a disc lies beyond a line', () => {
  /** r^2 acos((r - h) / r) - (r - h) sqrt(2 r h - h^2) (Machinery's Handbook 31, p. 83), with 60 digits by mpmath. */
  it.each([
    [0.01, 0.001882787125734963],
    [0.5, 0.6141848493043784],
    [1, 1.5707963267948966],
    [1.99, 3.139709866464058],
  ])('of height %f at radius 1, whichever way it lies', (h, exact) => {
    for (const degrees of [0, 30, 90, 135, 180, 200, 270, 359]) {
      const angle = (degrees * Math.PI) / 180;
      const axis = { dx: Math.cos(angle), dy: Math.sin(angle) };
      expect(areaBeyond(disc(origin, 1), axis, 1 - h)).toBeCloseTo(exact, 13);
      const away = { x: 7 * axis.dx - 3 * axis.dy, y: 7 * axis.dy + 3 * axis.dx };
      expect(areaBeyond(disc(away, 1), axis, 8 - h)).toBeCloseTo(exact, 12);
    }
  });

  it('all of it, none of it, and half of a ring', () => {
    const axis = { dx: 1, dy: 0 };
    expect(areaBeyond(disc(origin, 2), axis, -2)).toBeCloseTo(4 * Math.PI, 12);
    expect(areaBeyond(disc(origin, 2), axis, 2)).toBe(0);
    expect(areaBeyond(ring(origin, 3, 2), axis, 0)).toBeCloseTo((9 - 4) * (Math.PI / 2), 12);
    expect(areaBeyond([], axis, 0)).toBe(0);
  });
});

it('is what an overlay with a half plane says of it, in any direction', () => {
  fc.assert(
    fc.property(
      outlines,
      fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (region, angle, share) => {
        const axis = { dx: Math.cos(angle), dy: Math.sin(angle) };
        const [first] = region;
        const box = boundsOf(region);
        if (first === undefined || box === null) return;
        const edge = first.outer[Math.floor(share * first.outer.length) % first.outer.length];
        const through = edge === undefined ? origin : pointAlong(edge, share);
        const at = through.x * axis.dx + through.y * axis.dy;
        const along = { x: through.x - axis.dy, y: through.y + axis.dx };
        const { right } = splitByLine(region, through, along);
        const slack = 1e-9 * extentOf(box) ** 2;
        expect(Math.abs(areaBeyond(region, axis, at) - area(right))).toBeLessThanOrEqual(slack);
      },
    ),
    { numRuns: runs(200) },
  );
});
