import { examine, parseJob, type Report, type ReportEdge } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EdgeBeyond, edgesBeyond } from '../../packages/svg/src/section/beyond.js';
import { sectionLevel } from '../../packages/svg/src/section/section.js';
import { jobCases } from '../fuzz/job-cases.js';
import { runs } from '../tools/runs.js';
import { EXAMPLES, exampleReport } from './cases.js';

/*
 * The edges behind a section against rays: at an x a ray goes through each slab away from the eye, and the first metal
 * on it is what is seen there. An edge is where that jumps or turns, from one x to the next or from slab to slab.
 */

/** How deep behind the plane metal is met: 0 where the plane cuts it, Infinity where there is none. */
type Depth = (x: number) => number;

function depthsOf(report: Report, level: number): readonly Depth[] {
  return report.slabs.map(({ from, to }) => {
    const middle = (from + to) / 2;
    const edges = report.pieces
      .flatMap(({ sections }) => sections.filter((own) => own.from < middle && own.to > middle))
      .flatMap(({ region }) => region.flatMap(({ outer, holes }) => [outer, ...holes].flat()));
    return (x) => {
      const met = edges.flatMap((edge) => crossings(edge, x)).map((y) => y - level);
      const beyond = met.filter((depth) => depth > 0);
      // Metal is where an odd number of edges lies between a place and far away.
      return beyond.length % 2 === 1 ? 0 : Math.min(...beyond);
    };
  });
}

/** Where the upright line at an x crosses an edge; the x is on no end of one. */
function crossings(edge: ReportEdge, x: number): readonly number[] {
  const [{ 0: ax, 1: ay }, { 0: bx, 1: by }] = [edge.a, edge.b];
  if (edge.kind === 'line') return ax < x !== bx < x ? [ay + ((x - ax) * (by - ay)) / (bx - ax)] : [];
  const { center, radius, ccw } = edge;
  const off = (x - center[0]) / radius;
  if (Math.abs(off) >= 1) return [];
  const turn = (angle: number): number => angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
  const at = ([px, py]: readonly [number, number]): number => Math.atan2(py - center[1], px - center[0]);
  const [start, end] = ccw ? [at(edge.a), at(edge.b)] : [at(edge.b), at(edge.a)];
  const sweep = turn(end - start) || 2 * Math.PI;
  return [Math.acos(off), -Math.acos(off)]
    .filter((angle) => turn(angle - start) < sweep)
    .map((angle) => center[1] + radius * Math.sin(angle));
}

interface Case {
  readonly report: Report;
  readonly level: number;
  readonly edges: readonly EdgeBeyond[];
  readonly depths: readonly Depth[];
  /** Length of the part along x. */
  readonly size: number;
  readonly left: number;
}

function caseOf(report: Report, level: number): Case {
  const xs = report.outline.flatMap(({ outer }) =>
    outer.flatMap((edge) =>
      edge.kind === 'line'
        ? [edge.a[0], edge.b[0]]
        : [edge.center[0] - edge.radius, edge.center[0] + edge.radius],
    ),
  );
  const left = Math.min(...xs);
  const size = Math.max(...xs) - left;
  return { report, level, edges: edgesBeyond(report, level), depths: depthsOf(report, level), size, left };
}

/** Samples along a part. Their number has no factor in common with round sizes, so that they stand on no corner. */
const SAMPLES = 229;

/** Depths that differ by less, as a share of the size, are those of one wall, rounded. */
const SAME = 1e-6;

/** A jump that is looked for, as a share of the size. */
const LEAP = 1e-3;

const differs = (a: number, b: number, { size, report }: Case): boolean | null => {
  if (a === b) return false;
  const off = Math.abs(a - b);
  const least = Math.max(SAME * size, report.resolution / 100);
  return off > 2 * least ? true : off < least / 2 ? false : null;
};

const samplesOf = ({ left, size }: Case): number[] =>
  Array.from({ length: SAMPLES }, (_, k) => left - 0.01 * size + (1.02 * size * (k + 0.4142)) / SAMPLES);

