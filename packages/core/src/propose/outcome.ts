import { type Aim, finishedAt, SAME_SHARE } from '../aim/aim.js';
import { xor } from '../combine/boolean.js';
import type { JobDocument, SetupDocument } from '../document/schema.js';
import type { PlannedCut } from '../feature/cut-plan.js';
import { parseJob } from '../read/parse.js';
import { area } from '../region/measure.js';
import { regionFromReport } from '../report/from-report.js';
import type { Finding, Report } from '../report/report-schema.js';
import { examine } from '../write/examine.js';
import { jobOfCuts } from './as-job.js';
import { cutsAgainstStops } from './pushes.js';
import { Unmakable } from './unmakable.js';

/** What comes of cuts in an order. */
export interface Outcome {
  readonly order: readonly PlannedCut[];
  readonly job: JobDocument;
  readonly report: Report;
  readonly dangers: readonly Finding[];
  /** How many cuts go against a stop. */
  readonly pushes: number;
  /** Of cutting alone, [least, most]; null where a feed is not known. */
  readonly minutes: readonly [number, number] | null;
  readonly toolChanges: number;
  readonly turnings: number;
}

/** Findings with which a cut is not made as planned. */
const NOT_MADE = new Set<Finding['code']>([
  'passes-not-possible',
  'reach-too-short',
  'tool-does-not-fit',
  'spindle-too-fast',
  'head-does-not-reach-size',
  'bar-too-short',
]);

/** Findings of cuts that take nothing. */
const IDLE = new Set<Finding['code']>(['cut-misses', 'cut-in-air']);

/**
 * Cuts in an order examined; null where some of them cannot be made as they are planned. Those that find nothing left to
 * take are left out; in setups that are given there is none then.
 * @param unmakable what is known of other orders of the same cuts, and is added to
 */
export function outcomeOf(
  aim: Aim,
  order: readonly PlannedCut[],
  setups?: readonly SetupDocument[],
  unmakable = new Unmakable(),
): Outcome | null {
  if (unmakable.has(order)) return null;
  const job = jobOfCuts(aim, order, setups);
  const report = examine(parseJob(job));
  const { findings } = report;
  const idle = new Set(findings.flatMap(({ code, about }) => (IDLE.has(code) ? about : [])));
  if (idle.size > 0) {
    // Setups name their cuts: without some of them they are others.
    if (setups !== undefined) return null;
    return outcomeOf(
      aim,
      order.filter(({ id }) => !idle.has(`cut:${id}`)),
      setups,
      unmakable,
    );
  }
  const faulty = findings.filter(({ code }) => NOT_MADE.has(code));
  if (faulty.length > 0) {
    unmakable.add(
      order,
      faulty.flatMap(({ about }) => about),
    );
    return null;
  }
  return {
    order,
    job,
    report,
    dangers: findings.filter(({ level }) => level === 'danger'),
    pushes: cutsAgainstStops(aim, report, 0).size,
    minutes: minutesOf(report),
    ...changesIn(order),
    ...(setups === undefined ? {} : { turnings: setups.length - 1 }),
  };
}

/** How often the tool is changed and the part turned over in an order; the first of each is no change. */
export function changesIn(order: readonly PlannedCut[]): Pick<Outcome, 'toolChanges' | 'turnings'> {
  let toolChanges = 0;
  let turnings = 0;
  order.forEach(({ tool, side }, k) => {
    const before = order[k - 1];
    if (before === undefined) return;
    if (before.tool !== tool) toolChanges++;
    if (before.side !== side) turnings++;
  });
  return { toolChanges, turnings };
}

function minutesOf({ steps }: Report): Outcome['minutes'] {
  let least = 0;
  let most = 0;
  for (const { minutes } of steps) {
    if (minutes === null) return null;
    least += minutes[0];
    most += minutes[1];
  }
  return [least, most];
}

/** What an order takes, changes included: the middle of its range; where feeds are not known, the changes alone. */
export function timeOf(aim: Aim, outcome: Pick<Outcome, 'minutes' | 'toolChanges' | 'turnings'>): number {
  const { minutes, toolChanges, turnings } = outcome;
  const cutting = minutes === null ? 0 : (minutes[0] + minutes[1]) / 2;
  return cutting + toolChanges * aim.toolChange + turnings * aim.turning;
}

/** The better of two outcomes comes first: fewer dangers, then fewer pushes off a stop, then less time. */
export function compareOutcomes(aim: Aim, a: Outcome, b: Outcome): number {
  return a.dangers.length - b.dangers.length || a.pushes - b.pushes || timeOf(aim, a) - timeOf(aim, b);
}

/** Whether what is left is the finished part at every height, but for rounding, and nothing hangs on it. */
export function isFinished(aim: Aim, report: Report): boolean {
  const { job } = aim;
  const nothing = SAME_SHARE * area(job.outline);
  const [kept, ...others] = report.pieces;
  if (kept?.role !== 'kept' || others.some(({ role }) => role === 'hanging' || role === 'held slug'))
    return false;
  const { thickness } = job;
  const marks = [
    ...kept.sections.flatMap(({ from, to }) => [from, to]),
    ...aim.pockets.map(({ from, depth }) => (from === 'top' ? thickness - depth : depth)),
  ].sort((a, b) => a - b);
  const sections = kept.sections.map(({ from, to, region }) => ({
    from,
    to,
    region: regionFromReport(region),
  }));
  return (
    marks[0] === 0 &&
    marks.at(-1) === thickness &&
    marks.slice(1).every((to, k) => {
      const from = marks[k] as number;
      if (to - from <= SAME_SHARE * thickness) return true;
      const middle = (from + to) / 2;
      const section = sections.find((one) => one.from < middle && middle < one.to);
      return section !== undefined && area(xor([section.region, finishedAt(aim, middle)])) <= nothing;
    })
  );
}
