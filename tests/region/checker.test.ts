import { areaOf, families, metalAngles, regionFaults } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slabs, slabsSubtract } from '../tools/slabs.js';
import { arcEdge, circleLoop, disc, type Loop, lineEdge, type Point, type Region, ring } from './kernel.js';

const polygon = (...corners: readonly [number, number][]): Loop => {
  const points = corners.map(([x, y]): Point => ({ x, y }));
  return points.map((p, k) => lineEdge(p, points[(k + 1) % points.length] ?? p));
};

const square = (x: number, y: number, side: number): Loop =>
  polygon([x, y], [x + side, y], [x + side, y + side], [x, y + side]);

const backwards = (loop: Loop): Loop =>
  [...loop]
    .reverse()
    .map((e) => (e.kind === 'line' ? { ...e, a: e.b, b: e.a } : { ...e, a: e.b, b: e.a, ccw: !e.ccw }));

const part = (outer: Loop, ...holes: Loop[]): Region => [{ outer, holes }];

const hole = (x: number, y: number, side: number): Loop => backwards(square(x, y, side));

/** A square with a joint in the middle of its lower side, where things can touch it. */
const jointed = polygon([0, 0], [5, 0], [10, 0], [10, 10], [0, 10]);

const kite = (x: number, y: number): Loop =>
  backwards(polygon([x, y], [x + 2, y + 2], [x, y + 4], [x - 2, y + 2]));

describe('the checker accepts', () => {
  it.each<[string, Region]>([
    ['nothing', []],
    ['a square', part(square(0, 0, 10))],
    ['a disc and a ring apart', [...disc({ x: 0, y: 0 }, 3), ...ring({ x: 20, y: 0 }, 5, 2)]],
    ['a part in the hole of another', [...ring({ x: 0, y: 0 }, 9, 6), ...disc({ x: 0, y: 0 }, 3)]],
    ['a hole that touches the outer loop at a joint', part(jointed, kite(5, 0))],
    ['holes that touch each other at a joint', part(square(0, 0, 10), kite(5, 1), kite(5, 5))],
    ['parts that meet at a corner', [...part(square(0, 0, 5)), ...part(square(5, 5, 5))]],
    [
      'parts tangent to each other at a joint',
      [...part(jointed), ...part([...polygon([5, 0], [4, -9], [6, -9])])],
    ],
  ])('%s', (_, region) => {
    expect(regionFaults(region)).toEqual([]);
  });

  it('every outline that the families draw, moved anywhere', () => {
    for (const { cases } of families) {
      for (const { outline, cuts } of fc.sample(cases, { seed: 20, numRuns: 40 })) {
        expect(regionFaults(outline)).toEqual([]);
        for (const cut of cuts) if (cut.kind === 'shape') expect(regionFaults(cut.region)).toEqual([]);
      }
    }
  });
});

describe('the checker refuses', () => {
  const first = square(0, 0, 10)[0] as (typeof jointed)[number];
  const [low, high] = circleLoop({ x: 0, y: 0 }, 5) as [Loop[number], Loop[number]];
  it.each<[string, Region, RegExp]>([
    [
      'a gap of one bit',
      part([{ ...first, a: { x: 2 ** -52, y: 0 } }, ...square(0, 0, 10).slice(1)]),
      /starts at/,
    ],
    ['an open chain', part(square(0, 0, 10).slice(1)), /starts at/],
    ['a loop of one edge', part([low]), /at least two/],
    [
      'an edge of no length',
      part([{ ...first, b: first.a }, first, ...square(0, 0, 10).slice(1)]),
      /no length/,
    ],
    ['a number that is none', part([{ ...low, radius: Number.NaN } as typeof low, high]), /not finite/],
    ['an end off its circle', part([{ ...low, radius: 5.001 } as typeof low, high]), /off its circle/],
    ['an outer loop run clockwise', part(backwards(square(0, 0, 10))), /area -100/],
    ['a hole run counter-clockwise', part(square(0, 0, 10), square(2, 2, 2)), /area 4/],
    ['a loop of no area', part(polygon([0, 0], [10, 0])), /run along each other|area 0/],
    ['a loop that crosses itself', part(polygon([0, 0], [10, 10], [10, 0], [0, 12])), /cross at/],
    ['a figure of eight', part(polygon([0, 0], [4, -3], [4, 3], [0, 0], [-4, 3], [-4, -3])), /twice/],
    [
      'a spike',
      part(polygon([0, 0], [10, 0], [15, 0], [10, 0], [10, 10], [0, 10])),
      /along each other|twice/,
    ],
    ['a hole through the outer loop', part(square(0, 0, 10), hole(8, 8, 4)), /cross at/],
    ['a hole outside', part(square(0, 0, 10), hole(20, 2, 2)), /not inside the outer/],
    ['a hole in a hole', part(square(0, 0, 10), hole(2, 2, 6), hole(3, 3, 2)), /inside hole/],
    ['a hole on an edge without a joint', part(square(0, 0, 10), kite(5, 0)), /without a common joint/],
    ['a hole along an edge', part(square(0, 0, 10), hole(0, 2, 2)), /without a common joint/],
    [
      'an arc that touches a line without a joint',
      [
        ...part(square(0, 0, 10)),
        ...part([
          arcEdge({ x: 5, y: -4 }, { x: 5, y: 0 }, { x: 5, y: -2 }, true),
          arcEdge({ x: 5, y: 0 }, { x: 5, y: -4 }, { x: 5, y: -2 }, true),
        ]),
      ],
      /without a common joint/,
    ],
    ['parts that overlap', [...part(square(0, 0, 5)), ...part(square(4, 4, 5))], /cross at/],
    [
      'a part inside another',
      [...part(square(0, 0, 9)), ...part(square(4, 4, 2))],
      /inside the metal of part 0/,
    ],
    ['the same part twice', [...part(square(0, 0, 9)), ...part(square(0, 0, 9))], /along each other/],
    ['parts that share an edge', [...part(square(0, 0, 5)), ...part(square(5, 0, 5))], /along each other/],
    [
      'holes that touch in a ring and cut out a piece',
      part(square(-20, -20, 50), kite(0, 0), kite(2, 2), kite(4, 0), kite(2, -2)),
      /more than one piece/,
    ],
    [
      'parts that cross at a joint',
      [...part(polygon([0, 0], [5, -5], [10, 0], [5, 5])), ...part(polygon([0, 0], [3, 0.5], [-5, 9]))],
      /take turns|passages cross/,
    ],
  ])('%s', (_, region, fault) => {
    expect(regionFaults(region).join('\n')).toMatch(fault);
  });

  it('an arc that bulges through a line by a thousandth', () => {
    const bulging = [
      lineEdge({ x: 0, y: 0 }, { x: 10, y: 0 }),
      lineEdge({ x: 10, y: 0 }, { x: 10, y: 5 }),
      arcEdge({ x: 10, y: 5 }, { x: 0, y: 5 }, { x: 5, y: 5 + 2.4989999 }, false),
      lineEdge({ x: 0, y: 5 }, { x: 0, y: 0 }),
    ];
    // Radius 5.5894: the lowest place of the arc is 0.0905 above the line; moved down, it passes it.
    expect(regionFaults(part(bulging))).toEqual([]);
    const lowered = arcEdge({ x: 10, y: 5 }, { x: 0, y: 5 }, { x: 5, y: 7.4 }, false);
    const reach = 7.4 - Math.hypot(5, 2.4);
    const floor = polygon([-1, reach + 0.001], [11, reach + 0.001], [11, 5], [10, 5]);
    const loop = [...floor.slice(0, 3), lowered, lineEdge({ x: 0, y: 5 }, { x: -1, y: reach + 0.001 })];
    expect(regionFaults(part(loop)).join()).toMatch(/cross at/);
  });
});

