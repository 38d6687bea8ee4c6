import { TIP } from '../made/zero.js';
import { meetsKeepOut } from '../sim/clear.js';
import { boxOf } from '../sim/distance.js';
import type { Tool } from '../sim/job.js';
import { keepOutsOf, reachesUp } from '../sim/keep-outs.js';
import { laid } from '../sim/lie.js';
import type { Done, Run } from '../sim/run.js';
import { type Edge, loopsOf, type Place } from '../sim/shapes.js';
import type { ToldReport, ToldStand, ToldStep } from './told.js';
import type { Verdict } from './verdict.js';

/** Step of the readout that jobs have without saying so, mm. */
const STEP = 0.005;

/** A keep-out met by less than this is left open. */
const TOUCH = 0.05;

/** Every place where the tool is while it is down: where, what the readout shows, and what is in the way. */
export function compareStands(
  verdict: Verdict,
  run: Run,
  done: Done,
  told: ToldStep,
  report: ToldReport,
): void {
  compareReadouts(verdict, run, done, told);
  comparePlaces(verdict, done, told);
  compareKeepOuts(verdict, run, done, told, report);
}

/** The readout shows how far the spindle is right of the left face and behind the front face, and half a tip. */
function compareReadouts(verdict: Verdict, run: Run, { step }: Done, told: ToldStep): void {
  if (run.job.setups === undefined) return;
  const [low] = boxOf(loopsOf(run.job.part.outline), step.lie);
  const shown = (place: Place): Place => {
    const [x, y] = laid(step.lie, place);
    return [x - low[0] + TIP / 2, y - low[1] + TIP / 2];
  };
  for (const { at, readout, rounding, arc } of told.stands) {
    const exact = shown(at);
    for (const k of [0, 1] as const) {
      verdict.near('readout', readout[k], exact[k], STEP / 2 + 1e-9);
      verdict.near('rounding', rounding[k], readout[k] - exact[k], 1e-9);
      verdict.near('step of the readout', readout[k] / STEP, Math.round(readout[k] / STEP), 1e-6);
    }
    if (arc === null) continue;
    const drawnArc = step.cut.path?.edges.find((edge) => edge.kind === 'arc' && same(edge.b, at));
    if (drawnArc?.kind !== 'arc') continue;
    const middle = shown(drawnArc.center);
    for (const k of [0, 1] as const)
      verdict.near('centre of an arc', arc.center[k], middle[k], STEP / 2 + 1e-9);
    verdict.near(
      'radius of an arc',
      arc.radius,
      Math.hypot(drawnArc.a[0] - drawnArc.center[0], drawnArc.a[1] - drawnArc.center[1]),
      1e-9,
    );
    // Seen from above the part as it lies, a flip turns the sense round: told from the placed places themselves.
    const [a, c] = [laid(step.lie, drawnArc.a), laid(step.lie, drawnArc.center)];
    const next = onArc(drawnArc);
    const n = laid(step.lie, next);
    const cross = (a[0] - c[0]) * (n[1] - c[1]) - (a[1] - c[1]) * (n[0] - c[0]);
    const sense = cross > 0 ? 'counter-clockwise' : 'clockwise';
    verdict.check('sense of an arc', arc.sense === sense, () => `told ${arc.sense}, found ${sense}`);
  }
}

/** A place on a drawn arc shortly after its start. */
function onArc(edge: Extract<Edge, { kind: 'arc' }>): Place {
  const [cx, cy] = edge.center;
  const by = edge.ccw ? 0.01 : -0.01;
  const [dx, dy] = [edge.a[0] - cx, edge.a[1] - cy];
  return [cx + dx * Math.cos(by) - dy * Math.sin(by), cy + dx * Math.sin(by) + dy * Math.cos(by)];
}

function same(p: Place, q: Place): boolean {
  return Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-6;
}

/** The stands are those of the tool: its centre, or each end of an edge of its path, and where it backs off to. */
function comparePlaces(verdict: Verdict, { step }: Done, told: ToldStep): void {
  const { tool } = step;
  const down = told.stands.filter(({ what }) => what !== 'back off');
  const list = (stands: readonly ToldStand[]) => stands.map(({ what, at }) => `${what} ${at}`).join('; ');
  const wanted: Place[] =
    tool.kind === 'path'
      ? [tool.path[0]?.a as Place, ...tool.path.map(({ b }) => b)]
      : 'center' in tool
        ? [tool.center]
        : [];
  const isRight = down.length === wanted.length && down.every(({ at }, k) => same(at, wanted[k] as Place));
  verdict.check('stands', isRight, () => `told ${list(down)}`);
  const backs = told.stands.filter(({ what }) => what === 'back off');
  const { by, to } = told.backOff;
  const last = backs.at(-1);
  if (by !== null && by > 0)
    verdict.check('stand of backing off', last !== undefined && to !== null && same(last.at, to), () =>
      list(backs),
    );
  else verdict.check('stand of backing off', backs.length === 0, () => list(backs));
}

/** A keep-out that the tool goes into is told of in a finding of the step, and none that it stays clear of. */
function compareKeepOuts(
  verdict: Verdict,
  run: Run,
  { step }: Done,
  told: ToldStep,
  report: ToldReport,
): void {
  const { tool } = step;
  const body: Tool = tool.kind === 'ring' ? { kind: 'disc', center: tool.center, radius: tool.radius } : tool;
  const thinner = { ...body, radius: body.radius - TOUCH };
  const thicker = { ...body, radius: body.radius + TOUCH };
  for (const keepOut of keepOutsOf(run.job, step.setup)) {
    const up = reachesUp(run.job, step, keepOut);
    const isTold = told.findings.some((k) => {
      const finding = report.findings[k];
      return finding?.code === `hits-${keepOut.kind}` && finding.about.includes(`keepOut:${keepOut.id}`);
    });
    if (up !== 'none' && meetsKeepOut(thinner, keepOut, 1e-3)) {
      if (up === 'open') verdict.skip('keep-out');
      else verdict.check('keep-out', isTold, () => `${keepOut.id} is met and not told`);
    } else if (up === 'none' || !meetsKeepOut(thicker, keepOut, 1e-3)) {
      verdict.check('keep-out', !isTold, () => `${keepOut.id} is told and not met`);
    } else verdict.skip('keep-out');
  }
}
