import { cutSource } from '../geometry/source.js';
import { placeRemark, underneathRemark } from '../load/load-words.js';
import type { ReportCut, ReportLoadAt, ReportRows } from '../report/report-schema.js';
import { capital } from '../report/words.js';
import type { Result } from '../step/result.js';
import { namesIn } from './names.js';
import { stepWords } from './step-findings.js';
import type { Told } from './told.js';

type StepRow = ReportRows['steps'][number];

/** From half a circle in metal on down the load is one-sided: that much of it is 2 / pi. */
const ONE_SIDED = 2 / Math.PI;

/** Loads closer to that limit than this are half a circle: rounding. */
const SLACK = 1e-9;

/** What to know of how tools are loaded and led, step by step. One finding tells of all cuts of one cause. */
export function loadFindings(result: Result, report: ReportRows): Told[] {
  const byCut = stepsByCut(report);
  return [
    ...partialFindings(report, byCut),
    ...crossedFindings(report, byCut),
    ...oneSidedFindings(report, byCut),
    ...result.steps.flatMap((_, number) => placedFindings(result, report, number)),
  ];
}

/** By id of a cut: its steps. */
type StepsByCut = ReadonlyMap<string, readonly StepRow[]>;

function stepsByCut({ steps }: ReportRows): StepsByCut {
  const byCut = new Map<string, StepRow[]>();
  for (const step of steps) {
    const known = byCut.get(step.cut);
    if (known === undefined) byCut.set(step.cut, [step]);
    else known.push(step);
  }
  return byCut;
}

function partialFindings({ cuts }: ReportRows, byCut: StepsByCut): Told[] {
  const partial = cuts.filter(
    ({ kind, relation, removedVolume }) => kind !== 'swept' && relation === 'breaks out' && removedVolume > 0,
  );
  const [first, second] = partial;
  if (first === undefined) return [];
  const what =
    second === undefined
      ? `${namesOf(partial)} is a partial hole: it leaves the part`
      : `${namesOf(partial)} are partial holes: they leave the part`;
  // The ring of a wide cutter can stay in metal all the way round although its circle leaves the part.
  const isInterrupted = partial.some(({ id }) => strikes(byCut.get(id) ?? []));
  const how = second === undefined ? strikesOf(worstOf(byCut, first)) : '';
  const message = isInterrupted ? `${what}, so the cut is interrupted${how}.` : `${what}.`;
  return [noteOn(partial, 'partial-hole', message)];
}

/** Cuts within the part whose circle runs through what earlier cuts have opened. */
function crossedFindings({ cuts }: ReportRows, byCut: StepsByCut): Told[] {
  const crossed = cuts.filter(({ id, relation }) => relation === 'inside' && strikes(byCut.get(id) ?? []));
  const [first, second] = crossed;
  if (first === undefined) return [];
  const runs = second === undefined ? 'runs' : 'run';
  const how = second === undefined ? strikesOf(worstOf(byCut, first)) : '';
  const message = `${namesOf(crossed)} ${runs} into what earlier cuts have opened, so the cut is interrupted${how}.`;
  return [noteOn(crossed, 'interrupted-cut', message)];
}

/** Whether a tooth strikes metal at some height of some steps. */
function strikes(steps: readonly StepRow[]): boolean {
  return steps.some(({ load }) => load?.heights.some((one) => one.strikes > 0));
}

/** Of all passes of a cut and all heights, the load that pushes the most. */
function worstOf(byCut: StepsByCut, { id }: ReportCut): ReportLoadAt | null {
  return worst(byCut.get(id) ?? [])?.load?.worst ?? null;
}

function worst(steps: readonly StepRow[]): StepRow | null {
  const sizeOf = ({ load }: StepRow) => load?.worst?.sideLoad ?? -1;
  return steps.reduce<StepRow | null>(
    (most, step) => (most === null || sizeOf(step) > sizeOf(most) ? step : most),
    null,
  );
}