/** Level edges that are drawn where rays see none, or are missing where they do. */
function levelFaults(one: Case): readonly string[] {
  const { report, edges, depths } = one;
  const none: Depth = () => Number.POSITIVE_INFINITY;
  return [...depths, none].flatMap((above, k) => {
    const below = depths[k - 1] ?? none;
    const height = report.slabs[k]?.from ?? report.thickness;
    return samplesOf(one).flatMap((x) => {
      const [low, high] = [below(x), above(x)];
      const expected = low === 0 || high === 0 ? false : differs(low, high, one);
      const drawn = edges.some(
        (edge) => edge.kind === 'level' && edge.height === height && edge.from < x && edge.to > x,
      );
      return expected === null || expected === drawn
        ? []
        : [`at x ${x}, height ${height}: ${low} below, ${high} above, ${drawn ? 'drawn' : 'not drawn'}`];
    });
  });
}

const uprightAt = ({ edges, report, size }: Case, slab: number, x: number): boolean =>
  edges.some(
    (edge) =>
      edge.kind === 'upright' &&
      edge.from <= (report.slabs[slab]?.from ?? 0) &&
      edge.to >= (report.slabs[slab]?.to ?? 0) &&
      Math.abs(edge.x - x) < 1e-7 * size,
  );

/** Jumps of the depth along x, each found by halving, that no upright edge is drawn at. */
function jumpFaults(one: Case): readonly string[] {
  const samples = samplesOf(one);
  return one.depths.flatMap((depth, s) =>
    samples.slice(1).flatMap((to, k) => {
      let [a, b] = [samples[k] as number, to];
      if (jump(depth(a), depth(b)) < LEAP * one.size) return [];
      while (b - a > 1e-9 * one.size) {
        const middle = (a + b) / 2;
        const isLeft = jump(depth(a), depth(middle)) >= jump(depth(middle), depth(b));
        [a, b] = isLeft ? [a, middle] : [middle, b];
      }
      const [near, far] = [depth(a), depth(b)];
      // A wall that nearly looks along the ray rises by more than it is wide, but not by so much.
      if (near === 0 || far === 0 || jump(near, far) < LEAP * one.size) return [];
      return uprightAt(one, s, a) ? [] : [`slab ${s}, x ${a}: from ${near} to ${far}, not drawn`];
    }),
  );
}

function jump(a: number, b: number): number {
  return a === b ? 0 : Math.abs(a - b);
}

/** What the depth does at an x: the jump, and by how much the wall turns there, in degrees. */
function turnAt(depth: Depth, x: number, step: number): { jump: number; turn: number; isCut: boolean } {
  const [a, b, c, d] = [depth(x - 2 * step), depth(x - step), depth(x + step), depth(x + 2 * step)];
  const angle = (rise: number): number => (Math.atan2(rise, step) * 180) / Math.PI;
  const turn = Math.abs(angle(b - a) - angle(d - c));
  return { jump: jump(b, c), turn, isCut: b === 0 || c === 0 };
}

/** Upright edges at which rays see nothing. */
function idleUprights(one: Case): readonly string[] {
  const { edges, report, depths, size } = one;
  return edges.flatMap((edge) => {
    if (edge.kind !== 'upright') return [];
    return depths.flatMap((depth, s) => {
      const { from, to } = report.slabs[s] ?? { from: 0, to: 0 };
      if (edge.from > from || edge.to < to) return [];
      const seen = [1e-5, 1e-6, 1e-7].map((step) => turnAt(depth, edge.x, step * size));
      const isEdge = seen.some((at) => !at.isCut && (at.jump > report.resolution / 200 || at.turn > 0.5));
      return isEdge ? [] : [`slab ${s}, x ${edge.x} is no edge: ${JSON.stringify(seen)}`];
    });
  });
}

/** Corners of walls that turn by more than 3 degrees where they are seen, with no upright edge. */
function cornerFaults(one: Case): readonly string[] {
  const { report, depths, size } = one;
  const corners = report.pieces.flatMap(({ sections }) =>
    sections.flatMap(({ region }) => region.flatMap(({ outer, holes }) => [outer, ...holes].flat())),
  );
  return depths.flatMap((depth, s) =>
    corners.flatMap(({ a: [x] }) => {
      const seen = [1e-5, 1e-6].map((step) => turnAt(depth, x, step * size));
      const isCorner = seen.every(({ turn, jump: by, isCut }) => !isCut && turn > 3 && by < LEAP * size);
      return isCorner && !uprightAt(one, s, x) ? [`slab ${s}, x ${x}: ${JSON.stringify(seen)}`] : [];
    }),
  );
}

