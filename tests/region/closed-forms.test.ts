import { boxRegion, encodedCircle, validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { area, disc, intersect, perimeter, type Region, ring, subtract, union, xor } from './kernel.js';

const near = (value: number, wanted: number, relative: number): void => {
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted));
};

/** The segment of height h of a disc of radius r, as what a half plane leaves of it. */
function segment(r: number, h: number): Region {
  const bite = intersect([disc({ x: 0, y: 0 }, r), boxRegion(-3 * r, r - h, 3 * r, 3 * r)]);
  validateRegion(bite, { extent: 6 * r });
  return bite;
}

function lens(r: number, s: number, d: number): number {
  return area(intersect([disc({ x: 0, y: 0 }, r), disc({ x: d, y: 0 }, s)]));
}

describe('circular segments', () => {
  /** r^2 acos((r - h) / r) - (r - h) sqrt(2 r h - h^2) (Machinery's Handbook 31, p. 83), with 60 digits by mpmath. */
  it.each([
    [0.01, 0.001882787125734963],
    [0.1, 0.05872590687760182],
    [0.5, 0.6141848493043784],
    [1, 1.5707963267948966],
    [1.5, 2.527407804285415],
    [1.9, 3.0828667467121913],
    [1.99, 3.139709866464058],
  ])('of height %f at radius 1 to 1e-12', (h, exact) => {
    near(area(segment(1, h)), exact, 1e-12);
    near(perimeter(segment(1, h)), 2 * Math.acos(1 - h) + 2 * Math.sqrt(h * (2 - h)), 1e-12);
  });

  /** Printed results: J. Burkardt, circle-segment test output. */
  it.each([
    [1, 1, 1.5708, 5e-5],
    [1, 1 / 2, 0.614185, 5e-7],
    [1, 1 / 4, 0.226656, 5e-7],
    [1, 1 / 8, 0.081753, 5e-7],
    [1, 1 / 16, 0.029185, 5e-7],
    [1, 1 / 32, 0.0103677, 5e-8],
    [1, 1 / 64, 0.0036742, 5e-8],
    [1, 1 / 128, 0.00130056, 5e-9],
    [1, 1 / 256, 0.000460086, 5e-10],
    [1, 1 / 512, 0.000162713, 5e-10],
    [1, 1 / 1024, 5.75361e-5, 5e-11],
    [4.14755, 4.65932, 31.2554, 2e-4],
  ])('radius %f, height %f: the published area', (r, h, printed, half) => {
    expect(Math.abs(area(segment(r, h)) - printed)).toBeLessThanOrEqual(half);
  });

  it("Machinery's Handbook 31, p. 50: R 12, depth 2 gives arc 14.06 and area 18.01", () => {
    const bite = segment(12, 2);
    expect(Math.abs(area(bite) - 18.01)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(perimeter(bite) - 13.27 - 14.06)).toBeLessThanOrEqual(0.01);
  });

  it("Machinery's Handbook 31, p. 79: the ring of diameters 12 and 8 has 62.83", () => {
    expect(Math.abs(area(ring({ x: 0, y: 0 }, 6, 4)) - 62.83)).toBeLessThanOrEqual(0.005);
  });

  it('matheass.eu, Circular Sections: chord 21, height 6: area 89.254148; arc 1 at 45 degrees: 0.063460604', () => {
    expect(Math.abs(area(segment(12.1875, 6)) - 89.254148)).toBeLessThanOrEqual(5e-7);
    const r = 4 / Math.PI;
    expect(Math.abs(area(segment(r, r * (1 - Math.cos(Math.PI / 8)))) - 0.063460604)).toBeLessThanOrEqual(
      5e-10,
    );
  });

  it("Lobben, Machinists and Draftsmen's Handbook, p. 200: r 9, 60 degrees, 7.3386 (it rounds sqrt 3 / 4)", () => {
    near(area(segment(9, 9 * (1 - Math.cos(Math.PI / 6)))), 7.3386, 2e-4);
  });
});

