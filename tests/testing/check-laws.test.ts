import {
  areaOf,
  type Booleans,
  booleansOf,
  boxRegion,
  type Cut,
  checkLaws,
  cutRegions,
  extentOf,
  familyNamed,
  lawNames,
} from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kernel, type Region, subtract } from '../region/kernel.js';
import { runs } from '../tools/runs.js';

/** Families in which cuts lie loose, cross corners, touch, and lie in one another. */
const SOME = ['generic-discs', 'through-corner', 'tangent-ring'].map(familyNamed);

/** Faults that real geometry code has had; each of these booleans has one. */
const MUTANTS: readonly [string, Partial<Booleans>][] = [
  [
    'loses holes: what is cut out of the middle comes back',
    { subtract: (a, cuts) => subtract(a, cuts).map(({ outer }) => ({ outer, holes: [] })) },
  ],
  [
    'takes a cut that only touches for one that takes all',
    { intersect: (list) => (touches(list) ? (list[0] as Region) : kernel.intersect(list)) },
  ],
  [
    'has an absolute tolerance: small parts vanish',
    { subtract: (a, cuts) => (extentOf(a) < 1e-3 ? [] : subtract(a, cuts)) },
  ],
  [
    'knows half circles only: other arcs are taken for their chords',
    { subtract: (a, cuts) => subtract(a, cuts.map(chordsForShortArcs)) },
  ],
  ['keeps one piece of those that a cut leaves', { subtract: (a, cuts) => subtract(a, cuts).slice(0, 1) }],
  ['forgets all cuts but the first', { subtract: (a, cuts) => subtract(a, cuts.slice(0, 1)) }],
  ['counts an overlap twice', { union: (list) => list.flat() }],
];

/** True if two regions have so little in common that a tolerance may hide it. */
function touches(list: readonly Region[]): boolean {
  const common = areaOf(kernel.intersect(list));
  const [a = []] = list;
  return list.length === 2 && common > 0 && common < 0.01 * areaOf(a);
}

function chordsForShortArcs(region: Region): Region {
  const plain = (loop: Region[number]['outer']): Region[number]['outer'] =>
    loop.length < 3 ? loop : loop.map(({ a, b }) => ({ kind: 'line', a, b }));
  return region.map(({ outer, holes }) => ({ outer: plain(outer), holes: holes.map(plain) }));
}

describe('checkLaws', () => {
  it('finds no fault in edgebite itself', () => {
    expect(checkLaws(kernel, { families: SOME, runs: runs(3) })).toEqual([]);
  });

  it.each(MUTANTS)('catches a boolean that %s', (_, mutant) => {
    const faults = checkLaws({ ...kernel, ...mutant }, { families: SOME, runs: 6 });
    expect(faults).not.toEqual([]);
    for (const { law, family, message, smallest } of faults) {
      expect(lawNames).toContain(law);
      expect(SOME.map(({ name }) => name)).toContain(family);
      expect(message.length).toBeGreaterThan(10);
      // Plain JSON, so that it can be kept.
      expect(JSON.parse(JSON.stringify(smallest))).toEqual(smallest);
    }
  });

  it('hands back a small case', () => {
    const [fault] = checkLaws(
      { ...kernel, subtract: (a, cuts) => subtract(a, cuts.slice(0, 1)) },
      { laws: ['orderDoesNotMatter'], families: [familyNamed('generic-discs')], runs: 25 },
    );
    expect(fault?.smallest.cuts).toHaveLength(2);
    expect(fault?.shrinks).toBeGreaterThan(0);
    expect(fault?.smallest.unit).toBe('mm');
  });

  it('takes an exception for a fault', () => {
    const broken = () => {
      throw new Error('cannot do that');
    };
    const [fault] = checkLaws({ ...kernel, subtract: broken }, { laws: ['conservesArea'], runs: 1 });
    expect(fault?.message).toContain('cannot do that');
  });

  it('is the same for the same seed', () => {
    const bad = { ...kernel, union: (list: readonly Region[]) => list.flat() };
    const once = checkLaws(bad, { families: SOME, runs: 5, seed: 4, laws: ['countsOnce'] });
    expect(checkLaws(bad, { families: SOME, runs: 5, seed: 4, laws: ['countsOnce'] })).toEqual(once);
  });

  it('refuses a number of runs that is none', () => {
    expect(() => checkLaws(kernel, { runs: 0 })).toThrow('runs is 0; it must be a whole number over 0');
  });
});

describe('booleansOf', () => {
  const own = booleansOf<Region>({
    to: (region) => region,
    from: (region) => region,
    unite: (a, b) => kernel.union([a, b]),
    intersect: (a, b) => kernel.intersect([a, b]),
    subtract: (a, b) => subtract(a, [b]),
  });

  it('makes operations on lists of those on two', () => {
    const plate = boxRegion(0, 0, 10, 10);
    const discs = cutRegions({
      family: 'by hand',
      unit: 'mm',
      outline: plate,
      cuts: [3, 5, 20].map((x): Cut => ({ kind: 'disc', center: { x, y: 5 }, radius: 2 })),
    });
    for (const name of ['union', 'intersect', 'xor'] as const) {
      expect(areaOf(own[name](discs.slice(0, 2)))).toBeCloseTo(areaOf(kernel[name](discs.slice(0, 2))), 9);
      expect(own[name]([])).toEqual([]);
    }
    expect(areaOf(own.union(discs))).toBeCloseTo(areaOf(kernel.union(discs)), 9);
    expect(areaOf(own.subtract(plate, discs))).toBeCloseTo(areaOf(subtract(plate, discs)), 9);
  });

  it('keeps to the laws if what it is made of does', () => {
    fc.assert(
      fc.property(familyNamed('generic-discs').cases, (one) => {
        const left = own.subtract(one.outline, cutRegions(one));
        expect(areaOf(left)).toBeCloseTo(areaOf(subtract(one.outline, cutRegions(one))), 6);
      }),
      { numRuns: runs(20) },
    );
  });
});