function faultsOf(report: Report, level: number): readonly string[] {
  const one = caseOf(report, level);
  return [...levelFaults(one), ...jumpFaults(one), ...idleUprights(one), ...cornerFaults(one)];
}

describe('edges behind a section', () => {
  // By hand: a part of 80 by 30 with a gap of 20 by 20 in its back, 10 thick, and a round pocket of 8, 4 deep.
  it('are those of the mouth of a pocket, and none of what metal hides', () => {
    const plate = (at: readonly [number, number]) =>
      examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: {
            outline: {
              edges: outlineOf([
                [0, 0],
                [80, 0],
                [80, 30],
                [50, 30],
                [50, 10],
                [30, 10],
                [30, 30],
                [0, 30],
              ]),
            },
            thickness: 10,
          },
          cuts: [{ id: 'pocket', kind: 'bore', diameter: 8, center: at, depth: 4 }],
        }),
      );
    // The plane goes through the middle of the pocket: behind it is its wall, up to the rim. The gap is hidden.
    expect(edgesBeyond(plate([10, 5]), 5)).toEqual([{ kind: 'level', height: 10, from: 6, to: 14 }]);
    // From y 20 on the two horns are cut, and between them there is nothing behind.
    expect(edgesBeyond(plate([10, 5]), 20)).toEqual([]);
    // Seen from y -5, in front of the part, all of it is behind: its box, and the pocket is inside.
    expect(edgesBeyond(plate([10, 15]), -5)).toEqual([
      { kind: 'upright', x: 0, from: 0, to: 10 },
      { kind: 'upright', x: 80, from: 0, to: 10 },
      { kind: 'level', height: 0, from: 0, to: 80 },
      { kind: 'level', height: 10, from: 0, to: 80 },
    ]);
    // A pocket of 8 whose middle is in the front face shows its mouth, 4 deep, and the wall behind it. Its half circle
    // turns at both ends, where it meets the face.
    expect(edgesBeyond(plate([10, 0]), -5)).toEqual([
      { kind: 'upright', x: 0, from: 0, to: 10 },
      { kind: 'upright', x: 80, from: 0, to: 10 },
      { kind: 'upright', x: 6, from: 6, to: 10 },
      { kind: 'upright', x: 14, from: 6, to: 10 },
      { kind: 'level', height: 0, from: 0, to: 80 },
      { kind: 'level', height: 6, from: 6, to: 14 },
      { kind: 'level', height: 10, from: 0, to: 80 },
    ]);
  });

  it.each(EXAMPLES)('are those that rays see in %s, and lie in its section', (name) => {
    const report = exampleReport(name);
    const own = sectionLevel(report);
    const levels = [0.03, 0.31, 0.55, 0.87].map((share) => {
      const ys = report.outline.flatMap(({ outer }) => outer.map(({ a }) => a[1]));
      return Math.min(...ys) + share * (Math.max(...ys) - Math.min(...ys)) + 1e-3;
    });
    for (const level of own === null ? levels : [own, ...levels]) expect(faultsOf(report, level)).toEqual([]);
    expect(draw(report).includes('id="edgebite-beyond"')).toBe(own !== null);
  });

  it('are those that rays see in generated jobs', () => {
    fc.assert(
      fc.property(jobCases, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (job, share) => {
        const report = examine(parseJob(job));
        const ys = report.outline.flatMap(({ outer }) => outer.map(({ a }) => a[1]));
        const level = Math.min(...ys) + share * (Math.max(...ys) - Math.min(...ys));
        expect(faultsOf(report, level)).toEqual([]);
      }),
      { numRuns: runs(100) },
    );
  });
});

function outlineOf(corners: readonly (readonly [number, number])[]) {
  return corners.map((a, i) => ({ kind: 'line', a, b: corners[(i + 1) % corners.length] }));
}
