import {
  placeThrough,
  type Segment,
  segmentOfAngle,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  segmentsOfOpening,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { near } from './near.js';

const DEGREE = Math.PI / 180;

describe('segmentOfDepth', () => {
  // Opening 2 sqrt(h (2 r - h)), angle 2 acos((r - h) / r), area r^2 (t - sin t) / 2 (Machinery's Handbook 31, p. 83),
  // with 50 digits by mpmath.
  it.each([
    [12, 2, 13.2664991614216, 1.171371086914302, 14.056453042971622, 18.00622245072174],
    [60, 8, 59.86651818838306, 1.0446296436120972, 62.67777861672583, 323.80388560381544],
    [12.1875, 6, 21, 2.0765844569860916, 25.308373069517994, 89.25414839237527],
    [1, 1e-6, 0.0028284264176393205, 0.0028284273604485036, 0.0028284273604485036, 1.885617800321389e-9],
    [1, 1, 2, Math.PI, Math.PI, Math.PI / 2],
    [4.14755, 4.65932, 8.231710021520437, 3.3890050404408636, 14.056067855480503, 31.255493235855837],
    [17, 20, 33.46640106136302, 3.496391862470534, 59.43866166199908, 555.4282257190367],
    [0.25, 0.03, 0.23748684174075835, 0.989868252681791, 0.24746706317044775, 0.004809830304822552],
  ])('radius %f, depth %f to 1e-13', (radius, depth, opening, angle, arc, size) => {
    const segment = segmentOfDepth(radius, depth);
    near(segment.opening, opening, 1e-13);
    near(segment.includedAngle, angle, 1e-13);
    near(segment.arcLength, arc, 1e-13);
    near(segment.area, size, 1e-13);
    expect(segment.depth).toBe(depth);
    expect(segment.radius).toBe(radius);
  });

  it("Machinery's Handbook 31, p. 50: R 12, depth 2 gives chord 13.27, angle 67.13 (67.11 by the formula), arc 14.06, area 18.01", () => {
    const { opening, includedAngle, arcLength, area } = segmentOfDepth(12, 2);
    expect(Math.abs(opening - 13.27)).toBeLessThanOrEqual(0.005);
    // The formula that the handbook states for it gives 67.1146.
    expect(Math.abs(includedAngle / DEGREE - 67.13)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(arcLength - 14.06)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(area - 18.01)).toBeLessThanOrEqual(0.005);
  });

  it("Machinery's Handbook 31, p. 79: r 60, h 8 gives chord 59.86 (cut off, 59.8665)", () => {
    expect(Math.floor(segmentOfDepth(60, 8).opening * 100)).toBe(5986);
  });

  it('J. Burkardt, circle-segment test output: r 1, h 1/2 and 1/16, areas 0.614185 and 0.029185', () => {
    expect(Math.abs(segmentOfDepth(1, 1 / 2).area - 0.614185)).toBeLessThanOrEqual(5e-7);
    expect(Math.abs(segmentOfDepth(1, 1 / 16).area - 0.029185)).toBeLessThanOrEqual(5e-7);
  });

  it('refuses a depth from the diameter on, and says which', () => {
    expect(() => segmentOfDepth(5, 12)).toThrow(
      'segmentOfDepth: depth is 12; with radius 5 a bite is less than 10 deep, from there on it is a full hole',
    );
    expect(() => segmentOfDepth(5, 10)).toThrow(RangeError);
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => segmentOfDepth(bad, 1)).toThrow('radius is');
      expect(() => segmentOfDepth(5, bad)).toThrow('depth is');
    }
  });
});

describe('segmentsOfOpening', () => {
  // h = r -+ sqrt(r^2 - c^2 / 4), with 50 digits by mpmath.
  it.each([
    [17, 20, 3.25227291513248, 30.74772708486752],
    [1, 1e-4, 1.25000000078125e-9, 1.99999999875],
    [5, 10, 5, 5],
    [12.5, 24.999, 12.38819771916459, 12.61180228083541],
  ])('radius %f, opening %f', (radius, opening, shallow, deep) => {
    const { outside, inside } = segmentsOfOpening(radius, opening);
    near(outside.depth, shallow, 1e-13);
    near(inside.depth, deep, 1e-13);
    near(outside.opening, opening, 1e-13);
    near(inside.opening, opening, 1e-13);
    // The two are one circle.
    near(outside.area + inside.area, Math.PI * radius * radius, 1e-13);
    near(outside.arcLength + inside.arcLength, 2 * Math.PI * radius, 1e-13);
  });

  it('refuses an opening over the diameter, and says which', () => {
    expect(() => segmentsOfOpening(5, 10.5)).toThrow(
      'segmentsOfOpening: opening is 10.5; a circle of radius 5 opens a face 10 wide at most',
    );
    expect(() => segmentsOfOpening(5, 0)).toThrow('opening is 0');
  });
});

