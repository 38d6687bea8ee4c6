import type { Point, Vector } from '../geometry/point.js';
import { driftBetween, type Placed } from './drift.js';
import { alongDrift, type Interval, lengthUnder } from './reach.js';
import type { SetPart } from './setup.js';

/** A boundary that ends at the tip of a knife edge. */
export type TipCurve =
  | { readonly kind: 'line'; readonly placed: Placed; readonly at: Point; readonly normal: Vector }
  | { readonly kind: 'circle'; readonly placed: Placed; readonly center: Point; readonly radius: number };

/**
 * Between what the angle of a knife edge can lie, radians. Shifting a boundary turns no straight one, so between two
 * of those it stands fast; a circle meets a line at an angle that only its distance from the line changes, and
 * another circle at one that only the distance of the centres changes. Where they no longer meet it counts as 0 or a
 * half turn, which they go through on the way. Null where the two do not meet at that angle as drawn.
 *
 * Source: cosine of the angle between circle and line, h / r; law of cosines for two circles.
 */
export function angleInterval(angle: number, one: TipCurve, other: TipCurve, part: SetPart): Interval | null {
  if (one.kind === 'line' && other.kind === 'line') return { worst: [angle, angle], rss: [angle, angle] };
  if (one.kind === 'circle' && other.kind === 'line') return angleInterval(angle, other, one, part);
  if (other.kind !== 'circle') throw new RangeError('angleInterval: two lines are dealt with above');
  const drift = driftBetween(one.placed, other.placed, part);
  if (one.kind === 'line') {
    const { at, normal } = one;
    const off = (other.center.x - at.x) * normal.dx + (other.center.y - at.y) * normal.dy;
    const by = alongDrift(drift, normal);
    return turned(angle, off, plus(by, off), (h) => h / other.radius);
  }
  const d = { dx: other.center.x - one.center.x, dy: other.center.y - one.center.y };
  const squares = one.radius ** 2 + other.radius ** 2;
  return turned(
    angle,
    Math.hypot(d.dx, d.dy),
    lengthUnder(d, drift),
    (length) => (squares - length * length) / (2 * one.radius * other.radius),
  );
}

function plus({ worst, rss }: Interval, by: number): Interval {
  return { worst: [worst[0] + by, worst[1] + by], rss: [rss[0] + by, rss[1] + by] };
}

/** Angles this close (radians) are one: near a tangent a rounding of 1e-9 of the radius turns an angle by 5e-5. */
const SAME_ANGLE = 1e-3;

/** From the interval of a distance to that of the angle: it is the arc cosine, or what that leaves of a half turn. */
function turned(
  angle: number,
  at: number,
  within: Interval,
  cosine: (at: number) => number,
): Interval | null {
  const inner = (x: number) => Math.acos(Math.min(1, Math.max(-1, cosine(x))));
  const [asIs, rest] = [Math.abs(inner(at) - angle), Math.abs(Math.PI - inner(at) - angle)];
  if (Math.min(asIs, rest) > SAME_ANGLE) return null;
  const isInner = asIs <= rest;
  const one = ([low, high]: readonly [number, number]): readonly [number, number] => {
    const [a, b] = [inner(low), inner(high)].map((t) => (isInner ? t : Math.PI - t)) as [number, number];
    return a <= b ? [a, b] : [b, a];
  };
  return { worst: one(within.worst), rss: one(within.rss) };
}
