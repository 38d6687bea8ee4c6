import {
  densityOf,
  feedFor,
  METALS,
  type Metal,
  type Range,
  speedEntry,
  strengthOf,
  TOOL_KINDS,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { CARBIDE_FIGURES, DENSITIES, HSS_FIGURES, STRENGTHS, sawSpeeds } from './figures.js';
import { H, P_DRILL, P_FEED, P_SIZES } from './sheets.js';

/*
 * Every figure of the tables against a copy typed a second time from the sheets (sheets.ts; letters and places in
 * docs/cutting-numbers.md): a slip of the hand in the one is not made again in the other.
 */

const EVERY = TOOL_KINDS.flatMap((kind) => METALS.map((metal) => ({ kind, metal })));

describe('surface speeds are those of the sheets', () => {
  it.each(EVERY)('HSS $kind in $metal', ({ kind, metal }) => {
    const { range, unit, source } = speedEntry(kind, 'HSS', metal);
    const figure = HSS_FIGURES[kind][metal];
    expect({ range, unit }).toEqual({ range: figure.range, unit: figure.unit });
    // What no sheet bears out says so; what sheets do names them.
    if (figure.from === 'from memory') expect(source).toContain('from memory');
    else expect(source).toMatch(/\([A-Z]\)/);
  });

  it.each(EVERY)('carbide $kind in $metal', ({ kind, metal }) => {
    const { range, unit, source } = speedEntry(kind, 'carbide', metal);
    const own = CARBIDE_FIGURES[kind]?.[metal];
    const hss = HSS_FIGURES[kind][metal];
    // A and C: carbide about double.
    const [low, high] = own?.range ?? ([2 * hss.range[0], 2 * hss.range[1]] as const);
    expect({ range, unit }).toEqual({ range: [low, high], unit: (own ?? hss).unit });
    expect(source.startsWith('twice that of HSS')).toBe(own === undefined);
  });

  it('an annular cutter has the speeds of hole saws within its own (H)', () => {
    for (const metal of Object.keys(H) as (keyof typeof H)[]) {
      const { range, unit } = speedEntry('annular cutter', 'HSS', metal);
      const [low, high] = range.map((speed) => (unit === 'ft/min' ? speed : speed / 0.3048)) as [
        number,
        number,
      ];
      const [least, most] = sawSpeeds(metal);
      // Its metric rows are rounded to whole metres: 3.3 ft/min.
      expect(low).toBeLessThanOrEqual(least + (unit === 'ft/min' ? 0 : 1.7));
      expect(high).toBeGreaterThanOrEqual(most);
    }
  });
});

/** Metals that the sheet of end mills lacks, and what stands for them: stainless steel, from memory. */
const rowOf = (metal: Metal): readonly (number | null)[] =>
  metal in P_FEED ? P_FEED[metal as keyof typeof P_FEED] : P_FEED['stainless steel'];

describe('feeds are those of the sheet (P)', () => {
  it.each(METALS)('of an end mill in %s, a tooth', (metal) => {
    P_SIZES.slice(1).forEach((size, k) => {
      const [below, at] = [rowOf(metal)[k], rowOf(metal)[k + 1]];
      // The misprint of aluminium at 1/8 in is replaced from memory: half of the figure at 1/4.
      const range = [below ?? (at as number) / 2, at];
      for (const diameter of [size, (size + (P_SIZES[k] as number)) / 2]) {
        expect(feedFor('end mill', metal, diameter, 'inch'), `${diameter}`).toMatchObject({
          per: 'tooth',
          range,
        });
      }
    });
    const [last, beyond] = rowOf(metal).slice(-2);
    expect(feedFor('end mill', metal, 1.5, 'inch')?.range).toEqual([last, beyond]);
  });

  it('of a drill, a turn', () => {
    let before = 0;
    for (const { upTo, feed } of P_DRILL) {
      for (const diameter of [before + 0.001, Number.isFinite(upTo) ? upTo : 3]) {
        expect(feedFor('drill', 'brass', diameter, 'inch'), `${diameter}`).toMatchObject({
          per: 'turn',
          range: feed,
        });
      }
      before = upTo;
    }
  });

  it('of an annular cutter, a tooth: low end from feed notes (F), high end from memory; of a head from memory', () => {
    for (const metal of METALS) {
      expect(feedFor('annular cutter', metal, 1, 'inch')).toMatchObject({
        per: 'tooth',
        range: [0.001, 0.003],
      });
      expect(feedFor('boring head', metal, 1, 'inch')).toMatchObject({ per: 'turn', range: [0.002, 0.008] });
    }
  });
});

describe('densities', () => {
  // From memory, typed a second time: no sheet was at hand.
  it.each(Object.entries(DENSITIES))('of %s', (metal, density) => {
    expect(densityOf(metal)).toBe(density);
  });
});

describe('strengths are those of the sheets (S, R)', () => {
  const near = (got: Range, wanted: Range) =>
    got.forEach((value, k) => {
      // A ksi is 6.894757 MPa as the sheet of conversions prints it: seven digits.
      expect(value / (wanted[k] as number)).toBeCloseTo(1, 6);
    });

  it.each(METALS)('of %s', (metal) => {
    const { shear, yield: bends, tensile } = strengthOf(metal);
    const wanted = STRENGTHS[metal];
    near(shear, wanted.shear);
    near(tensile, wanted.tensile);
    if (wanted.yield === null) expect(bends).toBeNull();
    else near([bends as number, 1], [wanted.yield, 1]);
  });
});
