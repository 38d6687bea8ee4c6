import {
  type ArcEdge,
  arcEdge,
  centerPath,
  circleLoop,
  distance,
  type Edge,
  edgeLength,
  edgesOfPass,
  type IsoOptions,
  isoWords,
  lineEdge,
  nearestOnEdge,
  type Point,
  pointAlong,
  samePoint,
  sweep,
} from '@edgebite/core';
import { extentOf } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathCases } from '../tools/path-cases.js';
import { pathOf } from '../tools/path-check.js';
import { runs } from '../tools/runs.js';
import { type Motion, readIso } from './iso-reader.js';
import { block, near } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const QUARTER = arcEdge(P(50, 0), P(0, 50), P(0, 0), true);
const MM: IsoOptions = { units: 'mm' };

describe('isoWords', () => {
  it('writes the quarter arc of 50 as G03 X0 Y50 I-50 J0, with the centre in steps from the start', () => {
    // I and J are incremental from the start of the arc, in absolute coordinates too (ISO 6983-1; turning notes).
    expect(isoWords([[QUARTER]], MM).blocks).toEqual(['G17 G21 G90', 'G00 X50 Y0', 'G03 X0 Y50 I-50 J0']);
    const back = arcEdge(P(0, 50), P(50, 0), P(0, 0), false);
    expect(isoWords([[back]], MM).blocks[2]).toBe('G02 X50 Y0 I0 J-50');
  });

  it('writes lines, both kinds of coordinates, both kinds of units, and a feed', () => {
    const path = [lineEdge(P(1, 2), P(4, 6.5)), arcEdge(P(4, 6.5), P(6, 6.5), P(5, 6.5), false)];
    expect(isoWords([path], { units: 'inch', feed: 12.5 }).blocks).toEqual([
      'G17 G20 G90',
      'G00 X1 Y2',
      'G01 X4 Y6.5 F12.5',
      'G02 X6 Y6.5 I1 J0',
    ]);
    expect(
      isoWords([path], { units: 'inch', unitWords: 'G70/G71', coordinates: 'incremental' }).blocks,
    ).toEqual(['G17 G70 G90', 'G00 X1 Y2', 'G91', 'G01 X3 Y4.5', 'G02 X2 Y0 I1 J0', 'G90']);
    expect(isoWords([path], { units: 'mm', unitWords: 'G70/G71' }).blocks[0]).toBe('G17 G71 G90');
    expect(isoWords([path], { units: 'mm', alwaysPoint: true }).blocks[2]).toBe('G01 X4. Y6.5');
  });

  it('writes heights for paths one after the other, and refuses several without', () => {
    const paths = [[lineEdge(P(0, 0), P(5, 0))], [lineEdge(P(9, 0), P(9, 5))]];
    expect(isoWords(paths, { units: 'mm', feed: 80, heights: { clear: 5, cut: -3.2 } }).blocks).toEqual([
      'G17 G21 G90',
      'G00 Z5',
      'G00 X0 Y0',
      'G01 Z-3.2 F80',
      'G01 X5 Y0',
      'G00 Z5',
      'G00 X9 Y0',
      'G01 Z-3.2',
      'G01 X9 Y5',
      'G00 Z5',
    ]);
    expect(() => isoWords(paths, MM)).toThrow('there are 2 paths and no heights');
  });

  it('goes down only at the cutting height, and moves fast only above it', () => {
    const { passes } = centerPath(
      [{ outer: block(60, 40)[0]?.outer ?? [], holes: [circleLoop(P(30, 20), 9, false)] }],
      {
        side: 'outside',
        radius: 3,
      },
    );
    for (const coordinates of ['absolute', 'incremental'] as const) {
      const heights = { clear: 2, cut: -5 };
      const { motions } = readIso(
        isoWords(passes.map(edgesOfPass), { units: 'mm', coordinates, heights }).blocks,
      );
      for (const { kind, from, to } of motions.slice(1)) {
        if (kind === 'rapid') expect(Math.max(from[2], to[2])).toBe(2);
        if (kind === 'rapid' && to[2] < 2) expect.unreachable('a rapid goes down');
        if (kind === 'arc') expect(to[2]).toBe(-5);
      }
    }
  });

  it('splits arcs over half a turn, if asked', () => {
    const wide = arcEdge(P(10, 0), P(0, -10), P(0, 0), true);
    expect(isoWords([[wide]], MM).blocks).toHaveLength(3);
    const { motions } = readIso(isoWords([[wide]], { units: 'mm', splitOverHalfTurn: true }).blocks);
    const arcs = motions.filter(({ kind }) => kind === 'arc').map(edgeOf) as ArcEdge[];
    expect(arcs.map((arc) => sweep(arc) < Math.PI)).toEqual([true, true]);
    near(
      arcs.reduce((sum, arc) => sum + sweep(arc), 0),
      1.5 * Math.PI,
      1e-3,
    );
    // A half turn is not over one.
    expect(isoWords([circleLoop(P(0, 0), 5)], { units: 'mm', splitOverHalfTurn: true }).blocks).toHaveLength(
      4,
    );
  });

  it('never writes an arc that ends where it starts: that would be a full circle', () => {
    const speck = arcEdge(P(10, 0), P(10 * Math.cos(1e-6), 10 * Math.sin(1e-6)), P(0, 0), true);
    expect(isoWords([[lineEdge(P(0, 0), P(10, 0)), speck]], MM).blocks).toHaveLength(3);
    const nearlyAll = arcEdge(P(10 * Math.cos(1e-6), 10 * Math.sin(1e-6)), P(10, 0), P(0, 0), true);
    const { motions } = readIso(isoWords([[nearlyAll]], MM).blocks);
    const arcs = motions.filter(({ kind }) => kind === 'arc').map(edgeOf) as ArcEdge[];
    expect(arcs).toHaveLength(2);
    near(
      arcs.reduce((sum, arc) => sum + sweep(arc), 0),
      2 * Math.PI,
      1e-3,
    );
  });

  it('keeps both ends equally far from the centre, to the tolerance, or says that it cannot', () => {
    const odd = arcEdge(
      P(1 / 3, 2 / 7),
      P(-2 / 3, 2 / 7 + 1.1),
      ontoBisector(P(1 / 3, 2 / 7), P(-2 / 3, 2 / 7 + 1.1), P(-0.4, 0.5)),
      true,
    );
    const { radiusError, blocks } = isoWords([[odd]], { units: 'mm', decimals: 3 });
    const [, arc] = readIso(blocks).motions as [Motion, Motion];
    const [cx, cy] = arc.center as readonly [number, number];
    const off = Math.abs(
      Math.hypot(arc.from[0] - cx, arc.from[1] - cy) - Math.hypot(arc.to[0] - cx, arc.to[1] - cy),
    );
    near(off, radiusError, 1e-9, 1);
    expect(radiusError).toBeLessThan(0.0005);
    expect(() => isoWords([[odd]], { units: 'mm', decimals: 3, tolerance: 1e-9 })).toThrow(
      /path 0: edge 0, an arc of radius .* cannot be written with 3 decimals .* equally far from its centre to 1e-9/,
    );
    expect(() => isoWords([circleLoop(P(0, 0), 0.0012)], { units: 'mm', decimals: 3 })).not.toThrow();
  });

  it('moves the centre of a short arc along its chord, where rounded ends leave no even place near it', () => {
    // Found by a long run: a chord of 291 steps at a radius of 3,972, whose ends are both rounded the worst way.
    const short = arcEdge(
      P(-52.95250964220415, 1.294232395264828),
      P(-51.04507761019767, 3.4963808808267416),
      P(-21.998244560693266, -23.59022914235814),
      false,
    );
    const { blocks, radiusError } = isoWords([[short]], { units: 'mm', decimals: 2 });
    expect(radiusError).toBeLessThan(0.01);
    expect(checkReadBack([short], blocks, 0.01, radiusError, false)).toBe(1);
  });

  it('writes a small arc over half a turn as two, rather than a smaller one', () => {
    // One block from end to end of this one has room for a radius of half a step, or of one, not of 2.8.
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.double({ min: 5.5, max: 6.25, noNaN: true }),
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.constantFrom(0, 1),
        fc.boolean(),
        (steps, turn, start, decimals, ccw) => {
          const step = 10 ** -decimals;
          const radius = steps * step;
          const at = (angle: number) => P(3.7 + radius * Math.cos(angle), -1.2 + radius * Math.sin(angle));
          const arc = arcEdge(at(start), at(start + (ccw ? turn : -turn)), P(3.7, -1.2), ccw);
          const blocks = writtenOrNone(arc, decimals);
          if (blocks === null) return;
          const read = readIso(blocks).motions.slice(1).map(edgeOf);
          const far = Math.min(
            ...read.map((edge) =>
              edge === null ? Infinity : nearestOnEdge(edge, pointAlong(arc, 0.5)).distance,
            ),
          );
          // Rounded ends and a rounded centre move the far side by up to three steps.
          expect(far).toBeLessThanOrEqual(3 * step);
        },
      ),
      { numRuns: runs(2000) },
    );
  });

  it('refuses what it cannot write', () => {
    const line = [lineEdge(P(0, 0), P(5, 0))];
    expect(() => isoWords([[...line, lineEdge(P(6, 0), P(7, 0))]], MM)).toThrow(
      'path 0: edge 1 starts at (6, 0), but the one before ends at (5, 0)',
    );
    expect(() => isoWords([[]], MM)).toThrow('path 0 has no edges');
    expect(() => isoWords([line], { ...MM, decimals: 2.5 })).toThrow('decimals is 2.5');
    expect(() => isoWords([line], { ...MM, decimals: 9 })).toThrow('decimals is 9');
    expect(() => isoWords([line], { ...MM, feed: 0 })).toThrow('feed is 0');
    expect(() => isoWords([line], { ...MM, tolerance: 0 })).toThrow('tolerance is 0');
    expect(() => isoWords([line], { ...MM, heights: { clear: 0, cut: 0 } })).toThrow(
      'heights.clear is 0, not over',
    );
    expect(() => isoWords([[lineEdge(P(0, 0), P(1e12, 0))]], { ...MM, decimals: 8 })).toThrow(
      '1000000000000 cannot be written with 8 decimals',
    );
  });

  it('is read back as the path that was written, on generated outlines', () => {
    let arcs = 0;
    fc.assert(
      fc.property(
        pathCases,
        fc.integer({ min: 1, max: 8 }),
        fc.boolean(),
        fc.boolean(),
        (one, decimals, inSteps, splitOverHalfTurn) => {
          const path = pathOf(one);
          // Steps of a ten thousandth of the part at most: coarser ones are no drawing of it.
          if (path === null || 10 ** -decimals > 1e-4 * extentOf(one.region)) return;
          const coordinates = inSteps ? 'incremental' : 'absolute';
          for (const pass of path.passes) {
            const edges = edgesOfPass(pass);
            const { blocks, radiusError } = isoWords([edges], {
              units: 'mm',
              decimals,
              coordinates,
              splitOverHalfTurn,
            });
            arcs += checkReadBack(edges, blocks, 1 / 10 ** decimals, radiusError, splitOverHalfTurn);
          }
        },
      ),
      { numRuns: runs(100) },
    );
    expect(arcs).toBeGreaterThan(runs(100));
  });
});

