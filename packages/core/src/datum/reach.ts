import type { Vector } from '../geometry/point.js';
import type { Drift } from './drift.js';

/** Between what a figure can lie. */
export interface Interval {
  readonly worst: readonly [number, number];
  readonly rss: readonly [number, number];
}

/** An interval whose root of squares reaches no farther than its worst case does. */
export function within({ worst, rss }: Interval): Interval {
  const [low, high] = worst;
  const one = (end: number) => Math.min(high, Math.max(low, end));
  return { worst, rss: [one(rss[0]), one(rss[1])] };
}

/** How far a drift can go along a unit vector. Source: linear errors, see `stackOf`. */
export function alongDrift({ shift, causes }: Drift, n: Vector): Interval {
  const middle = shift.dx * n.dx + shift.dy * n.dy;
  const parts = causes.map(({ by }) => by.dx * n.dx + by.dy * n.dy);
  const worst = parts.reduce((sum, part) => sum + Math.abs(part), 0);
  const rss = Math.hypot(...parts);
  return within({ worst: [middle - worst, middle + worst], rss: [middle - rss, middle + rss] });
}

/**
 * Between what the length of a displacement can lie when it drifts. The worst case is exact: the causes span a convex
 * polygon with parallel sides in pairs (the Minkowski sum of segments), and the length is least at its place nearest to
 * zero and most at one of its corners. The other is linear about the shifted displacement, along which it acts, as far as
 * the worst case goes: a cause at a slant shortens a length by less than its share along it.
 *
 * Source: definition of the Minkowski sum; the length of a vector is a convex function.
 */
export function lengthUnder(d: Vector, drift: Drift): Interval {
  const moved = { dx: d.dx + drift.shift.dx, dy: d.dy + drift.shift.dy };
  const corners = spanned(
    moved,
    drift.causes.map(({ by }) => by),
  );
  const length = Math.hypot(moved.dx, moved.dy);
  const n = length === 0 ? { dx: 1, dy: 0 } : { dx: moved.dx / length, dy: moved.dy / length };
  const rss = Math.hypot(...drift.causes.map(({ by }) => by.dx * n.dx + by.dy * n.dy));
  return within({
    worst: [nearest(corners), Math.max(...corners.map(({ dx, dy }) => Math.hypot(dx, dy)))],
    rss: [length - rss, length + rss],
  });
}

/** The corners, counter-clockwise, of all that is reached from a middle by segments to either side. */
function spanned(middle: Vector, sides: readonly Vector[]): Vector[] {
  const upward = sides
    .map((v) => (v.dy < 0 || (v.dy === 0 && v.dx < 0) ? { dx: -v.dx, dy: -v.dy } : v))
    .sort((a, b) => Math.atan2(a.dy, a.dx) - Math.atan2(b.dy, b.dx));
  let { dx, dy } = middle;
  for (const v of upward) {
    dx -= v.dx;
    dy -= v.dy;
  }
  const corners: Vector[] = [{ dx, dy }];
  for (const sign of [2, -2]) {
    for (const v of upward) {
      dx += sign * v.dx;
      dy += sign * v.dy;
      corners.push({ dx, dy });
    }
  }
  return corners;
}

/**
 * Distance of zero from a convex polygon that runs counter-clockwise, 0 inside it. The last corner is the first again.
 * A side without length has no side to be on; a polygon without area has zero at the left of none of its sides.
 */
function nearest(corners: readonly Vector[]): number {
  let least = Number.POSITIVE_INFINITY;
  let [isLeftOfOne, isRightOfOne] = [false, false];
  corners.forEach((a, k) => {
    const b = corners[k + 1] ?? a;
    const side = a.dx * (b.dy - a.dy) - a.dy * (b.dx - a.dx);
    isLeftOfOne ||= side > 0;
    isRightOfOne ||= side < 0;
    least = Math.min(least, fromSegment(a, b));
  });
  return isLeftOfOne && !isRightOfOne ? 0 : least;
}

function fromSegment(a: Vector, b: Vector): number {
  const ex = b.dx - a.dx;
  const ey = b.dy - a.dy;
  const square = ex * ex + ey * ey;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, -(a.dx * ex + a.dy * ey) / square));
  return Math.hypot(a.dx + share * ex, a.dy + share * ey);
}
