import { readdirSync, readFileSync } from 'node:fs';
import {
  arcEdge,
  arcsFromPolyline,
  type Edge,
  edgeLength,
  type Loop,
  lineEdge,
  loopArea,
  loopsOf,
  nearestOnEdge,
  outlineRegion,
  type Point,
  parseJob,
  pointAlong,
  samePoint,
  sweep,
} from '@edgebite/core';
import { outlines, restarted } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

const TOLERANCE = 0.001;
const EXAMPLES = new URL('../../examples/', import.meta.url);

/** The points of a loop flattened so that no chord is farther from its arc than `sagitta`: r (1 - cos(step / 2)). */
function flattened(loop: readonly Edge[], sagitta: number): Point[] {
  return loop.flatMap((edge) => {
    const step = edge.kind === 'line' ? 1 : 2 * Math.acos(1 - sagitta / edge.radius);
    const count = edge.kind === 'line' ? 1 : Math.ceil(sweep(edge) / step);
    return Array.from({ length: count }, (_, i) => pointAlong(edge, i / count));
  });
}

/** The points of a loop about `step` apart, so that lines too are cut into short segments. */
function stepped(loop: readonly Edge[], step: number): Point[] {
  return loop.flatMap((edge) => {
    const count = Math.ceil(edgeLength(edge) / step);
    return Array.from({ length: count }, (_, i) => pointAlong(edge, i / count));
  });
}

/** Numbers from -1 to 1 that look random; the multiplier is that of Park and Miller (1988), from memory. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  };
}

/** Largest distance of places all along the edges from the true ones: a check by another route. */
function strayed(found: readonly Edge[], truth: readonly Edge[]): number {
  const places = found.flatMap((edge) => Array.from({ length: 33 }, (_, i) => pointAlong(edge, i / 32)));
  return Math.max(...places.map((p) => Math.min(...truth.map((edge) => nearestOnEdge(edge, p).distance))));
}

const kinds = (edges: readonly Edge[]): string => edges.map(({ kind }) => kind).join(' ');

const begun = <T>(list: readonly T[], at: number): T[] => [...list.slice(at), ...list.slice(0, at)];

