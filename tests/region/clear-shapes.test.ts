import {
  arcEdge,
  area,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  offset,
  offsetPath,
  type Point,
  type Region,
  ring,
  subtract,
  union,
  xor,
} from '@edgebite/core';
import { boxRegion, validateRegion } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearShapes } from '../../packages/core/src/clear/clear-cut.js';
import { loopsOf } from '../../packages/core/src/region/measure.js';
import { runs } from '../tools/runs.js';
import { slabsSubtract } from '../tools/slabs.js';
import { closed, p } from './shapes.js';

/*
 * Regions of any lines and arcs taken out of others without an overlay: against areas in slabs (`tests/tools/slabs.ts`),
 * against overlays only, and closed forms of slots and rings (elementary, no source).
 */

const PLATE = boxRegion(0, 0, 100, 60);
const FRAME = { minX: 0, minY: 0, maxX: 100, maxY: 60 };
/** A billionth of the plate's longer side. */
const WELD = 1e-7;

const tried = (from: Region, cuts: readonly Region[]) => clearShapes(from, cuts.map(loopsOf), FRAME);

/** What is left, which the direct way must have found. */
function left(from: Region, ...cuts: readonly Region[]): Region {
  const found = tried(from, cuts) as Region;
  expect(found).not.toBeNull();
  validateRegion(found, { extent: 100 });
  return found;
}

const slot = (x: number, y: number, dx: number, dy: number, radius: number): Region =>
  offsetPath([lineEdge(p(x, y), p(x + dx, y + dy), 'cut:slot')], radius);
const loopCount = (region: Region) => region.map(({ holes }) => holes.length);
const edgeCount = (region: Region) => loopsOf(region).flat().length;

describe('cuts of lines and arcs, nothing near to touching', () => {
  it('leave what overlays leave, edge for edge in number, and the area in slabs', () => {
    const number = (min: number, max: number) =>
      fc.integer({ min: 1000 * min, max: 1000 * max }).map((n) => n / 1000 + 0.000137);
    const place = fc.record({ x: number(-5, 105), y: number(-5, 65) });
    const shape = fc.oneof(
      fc.tuple(place, number(1, 12)).map(([at, r]) => disc(at, r, 'cut:a')),
      fc.tuple(place, number(3, 12), number(0.3, 0.9)).map(([at, r, share]) => ring(at, r, r * share)),
      fc
        .tuple(place, number(-20, 20), number(3, 20), number(0.5, 4))
        .map(([{ x, y }, dx, dy, r]) => slot(x, y, dx, dy, r)),
      fc
        .tuple(place, number(3, 15), number(0.3, 2), number(0, 3))
        .map(([{ x, y }, r, round, turn]) =>
          offset([{ outer: closed(...[0, 2, 4].map((k) => at(x, y, r, turn + k))), holes: [] }], round),
        ),
    );
    const shapes = fc.array(shape, { minLength: 1, maxLength: 9 });
    let clear = 0;
    let all = 0;
    fc.assert(
      fc.property(shapes, shapes, (first, cuts) => {
        // By overlays only.
        const less = (whole: Region, gone: Region) => xor([union([whole, gone]), gone]);
        const from = less(PLATE, union(first));
        const found = tried(from, cuts);
        all++;
        if (found === null) return;
        clear++;
        validateRegion(found, { extent: 100 });
        const wanted = less(from, union(cuts));
        expect(Math.abs(area(found) - area(wanted))).toBeLessThan(1e-8);
        expect(loopCount(found).sort()).toEqual(loopCount(wanted).sort());
        expect(Math.abs(area(found) - slabsSubtract(from, cuts).area)).toBeLessThan(1e-6);
      }),
      { numRuns: runs(150) },
    );
    expect(clear).toBeGreaterThan(all * 0.9);
  });

  const at = (x: number, y: number, r: number, turn: number) =>
    p(x + r * Math.cos(turn), y + r * Math.sin(turn));

  it('are holes where they meet nothing; beyond the region they change nothing', () => {
    const inside = slot(20, 20, 10, 5, 2);
    const found = left(PLATE, inside, slot(200, 20, 3, 3, 1));
    expect(loopCount(found)).toEqual([1]);
    expect(area(found)).toBeCloseTo(6000 - (4 * Math.hypot(10, 5) + 4 * Math.PI), 9);
    expect(left(PLATE, slot(200, 20, 3, 3, 1))).toEqual(PLATE);
    expect(left(PLATE, slot(50, 30, 1, 0, 90))).toEqual([]);
  });

  it('leave the middle of a ring as a part of its own', () => {
    const found = left(PLATE, ring(p(40, 30), 10, 6, 'cut:ring'), slot(39, 30, 2, 1, 1));
    expect(found).toHaveLength(2);
    expect(area(found)).toBeCloseTo(6000 - 64 * Math.PI - (2 * Math.hypot(2, 1) + Math.PI), 9);
  });

  it('take a cut that lies within another one for none', () => {
    const found = left(PLATE, slot(30, 30, 20, 0.1, 8), slot(32, 30, 10, 1, 2), ring(p(44, 30), 4, 2));
    expect(loopCount(found)).toEqual([1]);
    expect(edgeCount(found)).toBe(4 + 4);
  });

  it('make one edge of the two arcs of a disc where another cut goes over their joint', () => {
    // The disc has joints at its lowest and highest point; the slot leaves both.
    const found = left(PLATE, disc(p(50, 30), 10, 'cut:a'), slot(50, 30, 30, 1, 3));
    expect(edgeCount(found)).toBe(4 + 1 + 3);
  });

  it('leave a joint of the region where another part of it touches', () => {
    const lens = [...disc(p(30, 30), 10), ...disc(p(50, 30), 10)].map(({ outer }) => outer.map(turned));
    // Two discs with joints at their sides, which touch in one of them.
    const from = lens.map((outer): Region[number] => ({ outer, holes: [] }));
    const found = left(from, slot(30, 34, 1, 9, 1));
    expect(found).toHaveLength(2);
    expect(found.flatMap(({ outer }) => outer).filter(({ a }) => a.x === 40 && a.y === 30)).toHaveLength(2);
  });

  /** An arc of a circle from its side, a quarter turn on. */
  const turned = (edge: Edge): Edge => {
    if (edge.kind === 'line') return edge;
    const { center, a, b } = edge;
    const quarter = ({ x, y }: Point) => p(center.x - (y - center.y), center.y + (x - center.x));
    return { ...edge, a: quarter(a), b: quarter(b) };
  };
});

