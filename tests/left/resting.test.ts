import { type Point, type Region, reversed } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circlesMeet, lineCircle, restingPlaces } from '../../packages/core/src/left/discs.js';
import { type Wall, type Walls, wallsOf } from '../../packages/core/src/left/walls.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { hole, loopThrough, round, section } from './section-builder.js';

const at = (x: number, y: number): Point => ({ x, y });
const away = (a: Point, b: Point) => Math.hypot(b.x - a.x, b.y - a.y);
const coordinate = evenly(-50, 50);
const places = fc.record({ x: coordinate, y: coordinate });
const size = fc.double({ min: 0.1, max: 60, noNaN: true });

describe('two circles', () => {
  it('meet in two places as far from either centre as its radius, if the triangle inequality lets them', () => {
    fc.assert(
      fc.property(places, size, places, size, (c, r, e, s) => {
        const d = away(c, e);
        fc.pre(Math.min(Math.abs(d - r - s), Math.abs(d - Math.abs(r - s)), d) > 1e-3);
        const found = circlesMeet(c, r, e, s);
        expect(found).toHaveLength(d < r + s && d > Math.abs(r - s) ? 2 : 0);
        for (const p of found) {
          expect(away(p, c)).toBeCloseTo(r, 8);
          expect(away(p, e)).toBeCloseTo(s, 8);
        }
        if (found.length > 0) expect(away(found[0] as Point, found[1] as Point)).toBeGreaterThan(1e-3);
      }),
      { numRuns: Math.max(100, runs(500)) },
    );
  });

  it('do not meet if a radius is under 0, however far they are apart', () => {
    for (const d of [0.1, 1, 3.9, 4, 5, 6, 7, 100]) {
      for (const [r, s] of [
        [-1, 5],
        [5, -1],
        [-1, -5],
        [-1e-9, 5],
      ] as const) {
        expect(circlesMeet(at(0, 0), r, at(d, 0), s)).toEqual([]);
      }
      expect(lineCircle(at(0, d - 4), { dx: 1, dy: 0 }, at(0, 0), -1)).toEqual([]);
    }
  });

  it('meet in one place twice where they touch, and nowhere round one centre', () => {
    expect(circlesMeet(at(0, 0), 3, at(5, 0), 2)).toEqual([at(3, 0), at(3, 0)]);
    expect(circlesMeet(at(0, 0), 5, at(3, 0), 2)).toEqual([at(5, 0), at(5, 0)]);
    expect(circlesMeet(at(1, 2), 5, at(1, 2), 5)).toEqual([]);
    expect(circlesMeet(at(1, 2), 5, at(1, 2), 3)).toEqual([]);
  });
});

describe('a line and a circle', () => {
  // MathWorld, "Circle-Line Intersection": they meet where the line is nearer to the centre than the radius.
  it('meet in two places on both, in the order of the line, if it comes near enough', () => {
    fc.assert(
      fc.property(places, fc.double({ min: 0, max: 6.28, noNaN: true }), places, size, (a, angle, c, r) => {
        const along = { dx: Math.cos(angle), dy: Math.sin(angle) };
        const off = (p: Point) => (p.x - a.x) * along.dy - (p.y - a.y) * along.dx;
        const onward = (p: Point) => (p.x - a.x) * along.dx + (p.y - a.y) * along.dy;
        fc.pre(Math.abs(Math.abs(off(c)) - r) > 1e-3);
        const found = lineCircle(a, along, c, r);
        expect(found).toHaveLength(Math.abs(off(c)) < r ? 2 : 0);
        for (const p of found) {
          expect(off(p)).toBeCloseTo(0, 8);
          expect(away(p, c)).toBeCloseTo(r, 8);
        }
        if (found.length > 0) expect(onward(found[0] as Point)).toBeLessThan(onward(found[1] as Point));
      }),
      { numRuns: Math.max(100, runs(500)) },
    );
  });

  it('meet in one place twice where they touch', () => {
    expect(lineCircle(at(-7, 5), { dx: 1, dy: 0 }, at(0, 0), 5)).toEqual([at(0, 5), at(0, 5)]);
  });
});

describe('a disc that rests on two walls', () => {
  /** A rounded end with two holes in it, and a triangle. */
  const walls = wallsOf([
    ...section(round(0, 0, 20), hole(3, 4, 5), hole(-8, -7, 4)),
    ...section(
      loopThrough([
        [100, 0],
        [140, 0],
        [140, 30],
      ]),
    ),
  ] as Region) as Walls;

  /** How far a place is from all that a wall runs on along, with its sign: over 0 in metal. */
  const inMetal = (wall: Wall, p: Point) =>
    wall.shape === 'flat'
      ? (p.x - wall.edge.a.x) * wall.normal.dx + (p.y - wall.edge.a.y) * wall.normal.dy
      : wall.side * (wall.radius - away(p, wall.center));

  it('lies as far as its radius from both, in the metal', () => {
    let count = 0;
    walls.list.forEach((p, i) => {
      walls.list.forEach((q, j) => {
        for (const radius of [1, 3, 4.5]) {
          for (const center of i === j ? [] : restingPlaces(p, q, radius)) {
            count++;
            expect(inMetal(p, center)).toBeCloseTo(radius, 9);
            expect(inMetal(q, center)).toBeCloseTo(radius, 9);
          }
        }
      });
    });
    expect(count).toBeGreaterThan(50);
  });

  it('is found in both orders', () => {
    for (const p of walls.list) {
      for (const q of walls.list) {
        const sorted = (places: readonly Point[]) => [...places].sort((a, b) => a.x - b.x || a.y - b.y);
        const [one, other] = [sorted(restingPlaces(p, q, 2)), sorted(restingPlaces(q, p, 2))];
        expect(one).toHaveLength(other.length);
        for (const [k, center] of one.entries()) {
          expect(away(center, other[k] as Point)).toBeLessThan(1e-9);
        }
      }
    }
  });

  it('is none that does not fit into the rounded end, nor between walls that run side by side', () => {
    const end = walls.list.find((wall) => wall.shape === 'arc' && wall.side > 0) as Wall;
    const bore = walls.list.find((wall) => wall.shape === 'arc' && wall.radius === 5) as Wall;
    const flat = walls.list.find((wall) => wall.shape === 'flat') as Wall;
    for (const other of [bore, flat]) {
      expect(restingPlaces(end, other, 21)).toEqual([]);
      expect(restingPlaces(other, end, 21)).toEqual([]);
    }
    const facing = { ...flat, edge: reversed(flat.edge) } as Wall;
    expect(restingPlaces(flat, facing, 2)).toEqual([]);
  });
});
