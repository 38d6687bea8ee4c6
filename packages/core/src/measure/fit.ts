import { EdgebiteError } from '../geometry/edgebite-error.js';
import type { Point } from '../geometry/point.js';
import { pseudoInverse } from './pseudo-inverse.js';
import { coverageOf } from './spread.js';
import { type Circle, readingOf, slopesOf, type Way } from './way.js';

/** A reading that was taken. */
export interface Reading {
  readonly way: Way;
  readonly value: number;
  /** Its error to either side, over 0; every value within it is equally likely. */
  readonly tolerance: number;
}

/** A value with its intervals. */
export interface Estimate {
  readonly value: number;
  /** Its interval if every reading may be off by its full tolerance. */
  readonly worst: readonly [number, number];
  /**
   * Half of the interval that contains it in 95 cases of 100: the root of the squares of the standard uncertainties,
   * times the coverage factor of their distribution.
   */
  readonly rss: number;
}

/** The arc that fits some readings. */
export interface Fit {
  readonly center: Point;
  /** null where the readings do not determine it. */
  readonly radius: Estimate | null;
  readonly x: Estimate | null;
  readonly y: Estimate | null;
  /** By reading: the reading expected from the fit, less the actual one. */
  readonly residuals: readonly number[];
  /** Numbers of the readings that contradict each other within their tolerances. */
  readonly contradicted: readonly number[];
}

/** Readings that do not give an arc. */
export class FitError extends EdgebiteError {
  override readonly name = 'FitError';

  constructor(message: string) {
    super(message, { code: 'fit' });
  }
}

/** Steps of the solution; each squares the error once it is near. */
const MAX_STEPS = 50;

/** A part of a unit vector less than this is none: of what share an unknown may be free and still count as told. */
const FREE = 1e-6;

/** Share of the radius under which a step is none. */
const STILL = 1e-14;

/**
 * A reading counts as contradicted from this share of its tolerance on, besides: one that alone tells an unknown is met but for
 * where the solution stops.
 */
const SLACK = 1e-4;

/** How many of all cases the interval by the root of the squares holds. */
const COVERED = 0.95;

type Unknowns = readonly [radius: number, x: number, y: number];

/**
 * Radius and position of an arc from readings of it, by least squares: the weight of each reading is the inverse
 * square of its tolerance. Unknowns that the readings do not determine stay as drawn, and are null in the answer. The
 * worst case is solved again with every reading at that end of its tolerance which moves the unknown most. The other
 * interval is linear, and takes every error within the tolerance of a reading as equally likely (`coverageOf`).
 * @param drawn the arc as it should be, from which the solution starts
 * @throws FitError if there is no reading, or if one is no finite number, has no tolerance, cannot be taken of the
 *   drawn arc, or is further from what that reads than half of its radius.
 */
export function fitCircle(drawn: Circle, readings: readonly Reading[]): Fit {
  check(drawn, readings);
  const solution = solved(drawn, readings);
  const { unknowns, inverse } = solution;
  const known = ([0, 1, 2] as const).map((k) => (solution.free[k] as number) < FREE);
  const estimate = (k: 0 | 1 | 2): Estimate | null => {
    if (!known[k]) return null;
    const gains = inverse[k] as readonly number[];
    const at = (sign: 1 | -1) =>
      solved(
        drawn,
        readings.map((one, i) => ({
          ...one,
          value: one.value + sign * Math.sign(gains[i] as number) * one.tolerance,
        })),
      ).unknowns[k];
    return {
      value: unknowns[k],
      worst: inOrder(at(-1), at(1)),
      rss: coverageOf(
        gains.map((gain, i) => Math.abs(gain) * (readings[i] as Reading).tolerance),
        COVERED,
      ),
    };
  };
  const circle = circleOf(unknowns);
  const residuals = readings.map(({ way, value }) => readingOf(way, circle) - value);
  return {
    center: circle.center,
    radius: estimate(0),
    x: estimate(1),
    y: estimate(2),
    residuals,
    contradicted: contradicted(readings, residuals, solution),
  };
}

/** Where readings contradict each other, either end may come out as the lower one. */
function inOrder(a: number, b: number): [number, number] {
  return a <= b ? [a, b] : [b, a];
}

/** A reading further from what the drawn arc reads than this share of its radius was taken of something else. */
const FAR = 0.5;

