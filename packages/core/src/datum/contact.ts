import type { Point, Vector } from '../geometry/point.js';
import { type Drift, driftBetween, giveWay, type Placed, type Wall } from './drift.js';
import type { Growth } from './growth.js';
import { alongDrift, type Interval, lengthUnder, spread } from './reach.js';
import type { SetPart } from './setup.js';

/** What a web ends at: a straight face, or a circle; a corner is a circle without size. */
export type Contact = { readonly placed: Placed; readonly wall: Wall } & (
  | { readonly kind: 'flat'; readonly at: Point }
  | { readonly kind: 'round'; readonly center: Point }
);

/**
 * Between what the thickness of a web can lie; exact at worst but for what a lay that may be turned leaves to squares.
 * Below 0 the two ends meet. Cuts that grow take metal from both sides.
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
  const drift = driftBetween(endOf(one), endOf(other), part);
  const grown = (a: Growth, b: Growth) => 0 - giveWay(a, one.wall) - giveWay(b, other.wall);
  if (one.kind === 'flat' || other.kind === 'flat')
    return plus(spread(alongDrift(drift, n, grown)), thickness);
  return roundInterval(thickness, n, [one.center, other.center], drift, grown);
}

function endOf(contact: Contact): { readonly placed: Placed; readonly at: Point } {
  return { placed: contact.placed, at: contact.kind === 'flat' ? contact.at : contact.center };
}

function roundInterval(
  thickness: number,
  n: Vector,
  [a, b]: readonly [Point, Point],
  drift: Drift,
  grown: (one: Growth, other: Growth) => number,
): Interval {
  const d = { dx: b.x - a.x, dy: b.y - a.y };
  // Between two holes the centres lie further apart than the web is thick; where one lies within the other, the other
  // way round or, concentric, in one place.
  const sign = d.dx * n.dx + d.dy * n.dy > thickness / 2 ? 1 : -1;
  return plus(lengthUnder(d, drift, sign, grown), thickness - sign * Math.hypot(d.dx, d.dy));
}

function plus({ worst, rss }: Interval, by: number): Interval {
  const one = ([low, high]: readonly [number, number]): readonly [number, number] => [by + low, by + high];
  return { worst: one(worst), rss: one(rss) };
}
