import type { Point, Vector } from '../geometry/point.js';
import { driftBetween, type Placed } from './drift.js';
import { alongDrift, type Interval, lengthUnder } from './reach.js';
import type { SetPart } from './setup.js';

/** What a web ends at: a straight face, or a circle; a corner is a circle without size. */
export type Contact =
  | { readonly kind: 'flat'; readonly placed: Placed }
  | { readonly kind: 'round'; readonly placed: Placed; readonly center: Point };

/**
 * Between what the thickness of a web can lie; exact at worst. Below 0 the two ends meet.
 *
 * Source: between two circles it is the distance of the centres less or plus the radii; a face shifts a gap by its
 * shift along the normal.
 * @param n unit vector across the web, from its one end to the other
 */
export function thicknessInterval(
  thickness: number,
  n: Vector,
  one: Contact,
  other: Contact,
  part: SetPart,
): Interval {
  const drift = driftBetween(one.placed, other.placed, part);
  if (one.kind === 'flat' || other.kind === 'flat') return shifted(alongDrift(drift, n), thickness, 1);
  const d = { dx: other.center.x - one.center.x, dy: other.center.y - one.center.y };
  // Between two holes the centres lie further apart than the web is thick; where one lies within the other, the other
  // way round or, concentric, in one place.
  const sign = d.dx * n.dx + d.dy * n.dy > thickness / 2 ? 1 : -1;
  return shifted(lengthUnder(d, drift), thickness - sign * Math.hypot(d.dx, d.dy), sign);
}

function shifted({ worst, rss }: Interval, by: number, sign: 1 | -1): Interval {
  const one = ([low, high]: readonly [number, number]): readonly [number, number] =>
    sign > 0 ? [by + low, by + high] : [by - high, by - low];
  return { worst: one(worst), rss: one(rss) };
}
