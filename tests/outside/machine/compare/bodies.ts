import { type Done, type Freed, KEPT, type Run, UNKNOWN } from '../sim/run.js';
import { areaOf } from './area.js';
import type { ToldReport, ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** A body with less plan area than a square of so many cells is a speck of which the grid tells nothing. */
export const SPECK = 5;

/** Bodies that a step lets go, and loose ones that its tool meets. */
export function compareBodies(
  verdict: Verdict,
  run: Run,
  done: Done,
  told: ToldStep,
  report: ToldReport,
): void {
  const speck = (SPECK * run.grid.cell) ** 2;
  const rest = [...told.frees];
  for (const freed of done.frees) {
    if (!freed.isTold) {
      // Of what the grid cannot part there may be several: all that come off right then.
      const own = rest.filter(({ atDepth }) => Math.abs(atDepth - freed.depth) < 1e-9);
      const sum = own.reduce((all, { volume }) => all + volume, 0);
      if (own.length > 0 && Math.abs(sum - freed.volume) <= freed.slack) {
        for (const one of own) rest.splice(rest.indexOf(one), 1);
        continue;
      }
      verdict.skip('body let go');
      const k = nearest(rest, freed);
      if (k >= 0) rest.splice(k, 1);
      continue;
    }
    const k = nearest(rest, freed);
    const [one] = k < 0 ? [undefined] : rest.splice(k, 1);
    if (one === undefined) {
      if (freed.view < speck) verdict.skip('body let go');
      else
        verdict.check(
          'body let go',
          false,
          () => `none told, found one of ${freed.volume} at depth ${freed.depth}`,
        );
      continue;
    }
    verdict.check('body let go', true, () => '');
    verdict.near('depth of letting go', one.atDepth, freed.depth, 1e-9);
    verdict.near('volume of a body let go', one.volume, freed.volume, freed.slack);
    verdict.near(
      'view of a body let go',
      areaOf(one.view),
      freed.view,
      freed.slack / run.job.part.thickness + 0.3 * freed.view ** 0.5 * run.grid.cell,
    );
  }
  for (const one of rest) {
    if (areaOf(one.view) < speck || hasUnknown(done)) verdict.skip('body let go');
    else
      verdict.check(
        'body let go',
        false,
        () => `told ${one.body} of ${one.volume} at ${one.atDepth}, found none`,
      );
  }
  compareMeets(verdict, done, told, report);
}

function nearest(told: ToldStep['frees'], freed: Freed): number {
  let best = -1;
  told.forEach((one, k) => {
    const off = Math.abs(one.volume - freed.volume);
    if (best < 0 || off < Math.abs((told[best] as { volume: number }).volume - freed.volume)) best = k;
  });
  return best;
}

function hasUnknown({ after }: Done): boolean {
  return after.owner.includes(UNKNOWN);
}

/** What the tool takes of bodies that were loose before it came. */
function compareMeets(verdict: Verdict, done: Done, told: ToldStep, report: ToldReport): void {
  const found = [...done.takes].filter(([owner]) => owner > KEPT);
  const unknown = done.takes.get(UNKNOWN);
  const slack = [...done.takes.values()].reduce((sum, one) => sum + one.slack, 0) + 0.01;
  if (unknown !== undefined && unknown.volume > slack) {
    verdict.skip('loose bodies met');
    return;
  }
  const volume = found.reduce((sum, [, one]) => sum + one.volume, 0);
  const sum = told.meets.reduce((all, one) => all + one.volume, 0);
  verdict.near('loose metal met', sum, volume, slack);
  const real = found.filter(([, one]) => one.volume > one.slack + 0.05);
  verdict.check(
    'loose bodies met',
    told.meets.length >= real.length,
    () => `told ${told.meets.length}, found ${real.length}`,
  );
  for (const { body } of told.meets) {
    verdict.check(
      'loose bodies met',
      report.bodies.some(({ id }) => id === body),
      () => `no body is called ${body}`,
    );
  }
}
