import {
  arcEdge,
  area,
  centroid,
  circleLoop,
  contains,
  type Edge,
  type Loop,
  lineEdge,
  loopArea,
  normalize,
  offset,
  offsetPath,
  type Point,
  type Region,
  reversed,
  ring,
  union,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { windingRound } from '../../packages/core/src/region/contains.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';

const p = (x: number, y: number): Point => ({ x, y });

/** A circle of arcs between given angles in degrees. */
function circle(center: Point, r: number, degrees: readonly number[], ccw = true): Loop {
  const at = degrees.map((angle) => {
    const t = (angle * Math.PI) / 180;
    return p(center.x + r * Math.cos(t), center.y + r * Math.sin(t));
  });
  const loop = at.map((a, k) => arcEdge(a, at[(k + 1) % at.length] as Point, center, true));
  return ccw ? loop : turned(loop);
}

function turned(loop: Loop): Loop {
  return loop.map(reversed).reverse();
}

function polygon(...corners: readonly (readonly [number, number])[]): Loop {
  return corners.map(([x, y], k): Edge => {
    const [u, v] = corners[(k + 1) % corners.length] as readonly [number, number];
    return lineEdge(p(x, y), p(u, v));
  });
}

const region = (outer: Loop, ...holes: Loop[]): Region => [{ outer, holes }];

describe('a point', () => {
  it('is gone round once by a circle if it is nearer than the radius, however the circle is cut into arcs', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.constantFrom([0, 180], [10, 130, 250], [0, 300], [90, 180], [0, 90, 180, 270]),
        evenly(-8, 8),
        evenly(-8, 8),
        (start, cuts, x, y) => {
          const away = Math.hypot(x, y);
          fc.pre(Math.abs(away - 5) > 1e-6);
          const center = p(3, -4);
          const at = p(center.x + x, center.y + y);
          for (const from of [0, 90, start]) {
            const loop = circle(
              center,
              5,
              cuts.map((angle) => angle + from),
            );
            expect(windingRound(loop, at)).toBe(away < 5 ? 1 : 0);
            expect(windingRound(turned(loop), at)).toBe(away < 5 ? -1 : 0);
            expect(contains(region(loop), at)).toBe(away < 5 ? 'inside' : 'outside');
          }
        },
      ),
      { numRuns: runs(200) },
    );
  });

  it('is seen in a hole past a corner of the outline at its own height', () => {
    const diamond = polygon([-9, 0], [0, -9], [9, 0], [0, 9]);
    const hole = turned(polygon([-2, -1], [2, -1], [2, 1], [-2, 1]));
    const plate = region(diamond, hole);
    for (const [x, expected] of [
      [-10, 'outside'],
      [-5, 'inside'],
      [0, 'outside'],
      [5, 'inside'],
      [10, 'outside'],
    ] as const) {
      expect([x, contains(plate, p(x, 0))]).toEqual([x, expected]);
    }
    // And past a corner of the hole.
    const other = region(diamond, turned(polygon([-2, 0], [0, -2], [2, 0], [0, 2])));
    for (const x of [-5, 5]) expect(contains(other, p(x, 0))).toBe('inside');
    expect(contains(other, p(0, 0))).toBe('outside');
  });

  it('is on a boundary up to the tolerance from it, on either side of each of the sides', () => {
    const square = region(polygon([0, 0], [10, 0], [10, 10], [0, 10]));
    for (const by of [-0.09, 0.09]) {
      for (const at of [p(by, 5), p(10 + by, 5), p(5, by), p(5, 10 + by)]) {
        expect(contains(square, at, 0.1)).toBe('boundary');
        expect(contains(square, at)).not.toBe('boundary');
      }
    }
  });
});

