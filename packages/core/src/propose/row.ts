import type { Job } from '../job/job.js';
import { loopsOf } from '../region/measure.js';
import { regionFromReport } from '../report/from-report.js';
import type { Finding, Report, ReportSetup } from '../report/report-schema.js';

/** The figures of one way: one row of a table of ways. Lengths in the unit of the job. */
export interface WayRow {
  readonly steps: number;
  readonly tools: readonly string[];
  readonly toolChanges: number;
  /** How often the part is clamped: once more than it is turned or set up again. */
  readonly setups: number;
  /** [least, most] with the time for changes; null where a feed is not known. */
  readonly minutes: readonly [number, number] | null;
  /** Largest side load of any step, 0 to 1, and the cut; null where none is known. */
  readonly worstLoad: { readonly size: number; readonly cut: string } | null;
  readonly dangers: readonly Finding[];
  /** How many of the dangers are slugs that come loose; the sentence of each says where it lands. */
  readonly slugs: number;
  readonly checks: readonly Finding[];
  /** How many cuts push the part off a stop, or come out at one; null where no stops are named. */
  readonly pushes: number | null;
  /** The bodies still held or hanging in the end, to be sawn off; length of the saw cut where it is known. */
  readonly saw: readonly { readonly body: string; readonly length: number | null }[];
  /** The largest error of a wall of the finished part: from the size and run-out of its tool, and from its position. */
  readonly uncertainty: number;
}

/** The minutes for changes, and the errors of tools: by id, to either side of the diameter. */
export interface RowOptions {
  readonly toolChange: number;
  readonly turning: number;
  readonly tolerances: ReadonlyMap<string, number>;
  readonly pushes?: number | null | undefined;
}

/** The row of a way, from its report. */
export function wayRowOf(report: Report, options: RowOptions): WayRow {
  const { steps, findings } = report;
  let toolChanges = 0;
  let setups = steps.length === 0 ? 0 : 1;
  steps.forEach((step, k) => {
    const before = steps[k - 1];
    if (before === undefined) return;
    if (before.tool !== step.tool) toolChanges++;
    if (before.setup !== step.setup) setups++;
  });
  return {
    steps: steps.length,
    tools: [...new Set(steps.flatMap(({ tool }) => tool ?? []))],
    toolChanges,
    setups,
    minutes: minutesOf(report, toolChanges * options.toolChange + Math.max(0, setups - 1) * options.turning),
    worstLoad: worstLoadOf(report),
    dangers: findings.filter(({ level }) => level === 'danger'),
    slugs: findings.filter(({ code }) => code === 'loose-slug').length,
    checks: findings.filter(({ level }) => level === 'check'),
    pushes: options.pushes ?? null,
    saw: sawnOf(report),
    uncertainty: uncertaintyOf(report, options.tolerances),
  };
}

function minutesOf({ steps }: Report, changes: number): WayRow['minutes'] {
  let [least, most] = [changes, changes];
  for (const { minutes } of steps) {
    if (minutes === null) return null;
    least += minutes[0];
    most += minutes[1];
  }
  return [least, most];
}

function worstLoadOf({ steps }: Report): WayRow['worstLoad'] {
  return steps.reduce<WayRow['worstLoad']>((most, { cut, load }) => {
    const size = load?.worst?.sideLoad;
    return size === undefined || (most !== null && size <= most.size) ? most : { size, cut };
  }, null);
}

function sawnOf({ pieces, floors, webs }: Report): WayRow['saw'] {
  return pieces
    .filter(({ role }) => role === 'held slug' || role === 'hanging')
    .map(({ id }) => {
      const floor = floors.find(({ holds }) => holds === id);
      const web = webs.find(({ piece }) => piece === id);
      return { body: id, length: floor?.breakOff?.sawLength ?? web?.breakOff?.sawLength ?? null };
    });
}

/** Readouts have coarser steps by far. */
const ROUNDING = 1e-9;

/** Half of what the diameter may be off, and how far the spindle may stand beside the true place. */
function uncertaintyOf(report: Report, tolerances: RowOptions['tolerances']): number {
  const { steps, setups } = report;
  const known = new Set(setups.map(({ id }: ReportSetup) => id));
  const left = wallsOf(report);
  return steps.reduce((most, { cut, tool, targets, setup }) => {
    if (!left.has(`cut:${cut}`)) return most;
    const size = tool === null ? 0 : (tolerances.get(tool) ?? 0) / 2;
    const place = targets.reduce((far, { worst, roundingError }) => {
      const off = known.has(setup) ? worst : roundingError.map(Math.abs);
      return Math.max(far, ...off);
    }, 0);
    return Math.max(most, size + (place > ROUNDING ? place : 0));
  }, 0);
}

/** Names of the cuts that leave a wall of the kept piece. */
function wallsOf({ pieces: [kept] }: Report): ReadonlySet<string> {
  const edges = (kept?.sections ?? []).flatMap(({ region }) => loopsOf(regionFromReport(region)).flat());
  return new Set(edges.flatMap(({ source }) => source ?? []));
}

/** How far the tools of a job are off, to either side of the diameter that they cut: run-out only adds to it. */
export function tolerancesOf({ tools }: Pick<Job, 'tools'>): Map<string, number> {
  return new Map(
    tools.map(({ id, diameterTolerance = 0, settingTolerance = 0, runOut = 0 }) => [
      id,
      diameterTolerance + settingTolerance + runOut,
    ]),
  );
}
