import type { Point } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crowdOf } from '../../packages/core/src/left/crowd.js';
import { runs } from '../tools/runs.js';

const coordinate = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Places in a box, some of them in clusters. */
const crowds = fc
  .tuple(
    fc.array(fc.record({ x: coordinate(-50, 250), y: coordinate(-300, -20) }), {
      minLength: 3,
      maxLength: 40,
    }),
    fc.array(fc.record({ x: coordinate(20, 24), y: coordinate(-100, -97) }), { maxLength: 20 }),
  )
  .map(([some, more]) => [...some, ...more]);

/** They take microseconds, and a wrong side of a cell shows in few of them. */
const CASES = Math.max(500, runs(1000));

const away = (a: Point, b: Point) => Math.hypot(b.x - a.x, b.y - a.y);

describe('a crowd of places', () => {
  it('is said to be within a disc only if one of them is', () => {
    fc.assert(
      fc.property(
        crowds,
        fc.record({ x: coordinate(-100, 300), y: coordinate(-350, 30) }),
        coordinate(-50, 200),
        (places, center, radius) => {
          const isThere = places.some((p) => away(p, center) < radius);
          if (crowdOf(places).isWithin(center, radius)) expect(isThere).toBe(true);
        },
      ),
      { numRuns: CASES },
    );
  });

  it('is not within a disc that ends just before the nearest of them', () => {
    fc.assert(
      fc.property(
        crowds,
        fc.record({ x: coordinate(-60, 260), y: coordinate(-310, -10) }),
        (places, center) => {
          const nearest = Math.min(...places.map((p) => away(p, center)));
          expect(crowdOf(places).isWithin(center, 0.999 * nearest)).toBe(false);
        },
      ),
      { numRuns: CASES },
    );
  });

  // A cell is half of `least` wide, so its diagonal is `least` over the square root of 2.
  it('is seen in every disc that holds the cell of one of them, two cells away at most', () => {
    fc.assert(
      fc.property(
        crowds,
        fc.nat(),
        coordinate(0, 2 * Math.PI),
        coordinate(0, 0.999),
        (places, which, angle, share) => {
          const { least, isWithin } = crowdOf(places);
          const place = places[which % places.length] as Point;
          const d = share * least;
          const center = { x: place.x + d * Math.cos(angle), y: place.y + d * Math.sin(angle) };
          expect(isWithin(center, 1.001 * (d + least * Math.SQRT1_2))).toBe(true);
          expect(isWithin(place, least)).toBe(true);
        },
      ),
      { numRuns: CASES },
    );
  });

  it('has a cell for each of them on average, and no more than a thousand to a side', () => {
    const corners = (width: number, height: number) => [
      { x: 7, y: -3 },
      { x: 7 + width, y: -3 + height },
    ];
    const inside = Array.from({ length: 14 }, (_, k) => ({ x: 8 + (k % 4), y: -2 - (k % 3) * 1e-3 }));
    // 16 places in 40 by 10: cells of 5, and discs of two cells.
    expect(crowdOf([...corners(40, 10), ...inside.map((p) => ({ ...p, y: p.y + 1 }))]).least).toBeCloseTo(
      10,
      12,
    );
    expect(crowdOf(corners(0, 400)).least).toBeCloseTo(0.8, 12);
    expect(crowdOf(corners(400, 0)).least).toBeCloseTo(0.8, 12);
  });

  it('of one place, or of places in one, is seen from there', () => {
    const place = { x: 3, y: 4 };
    for (const places of [[place], [place, place]]) {
      expect(crowdOf(places).isWithin(place, 1)).toBe(true);
      expect(crowdOf(places).isWithin({ x: 3, y: 6 }, 1)).toBe(false);
      expect(crowdOf(places).isWithin(place, -1)).toBe(false);
    }
  });
});