describe('what an overlay has to tell', () => {
  const isClear = (from: Region, ...cuts: readonly Region[]) => tried(from, cuts) !== null;

  it.each([
    ['an end on an edge', (gap: number) => boxRegion(20, gap, 30, 20)],
    ['an arc that touches an edge', (gap: number) => slot(20, 5 + gap, 10, 5, 5)],
    ['an edge beside another', (gap: number) => boxRegion(20, -10, 30, gap)],
  ])('%s, until 64 tolerances away', (_, cut) => {
    for (const side of [-1, 1]) {
      expect(isClear(PLATE, cut(side * 60 * WELD))).toBe(false);
      expect(isClear(PLATE, cut(side * 70 * WELD))).toBe(true);
    }
    expect(isClear(PLATE, cut(0))).toBe(false);
  });

  it('crossings of three edges in one place', () => {
    const cut = (away: number): Region => [
      { outer: closed(p(30, -10), p(50 + away, 10), p(20, 20)), holes: [] },
    ];
    // Both cross the lower edge at 40.
    expect(isClear(PLATE, cut(0), [{ outer: closed(p(40, -5), p(80, 3), p(40, 7)), holes: [] }])).toBe(false);
    expect(isClear(PLATE, cut(0.5), [{ outer: closed(p(40, -5), p(80, 3), p(40, 7)), holes: [] }])).toBe(
      true,
    );
  });

  it('a cut whose edges go on in the next one under one name', () => {
    const arcs = [0, 1, 2]
      .map((k) => (k * 2 * Math.PI) / 3)
      .map((a) => p(50 + 5 * Math.cos(a), 30 + 5 * Math.sin(a)));
    const named = (names: readonly string[]): Loop =>
      arcs.map((a, k) => arcEdge(a, arcs[(k + 1) % 3] as typeof a, p(50, 30), true, names[k]));
    expect(isClear(PLATE, [{ outer: named(['a', 'a', 'a']), holes: [] }])).toBe(false);
    expect(isClear(PLATE, [{ outer: named(['a', 'b', 'c']), holes: [] }])).toBe(true);
    const straight = closed(p(10, 10), p(15, 10), p(20, 10), p(20, 20));
    expect(isClear(PLATE, [{ outer: straight, holes: [] }])).toBe(false);
  });

  it('a cut whose loops touch each other', () => {
    const square = (x: number) => closed(p(x, 30), p(x + 5, 25), p(x + 10, 30), p(x + 5, 35));
    expect(
      isClear(PLATE, [
        { outer: square(20), holes: [] },
        { outer: square(30), holes: [] },
      ]),
    ).toBe(false);
  });

  it('is told the same by `subtract`, whichever way it takes', () => {
    for (const gap of [0, 1e-9, WELD / 2, WELD, 5 * WELD, 63 * WELD, 65 * WELD, 1e-3]) {
      const found = subtract(PLATE, [slot(20, 5 + gap, 10, 5, 5), slot(60, 59, 4, 4, 2)]);
      validateRegion(found, { extent: 100 });
      const wanted = slabsSubtract(PLATE, [slot(20, 5 + gap, 10, 5, 5), slot(60, 59, 4, 4, 2)]).area;
      expect(Math.abs(area(found) - wanted)).toBeLessThan(1e-5);
    }
  });
});
