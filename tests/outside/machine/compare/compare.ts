import type { JobDocument } from '../sim/job.js';
import { type Run, run } from '../sim/run.js';
import { type Passes, stepsOf } from '../sim/steps.js';
import { areaOf } from './area.js';
import { compareBackOff } from './back-off.js';
import { compareBodies, SPECK } from './bodies.js';
import { compareHangs } from './hangs.js';
import { compareLeft } from './left.js';
import { compareLoad } from './load.js';
import { compareStands } from './stands.js';
import { compareStates } from './states.js';
import type { ToldReport, ToldStep } from './told.js';
import { compareUnder } from './under.js';
import { Verdict } from './verdict.js';

/** Cells along the longer side of the part: the finer grids only where the one before cannot tell what hangs together. */
const GRIDS = [112, 224, 448] as const;

/** Does a job with the passes that a report tells of, on a grid that is fine enough if there is one. */
export function runTold(job: JobDocument, report: ToldReport): Run {
  const steps = stepsOf(job, passesIn(report));
  let last: Run | null = null;
  for (const cells of GRIDS) {
    last = run(job, steps, cells);
    if (last.doubts === 0 && !hasSpecks(report, last)) break;
  }
  return last as Run;
}

/** What hangs is looked at on the coarsest grid where nothing is told to: that is asked after every step. */
function forHangs(job: JobDocument, report: ToldReport, done: Run): Run {
  const [coarse] = GRIDS;
  const isTold = report.steps.some(({ hangs }) => hangs.length > 0);
  const isCoarse = Math.max(done.grid.across, done.grid.along) <= coarse + 3;
  return isTold || isCoarse ? done : run(job, stepsOf(job, passesIn(report)), coarse);
}

/** Whether a body that is told is a speck on the grid, of which that would tell nothing. */
function hasSpecks(report: ToldReport, { grid }: Run): boolean {
  const speck = (SPECK * grid.cell) ** 2;
  return report.steps.some(({ frees }) => frees.some(({ view }) => areaOf(view) < speck));
}

function passesIn(report: ToldReport): Passes {
  return (cut) => {
    const own = report.steps.filter((step) => step.cut === cut);
    const [first] = own;
    if (first === undefined || first.center === null || first.wall !== null || first.pass === null)
      return null;
    const rows = own.filter(({ setup }) => setup === first.setup);
    return rows.map(({ center, diameter }) => ({ center: center as never, diameter }));
  };
}

/** Holds the steps of a report against a simulation of its job. */
export function compare(job: JobDocument, report: ToldReport): Verdict {
  const verdict = new Verdict();
  const done = runTold(job, report);
  if (done.end === null) {
    verdict.skip('job of which nothing is left');
    return verdict;
  }
  verdict.at('all steps');
  verdict.check('number of steps', report.steps.length === done.steps.length, () => {
    return `told ${report.steps.length}, found ${done.steps.length}`;
  });
  for (const [k, one] of done.steps.entries()) {
    const told = report.steps[k] as ToldStep | undefined;
    if (told === undefined) break;
    const { step } = one;
    verdict.at(`step ${k}, ${step.setup} ${step.cut.id} ${step.pass ?? ''}`);
    verdict.check(
      'order',
      told.setup === step.setup && told.cut === step.cut.id && told.up === step.up,
      () => {
        return `told ${told.setup} ${told.cut} ${told.up}`;
      },
    );
    verdict.near('reach', told.reaches, step.depth, 1e-9);
    compareStates(verdict, done, one, told, report);
    compareBodies(verdict, done, one, told, report);
    compareLoad(verdict, done, one, told);
    compareBackOff(verdict, done, one, told);
    compareStands(verdict, done, one, told, report);
    compareUnder(verdict, done, one, told);
  }
  compareHangs(verdict, forHangs(job, report, done), report);
  compareLeft(verdict, done, report);
  return verdict;
}
