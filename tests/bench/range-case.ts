import { examine, type Job, parseJob, type RangeReport, rangeOf } from '@edgebite/core';
import type { Figure } from './figures.js';
import { type Effort, type Timing, timed } from './measure.js';

/** The name of the case. */
export const RANGE_CASE = 'range-5';

/** Steps of the scan that a range takes the place of, and how many of them are timed in its stead. */
const SCAN = 10_000;
const STEPS = 100;

const QUERY = { cut: 'pivot', along: 'x', from: 5, to: 75 } as const;

/** One query on a part of twelve edges with five cuts, and how much longer a scan takes that looks at every step. */
export function rangeFigures(effort: Effort): Figure[] {
  const job = parseJob(cheek());
  const values = Array.from(
    { length: STEPS },
    (_, k) => QUERY.from + ((k + 0.5) * (QUERY.to - QUERY.from)) / STEPS,
  );
  const scan = (): number =>
    values.reduce((sum, value) => sum + examine(withValue(job, value)).pieces.length, 0);
  const [ours, part] = timed([() => rangeOf(job, QUERY), scan], effort) as [Timing, Timing];
  const right = isRight(job, rangeOf(job, QUERY), values);
  if (!right) process.exitCode = 1;
  const ratio = (of: 'wall' | 'cpu') => (part[of] * SCAN) / STEPS / ours[of];
  const names = { case: RANGE_CASE, who: `scan@${SCAN}` };
  return [
    { kind: 'time', case: RANGE_CASE, who: 'edgebite', ...ours, bare: ours.wall, right },
    { kind: 'ratio', ...names, ratio: ratio('wall') },
    { kind: 'cpu', ...names, ratio: ratio('cpu') },
  ];
}

/** Whether the scan finds what the interval of each of its steps says, and sees events at all. */
function isRight(job: Job, { intervals }: RangeReport, values: readonly number[]): boolean {
  const fits = values.every((value) => {
    const { cuts, pieces, webs, knifeEdges } = examine(withValue(job, value));
    const outcome = intervals.find(({ from, to }) => from < value && value < to)?.outcome;
    return (
      outcome !== undefined &&
      outcome.relation === cuts[0]?.relation &&
      Object.values(outcome.pieces).reduce((sum, count) => sum + count) === pieces.length &&
      outcome.webs.length === webs.length &&
      outcome.knifeEdges.length === knifeEdges.length
    );
  });
  return fits && intervals.length > 10;
}

function withValue(job: Job, x: number): Job {
  const [first, ...others] = job.cuts;
  if (first?.kind !== 'bore') throw new Error(`${RANGE_CASE}: the first cut is not the one that moves`);
  return { ...job, cuts: [{ ...first, center: { x, y: first.center.y } }, ...others] };
}

/** Eight lines and four arcs, and cuts of all kinds at three depths. */
function cheek(): unknown {
  const path =
    'M0 0 H80 V30 A4 4 0 0 1 76 34 H70 V50 H40 V44 A4 4 0 0 0 36 40 H20 A6 6 0 0 1 14 46 H6 A6 6 0 0 1 0 40 Z';
  return {
    edgebite: 1,
    name: 'Ratchet cheek of a warp beam',
    units: 'mm',
    part: { outline: { svgPath: path }, thickness: 12 },
    limits: { web: 1.5, knifeEdge: 30 },
    cuts: [
      { id: 'pivot', kind: 'bore', center: [30, 20.1], diameter: 12 },
      { id: 'seat', kind: 'annular', center: [62, 33], diameter: 22, wall: 4, reach: 25 },
      { id: 'pocket', kind: 'bore', center: [10, 40], diameter: 14, depth: 5 },
      { id: 'pin', kind: 'bore', center: [45.3, 12], diameter: 8 },
      {
        id: 'groove',
        kind: 'swept',
        diameter: 6,
        path: { svgPath: 'M15 8 L28 8 A8 8 0 0 1 36 16' },
        depth: 6,
        from: 'bottom',
      },
    ],
  };
}
