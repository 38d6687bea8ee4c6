import { checkNotNegative, checkOverZero, checkPlace } from '../geometry/checks.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { distanceTo, distanceToBoundary } from '../load/touch.js';
import { type BoxedEdge, boxed, firstClear } from '../load/way-along.js';
import type { Obstacle } from '../load/way-off.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { markOver } from './layout.js';

/**
 * Where a tool can be lowered and touches nothing, before the first pass: on the line along which it steps in, further back;
 * or at the centre, set to a smaller size. Lengths in the unit of the metal.
 */
export type ClearStand =
  | {
      readonly kind: 'stand';
      readonly center: Point;
      readonly radius: number;
      /** To the nearest metal; null where there is none within the furthest that was looked at. */
      readonly gap: number | null;
    }
  /** No place on the line, or no size that the tool can be set to, has the gap on all sides. */
  | { readonly kind: 'none'; readonly why: 'metal' }
  /** But for these there would be one. */
  | { readonly kind: 'none'; readonly why: 'keep-out'; readonly ids: readonly string[] };

/** What a clear stand is looked for in. */
export interface Around {
  /** The metal before the first pass, at each height that the tool goes through. */
  readonly metal: readonly Region[];
  /** Its edges, at all heights. */
  readonly edges: readonly BoxedEdge[];
  /** The gap to be had to all of it, over 0. */
  readonly gap: number;
  /** What the tool may not meet either, at its heights. */
  readonly keepOuts: readonly Obstacle[];
}

/** What a clear stand is looked for in; its edges are made ready once, for all directions that are tried. */
export function aroundOf(metal: readonly Region[], gap: number, keepOuts: readonly Obstacle[]): Around {
  return { metal, edges: boxed(metal.flatMap(loopsOf).flat()), gap, keepOuts };
}

/** How much further back than first touch a clear stand is looked for. */
export function furthestBack(radius: number, gap: number): number {
  return radius + gap;
}

/**
 * The first place, back from where a tool first touches the metal, at which it is clear of all metal by a gap.
 *
 * Source: definition; the places nearer than the radius and the gap to an edge are its Minkowski sum with a disc.
 * @param touch where it first touches, having moved along `approach`, a unit vector
 * @throws RangeError if a length is not a finite number over 0 or a coordinate is not finite.
 */
export function clearBehind(touch: Point, approach: Vector, radius: number, around: Around): ClearStand {
  checkPlace('clearBehind', 'touch', touch);
  checkOverZero('clearBehind', 'radius', radius);
  checkOverZero('clearBehind', 'gap', around.gap);
  const { metal, edges, gap } = around;
  const back = { dx: -approach.dx, dy: -approach.dy };
  const furthest = furthestBack(radius, gap) * (1 + SLACK);
  const by = firstClear({ from: touch, direction: back, furthest }, edges, radius + gap);
  const center = by === null ? null : moved(touch, back, by);
  // In the full there is no edge near either.
  if (center === null || metal.some((one) => contains(one, center) === 'inside'))
    return { kind: 'none', why: 'metal' };
  return standOf(around, center, radius);
}

/** So that a place just at the furthest is not cut off by rounding. */
const SLACK = 1e-9;

/**
 * The largest setting of a tool that stays at its centre at which it is clear of all metal by a gap.
 *
 * Source: definition.
 * @param final of the last pass; every setting stands whole `mark`s short of it, any does where that is 0
 * @param smallest that the tool can be set to
 * @throws RangeError if a length is not a finite number in its range or a coordinate is not finite.
 */
export function clearWithin(
  center: Point,
  { final, smallest, mark }: { readonly final: number; readonly smallest: number; readonly mark: number },
  around: Around,
): ClearStand {
  checkPlace('clearWithin', 'center', center);
  checkOverZero('clearWithin', 'final', final);
  checkNotNegative('clearWithin', 'smallest', smallest);
  checkNotNegative('clearWithin', 'mark', mark);
  checkOverZero('clearWithin', 'gap', around.gap);
  const { metal, gap } = around;
  const room = Math.min(...metal.map((one) => (one.length === 0 ? final : distanceTo(one, center)))) - gap;
  const radius = room >= final ? final : final - markOver(final - room, mark);
  if (!(radius > 0) || radius < smallest) return { kind: 'none', why: 'metal' };
  return standOf(around, center, radius);
}

/** A place that is clear of the metal, unless something else is in the way there. */
function standOf({ metal, gap, keepOuts }: Around, center: Point, radius: number): ClearStand {
  const met = keepOuts.filter(({ region }) => distanceTo(region, center) < radius);
  if (met.length > 0) return { kind: 'none', why: 'keep-out', ids: met.map(({ id }) => id) };
  const away = Math.min(...metal.map((one) => distanceToBoundary(one, center))) - radius;
  return { kind: 'stand', center, radius, gap: away <= furthestBack(radius, gap) ? away : null };
}