// Centroid of a disc less another: by moments, areas as the squares of the radii.
it('the centroid of a plate with an eccentric hole hangs on no way to cut circles into arcs', () => {
  const cuts = [
    [0, 180],
    [25, 150, 260],
    [30, 320],
    [10, 100],
    [200, 310],
  ];
  for (const one of cuts) {
    for (const other of cuts) {
      const plate = region(circle(p(100, 50), 10, one), circle(p(102, 53), 4, other, false));
      expect(area(plate)).toBeCloseTo(84 * Math.PI, 9);
      expect(centroid(plate)?.x).toBeCloseTo((100 * 100 - 16 * 102) / 84, 9);
      expect(centroid(plate)?.y).toBeCloseTo((100 * 50 - 16 * 53) / 84, 9);
    }
  }
});

describe('loops put in order', () => {
  const outer = polygon([0, 0], [8, 0], [8, 8], [0, 8]);
  const inner = polygon([2, 2], [4, 2], [4, 4], [2, 4]);

  it('by what they go round at all, or an odd number of times', () => {
    for (const [loops, nonzero, evenodd] of [
      [[outer], 64, 64],
      [[turned(outer)], 64, 64],
      [[outer, inner], 64, 60],
      [[outer, turned(inner)], 60, 60],
      [[outer, outer], 64, 0],
      [[outer, turned(outer)], 0, 0],
      [[], 0, 0],
    ] as const) {
      expect(area(normalize(loops, 'nonzero'))).toBeCloseTo(nonzero, 12);
      expect(area(normalize(loops, 'evenodd'))).toBeCloseTo(evenodd, 12);
    }
    expect(union([])).toEqual([]);
    expect(union([[], []])).toEqual([]);
  });
});

describe('a full circle', () => {
  it('runs counter-clockwise unless told otherwise, and has a source only if given one', () => {
    expect(loopArea(circleLoop(p(1, 2), 3))).toBeCloseTo(9 * Math.PI, 12);
    expect(loopArea(circleLoop(p(1, 2), 3, false))).toBeCloseTo(-9 * Math.PI, 12);
    for (const edge of circleLoop(p(1, 2), 3)) expect('source' in edge).toBe(false);
    for (const edge of circleLoop(p(1, 2), 3, true, 'cut:a')) expect(edge.source).toBe('cut:a');
  });

  it('is no ring with another as large', () => {
    expect(() => ring(p(0, 0), 2, 2)).toThrow('the inner radius 2 must be under the outer radius 2');
    expect(area(ring(p(0, 0), 2, 1.5))).toBeCloseTo(1.75 * Math.PI, 12);
  });
});

describe('an offset', () => {
  const square = polygon([0, 0], [2, 0], [2, 2], [0, 2]);

  it('leaves nothing that is thinner than what welds in the region that shrinks', () => {
    expect(offset(region(square), -1 + 1e-9)).toEqual([]);
    expect(area(offset(region(square), -1 + 1e-6))).toBeCloseTo(4e-12, 20);
  });

  it('names its edges after those beside, and none where they have no name', () => {
    const edges = (found: Region) => found.flatMap(({ outer, holes }) => [outer, ...holes]).flat();
    for (const edge of edges(offset(region(square, circle(p(1, 1), 0.5, [0, 180], false)), 0.1)))
      expect('source' in edge).toBe(false);
    for (const edge of edges(offset(region(square), -0.1))) expect('source' in edge).toBe(false);
    for (const edge of edges(offsetPath(square.slice(0, 2), 0.1))) expect('source' in edge).toBe(false);
    const named = square.map((edge, k) => ({ ...edge, source: `outline:${k}` }));
    const grown = edges(offset(region(named), 0.1));
    const sources = grown.map(({ kind, source }) => `${kind} ${source}`).sort();
    expect(sources).toEqual(
      [0, 1, 2, 3].flatMap((k) => [`arc outline:${k}`]).concat([0, 1, 2, 3].map((k) => `line outline:${k}`)),
    );
    const shrunk = edges(offset(region(named), -0.1)).map(({ source }) => source);
    expect([...shrunk].sort()).toEqual(['outline:0', 'outline:1', 'outline:2', 'outline:3']);
  });
});
