import {
  boundsOf,
  examine,
  extentOf,
  type Job,
  type RangeQuery,
  type RangeReport,
  rangeOf,
  weldTolerance,
} from '@edgebite/core';
import { type ClosedCheck, type ClosedKind, closedCheck, TOUCHING } from './closed-check.js';
import { outcomePrint, printOf, withValue } from './range-print.js';

/** What a comparison with a dense scan came to. */
export interface RangeCheck {
  readonly events: number;
  /** Changes that the scan came upon, and those of events that lie between its steps. */
  readonly changes: readonly CheckedChange[];
  readonly rangeMs: number;
  readonly scanMs: number;
}

/** A change that the scan came upon, and by what it was seen to be an event of the answer. */
export interface CheckedChange {
  /**
   * By the report, if its place is right; else by a closed form of that kind. At an end of the range touching is no
   * event.
   */
  readonly by: 'report' | ClosedKind | 'end';
  /** The event that it is; null at an end of the range. */
  readonly event: number | null;
  /** Distance of the event from the change of the report, or from the root of the closed form, as a share of the range. */
  readonly share: number;
  /** Whether the scan came upon it; else it takes another change back within a step, and was looked for at the event. */
  readonly scanned: boolean;
  /** How far apart what touches at that root is where the report changes, in weld tolerances. */
  readonly welds: number;
}

/** An event is as right as this share of the range. */
const RIGHT = 1e-9;

/**
 * A web that slips off the end of an edge comes or goes as two directions part, which are told apart to 1e-7: the
 * report blurs by a few times that much of the way from the end to the centre of what slips, which is about the part's
 * size, and by more where the centre comes up to the end at a slant.
 */
const SLIPPING = 2e-6;

/** How far beside an event that the scan has missed its change is looked for: so many times as far as touching blurs. */
const ASIDE = [1, 10, 100];

/** Halvings of a step of the scan: of a range in a hundred steps it leaves less than a trillionth. */
const HALVINGS = 34;

/** Compares the answer to a query with a scan, see `checkAnswer`. */
export function checkRange(job: Job, query: RangeQuery, steps: number): RangeCheck {
  const started = performance.now();
  const answer = rangeOf(job, query);
  const rangeMs = performance.now() - started;
  return { ...checkAnswer(answer, job, query, steps), rangeMs };
}

/**
 * Compares an answer with a scan of so many even steps that is halved wherever the report changes. Where an event is off
 * from that by more than a billionth of the range, it has to be as close as that to a root of a closed form, and the
 * report no farther from the root than it can tell.
 * Throws Error with the first change that the answer has not, the first event that is none, or the first value whose
 * report is not what the answer says of its interval.
 */
export function checkAnswer(
  answer: RangeReport,
  job: Job,
  query: RangeQuery,
  steps: number,
): Omit<RangeCheck, 'rangeMs'> {
  const printAt = (value: number) => printOf(examine(withValue(job, query, value)), query.cut);
  const span = query.to - query.from;
  const welds = weldTolerance(extentOf(boundsOf(job.outline) as NonNullable<ReturnType<typeof boundsOf>>));
  const closed = closedCheck(job, query, steps, welds, RIGHT * span);
  const blurs = {
    near: Math.max(RIGHT * span, TOUCHING * welds),
    slips: SLIPPING * extentOf(boundsOf(job.outline) as NonNullable<ReturnType<typeof boundsOf>>),
    closed,
  };
  checkForm(answer, query);

  const scanStarted = performance.now();
  const samples = Array.from({ length: steps + 1 }, (_, k) => {
    const at = k === steps ? query.to : query.from + (span * k) / steps;
    return { at, print: printAt(at) };
  });
  const scanMs = performance.now() - scanStarted;
  for (const { at, print } of samples) checkSample(answer, at, print, blurs);
  const checked: CheckedChange[] = [];
  const take = ({ by, event, off, apart }: Seen, scanned: boolean) =>
    checked.push({ by, event, scanned, share: off / span, welds: apart / welds });
  for (let k = 0; k < steps; k++) {
    const [low, high] = samples.slice(k, k + 2) as [Sample, Sample];
    for (const change of settled(changes(printAt, low, high), blurs)) {
      const seen = seenAs(answer, change, blurs);
      if (seen === null) {
        throw new Error(
          `at ${change.at} the report changes, and no event is there\n${change.low.print}\n${change.high.print}`,
        );
      }
      take(seen, true);
    }
  }
  for (const { at } of answer.events) {
    const isSeen = () => checked.some(({ event }) => event === at);
    for (const by of ASIDE.map((times) => times * blurs.near)) {
      if (isSeen()) break;
      const [low, high] = [at - by, at + by].map((value) => ({ at: value, print: printAt(value) }));
      const found = settled(changes(printAt, low as Sample, high as Sample), blurs);
      for (const seen of found.map((change) => seenAs(answer, change, blurs))) {
        if (seen?.event === at) take(seen, false);
      }
    }
    if (!isSeen()) throw new Error(`nothing changes at the event ${at}`);
  }
  for (const { from, to } of answer.intervals) {
    for (const share of [0.1, 0.3, 0.7, 0.9]) {
      const at = from + (to - from) * share;
      checkSample(answer, at, printAt(at), blurs);
    }
  }
  return { events: answer.events.length, changes: checked, scanMs };
}

