import {
  type Booleans,
  boxRegion,
  type Cut,
  conservesArea,
  countsOnce,
  cutRegion,
  encodingDoesNotMatter,
  idempotent,
  invariantUnder,
  LawBroken,
  leavesDisjoint,
  OBLIQUE_THIRDS,
  orderDoesNotMatter,
  startPointDoesNotMatter,
  transformed,
  UNMOVED,
  validated,
} from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { comparePeer } from '../tools/compare-peers.js';
import { agreesWithSlabs } from '../tools/law-run.js';
import { kernel, type Region, subtract } from './kernel.js';

const plate = boxRegion(0, 0, 100, 60);
const cuts: Cut[] = [
  { kind: 'disc', center: { x: 30, y: 30 }, radius: 10 },
  { kind: 'ring', center: { x: 70, y: 55 }, outer: 15, inner: 12 },
];
const regions = cuts.map((cut) => cutRegion(cut));
const [bore, kerf] = regions as [Region, Region];
const far = { ...UNMOVED, shift: [1e6, 0] } as const;

const grown = (region: Region, by: number): Region => transformed(region, { ...UNMOVED, scale: 1 + by });

/** Operations with one fault each, and the law that must notice it. */
const sabotage: readonly [string, Partial<Booleans>, (ops: Booleans) => unknown][] = [
  ['a difference that takes nothing', { subtract: (a) => a }, (ops) => conservesArea(ops, plate, bore)],
  [
    'a difference that is off by a millionth',
    { subtract: (a, b) => grown(subtract(a, b), 1e-6) },
    (ops) => conservesArea(ops, plate, bore),
  ],
  ['an empty answer', { subtract: () => [], intersect: () => [] }, (ops) => conservesArea(ops, plate, bore)],
  ['a union that is a pile', { union: (list) => list.flat() }, (ops) => countsOnce(ops, plate, bore)],
  ['an xor that is a union', { xor: kernel.union }, (ops) => countsOnce(ops, plate, bore)],
  [
    'a cut moved aside',
    {
      subtract: (a, b) =>
        subtract(
          a,
          b.map((c) => grown(c, 0.01)),
        ),
    },
    (ops) => leavesDisjoint(ops, plate, bore),
  ],
  [
    'a difference that drops a piece the second time',
    { subtract: (a, b) => (a.length > 1 ? a.slice(1) : subtract(a, b)) },
    (ops) => idempotent(ops, plate, kerf),
  ],
  [
    'a difference that sees its first cut only',
    { subtract: (a, b) => subtract(a, b.slice(0, 1)) },
    (ops) => orderDoesNotMatter(ops, plate, regions),
  ],
  [
    'a difference that sticks to its place',
    { subtract: (a, b) => ((a[0]?.outer[0]?.a.x ?? 0) > 1e5 ? a : subtract(a, b)) },
    (ops) => invariantUnder(ops, plate, regions, far),
  ],
  [
    'a difference that minds where loops start',
    { subtract: (a, b) => (a[0]?.outer[0]?.a.x === 0 ? subtract(a, b) : a) },
    (ops) => startPointDoesNotMatter(ops, plate, regions),
  ],
  [
    'a difference that knows half circles only',
    {
      subtract: (a, b) =>
        subtract(
          a,
          b.filter((cut) => cut[0]?.outer.length === 2),
        ),
    },
    (ops) => encodingDoesNotMatter(ops, plate, cuts, [OBLIQUE_THIRDS]),
  ],
];

describe('the laws notice', () => {
  it.each(sabotage)('%s', (_, fault, law) => {
    expect(() => law(kernel)).not.toThrow();
    expect(() => law({ ...kernel, ...fault })).toThrow(LawBroken);
  });

  it('what is over the shift of welding in a slender outline', () => {
    const rail = boxRegion(0, 0, 100, 1);
    const hole = cutRegion({ kind: 'disc', center: { x: 30, y: 0.5 }, radius: 0.25 });
    // A side of 100 moved by a weld tolerance of 1e-7 is 1e-5, a ten-millionth of the area.
    const movedBy = (share: number): Booleans => ({
      ...kernel,
      subtract: (a, b) => [...subtract(a, b), ...boxRegion(0, 2, 100, 2 + share * 1e-7)],
    });
    expect(conservesArea(movedBy(0.9), rail, hole)).toBeCloseTo(9e-8, 10);
    expect(() => conservesArea(movedBy(1.1), rail, hole)).toThrow(LawBroken);
    expect(() => conservesArea(movedBy(0.9), rail, hole, 1e-12)).toThrow(LawBroken);
    // Both differences are off.
    expect(countsOnce(movedBy(0.45), rail, hole)).toBeCloseTo(9e-8, 9);
    expect(() => countsOnce(movedBy(0.55), rail, hole)).toThrow(LawBroken);
    const sharing = (share: number): Booleans => ({
      ...kernel,
      intersect: () => boxRegion(0, 0, 100, share * 1e-7),
    });
    expect(leavesDisjoint(sharing(0.9), rail, hole)).toBeCloseTo(9e-8, 10);
    expect(() => leavesDisjoint(sharing(1.1), rail, hole)).toThrow(LawBroken);
  });

  it('a result that is not valid', () => {
    const piled = validated({ ...kernel, union: (list) => list.flat() });
    expect(() => piled.union([plate, bore])).toThrow(/inside the metal of part 0/);
    expect(validated(kernel).union([plate, bore])).toHaveLength(1);
  });

  it('a lost piece, a lost hole and a false area, by the slab reference', () => {
    const left = subtract(plate, regions);
    expect(agreesWithSlabs(left, plate, regions, false)).toBeLessThan(1e-12);
    expect(() => agreesWithSlabs(left.slice(1), plate, regions, false)).toThrow(/slab reference: area/);
    const filled = left.map((part) => ({ ...part, holes: [] }));
    expect(() => agreesWithSlabs(filled, plate, regions, false)).toThrow(/slab reference: area/);
    // One piece of the area of two.
    const bar = boxRegion(40, -10, 50, 70);
    expect(() => agreesWithSlabs(boxRegion(0, 0, 90, 60), plate, [bar], false)).toThrow(
      /only the region has a piece of 5400/,
    );
  });

  it('a peer that is wrong, and says in what', () => {
    const cutCase = { family: 'by hand', unit: 'mm', outline: plate, cuts } as const;
    const right = { area: 0, pieces: 2, holes: 1 };
    for (const [answer, verdict] of [
      [{ ...right, area: 1 }, 'peer area wrong'],
      [{ ...right, area: NaN }, 'peer area wrong'],
    ] as const) {
      const peer = { name: 'by hand', thin: 0, areaSlack: () => 1e-6, subtract: () => answer };
      expect(comparePeer(peer, cutCase, false)?.verdict).toBe(verdict);
    }
  });
});
