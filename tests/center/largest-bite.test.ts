import {
  biteAlong,
  disc,
  intersect,
  largestBite,
  lineEdge,
  type Point,
  type Region,
  rectangle,
  subtract,
} from '@edgebite/core';
import { edgesOf, outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, near, upTo } from './near.js';
import { coordinate, deepestBeside, P } from './plan-laws.js';
import { isMetal, metalAlong, polar } from './sample.js';

describe('largestBite', () => {
  it('is the radius in the solid, and null in air', () => {
    near(largestBite(block(80, 60), P(40, 30), 9)?.size ?? 0, 9, 1e-14);
    expect(largestBite(block(80, 60), P(-40, 30), 9)).toBeNull();
    expect(largestBite([], P(-40, 30), 9)).toBeNull();
  });

  it('adds up metal on both sides of a gap', () => {
    // Elementary: two ribs of 1 straight ahead.
    const ribs: Region = [
      { outer: rectangle(60, 1, { at: P(-30, -4) }), holes: [] },
      { outer: rectangle(60, 1, { at: P(-30, -9) }), holes: [] },
    ];
    near(biteAlong(ribs, P(0, 0), 10, -Math.PI / 2), 2, 1e-14);
    near(biteAlong(ribs, P(0, 0), 10, Math.PI / 2), 0, 1e-14, 1);
    // At sin = 0.9 both are 1 / 0.9 thick, and the circle begins to cut the far one off; at sin = 0.4 the near one
    // alone has 10 - 3 / 0.4, before the circle cuts it off too.
    near(biteAlong(ribs, P(0, 0), 10, -Math.asin(0.9) - 1e-13), 2 / 0.9, 1e-11);
    const bite = largestBite(ribs, P(0, 0), 10);
    near(bite?.size ?? 0, 2.5, 1e-12);
    near(Math.sin(bite?.angle ?? 0), -0.4, 1e-12);
  });

  it('is the largest of all directions, in generated positions', () => {
    fc.assert(
      fc.property(
        outlines,
        coordinate(-20, 120),
        coordinate(-20, 100),
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (outline, x, y, radius, rough) => {
          const center = P(x, y);
          const metal = subtract(outline, [disc(P(x + 1, y - 2), radius * rough)]);
          const found = largestBite(metal, center, radius);
          const count = 720;
          let best = 0;
          for (const k of upTo(count)) {
            best = Math.max(best, metalAlong(metal, center, radius, (2 * Math.PI * (k + 0.5)) / count));
          }
          const size = found?.size ?? 0;
          expect(best).toBeLessThanOrEqual(size + 1e-9 * radius);
          if (found !== null) {
            near(deepestBeside(metal, { center, radius }, found.angle), size, 1e-5, radius);
          }
        },
      ),
    );
  });

  it('finds the middle of a bump that two arcs bound', () => {
    // Between two circles neither of which is the tool's: searched for, not read off.
    const lens = intersect([disc(P(0, 8), 6), disc(P(1, 12), 6)]);
    const found = largestBite(lens, P(0, 0), 30);
    let best = 0;
    for (const k of upTo(200000)) {
      const angle = Math.PI / 2 - 0.7 + (1.4 * k) / 200000;
      const t = (cx: number, cy: number, sign: number): number => {
        const along = cx * Math.cos(angle) + cy * Math.sin(angle);
        const across = cx * Math.sin(angle) - cy * Math.cos(angle);
        return along + sign * Math.sqrt(Math.max(0, 36 - across * across));
      };
      best = Math.max(best, t(0, 8, 1) - t(1, 12, -1));
    }
    near(found?.size ?? 0, best, 1e-9);
  });
});

describe('biteAlong', () => {
  /* Along a joint both edges are met at their ends; the metal there is that to both sides of it. */
  const angles = upTo(24).map((k) => (k * Math.PI) / 12 - Math.PI);

  it('counts a joint of the circle of the tool once', () => {
    for (const angle of [...angles, ...angles.map((one) => one + 4 * Math.PI)])
      near(biteAlong(block(80, 60), P(40, 30), 5, angle), 5, 1e-14);
  });

  it('counts a corner once, wherever it lies', () => {
    // Elementary: from the middle of a square with sides of 2 to a corner it is the root of 2, to a side 1.
    for (const turn of angles) {
      const corners = upTo(4).map((k) => polar(P(3, -7), Math.SQRT2, turn + (k * Math.PI) / 2));
      const square: Region = [
        { outer: corners.map((a, k) => lineEdge(a, corners[(k + 1) % 4] as Point)), holes: [] },
      ];
      for (const k of upTo(4)) {
        near(biteAlong(square, P(3, -7), 9, turn + (k * Math.PI) / 2), Math.SQRT2, 1e-12);
        near(biteAlong(square, P(3, -7), 9, turn + ((k + 0.5) * Math.PI) / 2), 1, 1e-12);
      }
    }
  });

  it('is the larger of both sides of a joint, straight along an edge too', () => {
    fc.assert(
      fc.property(
        outlines,
        fc.integer({ min: -20, max: 120 }),
        fc.integer({ min: -20, max: 100 }),
        fc.double({ min: 2, max: 60, noNaN: true }),
        (metal, x, y, radius) => {
          const center = P(x, y);
          // As near as that a grazed edge changes by a ten thousandth, seen from a whole number.
          for (const { a } of edgesOf(metal)) {
            const angle = Math.atan2(a.y - y, a.x - x);
            const beside = [1e-9, -1e-9].map((by) => metalAlong(metal, center, radius, angle + by));
            near(biteAlong(metal, center, radius, angle), Math.max(...beside), 1e-4, radius);
          }
        },
      ),
    );
  });
});

describe('sampling itself', () => {
  it('knows metal from air', () => {
    expect(isMetal(block(10, 10), polar(P(5, 5), 4, 1))).toBe(true);
    expect(isMetal(block(10, 10), polar(P(5, 5), 8, 1))).toBe(false);
  });
});
