import {
  arcEdge,
  area,
  centerPath,
  circleLoop,
  contains,
  disc,
  type Edge,
  edgeLength,
  edgesOfPass,
  gouges,
  intersect,
  lineEdge,
  nearestOnEdge,
  type Point,
  pointAlong,
  type Region,
  rectangle,
  sweptRegion,
} from '@edgebite/core';
import { edgesOf, outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathCases, sizeOf } from '../tools/path-cases.js';
import { pathOf } from '../tools/path-check.js';
import { runs } from '../tools/runs.js';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const L = (x: number, y: number, u: number, v: number): Edge => lineEdge(P(x, y), P(u, v));
const plate: Region = block(100, 60);

describe('gouges', () => {
  it('finds none where the tool touches, or keeps off', () => {
    expect(gouges([L(-20, -5, 120, -5)], 5, plate)).toEqual([]);
    expect(gouges([L(-20, -6, 120, -6)], 5, plate)).toEqual([]);
    expect(gouges([L(0, 30, 100, 30)], 5, plate, { side: 'inside', tolerance: 6 })).toEqual([]);
    expect(gouges([L(5, 30, 95, 30)], 5, plate, { side: 'inside' })).toEqual([]);
    expect(gouges([], 5, plate)).toEqual([]);
    expect(gouges([L(0, 0, 9, 9)], 5, [])).toEqual([]);
  });

  it('tells depth, area, place and edges where a wall is cut back', () => {
    const [one, ...more] = gouges(
      [L(-20, -9, 20, -4.8), L(20, -4.8, 80, -4.8), L(80, -4.8, 120, -9)],
      5,
      plate,
    );
    expect(more).toEqual([]);
    near(one?.depth ?? 0, 0.2, 1e-13);
    expect(one).toMatchObject({ edge: 0, sources: ['outline:0'] });
    near((one?.center.x ?? 0) - (one?.at.x ?? 1), 0, 1e-9, 100);
    near(area(one?.cut ?? []), one?.area ?? 0);
    expect(one?.area).toBeGreaterThan(12);
  });

  it('tells several places apart, deepest first', () => {
    const found = gouges([L(20, -5, 20, -4.7), L(60, -9, 60, -4.5)], 5, plate);
    expect(found.map(({ edge }) => edge)).toEqual([1, 0]);
    near(found[0]?.depth ?? 0, 0.5, 1e-13);
    near(found[1]?.depth ?? 0, 0.3, 1e-13);
    // A segment of height h off a circle of radius r: r^2 acos(1 - h/r) - (r - h) sqrt(2 r h - h^2), the handbook's.
    const [r, h] = [5, 0.5];
    near(found[0]?.area ?? 0, r * r * Math.acos(1 - h / r) - (r - h) * Math.sqrt(2 * r * h - h * h), 1e-9);
  });

  it('finds a corner cut off, and a hole cut too wide', () => {
    const [corner] = gouges([L(-9, 3, -3, 64), L(-3, 64, 9, 64)], 5, plate);
    expect(corner?.sources).toContain('outline:3');
    const drilled: Region = [
      { outer: rectangle(100, 60), holes: [circleLoop(P(50, 30), 12, false, 'hole:0:0')] },
    ];
    const [hole, ...more] = gouges(circleLoop(P(50, 30), 7.01), 5, drilled);
    expect(more).toEqual([]);
    near(hole?.depth ?? 0, 0.01, 1e-11);
    near(hole?.area ?? 0, Math.PI * (12.01 ** 2 - 144), 1e-9);
    expect(hole?.sources).toEqual(['hole:0:0']);
    expect(hole?.cut[0]?.holes).toHaveLength(1);
  });

  it('counts how far the centre itself goes under the surface', () => {
    // Straight in to 22 under the lower face, then out through the right one.
    const path = [L(50, -10, 50, 22), L(50, 22, 130, 22)];
    const [one] = gouges(path, 5, plate);
    near(one?.depth ?? 0, 27, 1e-8);
    nearPlace(one?.center ?? P(0, 0), P(50, 22), 100, 1e-8);
    nearPlace(one?.at ?? P(9, 9), P(50, 0), 100, 1e-8);
    // Along the middle, 60 high: deepest where the distances to two faces are equal, by bisection.
    const [middle] = gouges([L(-20, 31, 120, 31)], 5, plate);
    near(middle?.depth ?? 0, 5 + 29, 1e-8);
    // All of it under the surface, far from any edge.
    const [inner] = gouges([L(40, 30, 60, 30)], 2, plate);
    near(inner?.depth ?? 0, 32, 1e-8);
    expect(inner?.sources).toEqual([]);
    // On a circle round a corner the deepest place is on the bisector, where no edge of the path ends.
    const [arc] = gouges([arcEdge(P(30, -20), P(-20, 30), P(0, 0), true)], 1, plate);
    near(arc?.depth ?? 0, 1 + Math.sqrt(1300 / 2), 1e-8);
  });

  it('protects all but a pocket, if asked', () => {
    const found = gouges([L(50, 10, 50, 66)], 5, plate, { side: 'inside' });
    expect(found).toHaveLength(1);
    near(found[0]?.depth ?? 0, 11, 1e-8);
    near(found[0]?.area ?? 0, 10 * 6 + (Math.PI * 25) / 2, 1e-12);
    expect(found[0]?.sources).toEqual(['outline:2']);
  });

  it('reports what is too thin for a region as well', () => {
    // The corner of the tool's circle touches a tip 2e-6 deep: less than a billionth of the area.
    const needle: Region = [
      { outer: [L(0, 0, 100, -1e-4), L(100, -1e-4, 100, 1e-4), L(100, 1e-4, 0, 0)], holes: [] },
    ];
    const [one, ...more] = gouges([L(-5 + 2e-6, -1, -5 + 2e-6, 1)], 5, needle);
    expect(more).toEqual([]);
    near(one?.depth ?? 0, 2e-6, 1e-8);
    nearPlace(one?.at ?? P(9, 9), P(0, 0), 1);
  });

  it('tells just how much too large a tool is for a path, on generated outlines', () => {
    let found = 0;
    fc.assert(
      fc.property(pathCases, fc.integer({ min: 1, max: 900 }), (one, thousandths) => {
        const path = pathOf(one);
        if (path === null) return;
        const extra = one.radius * (thousandths / 1000);
        if (extra < 1e-7 * sizeOf(one)) return;
        for (const pass of path.passes) {
          const places = gouges(pass.cut, one.radius + one.allowance + extra, one.region, { side: one.side });
          expect(Math.abs((places[0]?.depth ?? 0) - extra)).toBeLessThan(2e-9 * sizeOf(one));
          found += 1;
        }
      }),
      { numRuns: runs(60) },
    );
    expect(found).toBeGreaterThan(runs(20));
  });

  it('finds what sampling finds, on paths that have nothing to do with the outline', () => {
    const path = fc
      .array(fc.record({ x: fc.integer({ min: -80, max: 140 }), y: fc.integer({ min: -80, max: 140 }) }), {
        minLength: 2,
        maxLength: 4,
      })
      .map((points) =>
        points.flatMap((b, k) => {
          const a = points[k - 1];
          return a === undefined || (a.x === b.x && a.y === b.y) ? [] : [lineEdge(a, b)];
        }),
      )
      .filter((edges) => edges.length > 0);
    fc.assert(
      fc.property(
        outlines,
        path,
        fc.integer({ min: 1, max: 20 }),
        fc.boolean(),
        (region, edges, radius, outside) => {
          const side = outside ? 'outside' : 'inside';
          const places = gouges(edges, radius, region, { side });
          const sampled = Math.max(...edges.map((edge) => sampledDepth(region, edge, radius, outside)));
          const deepest = places[0]?.depth ?? 0;
          expect(deepest).toBeGreaterThan(sampled - 1e-6);
          if (sampled > 0.5) expect(deepest).toBeLessThan(sampled + 0.5);
          const swept = sweptRegion(edges, radius);
          const cut = outside
            ? area(intersect([region, swept]))
            : area(swept) - area(intersect([region, swept]));
          const told = places.reduce((sum, place) => sum + place.area, 0);
          expect(Math.abs(told - cut)).toBeLessThan(1e-6 * (1 + cut));
        },
      ),
      { numRuns: runs(100) },
    );
  });

  it('refuses numbers out of range', () => {
    expect(() => gouges([L(0, 0, 1, 1)], 0, plate)).toThrow('gouges: radius is 0');
    expect(() => gouges([L(0, 0, 1, 1)], 1, plate, { tolerance: -1 })).toThrow('gouges: tolerance is -1');
    expect(() => gouges([L(0, 0, 1, 1)], 1, [], { side: 'inside' })).toThrow('the region is empty');
  });

  it('passes the passes of this library whole', () => {
    for (const { leadIn, cut, leadOut } of centerPath(disc(P(0, 0), 30), { side: 'inside', radius: 6 })
      .passes) {
      expect(gouges([...leadIn, ...cut, ...leadOut], 6, disc(P(0, 0), 30), { side: 'inside' })).toEqual([]);
    }
    const [pass] = centerPath(plate, { side: 'outside', radius: 5 }).passes;
    expect(gouges(pass === undefined ? [] : edgesOfPass(pass), 5.001, plate)).toHaveLength(1);
  });
});

/** The greatest depth at places half a unit apart. */
function sampledDepth(region: Region, edge: Edge, radius: number, outside: boolean): number {
  const count = Math.ceil(edgeLength(edge) * 2);
  const walls = edgesOf(region);
  let deepest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const p = pointAlong(edge, k / count);
    const away = Math.min(...walls.map((wall) => nearestOnEdge(wall, p).distance));
    const isUnder = (contains(region, p) === 'inside') === outside;
    deepest = Math.max(deepest, isUnder ? radius + away : radius - away);
  }
  return deepest;
}
