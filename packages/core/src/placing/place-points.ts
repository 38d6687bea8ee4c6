import { checkPlace } from '../geometry/checks.js';
import { distance, type Point } from '../geometry/point.js';
import { segmentBetween } from '../geometry/segment.js';
import { shownPoint } from '../geometry/shown.js';
import type { PlacedBite } from '../load/bite.js';
import { cornerAngle } from './place-face.js';

/** Three points are in line if the middle one is off it by less than this share of their distance: rounding. */
const STRAIGHT_SHARE = 1e-12;

/**
 * Places a partial hole by three points of its arc. The face is the straight line from the first to the last, and
 * the arc runs through the middle one; `placementOn` gives the dimensions in another face. Lengths in the unit of
 * the points, angles in radians.
 *
 * Source: circle through three points, the meeting of two perpendicular bisectors (Machinery's Handbook, 31st ed.,
 * p. 68); the angle at the middle point is half of what the arc leaves of the turn (Euclid III.20).
 * @throws RangeError if a coordinate is not finite, two points coincide, or the three are in line.
 */
export function placeThrough(a: Point, m: Point, b: Point): PlacedBite {
  for (const [name, p] of [
    ['first', a],
    ['middle', m],
    ['last', b],
  ] as const) {
    checkPlace('placeThrough', `the ${name} point`, p);
  }
  for (const [p, q] of [
    [a, m],
    [m, b],
    [a, b],
  ] as const) {
    if (distance(p, q) === 0) {
      throw new RangeError(
        `placeThrough: two of the three points are at ${shownPoint(p)}; they must be apart`,
      );
    }
  }
  const ux = a.x - m.x;
  const uy = a.y - m.y;
  const vx = b.x - m.x;
  const vy = b.y - m.y;
  const cross = ux * vy - uy * vx;
  const dot = ux * vx + uy * vy;
  if (Math.abs(cross) <= STRAIGHT_SHARE * distance(a, m) * distance(m, b)) {
    throw new RangeError(
      `placeThrough: ${shownPoint(a)}, ${shownPoint(m)} and ${shownPoint(b)} are in line; no radius is large ` +
        'enough for an arc through them, the middle one must lie off the line',
    );
  }
  const u2 = ux * ux + uy * uy;
  const v2 = vx * vx + vy * vy;
  const cx = (vy * u2 - uy * v2) / (2 * cross);
  const cy = (ux * v2 - vx * u2) / (2 * cross);
  const radius = Math.hypot(cx, cy);
  // The angle at the middle point is pi - t / 2, so a quarter of the included angle is this.
  const quarter = (Math.PI - Math.atan2(Math.abs(cross), dot)) / 2;
  const depth = 2 * radius * Math.sin(quarter) ** 2;
  const segment = segmentBetween(radius, depth, 2 * radius * Math.cos(quarter) ** 2);
  const angle = cornerAngle(segment);
  // Seen from the middle, the first point lies clockwise of the last where the arc runs clockwise from first to last.
  const [from, to] = cross > 0 ? [a, b] : [b, a];
  return {
    ...segment,
    center: { x: m.x + cx, y: m.y + cy },
    entry: { at: from, angle, source: null },
    exit: { at: to, angle, source: null },
  };
}
