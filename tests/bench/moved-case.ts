import { type Examiner, examine, examiner, type Job, parseJob, type Report } from '@edgebite/core';
import type { Figure } from './figures.js';
import { type Effort, type Timing, timed } from './measure.js';
import { sieve } from './problems.js';

/** The name of the case. */
export const MOVED_CASE = 'examine-2000-moved';

/** A hole in the middle of the plate, and its place. */
const HOLE = 'hole 1025';
const HOME = { x: 49, y: 41 };

/** Radius of the circle that it is dragged round, in mm; between holes there are 0.6. */
const SWAY = 0.25;

/** Steps of a drag that are timed as one: a single one among looks at the whole job would pay for their garbage. */
const STEPS = 25;

/** One hole of 2,000 dragged a step, and how much longer it takes to examine the whole job as it is then. */
export function movedFigures(effort: Effort): Figure[] {
  const job = parseJob(sieve());
  let bench = examiner(job);
  let step = 0;
  const drag = (): Examiner => {
    for (let k = 0; k < STEPS; k++) {
      step += 1;
      bench = bench.moved(HOLE, { x: HOME.x + SWAY * Math.cos(step), y: HOME.y + SWAY * Math.sin(step) });
    }
    return bench;
  };
  const whole = (): Report => examine(bench.job);
  const [all, anew] = timed([drag, whole], effort) as [Timing, Timing];
  const ours = { wall: all.wall / STEPS, cpu: all.cpu / STEPS };
  const right = isRight(job);
  if (!right) process.exitCode = 1;
  const names = { case: MOVED_CASE, who: 'examine' };
  return [
    { kind: 'time', case: MOVED_CASE, who: 'edgebite', ...ours, bare: ours.wall, right },
    { kind: 'ratio', ...names, ratio: anew.wall / ours.wall },
    { kind: 'cpu', ...names, ratio: anew.cpu / ours.cpu },
  ];
}

/** Whether a drag there and back says the same as a look at the whole job. */
function isRight(job: Job): boolean {
  const there = examiner(job).moved(HOLE, { x: HOME.x + SWAY, y: HOME.y });
  const back = there.moved(HOLE, HOME);
  return [there, back].every(({ report, job: moved }) => {
    const whole = examine(moved);
    const parts = ({ webs, findings, cuts }: Report) => JSON.stringify([webs, findings, cuts]);
    const volumes = [report, whole].map(({ pieces }) => pieces[0]?.volume ?? 0) as [number, number];
    return parts(report) === parts(whole) && Math.abs(volumes[0] - volumes[1]) <= 1e-12 * volumes[1];
  });
}
