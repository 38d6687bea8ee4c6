/*
 * Room: lines and arcs, and the elementary geometry of points, boxes, distances and meetings.
 * In: coordinates in the unit of the job, angles in radians.
 * Out: plain readonly values; the one tolerance that all rooms above share.
 */

import { distance, type Point, samePoint } from './point.js';

/**
 * Which drawn edge or which cut an edge came from: `outline:2`, `hole:0:1`, `cut:seat`.
 * Operations carry it along, so that every edge of a result can be named.
 */
export type Source = string;

/** A straight edge from `a` to `b`. */
export interface LineEdge {
  readonly kind: 'line';
  readonly a: Point;
  readonly b: Point;
  readonly source?: Source;
}

/**
 * A circular edge from `a` to `b` round `center`, counter-clockwise if `ccw`; less than a full turn.
 * Both ends are stored and never recomputed, so that neighbours share them to the last bit.
 */
export interface ArcEdge {
  readonly kind: 'arc';
  readonly a: Point;
  readonly b: Point;
  readonly center: Point;
  readonly radius: number;
  readonly ccw: boolean;
  readonly source?: Source;
}

/** A line or an arc: all that an outline is made of. */
export type Edge = LineEdge | ArcEdge;

/** An end of an arc may lie this far off its circle, as a share of the radius; drawings round their numbers. */
const RADIUS_SLACK = 1e-3;

/**
 * From this share of the radius on the centre is moved, so that both ends are equally far; less is rounding. Of an
 * arc over half a turn with its ends close together the centre would move by a multiple of that, and the far side
 * by twice as much: there more counts as rounding.
 */
const RECENTRE_FROM = 1e-11;
const RECENTRE_LARGE_FROM = 1e-6;

/**
 * A straight edge.
 * @throws RangeError if a coordinate is not finite or the ends coincide.
 */
export function lineEdge(a: Point, b: Point, source?: Source): LineEdge {
  checkPoint('lineEdge', 'a', a);
  checkPoint('lineEdge', 'b', b);
  if (samePoint(a, b)) throw new RangeError(`lineEdge: both ends are at (${a.x}, ${a.y})`);
  return source === undefined ? { kind: 'line', a, b } : { kind: 'line', a, b, source };
}

/**
 * An arc from `a` to `b` round `center`. Where the ends are not equally far from the centre as given, it is moved
 * to the nearest place that is.
 * @throws RangeError if a coordinate is not finite, the ends coincide (make a full circle of two arcs),
 *   the radius is too large for a number, or the ends lie at distances from the centre that differ by over a thousandth.
 */
export function arcEdge(a: Point, b: Point, center: Point, ccw: boolean, source?: Source): ArcEdge {
  checkPoint('arcEdge', 'a', a);
  checkPoint('arcEdge', 'b', b);
  checkPoint('arcEdge', 'center', center);
  if (samePoint(a, b)) {
    throw new RangeError(`arcEdge: both ends are at (${a.x}, ${a.y}); make a full circle of two arcs`);
  }
  const ra = distance(center, a);
  const rb = distance(center, b);
  const given = (ra + rb) / 2;
  if (!Number.isFinite(given)) throw new RangeError(`arcEdge: the radius is ${given}`);
  if (Math.abs(ra - rb) > RADIUS_SLACK * given) {
    throw new RangeError(`arcEdge: the ends are ${ra} and ${rb} from the centre; they must be equally far`);
  }
  const from = isLarge(a, b, center, ccw) ? RECENTRE_LARGE_FROM : RECENTRE_FROM;
  const mended = Math.abs(ra - rb) > from * given ? ontoBisector(center, a, b) : center;
  const radius = mended === center ? given : distance(mended, a);
  const arc: ArcEdge = { kind: 'arc', a, b, center: mended, radius, ccw };
  return source === undefined ? arc : { ...arc, source };
}

/** Whether an arc turns by over half a turn: its centre lies on its own side of the chord. */
function isLarge(a: Point, b: Point, center: Point, ccw: boolean): boolean {
  const side = (b.x - a.x) * (center.y - a.y) - (b.y - a.y) * (center.x - a.x);
  return ccw ? side < 0 : side > 0;
}

/** The point nearest to `p` that is equally far from `a` and `b`. */
function ontoBisector(p: Point, a: Point, b: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const off = ((p.x - (a.x + b.x) / 2) * dx + (p.y - (a.y + b.y) / 2) * dy) / (dx * dx + dy * dy);
  return { x: p.x - off * dx, y: p.y - off * dy };
}

function checkPoint(where: string, name: string, p: Point): void {
  if (!Number.isFinite(p.x) || !Number.isFinite(p.y)) {
    throw new RangeError(`${where}: ${name} is (${p.x}, ${p.y}); coordinates must be finite numbers`);
  }
}
