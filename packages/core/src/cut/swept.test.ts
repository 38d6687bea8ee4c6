import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestOnEdge } from '../geometry/distance.js';
import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { reversed } from '../geometry/parts.js';
import type { Point } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { area, boundsOf, loopsOf, perimeter } from '../region/measure.js';
import { sweptRegion } from './swept.js';

const P = (x: number, y: number): Point => ({ x, y });
const O = P(0, 0);
const at = (r: number, degrees: number, c: Point = O): Point =>
  P(c.x + r * Math.cos((degrees * Math.PI) / 180), c.y + r * Math.sin((degrees * Math.PI) / 180));
const arcOf = (r: number, from: number, turn: number): Edge =>
  arcEdge(at(r, from), at(r, from + turn), O, turn > 0);
const polyline = (...points: Point[]): Edge[] =>
  points.slice(1).map((b, i) => lineEdge(points[i] as Point, b));

/** Area that two discs of radius r at distance d have in common (elementary: two circular segments). */
const lens = (r: number, d: number): number =>
  2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);

describe('sweptRegion', () => {
  // Elementary: rectangle and disc.
  it('of a line is a slot', () => {
    const region = sweptRegion([lineEdge(P(1, 2), P(4, 6))], 0.5, 'cut:x');
    expect(area(region)).toBeCloseTo(5 + Math.PI / 4, 12);
    expect(perimeter(region)).toBeCloseTo(10 + Math.PI, 12);
    expect(region[0]?.outer).toHaveLength(4);
    expect(
      new Set(
        loopsOf(region)
          .flat()
          .map(({ source }) => source),
      ),
    ).toEqual(new Set(['cut:x']));
  });

  // Pappus' theorem: the band along an arc has the area of width times length, and the ends make a disc.
  it.each([1, 30, 90, 179, 180, 181, 270, 300])(
    'of an arc of %d degrees wider than the tool is a bent slot',
    (turn) => {
      const r = 0.75;
      const size = 2 * r * 5 * ((turn * Math.PI) / 180) + Math.PI * r * r;
      for (const edge of [arcOf(5, 20, turn), arcOf(5, 20, -turn)]) {
        expect(area(sweptRegion([edge], r))).toBeCloseTo(size, 10);
        expect(area(sweptRegion([reversed(edge)], r))).toBeCloseTo(size, 10);
      }
    },
  );

  // Elementary: half a disc of radius R + r over half of two discs of radius r at distance 2R.
  it.each([
    [1, 1.5],
    [1, 10],
    [1, 1.000001],
    [1, 1],
    [1, 1 + 2 ** -50],
  ])('of half a turn of radius %d with a tool of radius %d covers the centre', (radius, r) => {
    const size =
      (Math.PI * (radius + r) ** 2) / 2 + (2 * Math.PI * r * r - lens(r, Math.min(2 * radius, 2 * r))) / 2;
    expect(area(sweptRegion([arcOf(radius, 0, 180)], r))).toBeCloseTo(size, 8);
    expect(area(sweptRegion([arcOf(radius, 77, -180)], r))).toBeCloseTo(size, 8);
  });

  // Elementary: a ring, or a disc once the tool covers the centre.
  it('of a full circle is a ring, or a disc', () => {
    const circle = [arcOf(5, 0, 180), arcOf(5, 180, 180)];
    expect(area(sweptRegion(circle, 2))).toBeCloseTo(Math.PI * (49 - 9), 9);
    expect(sweptRegion(circle, 2)[0]?.holes).toHaveLength(1);
    expect(area(sweptRegion(circle, 5))).toBeCloseTo(Math.PI * 100, 7);
    expect(sweptRegion(circle, 5)[0]?.holes).toHaveLength(0);
    expect(area(sweptRegion(circle, 6))).toBeCloseTo(Math.PI * 121, 9);
    expect(area(sweptRegion([arcOf(5, 0, 200), arcOf(5, 200, 160)], 2))).toBeCloseTo(Math.PI * 40, 9);
  });

  // Elementary: at a right-angled corner the bands share an r by r square, and a quarter disc fills the outside.
  it('of a corner is sharp inside and round outside', () => {
    const region = sweptRegion(polyline(P(0, 0), P(10, 0), P(10, 10)), 2);
    expect(area(region)).toBeCloseTo(2 * 40 - 4 + Math.PI + 4 * Math.PI, 10);
    expect(contains(region, P(8, 2))).toBe('boundary');
  });

  // Elementary: the square grown by 2 with round corners, without the square shrunk by 2.
  it('of a closed path has a hole', () => {
    const region = sweptRegion(polyline(P(0, 0), P(10, 0), P(10, 10), P(0, 10), P(0, 0)), 2);
    expect(area(region)).toBeCloseTo(100 + 80 + 4 * Math.PI - 36, 10);
    expect(region).toHaveLength(1);
    expect(region[0]?.holes).toHaveLength(1);
  });

  it('of a smooth path of lines and arcs has the area of a band', () => {
    const bend = arcEdge(P(10, 0), P(15, 5), P(10, 5), true);
    const region = sweptRegion([lineEdge(O, P(10, 0)), bend, lineEdge(P(15, 5), P(15, 9))], 1);
    expect(area(region)).toBeCloseTo(2 * (14 + 2.5 * Math.PI) + Math.PI, 10);
    expect(region[0]?.outer).toHaveLength(8);
  });

  it('of a path that crosses itself is one region', () => {
    const region = sweptRegion(polyline(P(0, 0), P(10, 10), P(10, 0), P(0, 10)), 1);
    expect(region).toHaveLength(1);
    expect(region[0]?.holes).toHaveLength(1);
  });

  it('of a path run twice is that of the path', () => {
    const path = polyline(P(0, 0), P(7, 1), P(3, 5));
    const there = area(sweptRegion(path, 1));
    expect(area(sweptRegion([...path, ...path.map(reversed).reverse()], 1))).toBeCloseTo(there, 10);
  });

  // The definition: a place is cut if it lies within the tool's radius of the path.
  it('holds exactly the places within the radius of the path', () => {
    const coordinate = fc.double({ min: -10, max: 10, noNaN: true });
    const point = fc.record({ x: coordinate, y: coordinate });
    const edge = fc.oneof(
      fc.tuple(point, point).map(([a, b]) => lineEdge(a, P(b.x + 0.1, b.y + 0.1))),
      fc
        .tuple(
          point,
          fc.double({ min: 0.1, max: 8, noNaN: true }),
          fc.integer({ min: 0, max: 23 }),
          fc.integer({ min: -23, max: 23 }).filter((n) => n !== 0),
        )
        .map(([c, r, from, turn]) => arcEdge(at(r, from * 15, c), at(r, (from + turn) * 15, c), c, turn > 0)),
    );
    fc.assert(
      fc.property(
        fc.array(edge, { minLength: 1, maxLength: 5 }),
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        fc.array(
          fc.record({
            x: fc.double({ min: 0, max: 1, noNaN: true }),
            y: fc.double({ min: 0, max: 1, noNaN: true }),
          }),
          {
            minLength: 30,
            maxLength: 30,
          },
        ),
        (path, r, probes) => {
          const region = sweptRegion(path, r);
          const box = boundsOf(region);
          if (box === null) throw new Error('nothing was cut');
          for (const share of probes) {
            const p = P(
              box.minX + share.x * (box.maxX - box.minX),
              box.minY + share.y * (box.maxY - box.minY),
            );
            const away = Math.min(...path.map((one) => nearestOnEdge(one, p).distance));
            if (Math.abs(away - r) > 1e-6) expect(contains(region, p)).toBe(away < r ? 'inside' : 'outside');
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('keeps its shape at any size and far from zero', () => {
    for (const scale of [1e-3, 1, 1e3]) {
      const shift = 1e4 * scale;
      const move = (p: Point): Point => P(p.x * scale + shift, p.y * scale - shift);
      const path = [
        lineEdge(move(O), move(P(10, 0))),
        arcEdge(move(P(10, 0)), move(P(15, 5)), move(P(10, 5)), true),
      ];
      expect(area(sweptRegion(path, scale)) / scale ** 2).toBeCloseTo(2 * (10 + 2.5 * Math.PI) + Math.PI, 6);
      const tight = sweptRegion([arcEdge(move(P(1, 0)), move(P(-1, 0)), move(O), true)], scale);
      expect(area(tight) / scale ** 2).toBeCloseTo(3 * Math.PI, 5);
    }
  });

  it('refuses a path without edges and a radius that is not over 0', () => {
    expect(() => sweptRegion([], 1)).toThrow('sweptRegion: the path has no edges');
    expect(() => sweptRegion([lineEdge(O, P(1, 0))], 0)).toThrow(
      'radius is 0; it must be a finite number over 0',
    );
    expect(() => sweptRegion([lineEdge(O, P(1, 0))], Number.NaN)).toThrow(RangeError);
  });
});
