/*
 * Room: safe intervals: what happens to a part as one number of one cut runs through a range.
 * In: a job, the cut and its free number.
 * Out: intervals between the values at which something changes.
 */

import { subtract } from '../combine/subtract.js';
import type { Cut } from '../cut/cut.js';
import { boxOfCut, coreOf, footprint } from '../cut/footprint.js';
import { grown } from '../geometry/bounds.js';
import { ticking, type Watch } from '../geometry/watch.js';
import type { Job, Units } from '../job/job.js';
import { cellsOf } from '../left/cells.js';
import { relationOf, standingOf } from '../left/relation.js';
import { disc } from '../region/region.js';
import { regionFromReport } from '../report/from-report.js';
import type { Report } from '../report/report-schema.js';
import { edgeNames } from '../result/edge-names.js';
import { laidSetups } from '../result/setup-rows.js';
import { examine } from '../write/examine.js';
import { candidates } from './events.js';
import { footings } from './footing.js';
import { inTheWay } from './in-the-way.js';
import { type StillNeck, stillNecks } from './necks.js';
import { type Along, type FreeNumber, freeNumberOf, type RangeQuery } from './number.js';
import {
  besideRelation,
  changesBetween,
  findingsIn,
  keyOf,
  lastingOf,
  type Outcome,
  outcomeOf,
  type RangeChange,
  type RangeFinding,
  without,
} from './outcome.js';
import { presentAmong, type RangePresent } from './present.js';
import { type Scene, sceneOf } from './scene.js';
import { type Probe, search } from './search.js';
import { isOnShape, NOT_ASKED, shapeOf } from './shape.js';

/** A value at which the outcome changes, and what changes there as the free number grows. */
export interface RangeEvent {
  readonly at: number;
  readonly changes: readonly RangeChange[];
}

/** A stretch of values between neighbouring events: all of them have the same outcome. */
export interface RangeInterval {
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
  /**
   * Dangers and checks that the cut adds: those that the job without the cut does not have, or not as often, about
   * the same edges and cuts. A cut that misses or only grazes is one, a cutter that runs into a clamp another.
   * `notAsked` lists everything that is not examined at every value; of that, dangers are examined at some values: in
   * the middle and near both ends of the interval, and between those at which the centre of a tool comes onto metal
   * or off it.
   */
  readonly adds: readonly RangeFinding[];
  /** Whether the cut adds none. */
  readonly safe: boolean;
}

/** The outcomes of a job as one number of one cut runs through a range. Lengths are in the unit of the job. */
export interface RangeReport {
  readonly name: string;
  readonly units: Units;
  readonly limits: Job['limits'];
  /** What edges and holes are called, as in a report. */
  readonly names: Job['names'];
  readonly cut: string;
  readonly along: Along;
  readonly from: number;
  readonly to: number;
  /** The end of the examined range: `to`, unless the search was stopped. Intervals and events go no further. */
  readonly knownTo: number;
  /** The present value in the job; for a swept cut the start of its path. It may lie outside the range. */
  readonly now: number;
  /** The position of that value among the events. */
  readonly present: RangePresent;
  /** Everything that is not examined at every value, in words: an interval says nothing about it. */
  readonly notAsked: readonly string[];
  /** In order of their values. */
  readonly events: readonly RangeEvent[];
  /** One more than there are events, from the lower end of the range up to `knownTo`. */
  readonly intervals: readonly RangeInterval[];
}

/** Changes that are bracketed are bracketed to this share of the range. */
const FINE = 1e-10;

/** A watch on the search of a range. */
export interface RangeWatch extends Watch {
  /** Called repeatedly: true stops the search, which then returns its answer so far. */
  readonly isOver?: (() => boolean) | undefined;
}

/** The share of the work after which all events are known: what each interval adds is looked at then. */
const LOOKED = 0.7;

function shareAt({ from, to }: RangeQuery, at: number): number {
  return Math.min(1, Math.max(0, (at - from) / (to - from)));
}