describe('angles of metal at joints', () => {
  const degrees = (region: Region): number[] =>
    region.flatMap(metalAngles).map((angle) => Math.round((angle * 180e6) / Math.PI) / 1e6);

  it('of an L are five right angles and one of 270 degrees', () => {
    const ell = part(polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 9], [0, 9]));
    expect(degrees(ell)).toEqual([90, 90, 90, 270, 90, 90]);
  });

  it('of a square with a touching diamond are split where they touch', () => {
    expect(degrees(part(jointed, kite(5, 0))).sort((a, b) => a - b)).toEqual([
      45, 45, 90, 90, 90, 90, 270, 270, 270,
    ]);
  });

  it('of a disc tangent to a side from within are two cusps', () => {
    const touching = backwards([
      arcEdge({ x: 5, y: 0 }, { x: 5, y: 4 }, { x: 5, y: 2 }, true),
      arcEdge({ x: 5, y: 4 }, { x: 5, y: 0 }, { x: 5, y: 2 }, true),
    ]);
    expect(degrees(part(jointed, touching)).sort((a, b) => a - b)).toEqual([0, 0, 90, 90, 90, 90, 180]);
  });
});

describe('the slab reference', () => {
  it('finds the lens of two discs of radius 4, centres 6 apart (codeforces 600 D, sample 1)', () => {
    const lens = slabs(
      [disc({ x: 0, y: 0 }, 4), disc({ x: 6, y: 0 }, 4)],
      ([a, b]) => a === true && b === true,
    );
    expect(lens.area).toBeCloseTo(7.252988063641756, 12);
    expect(lens.pieces).toHaveLength(1);
  });

  it('tells pieces and enclosed holes, and takes touching holes for one', () => {
    const plate = part(square(0, 0, 100));
    const two = slabsSubtract(plate, [disc({ x: 30, y: 50 }, 10), disc({ x: 60, y: 50 }, 10)]);
    expect(two.pieces.map((p) => p.enclosed)).toEqual([2]);
    const touching = slabsSubtract(plate, [disc({ x: 30, y: 50 }, 10), disc({ x: 50, y: 50 }, 10)]);
    expect(touching.pieces.map((p) => p.enclosed)).toEqual([1]);
    const kerf = slabsSubtract(plate, [ring({ x: 50, y: 50 }, 20, 15)]);
    expect(kerf.pieces.map((p) => p.enclosed)).toEqual([1, 0]);
    expect(kerf.pieces.map((p) => p.area)).toEqual([
      expect.closeTo(10000 - 400 * Math.PI, 9),
      expect.closeTo(225 * Math.PI, 9),
    ]);
    const edge = slabsSubtract(plate, [disc({ x: 50, y: 10 }, 10)]);
    expect(edge.pieces.map((p) => p.enclosed)).toEqual([0]);
  });

  it('agrees with Green on every outline, wherever it lies', () => {
    for (const { cases } of families) {
      for (const { outline } of fc.sample(cases, { seed: 21, numRuns: 10 })) {
        const found = slabs([outline], ([inside]) => inside === true);
        expect(Math.abs(found.area - areaOf(outline)) / areaOf(outline)).toBeLessThan(1e-11);
        expect(found.pieces.map((p) => p.enclosed)).toEqual(outline.map((p) => p.holes.length));
      }
    }
  });
});
