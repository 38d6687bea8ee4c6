import { inShape } from '../sim/distance.js';
import { middleOf } from '../sim/grid.js';
import { metalAt } from '../sim/metal.js';
import { type Done, type Moment, NOBODY, type Run } from '../sim/run.js';
import { areaOf } from './area.js';
import type { ToldReport, ToldSection, ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** Volumes add up to so much of the part's. */
const SUM = 1e-12;

/** Every how many cells a state is looked at. */
const EVERY = 7;

/** Volumes and states: what a step takes, and what stands before and after it. */
export function compareStates(
  verdict: Verdict,
  run: Run,
  done: Done,
  told: ToldStep,
  report: ToldReport,
): void {
  const all = [...done.takes.values()];
  const taken = all.reduce((sum, { volume }) => sum + volume, 0);
  const slack =
    all.reduce((sum, one) => sum + one.slack, 0) + 0.02 * run.grid.cell ** 2 * run.job.part.thickness;
  verdict.near('volume of a step', told.volume, taken, slack);
  const { kept, loose, removed } = told.volumes;
  const part = areaOf(report.outline) * report.thickness;
  verdict.check('sum of volumes', Math.abs(kept + loose + removed - part) <= SUM * part, () => {
    return `${kept} + ${loose} + ${removed} is ${kept + loose + removed}, the part ${part}`;
  });
  for (const [what, sections, moment] of [
    ['state before', told.before, done.before],
    ['state after', told.after, done.after],
  ] as const) {
    if (sections === null) verdict.skip(what);
    else compareState(verdict, what, run, moment, sections);
  }
}

/** Whether metal stands where it should, at the middles of cells whose whole square is in metal or out of it. */
function compareState(
  verdict: Verdict,
  what: string,
  run: Run,
  moment: Moment,
  sections: readonly ToldSection[],
): void {
  const cells = run.grid.across * run.grid.along;
  const wrong: string[] = [];
  for (const [s, slab] of run.slabs.entries()) {
    const metal = metalAt(run, moment, s, () => false);
    const middle = (slab.from + slab.to) / 2;
    const region = sections.find(({ from, to }) => from < middle && middle < to)?.region ?? [];
    const parts = region.map(({ outer, holes }) => inShape([outer, ...holes]));
    for (let cell = moment.done % EVERY; cell < cells; cell += EVERY) {
      const [x, y] = middleOf(run.grid, cell);
      const owner = moment.owner[s * cells + cell] as number;
      const value = metal.bounds(x, y, 0).low;
      if (Math.abs(value) < 1e-6) continue;
      const isMetal = parts.some((within) => within(x, y) > 0);
      if (isMetal !== value > 0)
        wrong.push(`${x}, ${y} at ${middle}: ${value}, ${owner === NOBODY ? 'air' : owner}`);
    }
  }
  verdict.check(what, wrong.length === 0, () => `${wrong.length} places, such as ${wrong[0]}`);
}