/** What a motion is as an edge; `null` where it has no length in the plane. */
function edgeOf({ kind, from, to, center, ccw }: Motion): Edge | null {
  const a = P(from[0], from[1]);
  const b = P(to[0], to[1]);
  if (kind !== 'arc') return samePoint(a, b) ? null : lineEdge(a, b);
  // The ends are as far from the written centre as the numbers allow; the circle through the first one is read.
  const c = P(center?.[0] ?? 0, center?.[1] ?? 0);
  const scale = distance(a, c) / distance(b, c);
  const end = P(c.x + scale * (b.x - c.x), c.y + scale * (b.y - c.y));
  return arcEdge(a, end, c, ccw === true);
}

/** The blocks of an arc; null where so few decimals cannot give it, as the error says. */
function writtenOrNone(arc: ArcEdge, decimals: number): readonly string[] | null {
  try {
    return isoWords([[arc]], { units: 'mm', decimals }).blocks;
  } catch (error) {
    expect(String(error)).toMatch(/cannot be written with [01] decimals .*use more decimals/);
    return null;
  }
}

/** The place nearest to `p` that is equally far from both ends. */
function ontoBisector(a: Point, b: Point, p: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const off = ((p.x - (a.x + b.x) / 2) * dx + (p.y - (a.y + b.y) / 2) * dy) / (dx * dx + dy * dy);
  return P(p.x - off * dx, p.y - off * dy);
}

