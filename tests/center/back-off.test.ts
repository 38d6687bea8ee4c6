import { area, backOff, disc, intersect, type Point, type Region, rectangle, subtract } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace, underXAxis } from './near.js';
import { isMetal, polar } from './sample.js';

const P = (x: number, y: number): Point => ({ x, y });
const HALF = underXAxis(100);

describe('backOff', () => {
  it('is straight out of a straight face, so far that the ends of the wall clear (law of cosines)', () => {
    // Centre 6 outside, radius 10: the wall reaches to 0.8 of the radius aside, acos(0.6) either way.
    const way = backOff(HALF, P(0, 6), 10, 0.5);
    nearPlace(P(way?.direction?.dx ?? 9, way?.direction?.dy ?? 9), P(0, 1), 1);
    const s = way?.distance ?? 0;
    // The corner of the wall at (8, 0) is then the radius and the clearance away.
    near(Math.hypot(8, 6 + s), 10.5, 1e-13);
    nearPlace(way?.center ?? P(9, 9), P(0, 6 + s), 10);
    near(way?.gap ?? 0, 0.5, 1e-12);
  });

  it('works at half a turn, with sqrt(2 r g + g^2) (Pythagoras)', () => {
    const way = backOff(HALF, P(0, 0), 10, 0.5);
    near(way?.distance ?? 0, Math.sqrt(2 * 10 * 0.5 + 0.25), 1e-9);
  });

  it('is null in a full hole, and where the mouth is narrower than the tool', () => {
    expect(backOff(HALF, P(0, -50), 10, 0.5)).toBeNull();
    expect(backOff(HALF, P(0, -1), 10, 0.5)).toBeNull();
    expect(backOff(HALF, P(0, -0.001), 10, 1e-6)).toBeNull();
  });

  it('does not matter whether the metal is given before or after the cut', () => {
    const after = subtract(HALF, [disc(P(0, 6), 10)]);
    const [one, other] = [backOff(HALF, P(0, 6), 10, 0.5), backOff(after, P(0, 6), 10, 0.5)];
    near(one?.distance ?? 0, other?.distance ?? 1, 1e-12);
  });

  it('needs no move where there is no wall', () => {
    expect(backOff(HALF, P(0, 15), 10, 0.5)).toEqual({
      direction: null,
      distance: 0,
      center: P(0, 15),
      gap: 5,
    });
    expect(backOff([], P(0, 15), 10, 0.5)).toEqual({
      direction: null,
      distance: 0,
      center: P(0, 15),
      gap: null,
    });
  });

  it('goes round what is in the way, or says that there is no way', () => {
    // A post 0.3 off the tool, up to the right.
    const at = P(10.3 * Math.SQRT1_2, 6 + 10.3 * Math.SQRT1_2);
    const beside: Region = [...HALF, { outer: rectangle(3, 3, { at }), holes: [] }];
    const way = backOff(beside, P(0, 6), 10, 0.5);
    expect(way?.direction?.dx).toBeLessThan(-0.1);
    const left = subtract(beside, [disc(P(0, 6), 10)]);
    for (const share of [0.25, 0.5, 0.75, 1]) {
      const { dx, dy } = way?.direction ?? { dx: 0, dy: 0 };
      const s = share * (way?.distance ?? 0);
      expect(area(intersect([left, disc(P(dx * s, 6 + dy * s), 10)]))).toBeLessThan(1e-6);
    }
    // Both ends of the wall, 8 to either side, are cleared on the slant too.
    for (const x of [-8, 8]) {
      const { x: cx, y: cy } = way?.center ?? P(0, 6);
      expect(Math.hypot(x - cx, cy)).toBeGreaterThanOrEqual(10.5 - 1e-9);
    }
    expect(way?.gap).toBeGreaterThan(0);
    expect(way?.gap).toBeLessThanOrEqual(0.5 + 1e-12);
    const roof: Region = [...HALF, { outer: rectangle(160, 9, { at: P(-80, 16.2) }), holes: [] }];
    expect(backOff(roof, P(0, 6), 10, 0.5)).toBeNull();
  });

  it('clears two walls at once', () => {
    // The inside corner of an angle plate, bored with its centre on the bisector.
    const ell = subtract(block(60, 60), [[{ outer: rectangle(50, 50, { at: P(10, 10) }), holes: [] }]]);
    const way = backOff(ell, P(18, 18), 10, 0.4);
    nearPlace(P(way?.direction?.dx ?? 9, way?.direction?.dy ?? 9), P(Math.SQRT1_2, Math.SQRT1_2), 1, 1e-9);
    near(way?.gap ?? 0, 0.4, 1e-9);
  });

  it('refuses lengths that are not over 0', () => {
    expect(() => backOff(HALF, P(0, 6), 0, 0.5)).toThrow('backOff: radius is 0');
    expect(() => backOff(HALF, P(0, 6), 10, 0)).toThrow('backOff: clearance is 0');
    expect(() => backOff(HALF, P(Number.NaN, 6), 10, 1)).toThrow('backOff: center is (NaN, 6)');
  });

  it('leaves the clearance at every place of the wall, in generated positions', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 100, noNaN: true }),
        fc.double({ min: -20, max: 50, noNaN: true }),
        fc.double({ min: 2, max: 20, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (x, y, radius, clearance) => {
          const plate = block(80, 30);
          const way = backOff(plate, P(x, y), radius, clearance);
          fc.pre(way !== null);
          const { center } = way as NonNullable<typeof way>;
          for (let k = 0; k < 360; k++) {
            const wall = polar(P(x, y), radius, (k * Math.PI) / 180 + 0.001);
            if (!isMetal(plate, wall)) continue;
            expect(Math.hypot(wall.x - center.x, wall.y - center.y) - radius).toBeGreaterThan(
              clearance - 1e-9,
            );
          }
        },
      ),
    );
  });
});