describe('lenses of two discs', () => {
  /** The closed form of MathWorld, Circle-Circle Intersection, with 60 digits by mpmath. */
  it.each([
    [4, 4, 6, 7.252988063641756],
    [15, 30, 20, 608.3659321908901],
    [50, 30, 60, 692.7129207263055],
    [25.4, 12.7, 38, 0.1734016259035896],
    [1, 1, 1.9999, 1.3333233332884698e-6],
    [1, 1, 1e-3, 3.1395926536731267],
    [10, 0.01, 10, 0.000157046299345323],
  ])('radii %f and %f, %f apart, to 1e-12', (r, s, d, exact) => {
    near(lens(r, s, d), exact, 1e-12);
  });

  it('Codeforces 600 D: r 4, r 4, d 6: 7.252988063641756; d 11 with r 5: 0', () => {
    near(lens(4, 4, 6), 7.252988063641756, 1e-13);
    expect(lens(5, 5, 11)).toBe(0);
  });

  it('POJ 2546: r 15 at (20, 30), r 30 at (40, 30): 608.366', () => {
    expect(Math.abs(lens(15, 30, 20) - 608.366)).toBeLessThanOrEqual(5e-4);
  });

  it('silvertests.ru 55146: r 50, r 10: 314.159 contained, 0 apart', () => {
    expect(Math.abs(lens(50, 10, Math.SQRT2) - 314.159)).toBeLessThanOrEqual(5e-4);
    expect(lens(50, 10, 100)).toBe(0);
  });

  it('rec-puzzles, the goat: a rope of 1.15872847302 reaches half of a unit pasture', () => {
    near(lens(1, 1.15872847302, 1), Math.PI / 2, 1e-11);
  });

  it('solve.club, Mrs Miniver: at 0.52986417 a lens equals both crescents', () => {
    const discs = [disc({ x: 0, y: 0 }, 1), disc({ x: 0.5298641692055537, y: 0 }, 1)];
    near(area(intersect(discs)), area(xor(discs)), 1e-14);
  });

  it('MathWorld: at 0.807945506599 a lens is half a unit disc', () => {
    near(lens(1, 1, 0.807945506599), Math.PI / 2, 1e-11);
  });

  it('the vesica, r = d = 1: 2 pi / 3 - sqrt 3 / 2 (formula from memory)', () => {
    near(lens(1, 1, 1), (2 * Math.PI) / 3 - Math.sqrt(3) / 2, 1e-13);
  });

  it('the lune on the side of a square, R 1: 1/2 exactly (Hippocrates, from memory)', () => {
    const lune = subtract(disc({ x: 0.5, y: 0.5 }, Math.SQRT1_2), [disc({ x: 0, y: 0 }, 1)]);
    near(area(lune), 0.5, 1e-13);
  });

  it('geeksforgeeks, kidzsearch: Reuleaux triangles of width 6 and 9: 25.3717 and 57.0864', () => {
    for (const [width, printed] of [
      [6, 25.3717],
      [9, 57.0864],
    ] as const) {
      const corners = [
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: width / 2, y: (width * Math.sqrt(3)) / 2 },
      ];
      const triangle = intersect(corners.map((corner) => disc(corner, width)));
      validateRegion(triangle, { extent: 3 * width });
      expect(Math.abs(area(triangle) - printed)).toBeLessThanOrEqual(1e-4);
      near(area(triangle), ((Math.PI - Math.sqrt(3)) / 2) * width * width, 1e-13);
      near(perimeter(triangle), Math.PI * width, 1e-13);
    }
  });
});

describe('rings', () => {
  it.each([
    [6, 4],
    [25.4, 12.7],
    [1, 0.999999],
  ])('of radii %f and %f, also cut from a plate and put back, to 1e-12', (outer, inner) => {
    const exact = Math.PI * (outer - inner) * (outer + inner);
    const kerf = ring({ x: 50, y: 50 }, outer, inner);
    expect(Math.abs(area(kerf) - exact)).toBeLessThanOrEqual(1e-12 * Math.PI * outer * outer);
    const plate = boxRegion(0, 0, 100, 100);
    const left = subtract(plate, [kerf]);
    validateRegion(left);
    expect(left.map((part) => part.holes.length).sort()).toEqual([0, 1]);
    near(area(left), 10000 - exact, 1e-12);
    near(area(union([left, kerf])), 10000, 1e-12);
    near(
      area(
        subtract(plate, [
          [{ outer: encodedCircle({ x: 50, y: 50 }, outer, { arcs: 3, start: 1 }), holes: [] }],
        ]),
      ),
      10000 - Math.PI * outer * outer,
      1e-12,
    );
  });
});