function strikesOf(load: ReportLoadAt | null): string {
  if (load === null || load.strikes === 0) return '';
  const times = load.strikes === 1 ? 'once' : load.strikes === 2 ? 'twice' : `${load.strikes} times`;
  return `: each tooth strikes the metal ${times} a turn and cuts for ${(load.share * 100).toFixed(0)} % of it`;
}

/** Cuts that push the part to one side: all of one setup that push the same way are told in one note. */
function oneSidedFindings({ cuts }: ReportRows, byCut: StepsByCut): Told[] {
  const groups = new Map<string, { readonly step: StepRow; readonly cut: ReportCut }[]>();
  for (const cut of cuts) {
    // A cut that only grazes is told of as such.
    if (cut.removedVolume === 0 || cut.relation === 'grazes') continue;
    const step = worst((byCut.get(cut.id) ?? []).filter(({ volume }) => volume > 0));
    const load = step?.load?.worst;
    if (step === null || load == null || load.push === null || load.sideLoad < ONE_SIDED - SLACK) continue;
    const key = `${step.setup} ${load.push.words}`;
    groups.set(key, [...(groups.get(key) ?? []), { step, cut }]);
  }
  return [...groups.values()].map((group) => {
    const most = worst(group.map(({ step }) => step)) as StepRow;
    const load = most.load?.worst as ReportLoadAt;
    const all = group.map(({ cut }) => cut);
    const [verb, least] = all.length === 1 ? ['pushes', ''] : ['push', `, ${most.cut} the most`];
    const where = most.setup.startsWith('as drawn') ? '' : ` in setup ${most.setup}`;
    const message = `${namesOf(all)} ${verb} the part ${load.push?.words}${where}${least}: half a circle in metal or less, side load ${load.sideLoad.toFixed(2)} of 1 at ${load.push?.degrees.toFixed(0)}°. Clamp and stop the part against that, never hold it by hand.`;
    return noteOn(all, 'one-sided-load', message);
  });
}

/** A tool in its place: how it is led, and what lies under it. */
function placedFindings({ job, steps }: Result, report: ReportRows, number: number): Told[] {
  const row = report.steps[number] as StepRow;
  const step = steps[number] as Result['steps'][number];
  const names = {
    ...namesIn(job),
    tool: row.tool === null ? `The tool of ${stepWords(row)}` : `Tool ${row.tool}`,
    cut: stepWords(row),
  };
  const about = [cutSource(row.cut), `step:${number}`, ...(row.tool === null ? [] : [`tool:${row.tool}`])];
  // What it cuts into is told with all else that is in the way.
  const isNear = step.under.margin !== null && step.under.margin > 0;
  const under = isNear ? underneathRemark(step.under, job.limits.breakThrough, names) : null;
  const remarks = [
    ...step.footing.map((fact) => ({ ...placeRemark(fact, names), about })),
    ...(under === null ? [] : [{ ...under, about: [...about, `keepOut:${step.under.over}`] }]),
  ];
  return remarks.map(({ code, message, about: names }) => ({
    code,
    message: capital(message),
    about: names,
    at: row.center === null ? null : [...row.center],
  }));
}

/** A finding on some cuts; of a single one it has the place. */
export function noteOn(cuts: readonly ReportCut[], code: Told['code'], message: string): Told {
  const [first] = cuts;
  const at = cuts.length === 1 && first !== undefined ? first.center : null;
  return { code, message, at, about: cuts.map(({ source }) => source) };
}

/** So many cuts a sentence names. */
const NAMED = 12;

/** `Cut seat`, `Cuts seat and eye`; of very many the first. */
export function namesOf(cuts: readonly ReportCut[]): string {
  const ids = cuts.map(({ id }) => id);
  if (ids.length === 1) return `Cut ${ids[0]}`;
  if (ids.length > NAMED) return `Cuts ${ids.slice(0, NAMED).join(', ')} and ${ids.length - NAMED} more`;
  return `Cuts ${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
}
