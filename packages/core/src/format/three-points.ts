import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';

/** Three points are on a line if the middle one is off it by less than this share of the chord: rounding. */
const STRAIGHT_SHARE = 1e-12;

/**
 * The edge from `a` over `m` to `b`: an arc, or a line if the three are in line.
 * Source: ISO/IEC 13249-3, circular strings; the centre is that of the circle through three points.
 * @throws RangeError if two of the points coincide, or `m` is in line with the others but not between them.
 */
export function edgeThrough(a: Point, m: Point, b: Point): Edge {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const mx = m.x - a.x;
  const my = m.y - a.y;
  const chord = distance(a, b);
  const first = distance(a, m);
  const second = distance(m, b);
  if (first === 0 || second === 0) throw new RangeError('the middle point lies on an end of the arc');
  const cross = mx * by - my * bx;
  if (Math.abs(cross) <= STRAIGHT_SHARE * chord * Math.max(first, second)) {
    if (first > chord || second > chord) {
      throw new RangeError('the middle point is in line with the ends but not between them');
    }
    return lineEdge(a, b);
  }
  const b2 = bx * bx + by * by;
  const m2 = mx * mx + my * my;
  const center = {
    x: a.x + (by * m2 - my * b2) / (2 * cross),
    y: a.y + (mx * b2 - bx * m2) / (2 * cross),
  };
  return arcEdge(a, b, center, cross > 0);
}

/**
 * A full circle from `a` over the opposite point `m` back to `a`, counter-clockwise, as two arcs.
 * @throws RangeError if the two coincide.
 */
export function circleThrough(a: Point, m: Point): readonly [Edge, Edge] {
  const center = { x: (a.x + m.x) / 2, y: (a.y + m.y) / 2 };
  return [arcEdge(a, m, center, true), arcEdge(m, a, center, true)];
}
