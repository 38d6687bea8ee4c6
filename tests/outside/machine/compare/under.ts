import { meetsKeepOut } from '../sim/clear.js';
import type { Tool } from '../sim/job.js';
import { belowOf, keepOutsOf } from '../sim/keep-outs.js';
import type { Done, Run } from '../sim/run.js';
import type { ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** A keep-out met by less than this is left open. */
const TOUCH = 0.05;

/** How far the tool of a step comes out below, and what lies there: of several things the highest. */
export function compareUnder(verdict: Verdict, run: Run, { step }: Done, { under }: ToldStep): void {
  const { tool, depth, setup } = step;
  const below = belowOf(run.job, step);
  verdict.near('comes out below', under.below, below, 1e-9);
  const isThrough = depth > run.job.part.thickness - 1e-9;
  const body: Tool = tool.kind === 'ring' ? { kind: 'disc', center: tool.center, radius: tool.radius } : tool;
  // What stands no lower than the tool comes is beside it or over it.
  const lower = isThrough ? keepOutsOf(run.job, setup).filter(({ from }) => from < -below) : [];
  const near = lower.filter((one) => meetsKeepOut({ ...body, radius: body.radius + TOUCH }, one, 1e-3));
  const sure = near.filter((one) => meetsKeepOut({ ...body, radius: body.radius - TOUCH }, one, 1e-3));
  if (sure.length < near.length) {
    verdict.skip('lies under');
    return;
  }
  const top = Math.max(...sure.map(({ to }) => to));
  const names = sure.filter(({ to }) => to === top).map(({ id }) => id);
  const isRight = names.length === 0 ? under.over === null : names.includes(under.over ?? '');
  verdict.check('lies under', isRight, () => `told ${under.over}, found ${names.join(' or ') || 'nothing'}`);
  if (under.margin !== null) verdict.near('room below', under.margin, -below - top, 1e-9);
}