function check(drawn: Circle, readings: readonly Reading[]): void {
  if (readings.length === 0) throw new FitError('there is no reading; take one at least');
  readings.forEach(({ way, value, tolerance }, k) => {
    const name = `reading ${k + 1}`;
    if (!Number.isFinite(value)) throw new FitError(`${name} is not a finite number`);
    if (!(tolerance > 0 && Number.isFinite(tolerance)))
      throw new FitError(`${name} needs a tolerance over 0`);
    const wanted = readingOf(way, drawn);
    if (!Number.isFinite(wanted)) throw new FitError(`${name} cannot be taken of the arc as drawn`);
    if (Math.abs(value - wanted) > FAR * drawn.radius)
      throw new FitError(
        `${name} is ${value}, far from the ${shown(wanted)} of the arc as drawn: look whether it was taken as named`,
      );
  });
}

function shown(value: number): number {
  return Number(value.toPrecision(6));
}

function circleOf([radius, x, y]: Unknowns): Circle {
  return { center: { x, y }, radius };
}

interface Solution {
  readonly unknowns: Unknowns;
  /** By unknown and reading: how much the unknown grows as the reading does. */
  readonly inverse: readonly (readonly number[])[];
  /** By unknown: how much of it the readings leave free, from 0 to 1. */
  readonly free: readonly number[];
  /** By reading: its slopes. */
  readonly rows: readonly Unknowns[];
}

/** Newton's way with least squares in each step, halved while it leads off the circles that can be read. */
function solved(drawn: Circle, readings: readonly Reading[]): Solution {
  let unknowns: Unknowns = [drawn.radius, drawn.center.x, drawn.center.y];
  let cost = costOf(unknowns, readings);
  for (let k = 0; k < MAX_STEPS; k++) {
    const system = linear(unknowns, readings);
    const step = system.inverse.map((gains) =>
      gains.reduce((sum, gain, i) => sum + gain * (system.misses[i] as number), 0),
    ) as unknown as Unknowns;
    const next = shortened(unknowns, step, readings, cost);
    if (next === null) return { unknowns, ...system };
    const moved = Math.hypot(...next.unknowns.map((value, i) => value - (unknowns[i] as number)));
    ({ unknowns, cost } = next);
    if (moved <= STILL * drawn.radius) return { unknowns, ...linear(unknowns, readings) };
  }
  return { unknowns, ...linear(unknowns, readings) };
}

/** The longest of a step's halves that brings the readings nearer; null where none does. */
function shortened(
  unknowns: Unknowns,
  step: Unknowns,
  readings: readonly Reading[],
  cost: number,
): { unknowns: Unknowns; cost: number } | null {
  for (let share = 1; share > 1e-6; share /= 2) {
    const next = unknowns.map((value, i) => value + share * (step[i] as number)) as unknown as Unknowns;
    const there = costOf(next, readings);
    if (next[0] > 0 && there < cost) return { unknowns: next, cost: there };
  }
  return null;
}

function costOf(unknowns: Unknowns, readings: readonly Reading[]): number {
  const circle = circleOf(unknowns);
  return readings.reduce(
    (sum, { way, value, tolerance }) => sum + ((readingOf(way, circle) - value) / tolerance) ** 2,
    0,
  );
}

function linear(unknowns: Unknowns, readings: readonly Reading[]) {
  const circle = circleOf(unknowns);
  const rows = readings.map(({ way }): Unknowns => {
    const { radius, place } = slopesOf(way, circle);
    return [radius, place.dx, place.dy];
  });
  const weighted = rows.map((row, i) =>
    row.map((value) => value / (readings[i] as Reading).tolerance),
  ) as unknown as Unknowns[];
  const { inverse, free } = pseudoInverse(weighted);
  return {
    rows,
    free,
    inverse: inverse.map((gains) => gains.map((gain, i) => gain / (readings[i] as Reading).tolerance)),
    misses: readings.map(({ way, value }) => value - readingOf(way, circle)),
  };
}

/** A reading is contradicted where its residual is more than all tolerances together can make it. */
function contradicted(
  readings: readonly Reading[],
  residuals: readonly number[],
  { rows, inverse }: Solution,
): number[] {
  return readings.flatMap((_, i) => {
    const row = rows[i] as Unknowns;
    const most = readings.reduce((sum, { tolerance }, j) => {
      const by = row.reduce((all, slope, k) => all + slope * ((inverse[k] as number[])[j] as number), 0);
      return sum + Math.abs((i === j ? 1 : 0) - by) * tolerance;
    }, 0);
    const slack = SLACK * (readings[i] as Reading).tolerance;
    return Math.abs(residuals[i] as number) > most * (1 + CURVED) + slack ? [i] : [];
  });
}

/** Readings are not quite linear in the arc: share by which a residual may be larger than a linear one. */
const CURVED = 0.05;