describe('arcsFromPolyline', () => {
  const drawn = readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => {
      const job = parseJob(readFileSync(new URL(name, EXAMPLES), 'utf8'));
      return loopsOf(job.outline).map((loop, k) => [`${name}, loop ${k}`, loop] as const);
    });

  it.each(drawn)('recovers %s, wherever the polyline starts', (_, loop) => {
    const perimeter = loop.reduce((sum, edge) => sum + edgeLength(edge), 0);
    for (const sagitta of [TOLERANCE, TOLERANCE / 10, TOLERANCE / 100]) {
      const points = flattened(loop, sagitta);
      for (const start of new Set([0, 1, 2, Math.floor(points.length / 3), points.length - 1])) {
        const { edges, closed, deviation } = arcsFromPolyline(begun(points, start), TOLERANCE, {
          closed: true,
        });
        expect([closed, edges.length]).toEqual([true, loop.length]);
        expect(deviation).toBeLessThanOrEqual(sagitta * (1 + 1e-6));
        expect(Math.abs(loopArea(edges) - loopArea(loop))).toBeLessThan(TOLERANCE * perimeter);
        // The points lie on the outline, so the edges do too.
        expect(Math.abs(loopArea(edges) - loopArea(loop))).toBeLessThan(1e-9 * perimeter);
        expect(() => outlineRegion(edges)).not.toThrow();
      }
    }
  });

  it('recovers generated outlines with no more edges than they have', () => {
    const cases = fc.tuple(outlines, fc.nat(1000), fc.constantFrom(1, 0.1, 0.01));
    fc.assert(
      fc.property(cases, ([region, start, share]) => {
        for (const loop of loopsOf(region)) {
          const points = flattened(loop, share * TOLERANCE);
          const found = arcsFromPolyline(begun(points, start % points.length), TOLERANCE, { closed: true });
          expect(found.edges.length).toBeLessThanOrEqual(loop.length);
          expect(found.deviation).toBeLessThanOrEqual(TOLERANCE * (1 + 1e-6));
          expect(strayed(found.edges, loop)).toBeLessThanOrEqual(2 * TOLERANCE);
        }
      }),
      { numRuns: runs(60) },
    );
  });

  it('finds the joints of tangent continuations, where no corner shows them', () => {
    // A line, a quarter to the left, a quarter to the right of another radius, a line: all tangent.
    const path: Loop = [
      lineEdge({ x: 0, y: 0 }, { x: 20, y: 0 }),
      arcEdge({ x: 20, y: 0 }, { x: 25, y: 5 }, { x: 20, y: 5 }, true),
      arcEdge({ x: 25, y: 5 }, { x: 37, y: 17 }, { x: 37, y: 5 }, false),
      lineEdge({ x: 37, y: 17 }, { x: 60, y: 17 }),
    ];
    const points = [...stepped(path, 0.05), { x: 60, y: 17 }];
    const { edges, closed, deviation } = arcsFromPolyline(points, TOLERANCE);
    expect([closed, kinds(edges)]).toEqual([false, 'line arc arc line']);
    expect(deviation).toBeLessThan(0.05 ** 2 / (8 * 5) + 1e-9);
    for (const [k, edge] of edges.entries()) {
      const truth = path[k] as Edge;
      expect(edge.b.x).toBeCloseTo(truth.b.x, 9);
      expect(edge.b.y).toBeCloseTo(truth.b.y, 9);
      if (edge.kind === 'arc' && truth.kind === 'arc') expect(edge.radius).toBeCloseTo(truth.radius, 7);
    }
  });

  it('keeps corners to the last bit, however blunt they are', () => {
    for (const degrees of [90, 30, 5, 1, -1, -60, -135]) {
      const turn = (degrees * Math.PI) / 180;
      const corner = { x: 10, y: 3 };
      const end = { x: 10 + 10 * Math.cos(turn), y: 3 + 10 * Math.sin(turn) };
      const points = [...stepped([lineEdge({ x: 0, y: 3 }, corner), lineEdge(corner, end)], 0.1), end];
      const { edges } = arcsFromPolyline(points, TOLERANCE);
      expect(kinds(edges)).toBe('line line');
      expect(edges[0]?.b).toEqual(corner);
    }
  });

  it('bears noise of a third of the tolerance', () => {
    const loop = outlineRegion([
      lineEdge({ x: 0, y: 0 }, { x: 40, y: 0 }),
      arcEdge({ x: 40, y: 0 }, { x: 40, y: 30 }, { x: 40, y: 15 }, true),
      lineEdge({ x: 40, y: 30 }, { x: 0, y: 30 }),
      lineEdge({ x: 0, y: 30 }, { x: 0, y: 0 }),
    ])[0]?.outer as Loop;
    const shake = noise(7);
    const amount = TOLERANCE / 3 / Math.SQRT2;
    for (const step of [0.02, 0.1]) {
      const points = stepped(loop, step).map(({ x, y }) => ({
        x: x + amount * shake(),
        y: y + amount * shake(),
      }));
      for (const start of [0, 17, Math.floor(points.length / 2)]) {
        const { edges, deviation } = arcsFromPolyline(begun(points, start), TOLERANCE, { closed: true });
        expect(edges).toHaveLength(4);
        expect(deviation).toBeLessThanOrEqual(TOLERANCE * (1 + 1e-6));
        expect(strayed(edges, loop)).toBeLessThan(TOLERANCE);
      }
    }
  });

  it('tells a nearly straight arc from a line by the tolerance', () => {
    // Over a chord of 20 an arc of radius r bulges by about 400 / 8r: 0.002 for 25,000 and 0.0005 for 100,000.
    for (const [radius, kind] of [
      [25_000, 'arc'],
      [100_000, 'line'],
    ] as const) {
      const height = Math.sqrt(radius ** 2 - 100);
      const bow = arcEdge({ x: -10, y: 0 }, { x: 10, y: 0 }, { x: 0, y: height }, true);
      const points = Array.from({ length: 201 }, (_, i) => pointAlong(bow, i / 200));
      const { edges } = arcsFromPolyline(points, TOLERANCE);
      expect(kinds(edges)).toBe(kind);
      if (edges[0]?.kind === 'arc') expect(edges[0].radius / radius).toBeCloseTo(1, 6);
    }
  });

  it('gives a full circle as two arcs, in its direction, and a closed arc with a flat as arc and line', () => {
    const round = [0, 1].map((way) =>
      Array.from({ length: 500 }, (_, i) => {
        const angle = (way === 0 ? 1 : -1) * (i / 500) * 2 * Math.PI + 0.3;
        return { x: 5 + 8 * Math.cos(angle), y: -2 + 8 * Math.sin(angle) };
      }),
    );
    for (const [way, points] of round.entries()) {
      const { edges, deviation } = arcsFromPolyline(points, TOLERANCE, { closed: true });
      expect(edges).toHaveLength(2);
      expect(deviation).toBeCloseTo(8 * (1 - Math.cos(Math.PI / 500)), 9);
      expect(loopArea(edges)).toBeCloseTo((way === 0 ? 1 : -1) * 64 * Math.PI, 8);
      // The same, closed by its own last point.
      const again = arcsFromPolyline([...points, points[0] as Point], TOLERANCE);
      expect([again.closed, again.edges.length]).toEqual([true, 2]);
    }
    const flat = (round[0] as Point[]).filter(({ x }) => x < 11);
    const { edges } = arcsFromPolyline(flat, TOLERANCE, { closed: true });
    expect(kinds(edges).split(' ').sort()).toEqual(['arc', 'line']);
  });

  it('shares ends between neighbours, drops points that are there twice, and stays within any tolerance', () => {
    const any = fc.array(
      fc.record({ x: fc.integer({ min: -9, max: 9 }), y: fc.integer({ min: -9, max: 9 }) }),
      {
        minLength: 2,
        maxLength: 40,
      },
    );
    fc.assert(
      fc.property(
        any,
        fc.constantFrom(1e-9, 0.01, 0.5, 3, 100),
        fc.boolean(),
        (points, tolerance, closed) => {
          const different = new Set(points.map(({ x, y }) => `${x} ${y}`)).size;
          fc.pre(different >= 3 && !samePoint(points[0] as Point, points.at(-1) as Point));
          const { edges, deviation } = arcsFromPolyline(points, tolerance, { closed });
          expect(deviation).toBeLessThanOrEqual(tolerance * (1 + 1e-6));
          for (const [k, edge] of edges.entries()) {
            const next = edges[k + 1] ?? (closed ? edges[0] : undefined);
            if (next !== undefined) expect(edge.b).toEqual(next.a);
          }
          for (const p of points) {
            const near = Math.min(...edges.map((edge) => nearestOnEdge(edge, p).distance));
            expect(near).toBeLessThanOrEqual(3 * tolerance);
          }
        },
      ),
      { numRuns: runs(200) },
    );
  });

  it('takes 100,000 points without a hang, and points that fit nothing', () => {
    const shake = noise(3);
    const spiral = Array.from({ length: 100_000 }, (_, i) => {
      const angle = i / 1000;
      return { x: (10 + angle) * Math.cos(angle), y: (10 + angle) * Math.sin(angle) };
    });
    const found = arcsFromPolyline(spiral, TOLERANCE);
    expect(found.deviation).toBeLessThanOrEqual(TOLERANCE * (1 + 1e-6));
    expect(found.edges.length).toBeLessThan(500);
    const rough = Array.from({ length: 25_000 }, (_, i) => ({ x: i / 100, y: shake() }));
    expect(arcsFromPolyline(rough, TOLERANCE).edges.length).toBeGreaterThan(20_000);
  });

  it('does not mind edges that run on in the same circle', () => {
    const loop = restarted([{ outer: flatSided(), holes: [] }], 1)[0]?.outer as Loop;
    expect(arcsFromPolyline(flattened(loop, TOLERANCE), TOLERANCE, { closed: true }).edges).toHaveLength(2);
  });

  it('refuses what it cannot read, with the place', () => {
    const two = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
    ];
    expect(() => arcsFromPolyline(two, 0)).toThrow('tolerance is 0; it must be a finite number over 0');
    expect(() => arcsFromPolyline(two, Number.NaN)).toThrow(RangeError);
    expect(() => arcsFromPolyline([...two, { x: 2, y: Number.NaN }], 1)).toThrow('point 2 is (2, NaN)');
    expect(() => arcsFromPolyline([], 1)).toThrow('a polyline needs two different points');
    expect(() => arcsFromPolyline([two[0] as Point, two[0] as Point], 1)).toThrow(RangeError);
    expect(() => arcsFromPolyline(two, 1, { closed: true })).toThrow('a closed polyline needs three');
  });
});

/** A disc cut off along a chord, its arc drawn as three. */
function flatSided(): Loop {
  const at = (degrees: number): Point => ({
    x: 10 * Math.cos((degrees * Math.PI) / 180),
    y: 10 * Math.sin((degrees * Math.PI) / 180),
  });
  const stops = [30, 130, 230, 330].map(at);
  const arcs = [0, 1, 2].map((k) => arcEdge(stops[k] as Point, stops[k + 1] as Point, { x: 0, y: 0 }, true));
  return [...arcs, lineEdge(stops[3] as Point, stops[0] as Point)];
}
