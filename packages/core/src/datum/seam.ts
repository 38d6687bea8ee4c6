import type { Point, Vector } from '../geometry/point.js';
import { driftBetween, type Placed } from './drift.js';
import { lengthUnder } from './reach.js';
import type { SetPart } from './setup.js';
import type { Stack } from './stack.js';

/** A circle as drawn. */
export interface Circle {
  readonly center: Point;
  readonly diameter: number;
}

/** So many directions round a bore are looked at for the largest step by squares. */
const DIRECTIONS = 360;

/**
 * How far the walls of two halves of one bore, each cut from its own side, can stand apart anywhere round it. At worst that
 * is how far the centres can lie apart, and the radii differ. By squares it is told in the direction in which it is most:
 * what is known there, and the root of the squares of all causes along it.
 *
 * Source: the gap between two circles of nearly one size is, in the direction n, n·w + r - s to first order; at most |w| +
 * |r - s|, exact. Root of squares: JCGM 100:2008 (GUM), 5.1.2.
 */
export function seamStep(
  one: Placed,
  other: Placed,
  [top, bottom]: readonly [Circle, Circle],
  part: SetPart,
): Stack {
  const drift = driftBetween({ placed: one, at: top.center }, { placed: other, at: bottom.center }, part);
  const size = (a: { readonly rim: number }, b: { readonly rim: number }) => b.rim - a.rim;
  const known = size(drift.one, drift.other) + (bottom.diameter - top.diameter) / 2;
  const d = { dx: bottom.center.x - top.center.x, dy: bottom.center.y - top.center.y };
  const sizes = drift.causes.reduce((sum, cause) => sum + Math.abs(size(cause.one, cause.other)), 0);
  const apart = lengthUnder(d, drift, 1, () => 0).worst[1];
  const worst = apart + Math.abs(known) + sizes;
  const along = ({ dx, dy }: Vector, n: Vector) => dx * n.dx + dy * n.dy;
  const rss = Array.from({ length: DIRECTIONS }, (_, k) => {
    const turn = (2 * Math.PI * k) / DIRECTIONS;
    const n = { dx: Math.cos(turn), dy: Math.sin(turn) };
    const parts = drift.causes.map(
      (cause) => cause.share * (along(cause.by, n) + size(cause.one, cause.other)),
    );
    return Math.abs(along(drift.shift, n) + along(d, n) + known) + Math.hypot(...parts);
  });
  return { worst, rss: Math.min(worst, Math.max(...rss)) };
}