/**
 * All values of one free number of a cut, its centre along x or y or its diameter, at which the outcome changes; the
 * intervals between them with the outcome of each; and which of these are safe.
 *
 * The values at which something can happen are worked out first, in closed form or as bracketed roots of distances,
 * see `candidates`; the job is then examined between neighbouring ones. An event is correct to a billionth of the
 * range. Near a contact, a report may state touching while boundaries are a few weld tolerances (each a billionth of
 * the part) apart; no interval includes that. Where a report changes elsewhere than at a candidate (relations go by
 * area, and the largest piece by volume) its own change is bracketed, to 1e-10 of the range. Where a web slips off
 * the end of an edge, reports are less sharp, since directions are distinguished to 1e-7 only.
 * @param watch receives the progress; aborting its signal ends the call with that reason; its `isOver`, or a function in
 *   its place, is called repeatedly, and stops the search with the answer so far, from the lower end up to `knownTo`
 * @throws RangeQueryError if there is no such cut or number, or the range is empty
 */
export function rangeOf(job: Job, query: RangeQuery, watch: (() => boolean) | RangeWatch = {}): RangeReport {
  const own: RangeWatch = typeof watch === 'function' ? { isOver: watch } : watch;
  const tick = ticking(own);
  const isOver = own.isOver ?? (() => false);
  tick(0);
  const number = freeNumberOf(job, query);
  const { from, to, along } = query;
  const rest = shapeOf(jobWithout(job, number.index));
  const base = from + (to - from) / 2;
  const scene = sceneOf(job, number, base, from, to);
  const times = [
    ...candidates(scene, necksOf(rest, scene), ownNecks(number.cutAt(base), scene)),
    ...inTheWay(job, number, base, scene).filter(({ s }) => s > scene.low && s < scene.high),
  ].sort((a, b) => a.s - b.s);
  const found = search({
    from,
    to,
    candidates: times.map(({ s, isLong, blur }) => ({ at: base + s, isLong, blur })),
    blur: scene.blur,
    fine: FINE * (to - from),
    probe: (at) => {
      tick(LOOKED * shareAt(query, at));
      return probeAt(job, number, at);
    },
    sideOf: (low, high) => relationSide(job, number, low, high),
    isOver,
  });
  const known = found.switches.filter(({ at }) => at < found.knownTo);
  const ends = [from, ...known.map(({ at }) => at), found.knownTo];
  const intervals: RangeInterval[] = [];
  const feet = footings(job, number, base, scene).map((s) => base + s);
  for (const [k, { outcome }] of [found.first, ...known.map(({ after }) => after)].entries()) {
    const [low, high] = [ends[k] as number, ends[k + 1] as number];
    tick(LOOKED + (1 - LOOKED) * shareAt(query, low));
    const asked = without(outcome.findings, findingsIn(rest)).filter(isAgainst);
    const values = asked.length > 0 ? [] : lookedAt(low, high, feet);
    // Of the first there is always an answer; another of which not all is asked is not safe, and not given.
    const others = otherDangers(job, number, values, k === 0 ? () => false : isOver);
    if (others === null) break;
    const adds = [...asked, ...others];
    intervals.push({ from: low, to: high, outcome, adds, safe: adds.length === 0 });
  }
  const switches = known.slice(0, intervals.length - 1);
  tick(1);
  const knownTo = (intervals[intervals.length - 1] as RangeInterval).to;
  return {
    name: job.name,
    units: job.units,
    limits: job.limits,
    names: edgeNames(job, laidSetups(job)),
    cut: query.cut,
    along,
    from,
    to,
    knownTo,
    now: number.now,
    notAsked: NOT_ASKED,
    present: presentAmong(number.now, {
      from,
      to: knownTo,
      places: switches.map(({ at }) => at),
      near: 2 * scene.blur,
    }),
    events: switches.map(({ at, before, after }) => ({
      at,
      changes: changesBetween(before.outcome, after.outcome),
    })),
    intervals,
  };
}

/** Whether a finding speaks against a value. Where the land between two cuts is gone, that is one, for all its being a note. */
function isAgainst({ level, code }: RangeFinding): boolean {
  return level !== 'note' || code === 'cuts-merge';
}

/** At which shares of an interval dangers are looked for that are not asked at every value. */
const LOOKED_AT = [0.001, 0.5, 0.999];

/** Most other values in an interval at which they are looked for: each costs a whole report. */
const MOST_LOOKS = 16;