describe('segmentOfOpeningAndDepth', () => {
  it("Machinery's Handbook 31, p. 79: chord 16, height 6 gives radius 8 1/3", () => {
    near(segmentOfOpeningAndDepth(16, 6).radius, 25 / 3, 1e-15);
  });

  it('matheass.eu, Circular Sections: chord 21, height 6: radius 12.1875, 118.97953 degrees, arc 25.308373, area 89.254148', () => {
    const { radius, includedAngle, arcLength, area } = segmentOfOpeningAndDepth(21, 6);
    expect(radius).toBe(12.1875);
    expect(Math.abs(includedAngle / DEGREE - 118.97953)).toBeLessThanOrEqual(5e-6);
    expect(Math.abs(arcLength - 25.308373)).toBeLessThanOrEqual(5e-7);
    expect(Math.abs(area - 89.254148)).toBeLessThanOrEqual(5e-7);
  });

  it('refuses lengths that are not over 0', () => {
    expect(() => segmentOfOpeningAndDepth(0, 1)).toThrow(RangeError);
    expect(() => segmentOfOpeningAndDepth(1, Number.NaN)).toThrow(RangeError);
  });
});

describe('segmentOfAngle', () => {
  // Table for r = 1 from the handbook's formulas; to the digits shown.
  it.each([
    [1, 0.0174532925, 0.0000380769358, 0.017453071, 0.00000044304133],
    [30, 0.523598776, 0.0340741737, 0.51763809, 0.0117993878],
    [60, 1.04719755, 0.133974596, 1, 0.0905860737],
    [90, Math.PI / 2, 0.292893219, Math.SQRT2, 0.285398163],
    [180, Math.PI, 1, 2, Math.PI / 2],
    [270, 4.71238898, 1.70710678, Math.SQRT2, 2.85619449],
    [300, 5.23598776, 1.8660254, 1, 3.05100658],
  ])('%f degrees', (degrees, arc, depth, opening, size) => {
    const segment = segmentOfAngle(1, degrees * DEGREE);
    near(segment.arcLength, arc, 5e-9);
    near(segment.depth, depth, 5e-9);
    near(segment.opening, opening, 5e-9);
    near(segment.area, size, 5e-9);
  });

  it('matheass.eu, Circular Sections: arc 1 at 45 degrees', () => {
    const segment = segmentOfAngle(4 / Math.PI, 45 * DEGREE);
    expect(Math.abs(segment.radius - 1.2732395)).toBeLessThanOrEqual(5e-8);
    expect(Math.abs(segment.opening - 0.97449536)).toBeLessThanOrEqual(5e-9);
    expect(Math.abs(segment.depth - 0.096919589)).toBeLessThanOrEqual(5e-10);
    expect(Math.abs(segment.area - 0.063460604)).toBeLessThanOrEqual(5e-10);
    near(segment.arcLength, 1, 1e-15);
  });

  it('refuses angles from a whole turn on', () => {
    expect(() => segmentOfAngle(1, 2 * Math.PI)).toThrow(RangeError);
    expect(() => segmentOfAngle(1, 0)).toThrow(RangeError);
    expect(() => segmentOfAngle(1, Number.NaN)).toThrow(RangeError);
  });
});

describe('every form of a segment', () => {
  const same = (a: Segment, b: Segment): void => {
    // The rounding of the depth, as a share of what it lacks to the diameter, is in everything that follows from it.
    const share = 1e-12 + (5e-16 * b.depth) / (2 * b.radius - b.depth);
    for (const key of ['radius', 'depth', 'opening', 'includedAngle', 'arcLength', 'area'] as const) {
      near(a[key], b[key], share);
    }
  };

  it('leads to every other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        fc.double({ min: 0.01, max: 3.1, noNaN: true }),
        fc.boolean(),
        (radius, small, isDeep) => {
          const one = segmentOfAngle(radius, isDeep ? 2 * Math.PI - small : small);
          same(segmentOfDepth(radius, one.depth), one);
          same(segmentOfOpeningAndDepth(one.opening, one.depth), one);
          const half = one.opening / 2;
          same(placeThrough({ x: -half, y: 0 }, { x: 0, y: one.depth }, { x: half, y: 0 }), one);
          const both = segmentsOfOpening(radius, one.opening);
          // Near half a turn the opening hardly changes with the angle.
          const slack = 4e-15 / Math.abs(Math.cos(small / 2));
          near(both[isDeep ? 'inside' : 'outside'].includedAngle, one.includedAngle, slack, 1);
        },
      ),
    );
  });
});
