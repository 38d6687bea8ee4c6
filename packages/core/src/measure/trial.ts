import type { Point } from '../geometry/point.js';
import { type Dial, radiusStep } from './correction.js';
import { pinFault } from './pins.js';
import type { Seat } from './seat.js';
import { readingOf, slopesOf, type Way } from './way.js';
import type { Fitting } from './ways.js';

/**
 * One line of the table: a possible reading of a trial cut, and the correction for it. Lengths in the unit of the
 * part.
 */
export interface TrialRow {
  readonly reading: number;
  /** The radius for that reading, with the centre where it is drawn. */
  readonly radius: number;
  /** Whole graduations to open the head by; 0 where none is sure to stay within size. */
  readonly graduations: number;
  /** What the dial goes on by. */
  readonly turn: number;
  /** Between what the radius then is short of the drawn one. */
  readonly short: readonly [number, number];
}

/** A trial cut, how to measure it, and the next setting of the head by what it reads. */
export interface Trial {
  /** Number of the way, from 0. */
  readonly way: number;
  /** Radius to set the head to, and its distance from the drawn one. */
  readonly radius: number;
  readonly leaves: number;
  /** The reading of the way if the head cuts the radius that it is set to. */
  readonly reading: number;
  /** The error of the radius from a reading: that of the reading itself, and of the position of the centre. */
  readonly uncertain: number;
  readonly rows: readonly TrialRow[];
}

/** The data for planning a trial cut. Lengths in the unit of the part. */
export interface TrialPlan {
  readonly dial: Dial;
  /** How far the trial cut is to stay short of the radius; less where the arc is too flat for that. */
  readonly leaves: number;
  /** The error of a reading, to either side; over 0. */
  readonly good: number;
  /** The error of the centre. */
  readonly place: number;
}

/** A trial cut leaves no more than this share of how deep the arc is: it must be an arc itself. */
const MOST_OF_DEPTH = 0.25;

/** A table has as many lines at least, and a few times as many at most. */
const LINES = 8;

/** Rounding of a quotient counts as nothing. */
const SLACK = 1e-9;

/**
 * A trial cut of a smaller radius about the same centre, and a table from its reading to the next setting. The way is
 * the one that determines the radius best, with the smallest error from the reading and the position of the centre
 * together. The head is opened by whole graduations, by no more than the remainder less that error, so that it never
 * goes past the drawn radius. null where no way suits the trial cut too, or where none determines the radius to
 * within the remainder.
 * @param ways those of the finished arc; a wall to another cut and an opening at the horns are not used
 * @throws RangeError if a length of the plan is not a finite number over 0, or the place one under 0.
 */
export function trialOf(seat: Seat, ways: readonly Fitting[], plan: TrialPlan): Trial | null {
  checkPlan(plan);
  const leaves = Math.min(plan.leaves, MOST_OF_DEPTH * depthOf(seat));
  const { center } = seat;
  const radius = seat.radius - leaves;
  let best: { way: Way; number: number; uncertain: number } | null = null;
  ways.forEach(({ way, horns }, number) => {
    if (horns !== null || way.kind === 'wall' || way.kind === 'round' || !fitsBoth(way, seat, radius)) return;
    const uncertain = uncertainBy(way, { center, radius }, plan);
    if (uncertain < leaves && uncertain < (best?.uncertain ?? Number.POSITIVE_INFINITY))
      best = { way, number, uncertain };
  });
  if (best === null) return null;
  const { way, number, uncertain } = best as { way: Way; number: number; uncertain: number };
  return {
    way: number,
    radius,
    leaves,
    reading: readingOf(way, { center, radius }),
    uncertain,
    rows: rowsOf(seat, way, leaves, plan),
  };
}

function checkPlan({ dial, leaves, good, place }: TrialPlan): void {
  for (const [name, value] of [
    ['a graduation', dial.step],
    ['what the trial cut leaves', leaves],
    ['what a reading is good to', good],
  ] as const) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`trialOf: ${name} is a finite number over 0, not ${value}`);
  }
  if (!(place >= 0 && Number.isFinite(place)))
    throw new RangeError(`trialOf: how far the centre may be off is a finite number from 0 on, not ${place}`);
}

