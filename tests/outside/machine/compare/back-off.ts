import { backingOff, someWayOff } from '../sim/back-off.js';
import { meetsKeepOut } from '../sim/clear.js';
import { keepOutsOf, reachesUp } from '../sim/keep-outs.js';
import { between, heading, inWords, laid } from '../sim/lie.js';
import type { Done, Run } from '../sim/run.js';
import type { Place } from '../sim/shapes.js';
import type { ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** Whether the way that is told really comes off the wall, and whether there is none where none is told. */
export function compareBackOff(verdict: Verdict, run: Run, done: Done, told: ToldStep): void {
  const { step } = done;
  const { tool } = step;
  if (tool.kind !== 'disc' && tool.kind !== 'ring') return;
  const { by, to, machine, drawn, why } = told.backOff;
  if (by === null) {
    verdict.check('backing off, why not', why !== null && why !== '', () => 'no reason is told');
    compareNone(verdict, run, done);
    return;
  }
  const place = to ?? tool.center;
  const [cx, cy] = laid(step.lie, tool.center);
  const [tx, ty] = laid(step.lie, place);
  verdict.near('backing off, distance', by, Math.hypot(tx - cx, ty - cy), 1e-6);
  if (by > 1e-6) {
    const degrees = heading(tx - cx, ty - cy);
    verdict.check(
      'backing off, direction',
      machine !== null && between(machine.degrees, degrees) < 1e-3,
      () => {
        return `told ${machine?.degrees} (${machine?.words}), found ${degrees}`;
      },
    );
    if (machine !== null) {
      const words = inWords(Math.round(machine.degrees * 1e6) / 1e6);
      verdict.check(
        'backing off, words',
        machine.words === words,
        () => `${machine.degrees} is called ${machine.words}`,
      );
    }
    const [dx, dy] = [place[0] - tool.center[0], place[1] - tool.center[1]];
    verdict.check(
      'backing off, drawn',
      drawn !== null && between(drawn, heading(dx, dy)) < 1e-3,
      () => `told ${drawn}`,
    );
  }
  const came = backingOff(run, done, place);
  // What touches nothing may be lifted as it stands where what is near keeps it from moving.
  if (by === 0 && came === 'too near') compareNone(verdict, run, done);
  else if (came === 'untold') verdict.skip('backing off');
  else verdict.check('backing off', came === 'clear', () => `by ${by} to ${place}: ${came}`);
  verdict.check(
    'backing off, keep-outs',
    by === 0 || !meetsOnWay(run, done, place),
    () => `to ${place} it meets one`,
  );
}

/** A keep-out met by less than this is left open. */
const TOUCH = 0.05;

/** That there is no way off. */
function compareNone(verdict: Verdict, run: Run, done: Done): void {
  const way = someWayOff(run, done);
  if (way !== null && !meetsOnWay(run, done, way) && meetsOnWay(run, done, way, TOUCH))
    verdict.skip('backing off, no way');
  else
    verdict.check(
      'backing off, no way',
      way === null || meetsOnWay(run, done, way),
      () => `none is told, yet to ${way} it comes off`,
    );
}

/** Whether a standing tool goes into a keep-out on a straight way. */
function meetsOnWay(run: Run, { step }: Done, to: Place, wider = 0): boolean {
  const { tool } = step;
  if (tool.kind !== 'disc' && tool.kind !== 'ring') return false;
  const way = {
    kind: 'path' as const,
    path: [{ kind: 'line' as const, a: tool.center, b: to }],
    radius: tool.radius + wider,
  };
  return keepOutsOf(run.job, step.setup).some(
    (keepOut) => reachesUp(run.job, step, keepOut) === 'sure' && meetsKeepOut(way, keepOut, 0.01),
  );
}
