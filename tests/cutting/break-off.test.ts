import {
  breakingMoment,
  breakOffOf,
  elasticMoment,
  METALS,
  plasticMoment,
  type Strength,
  shearForce,
  strengthOf,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

const strength = (shear: number, yieldStress: number | null, tensile: number): Strength => ({
  shear: [shear, shear],
  yield: yieldStress,
  tensile: [tensile, tensile],
  source: 'of the example',
});

/** MPa in a ksi (NIST SP 811, appendix B.8, rounded as printed there). */
const KSI = 6.894757;

describe('force to shear', () => {
  // Textbook problem (byjus.com, punching): a hole of 50 mm in 2 mm, printed 973.894 kN at 3.1 kN/mm². The stress is
  // not of this world, the arithmetic is right.
  it('a textbook punching problem: 50 mm through 2 mm', () => {
    const [force] = shearForce([3100, 3100], Math.PI * 50 * 2);
    expect(force / 1000).toBeCloseTo(973.894, 3);
  });

  // Worked by hand: pi 1 x 0.020 x 41,200 lbf/in² = 2588.7 lbf (SAE 1020 hot rolled, 41.2 ksi).
  it('a slug of 1 in on a floor of 0.020 in, in lbf', () => {
    const { force, forceUnit } = breakOffOf(strength(41.2 * KSI, 100, 100), Math.PI, 0.02, 'inch');
    expect(forceUnit).toBe('lbf');
    expect(force[0]).toBeCloseTo(2588.7, 1);
  });

  // Worked by hand: pi 25 x 0.5 x 207 N/mm² = 8128.9 N (6061-T6).
  it('a slug of 25 mm on a floor of 0.5 mm, in N', () => {
    const { force, forceUnit } = breakOffOf(strength(207, 276, 310), Math.PI * 25, 0.5, 'mm');
    expect(forceUnit).toBe('N');
    expect(force[0]).toBeCloseTo(8128.9, 1);
  });
});

describe('moment to bend over', () => {
  // Worked by hand: 276 x 10 x 1² / 4 = 690 N mm; first yield at 276 x 10 x 1² / 6 = 460 N mm.
  it('a strap of 10 by 1 mm of 6061-T6', () => {
    expect(plasticMoment(276, 10, 1)).toBe(690);
    expect(elasticMoment(276, 10, 1)).toBe(460);
    const { moment, momentUnit } = breakOffOf(strength(207, 276, 310), 10, 1, 'mm');
    expect(momentUnit).toBe('N m');
    expect(moment[0]).toBeCloseTo(0.69, 12);
    expect(moment[1]).toBeCloseTo(0.775, 12);
  });

  // By hand, of 10 by 1 mm, tensile strengths from 240 to 400: bends from 90 x 10 / 4 = 225 N mm on, and surely at
  // 400 x 10 / 4 = 1000; a metal that does not bend breaks from 240 x 10 / 6 = 400 on.
  it('goes from the softest grade to the hardest', () => {
    const grades = (least: number | null): Strength => ({
      ...strength(200, least, 0),
      tensile: [240, 400],
    });
    expect(breakingMoment(grades(90), 10, 1)).toEqual([225, 1000]);
    expect(breakingMoment(grades(null), 10, 1)).toEqual([400, 1000]);
    const { moment } = breakOffOf(grades(90), 10, 1, 'mm');
    expect(moment).toEqual([expect.closeTo(0.225, 12), expect.closeTo(1, 12)]);
  });

  // Plastic over elastic section modulus of a rectangle is 1.5 (any textbook of strength of materials).
  it('is one and a half times that of first yield', () => {
    expect(plasticMoment(235, 7, 3) / elasticMoment(235, 7, 3)).toBeCloseTo(1.5, 15);
  });

  it('of a metal that breaks before it bends is that of its outermost fibre', () => {
    expect(breakingMoment(strength(200, null, 150), 6, 2)[0]).toBe(elasticMoment(150, 6, 2));
  });
});

describe('units', () => {
  it('in inches and millimetres it is the same force and the same moment', () => {
    const size = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.constantFrom(...METALS), (width, thickness, metal) => {
        const inch = breakOffOf(strengthOf(metal), width, thickness, 'inch');
        const mm = breakOffOf(strengthOf(metal), width * 25.4, thickness * 25.4, 'mm');
        // A pound-force is 4.4482216152605 N; a pound-force inch that times 0.0254 m (NIST SP 811, appendix B).
        for (const k of [0, 1] as const) {
          expect(mm.force[k] / inch.force[k] / 4.4482216152605).toBeCloseTo(1, 12);
          expect(mm.moment[k] / inch.moment[k] / (4.4482216152605 * 0.0254)).toBeCloseTo(1, 12);
        }
      }),
      { numRuns: runs(200) },
    );
  });
});

describe('strengths', () => {
  it.each(METALS)('of %s are ranges in a sensible order', (metal) => {
    const { shear, tensile, yield: bends, source } = strengthOf(metal);
    expect(shear[0]).toBeLessThan(shear[1]);
    expect(tensile[0]).toBeLessThan(tensile[1]);
    if (bends !== null) expect(bends).toBeLessThan(tensile[0]);
    expect(source).toMatch(/\([A-Z]\)|from memory/);
  });

  // Material sheets: 1020 hot rolled shears at 41.2 ksi, 6061-T6 at 207 MPa, C36000 half hard at 234 MPa; A36 has up to
  // 80 ksi tensile.
  it('hold the figures of their sources', () => {
    const within = (value: number, [least, most]: readonly [number, number]) => {
      expect(value).toBeGreaterThanOrEqual(least - 1e-9);
      expect(value).toBeLessThanOrEqual(most + 1e-9);
    };
    within(41.2 * KSI, strengthOf('mild steel').shear);
    within(207, strengthOf('aluminium').shear);
    within(234, strengthOf('brass').shear);
    expect(strengthOf('mild steel').tensile[1]).toBeCloseTo(80 * KSI, 3);
  });
});