/** How deep the widest stretch of the arc is under its chord. */
function depthOf({ radius, spans }: Seat): number {
  const half = Math.max(0, ...spans.map(({ from, to }) => Math.min((to - from) / 2, Math.PI / 2)));
  return radius * (1 - Math.cos(half));
}

/** Whether a way can be taken from twice what the trial leaves up to size: pins that fit now may not have fitted before. */
function fitsBoth(way: Way, seat: Seat, radius: number): boolean {
  const least = 2 * radius - seat.radius;
  return [least, radius, seat.radius].every((one) => {
    if (!Number.isFinite(readingOf(way, { center: seat.center, radius: one }))) return false;
    if (!('pin' in way)) return true;
    const sign = way.kind === 'over pins' ? -1 : 1;
    const towards = { dx: sign * way.face.into.dx, dy: sign * way.face.into.dy };
    return pinFault({ ...seat, radius: one }, towards, way.pin, way.pins) === null;
  });
}

function uncertainBy(way: Way, circle: Pick<Seat, 'center' | 'radius'>, { good, place }: TrialPlan): number {
  const { radius, place: by } = slopesOf(way, circle);
  return (good + Math.hypot(by.dx, by.dy) * place) / Math.abs(radius);
}

/** Lines at round readings, from twice what the trial leaves up to size. */
function rowsOf(seat: Seat, way: Way, leaves: number, plan: TrialPlan): TrialRow[] {
  const { center } = seat;
  const at = (radius: number) => readingOf(way, { center, radius });
  const ends = [at(seat.radius - 2 * leaves), at(seat.radius)] as const;
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const step = roundStep((high - low) / LINES);
  const first = Math.ceil(low / step - SLACK);
  const count = Math.max(0, Math.floor(high / step + SLACK) - first + 1);
  const rows = Array.from({ length: count }, (_, k) =>
    rowOf(seat, way, Number(((first + k) * step).toPrecision(12)), plan),
  );
  // The smallest bore first, whichever way the reading goes.
  return ends[0] <= ends[1] ? rows : rows.reverse();
}

function rowOf(seat: Seat, way: Way, reading: number, { dial, good, place }: TrialPlan): TrialRow {
  const { center, radius: drawn } = seat;
  const { place: by } = slopesOf(way, seat);
  const steep = Math.hypot(by.dx, by.dy);
  // The reading and the centre at each end of what they may be off by.
  const radii = [-1, 1].flatMap((off) =>
    [-1, 1].map((side) => {
      const move = steep === 0 ? 0 : (side * place) / steep;
      const there = { x: center.x + move * by.dx, y: center.y + move * by.dy };
      return radiusAt(way, there, reading + off * good, drawn);
    }),
  );
  const [narrowest, widest] = [Math.min(...radii), Math.max(...radii)];
  const each = radiusStep(dial);
  const graduations = Math.max(0, Math.floor((drawn - widest) / each + SLACK));
  return {
    reading,
    radius: radiusAt(way, center, reading, drawn),
    graduations,
    turn: graduations * dial.step,
    short: [drawn - widest - graduations * each, drawn - narrowest - graduations * each],
  };
}

/** 1, 2 or 5 in its only digit, no more than a length. */
function roundStep(length: number): number {
  const digit = 10 ** Math.floor(Math.log10(length));
  const times = [5, 2, 1].find((one) => one * digit <= length * (1 + SLACK)) ?? 1;
  return Number((times * digit).toPrecision(1));
}

/** Halvings of the radius: to the last bit of what a reading shows. */
const HALVINGS = 60;

/** The radius about a centre of which a way reads a value. Where it reads nothing, the circle is too small for it. */
function radiusAt(way: Way, center: Point, reading: number, drawn: number): number {
  const rises = slopesOf(way, { center, radius: drawn }).radius > 0;
  let [low, high] = [0, 2 * drawn];
  for (let k = 0; k < HALVINGS; k++) {
    const radius = (low + high) / 2;
    const there = readingOf(way, { center, radius });
    if (Number.isNaN(there) || there < reading === rises) low = radius;
    else high = radius;
  }
  return (low + high) / 2;
}