interface Seen {
  readonly by: CheckedChange['by'];
  readonly event: number | null;
  /** Of the event from the change, or from the root. */
  readonly off: number;
  readonly apart: number;
}

/** How many events near a change are looked at: a closer one may be another. */
const CLOSEST = 3;

/** What says that a change is an event: its own place, or a root that both are at. Null if nothing does. */
function seenAs(answer: RangeReport, change: Change, { near, closed }: Blurs): Seen | null {
  const { from, to } = answer;
  const offFrom = (at: number) => Math.abs(at - change.at);
  const closest = answer.events
    .map(({ at }) => at)
    .sort((a, b) => offFrom(a) - offFrom(b))
    .slice(0, CLOSEST);
  const [event] = closest;
  if (event !== undefined && offFrom(event) <= RIGHT * (to - from)) {
    return { by: 'report', event, off: offFrom(event), apart: 0 };
  }
  for (const at of closest) {
    const confirmed = closed.confirm(at, change.at);
    if (confirmed !== null) return { ...confirmed, by: confirmed.kind, event: at };
  }
  // The change at an end of the range that is itself a place of touching is of no consequence within it.
  return [from, to].some((end) => offFrom(end) <= near) ? { by: 'end', event: null, off: 0, apart: 0 } : null;
}

interface Sample {
  readonly at: number;
  readonly print: string;
}

interface Change {
  readonly at: number;
  readonly low: Sample;
  readonly high: Sample;
}

/** All changes between two samples that halving comes upon. */
function changes(printAt: (value: number) => string, low: Sample, high: Sample): Change[] {
  if (low.print === high.print) return [];
  let [a, b] = [low, high];
  for (let n = 0; n < HALVINGS; n++) {
    const at = a.at + (b.at - a.at) / 2;
    if (at <= a.at || at >= b.at) break;
    const middle = { at, print: printAt(at) };
    if (middle.print === a.print) a = middle;
    else if (middle.print === b.print) b = middle;
    else return [...changes(printAt, a, middle), ...changes(printAt, middle, b)];
  }
  return [{ at: a.at, low: a, high: b }];
}

/** Without changes that take each other back at once: a sample that fell upon touching. */
function settled(found: readonly Change[], { near, closed }: Blurs): Change[] {
  return found.filter((change) => {
    const reach = Math.max(near, ...closed.touchesAt(change.at).map((at) => Math.abs(at - change.at)));
    const close = found.filter(({ at }) => Math.abs(at - change.at) <= 2 * reach);
    return (close[0] as Change).low.print !== (close[close.length - 1] as Change).high.print;
  });
}

interface Blurs {
  readonly near: number;
  readonly slips: number;
  readonly closed: ClosedCheck;
}

function checkSample(answer: RangeReport, at: number, print: string, { near, slips, closed }: Blurs): void {
  const places = [answer.from, ...answer.events.map((event) => event.at), answer.to];
  if (places.some((place) => Math.abs(place - at) <= near)) return;
  const interval = answer.intervals.find(({ from, to }) => from <= at && at <= to);
  if (interval === undefined) throw new Error(`no interval holds ${at}`);
  const told = outcomePrint(interval.outcome);
  if (told === print || isSlip(answer, at, told, print, slips)) return;
  const right = RIGHT * (answer.to - answer.from);
  const touches = closed.touchesAt(at);
  if (touches.some((touch) => places.some((place) => Math.abs(place - touch) <= right))) return;
  throw new Error(
    `at ${at} the report is\n${print}\nand the interval ${interval.from} to ${interval.to} says\n${told}`,
  );
}

/** Whether two reports differ by webs only, near an event at which nothing but a web comes or goes. */
function isSlip(answer: RangeReport, at: number, one: string, other: string, slips: number): boolean {
  const withoutWebs = (print: string) => print.replace(/\| webs .*? \| knife/, '| knife');
  if (withoutWebs(one) !== withoutWebs(other)) return false;
  return answer.events.some((event) => isOfWebs(event) && Math.abs(event.at - at) <= slips);
}

function isOfWebs({ changes }: RangeReport['events'][number]): boolean {
  return changes.every(
    (change) => change.what === 'web' || (change.what === 'finding' && change.code === 'thin-web'),
  );
}

function checkForm({ events, intervals }: RangeReport, { from, to }: RangeQuery): void {
  const ends = [from, ...events.map(({ at }) => at), to];
  if (ends.slice(1).some((end, k) => !(end > (ends[k] as number))))
    throw new Error(`events out of order: ${ends}`);
  if (intervals.length !== events.length + 1) throw new Error('intervals do not fit the events');
  intervals.forEach((interval, k) => {
    if (interval.from !== ends[k] || interval.to !== ends[k + 1])
      throw new Error(`interval ${k} has other ends`);
  });
}