/** Values of an interval at which dangers are looked for: some, and one between each two changes of a tool's footing. */
function lookedAt(low: number, high: number, feet: readonly number[]): number[] {
  const own = feet.filter((at) => at > low && at < high);
  const ends = [low, ...own, high];
  const between = own.length === 0 ? [] : ends.slice(1).map((end, k) => ((ends[k] as number) + end) / 2);
  return [...LOOKED_AT.map((share) => low + share * (high - low)), ...between.slice(0, MOST_LOOKS)];
}

/**
 * Dangers of a whole report that are not among those asked at every value, at some values of an interval that would
 * else be safe. Those that the job has without the cut do not count. null where the look is to stop.
 */
function otherDangers(
  job: Job,
  { index, cutAt }: FreeNumber,
  values: readonly number[],
  isOver: () => boolean,
): RangeFinding[] | null {
  // They come of tools, and of what lies under the part.
  if (job.tools.length === 0 && job.keepOuts.length === 0) return [];
  const dangersOf = (one: Job) =>
    examine(one)
      .findings.filter((found) => found.level === 'danger' && !isOnShape(found))
      .map(lastingOf);
  const found: RangeFinding[] = [];
  for (const at of values) {
    if (isOver()) return null;
    found.push(...dangersOf({ ...job, cuts: job.cuts.map((cut, k) => (k === index ? cutAt(at) : cut)) }));
  }
  if (found.length === 0) return [];
  const known = new Set(dangersOf(jobWithout(job, index)).map(keyOf));
  return [...new Map(found.map((one) => [keyOf(one), one])).values()].filter((one) => !known.has(keyOf(one)));
}

/** The job without one of its cuts, which no setup and no tool names then. */
function jobWithout(job: Job, index: number): Job {
  const gone = job.cuts[index]?.id;
  const cuts = job.cuts.filter((_, k) => k !== index);
  const rest = (ids: readonly string[]) => ids.filter((id) => id !== gone);
  return {
    ...job,
    cuts,
    setups: job.setups.map((setup) => ({ ...setup, cuts: rest(setup.cuts) })),
    tools: job.tools.map((tool) => ({ ...tool, cuts: rest(tool.cuts) })),
  };
}

function probeAt(job: Job, number: FreeNumber, at: number): Probe<Outcome> {
  const cuts = job.cuts.map((cut, k) => (k === number.index ? number.cutAt(at) : cut));
  const outcome = outcomeOf(shapeOf({ ...job, cuts }), number.index);
  return { at, outcome, key: keyOf(outcome) };
}

/** Where nothing but the relation and what follows from it changes, it is all that has to be looked at. */
function relationSide(
  job: Job,
  number: FreeNumber,
  low: Probe<Outcome>,
  high: Probe<Outcome>,
): ((at: number) => Probe<Outcome> | null) | null {
  const { id } = number.cutAt(low.at);
  if (low.outcome.relation === high.outcome.relation) return null;
  if (keyOf(besideRelation(low.outcome, id)) !== keyOf(besideRelation(high.outcome, id))) return null;
  return (at) => {
    const cut = number.cutAt(at);
    const core = cut.kind === 'annular' ? coreOf(cut) : null;
    const removal = { id, footprint: footprint(cut), core, low: 0, high: job.thickness };
    const cells = cellsOf(job.outline, job.thickness, [removal]);
    const relation = relationOf(standingOf(cells), 0, cut, job.outline, job.resolution);
    const side = [low, high].find(({ outcome }) => outcome.relation === relation);
    return side === undefined ? null : { ...side, at };
  };
}

/** The necks that the job has without the cut, near where the cut goes. */
function necksOf(rest: Report, { box, limits }: Scene): StillNeck[] {
  const sections = rest.pieces.flatMap((piece) =>
    piece.sections.map(({ region }) => regionFromReport(region)),
  );
  return sections.flatMap((section) => stillNecks(section, limits.web, box));
}

/** The necks that a swept cut leaves between its own rims, in a plate without edges. */
function ownNecks(cut: Cut, { limits }: Scene): StillNeck[] {
  if (cut.kind !== 'swept') return [];
  const box = boxOfCut(cut);
  const { minX, minY, maxX, maxY } = box;
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const plate = disc(middle, Math.hypot(maxX - minX, maxY - minY) + 2 * limits.web);
  return stillNecks(subtract(plate, [footprint(cut)]), limits.web, grown(box, limits.web));
}
