import { intersect } from '../combine/boolean.js';
import { withinTurn } from '../geometry/angle.js';
import { checkFinite, checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Point } from '../geometry/point.js';
import { disc, type Region } from '../region/region.js';
import { type Sighted, sightedFrom } from './radial.js';

/** How much metal lies along a radius of a tool, and which radius that is. */
export interface RadialBite {
  /** Length of metal along the radius. */
  readonly size: number;
  /** Of the radius, radians from the x axis. */
  readonly angle: number;
  /** Where the radius ends, on the tool's circle. */
  readonly at: Point;
}

/**
 * How deep a tool that goes straight down bites in one direction: the length of metal along its radius there, from
 * its centre to its circle; straight along an edge, or at a joint, the larger of those to both sides of it. In the
 * unit of the region.
 *
 * Source: definition. Where a circle stands d further in the direction of the radius than the circle of the same
 * radius r that cut before it, the bite at angle phi off that direction is d cos(phi) + r - sqrt(r^2 - d^2 sin^2(phi)),
 * which for small steps is the chip thickness d cos(phi) of milling (Fundamentals of Machining Processes, p. 174).
 * @param angle radians from the x axis
 * @throws RangeError if the radius is not a finite number over 0 or another number is not finite.
 */
export function biteAlong(metal: Region, center: Point, radius: number, angle: number): number {
  checkPlace('biteAlong', 'center', center);
  checkOverZero('biteAlong', 'radius', radius);
  checkFinite('biteAlong', 'angle', angle);
  const inside = intersect([metal, disc(center, radius)]);
  const heading = withinTurn(angle);
  let most = 0;
  for (const { from, to, met } of sectorsOf(sightedFrom(inside, center))) {
    // A whole turn further on it is the same direction: the last sector may reach past 0.
    for (const direction of [heading, heading + 2 * Math.PI]) {
      if (direction < from - NARROW || direction > to + NARROW) continue;
      most = Math.max(most, lengthAlong(met, Math.min(Math.max(direction, from), to)));
    }
  }
  return most;
}

/**
 * The deepest bite of a tool that goes straight down, over all directions; null if it meets no metal.
 *
 * Source: as `biteAlong`. Between the directions in which an edge begins, ends or turns, one boundary changes the
 * length in one sense, so that its largest value is at an end; only where two or more change it is it searched for.
 * @throws RangeError if the radius is not a finite number over 0 or a coordinate is not finite.
 */
export function largestBite(metal: Region, center: Point, radius: number): RadialBite | null {
  checkPlace('largestBite', 'center', center);
  checkOverZero('largestBite', 'radius', radius);
  return largestIn(intersect([metal, disc(center, radius)]), center, radius);
}

/** As `largestBite`, of metal that lies within the tool's circle. */
export function largestIn(metal: Region, center: Point, radius: number): RadialBite | null {
  let best: { size: number; angle: number } | null = null;
  for (const { from, to, met } of sectorsOf(sightedFrom(metal, center))) {
    const top = largestBetween(met, from, to);
    if (top.size > 0 && (best === null || top.size > best.size)) best = top;
  }
  if (best === null) return null;
  const { size, angle } = best;
  const heading = angle > Math.PI ? angle - 2 * Math.PI : angle;
  const at = { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  return { size: Math.min(size, radius), angle: heading, at };
}

/** Directions closer than this (radians) have nothing between them but rounding. */
const NARROW = 1e-12;

/** Directions between which the same boundaries are met, and these. */
interface Sector {
  readonly from: number;
  readonly to: number;
  readonly met: readonly Sighted[];
}

function* sectorsOf(sighted: readonly Sighted[]): Generator<Sector> {
  const stops = stopsOf(sighted);
  for (let k = 0; k < stops.length; k++) {
    const from = stops[k] as number;
    const to = k + 1 < stops.length ? (stops[k + 1] as number) : (stops[0] as number) + 2 * Math.PI;
    if (to - from <= NARROW) continue;
    const met = sighted.filter(({ low, span }) => withinTurn((from + to) / 2 - low) <= span);
    yield { from, to, met };
  }
}

/** The directions at which some boundary begins, ends or turns, in order from 0 to 2 pi. */
function stopsOf(sighted: readonly Sighted[]): number[] {
  const all = sighted.flatMap(({ low, span, turning }) => [low, low + span, ...turning]);
  return all.map(withinTurn).sort((a, b) => a - b);
}

function lengthAlong(met: readonly Sighted[], angle: number): number {
  return met.reduce((sum, { sign, reach }) => sum + sign * reach(angle), 0);
}

/** Into how many pieces a sector is cut before its largest value is closed in on. */
const PIECES = 16;

function largestBetween(met: readonly Sighted[], from: number, to: number): { size: number; angle: number } {
  const at = (angle: number) => ({ size: lengthAlong(met, angle), angle });
  const changing = met.filter(({ isConstant }) => !isConstant).length;
  const pieces = changing <= 1 ? 1 : PIECES;
  let best = at(from);
  let index = 0;
  for (let k = 1; k <= pieces; k++) {
    const here = at(k === pieces ? to : from + ((to - from) * k) / pieces);
    if (here.size > best.size) {
      best = here;
      index = k;
    }
  }
  if (changing <= 1) return best;
  const step = (to - from) / pieces;
  return closedIn(
    at,
    Math.max(from, from + (index - 1) * step),
    Math.min(to, from + (index + 1) * step),
    best,
  );
}

/** Golden section: each step keeps this share of the interval. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The steps that bring any sector down to the spacing of doubles near the top. */
const STEPS = 60;

function closedIn(
  at: (angle: number) => { size: number; angle: number },
  from: number,
  to: number,
  known: { size: number; angle: number },
): { size: number; angle: number } {
  let [a, b] = [from, to];
  let best = known;
  for (let k = 0; k < STEPS; k++) {
    const left = at(b - GOLDEN * (b - a));
    const right = at(a + GOLDEN * (b - a));
    if (left.size > right.size) b = right.angle;
    else a = left.angle;
    for (const here of [left, right]) if (here.size > best.size) best = here;
  }
  return best;
}
