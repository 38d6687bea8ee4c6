import type { Vector } from '../geometry/point.js';
import type { Drift } from './drift.js';
import type { Growth } from './growth.js';

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

/** By how much causes change a figure, each at its limit, and what is known of it. */
export interface Effects {
  readonly known: number;
  readonly causes: readonly { readonly by: number; readonly share: number }[];
  /** What the linear sum leaves out, at worst. */
  readonly slack: number;
}

/** Between what a figure can lie by its causes. Source: linear errors, see `stackOf`. */
export function spread({ known, causes, slack }: Effects): Interval {
  const worst = causes.reduce((sum, { by }) => sum + Math.abs(by), slack);
  const rss = Math.hypot(...causes.map(({ by, share }) => by * share));
  return within({ worst: [known - worst, known + worst], rss: [known - rss, known + rss] });
}

/**
 * How a figure changes that grows by what one thing moves against another along a unit vector.
 * @param grown by how much it grows where the two grow
 */
export function alongDrift(drift: Drift, n: Vector, grown: (one: Growth, other: Growth) => number): Effects {
  const along = ({ dx, dy }: Vector) => dx * n.dx + dy * n.dy;
  return {
    known: along(drift.shift) + grown(drift.one, drift.other),
    causes: drift.causes.map(({ by, one, other, share }) => ({ by: along(by) + grown(one, other), share })),
    slack: drift.slack,
  };
}

/**
 * Between what a figure can lie that is the length of a displacement, or less by it, and grows with the sizes of two things.
 * The worst case is exact for the length: the causes that move span a convex polygon with parallel sides in pairs (the
 * Minkowski sum of segments), and the length is least at its place nearest to zero and most at one of its corners. The other
 * is linear about the shifted displacement, along which it acts, as far as the worst case goes: a cause at a slant shortens
 * a length by less than its share along it.
 *
 * Source: definition of the Minkowski sum; the length of a vector is a convex function.
 * @param sign of the length in the figure
 */
export function lengthUnder(
  d: Vector,
  drift: Drift,
  sign: 1 | -1,
  grown: (one: Growth, other: Growth) => number,
): Interval {
  const moved = { dx: d.dx + drift.shift.dx, dy: d.dy + drift.shift.dy };
  const corners = spanned(
    moved,
    drift.causes.map(({ by }) => by),
  );
  const length = Math.hypot(moved.dx, moved.dy);
  const n = length === 0 ? { dx: 1, dy: 0 } : { dx: moved.dx / length, dy: moved.dy / length };
  const parts = drift.causes.map(({ by, one, other, share }) => ({
    length: (by.dx * n.dx + by.dy * n.dy) * share,
    size: grown(one, other),
    share,
  }));
  const rss = Math.hypot(...parts.map((part) => sign * part.length + part.size * part.share));
  const sizes = parts.reduce((sum, { size }) => sum + Math.abs(size), drift.slack);
  const known = grown(drift.one, drift.other);
  const [least, most] = [nearest(corners), Math.max(...corners.map(({ dx, dy }) => Math.hypot(dx, dy)))];
  const [low, high] = sign > 0 ? [least, most] : [-most, -least];
  const middle = sign * length + known;
  return within({
    worst: [known + low - sizes, known + high + sizes],
    rss: [middle - rss, middle + rss],
  });
}

/** The corners, counter-clockwise, of all that is reached from a middle by segments to either side. */
export function spanned(middle: Vector, sides: readonly Vector[]): Vector[] {
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
