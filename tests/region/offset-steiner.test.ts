import { area, disc, type Edge, lineEdge, type Point, perimeter, type Region } from '@edgebite/core';
import {
  capsule,
  difference,
  edgesOf,
  metalAngles,
  rectangles,
  roundedRectangles,
  slots,
} from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

import { bowed, grown, near, O, P, partsAndHoles, polygon, square, triangle345 } from './offset-helpers.js';

/** Corners on a circle of radius 50, each edge straight or an arc of at least that radius: convex. */
const convexOutlines: fc.Arbitrary<Region> = fc
  .uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 3, maxLength: 12 })
  .filter((degrees) => widestGap(degrees) < 175)
  .chain((degrees) =>
    fc.tuple(
      fc.constant(degrees.sort((a, b) => a - b)),
      fc.array(fc.constantFrom(0, 1.25, 2, 5), { minLength: degrees.length, maxLength: degrees.length }),
    ),
  )
  .map(([degrees, bows]) => {
    const corners = degrees.map((one) => onCircle(50, one));
    const outer = corners.map((a, k): Edge => {
      const b = corners[(k + 1) % corners.length] as Point;
      const bow = bows[k] as number;
      return bow === 0 ? lineEdge(a, b) : bowed(a, b, 50 * bow);
    });
    return [{ outer, holes: [] }];
  });

function widestGap(degrees: readonly number[]): number {
  const sorted = [...degrees].sort((a, b) => a - b);
  return Math.max(...sorted.map((one, k) => ((sorted[(k + 1) % sorted.length] as number) - one + 360) % 360));
}

function onCircle(radius: number, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return P(radius * Math.cos(angle), radius * Math.sin(angle));
}

/** Minkowski-Steiner formula: A + P d + pi d^2, and P + 2 pi d, for what is convex (Wikipedia; Dr. Math 62289). */
describe('a convex outline grows by Steiner’s formula', () => {
  it.each<[string, Region, number, number, number]>([
    ['square 100, d 10', square, 10, 14314.15926535898, 462.8318530717959],
    ['triangle 3-4-5, d 1', triangle345, 1, 21.141592653589793, 18.283185307179586],
    ['disc R 20, d 5', disc(O, 20), 5, 1963.4954084936207, 157.07963267948966],
  ])('%s', (_, region, distance, size, length) => {
    near(area(grown(region, distance)), size, 1e-12);
    near(perimeter(grown(region, distance)), length, 1e-12);
  });

  it('to 1e-12, whatever the outline and the distance', () => {
    const outline = fc.oneof(convexOutlines, rectangles, roundedRectangles, slots);
    const law = fc.property(outline, fc.integer({ min: -30, max: 30 }), (region, tenths) => {
      const distance = 50 * 10 ** (tenths / 10);
      const result = grown(region, distance);
      near(area(result), area(region) + perimeter(region) * distance + Math.PI * distance ** 2, 1e-12);
      near(perimeter(result), perimeter(region) + 2 * Math.PI * distance, 1e-12);
      expect(partsAndHoles(result)).toEqual([1, 0]);
    });
    fc.assert(law, { numRuns: runs(300) });
  });

  it('keeps lines lines and arcs arcs, and puts an arc at each corner', () => {
    const kinds = (region: Region) => edgesOf(region).map(({ kind }) => kind);
    expect(kinds(grown(square, 10)).sort()).toEqual([...Array(4).fill('arc'), ...Array(4).fill('line')]);
    expect(kinds(grown(capsule(O, P(50, 0), 10), 3)).sort()).toEqual(['arc', 'arc', 'line', 'line']);
    expect(kinds(grown(disc(O, 20), 5))).toEqual(['arc', 'arc']);
    expect(kinds(grown(square, -10))).toEqual(Array(4).fill('line'));
  });
});

/** Opening: what a disc can cover from inside (spatstat manual, after Serra 1982). */
describe('inward and out again is the opening', () => {
  it.each<[string, Region, number, number, number]>([
    // a^2 - (4 - pi) r^2, derived.
    ['square 100, r 10', square, 10, 9914.15926535898, 382.8318530717959],
    // The shrunk triangle is the same at half the scale, as the in-radius is 1 (planetmath, Incircle); derived.
    ['triangle 3-4-5, r 0.5', triangle345, 0.5, 5.285398163397448, 6 + Math.PI],
  ])('%s', (_, region, r, size, length) => {
    near(area(grown(grown(region, -r), r)), size, 1e-12);
    near(perimeter(grown(grown(region, -r), r)), length, 1e-12);
  });

  // Left behind in a corner of interior angle a: r^2 (cot(a/2) - (pi - a)/2), derived.
  it.each([
    [60, 0.6848532564],
    [90, 0.2146018366],
    [120, 0.0537514936],
  ])('leaves what it should behind in a corner of %d degrees', (degrees, left) => {
    const far = onCircle(80, degrees);
    const kite = polygon(O, P(100, 0), P(100 + far.x, far.y), far);
    const angles = metalAngles(kite[0] as Region[number]);
    const all = angles.reduce((sum, a) => sum + leftInCorner(a), 0);
    const r = 3;
    near(area(kite) - area(grown(grown(kite, -r), r)), all * r * r, 1e-9);
    expect(angles.some((a) => Math.abs(leftInCorner(a) - left) < 1e-10)).toBe(true);
  });

  it('of any convex polygon, while each of its sides leaves something, to 1e-12', () => {
    const polygons = convexOutlines.map((region) => polygon(...edgesOf(region).map(({ a }) => a)));
    const law = fc.property(polygons, fc.integer({ min: 1, max: 95 }), (region, percent) => {
      const angles = metalAngles(region[0] as Region[number]);
      const sides = edgesOf(region).map(({ a, b }) => Math.hypot(b.x - a.x, b.y - a.y));
      const cots = angles.map((a) => 1 / Math.tan(a / 2));
      const cotAfter = (k: number) => cots[(k + 1) % cots.length] as number;
      const r =
        (percent / 100) * Math.min(...sides.map((side, k) => side / ((cots[k] as number) + cotAfter(k))));
      const shrunk = grown(region, -r);
      const opened = grown(shrunk, r);
      near(area(opened), area(region) - angles.reduce((sum, a) => sum + leftInCorner(a), 0) * r * r, 1e-12);
      expect(edgesOf(shrunk)).toHaveLength(sides.length);
      expect(edgesOf(opened)).toHaveLength(2 * sides.length);
      expect(difference(grown(grown(opened, -r), r), opened, 100)).toBeNull();
    });
    fc.assert(law, { numRuns: runs(200) });
  });

  function leftInCorner(angle: number): number {
    return 1 / Math.tan(angle / 2) - (Math.PI - angle) / 2;
  }
});