/** Compares what a reader makes of the words with the edges; returns the number of arcs. */
function checkReadBack(
  edges: readonly Edge[],
  blocks: readonly string[],
  step: number,
  radiusError: number,
  isSplit: boolean,
): number {
  const { motions, units, plane } = readIso(blocks);
  expect([units, plane]).toEqual(['mm', 17]);
  const [rapid, ...cuts] = motions as [Motion, ...Motion[]];
  expect(rapid.kind).toBe('rapid');
  const magnitude = Math.max(...edges.flatMap(({ a, b }) => [a.x, a.y, b.x, b.y].map(Math.abs)));
  const rounding = 1e-15 * magnitude * cuts.length + 1e-12 * step;
  const first = edges[0] as Edge;
  const last = edges[edges.length - 1] as Edge;
  const end = cuts[cuts.length - 1]?.to ?? rapid.to;
  for (const [p, q] of [
    [P(rapid.to[0], rapid.to[1]), first.a],
    [P(end[0], end[1]), last.b],
  ] as const) {
    expect(Math.max(Math.abs(p.x - q.x), Math.abs(p.y - q.y))).toBeLessThan(0.5 * step + rounding);
  }
  // The sweep of an arc of the reader has its own slack; what the control would see is the difference of radii.
  for (const { kind, from, to, center } of cuts) {
    if (kind !== 'arc') continue;
    const [cx, cy] = center as readonly [number, number];
    const off = Math.hypot(from[0] - cx, from[1] - cy) - Math.hypot(to[0] - cx, to[1] - cy);
    expect(Math.abs(off)).toBeLessThan(radiusError + 8 * rounding);
  }
  expect(radiusError).toBeLessThanOrEqual(step);
  const read = cuts.map(edgeOf).filter((edge) => edge !== null);
  // Rounding turns each end by a step or so, as seen from the centre, and the centre moves by two or three.
  if (isSplit) {
    for (const edge of read) {
      if (edge.kind === 'arc') expect(sweep(edge)).toBeLessThan(Math.PI + (6 * step) / edge.radius + 1e-9);
    }
  }
  const length = (all: readonly Edge[]) => all.reduce((sum, edge) => sum + edgeLength(edge), 0);
  expect(Math.abs(length(read) - length(edges))).toBeLessThan(8 * step * edges.length + rounding);
  // A path that is no longer than that, as in a hole that the tool just fits, may leave nothing on the grid.
  if (read.length === 0) return 0;
  for (const [some, others] of [
    [read, edges],
    [edges, read],
  ] as const) {
    for (const edge of some) {
      for (const share of [0.2, 0.5, 0.9]) {
        const p = pointAlong(edge, share);
        const away = Math.min(...others.map((other) => nearestOnEdge(other, p).distance));
        expect(away).toBeLessThan(3 * step + rounding);
      }
    }
  }
  return read.filter(({ kind }) => kind === 'arc').length;
}
