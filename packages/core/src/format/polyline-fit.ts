import { type ArcEdge, arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import { distance, type Point, samePoint } from '../geometry/point.js';

/** A stretch of points, from one index to another. */
export interface Stretch {
  readonly points: readonly Point[];
  readonly from: number;
  readonly to: number;
}

/** How far a stretch leaves an edge. */
export interface Leaving {
  /** Largest distance between the two. */
  readonly largest: number;
  /** Sum of the squares of the distances of its points. */
  readonly squares: number;
}

/** An edge laid through a stretch of points, and how far the stretch leaves it. */
export interface Fit extends Leaving {
  readonly edge: Edge;
}

/** A stretch may run backwards along its edge by this many tolerances: points with noise on them do. */
const BACKWARDS = 2;

/** Two ends nearer than this share of the stretch's width say too little about the arc between them. */
const LEAST_CHORD = 0.02;

/** Room for rounding in a comparison with the tolerance, as a share of it. */
export const ROUNDING = 1e-6;

/**
 * The simplest edge from the first to the last of the points that no part of the stretch leaves by over the
 * tolerance: a line if one does, else an arc; null if neither.
 */
export function fitted(stretch: Stretch, tolerance: number): Fit | null {
  return straightFit(stretch, tolerance) ?? roundFit(stretch, tolerance);
}

/** Least sum of squares of a line or an arc along the stretch within the tolerance; infinite if there is none. */
export function leastSquares(stretch: Stretch, tolerance: number): number {
  const none = Number.POSITIVE_INFINITY;
  const straight = straightFit(stretch, tolerance)?.squares ?? none;
  return straight === 0 ? 0 : Math.min(straight, roundFit(stretch, tolerance)?.squares ?? none);
}

function straightFit(stretch: Stretch, tolerance: number): Fit | null {
  const [a, b] = [stretch.points[stretch.from] as Point, stretch.points[stretch.to] as Point];
  if (samePoint(a, b)) return null;
  const leaving = leavingLine(stretch, a, b, tolerance * (1 + ROUNDING));
  return leaving && { edge: lineEdge(a, b), ...leaving };
}

function roundFit(stretch: Stretch, tolerance: number): Fit | null {
  const arc = stretch.to - stretch.from < 2 ? null : arcThrough(stretch);
  if (arc === null) return null;
  const leaving = leavingCircle(stretch, { ...arc, sweep: sweep(arc) }, tolerance * (1 + ROUNDING));
  return leaving && { edge: arc, ...leaving };
}

/** How far the stretch leaves a line; null if by more than the limit, or if it turns back. */
function leavingLine({ points, from, to }: Stretch, a: Point, b: Point, limit: number): Leaving | null {
  const length = distance(a, b);
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  let [largest, squares, along] = [0, 0, 0];
  for (let i = from + 1; i < to; i++) {
    const p = points[i] as Point;
    const off = Math.abs(ux * (p.y - a.y) - uy * (p.x - a.x));
    const reached = ux * (p.x - a.x) + uy * (p.y - a.y);
    if (off > limit || reached < along - BACKWARDS * limit || reached > length + limit) return null;
    along = Math.max(along, reached);
    largest = Math.max(largest, off);
    squares += off * off;
  }
  return { largest, squares };
}

/**
 * The arc between the first and last of the points that lies nearest to those between, in the sense of least squares
 * of (d^2 - r^2) / 2r, d being a point's distance from the centre; null where the ends are too close together.
 * With the chord from (-c, 0) to (c, 0) and an arc that turns by twice the angle f, that is v cos f - x sin f for
 * a point (u, v), x = (u^2 + v^2 - c^2) / 2c: the direction (cos f, sin f) is the main axis of the points (x, v).
 * Source: V. Pratt, "Direct least-squares fitting of algebraic surfaces" (1987), from memory, with the ends held;
 * main axis of a scatter of points: K. Pearson (1901), from memory.
 */
function arcThrough({ points, from, to }: Stretch): ArcEdge | null {
  const a = points[from] as Point;
  const b = points[to] as Point;
  const c = distance(a, b) / 2;
  const [mx, my] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
  const [ux, uy] = [(b.x - a.x) / (2 * c), (b.y - a.y) / (2 * c)];
  let [xx, xv, vv, vSum, widest] = [0, 0, 0, 0, 0];
  for (let i = from + 1; i < to; i++) {
    const p = points[i] as Point;
    const u = ux * (p.x - mx) + uy * (p.y - my);
    const v = ux * (p.y - my) - uy * (p.x - mx);
    const x = (u * u + v * v - c * c) / (2 * c);
    xx += x * x;
    xv += x * v;
    vv += v * v;
    vSum += v;
    widest = Math.max(widest, Math.abs(u), Math.abs(v));
  }
  if (!(c > LEAST_CHORD * widest) || vSum === 0) return null;
  const axis = Math.atan2(2 * xv, xx - vv) / 2;
  const side = Math.sin(axis) * vSum > 0 ? 1 : -1;
  const half = Math.atan2(Math.abs(Math.sin(axis)), -side * Math.cos(axis));
  if (!(half > 0 && half < Math.PI)) return null;
  const ccw = vSum < 0;
  const k = ((ccw ? 1 : -1) * c) / Math.tan(half);
  const center = { x: mx - uy * k, y: my + ux * k };
  if (!Number.isFinite(center.x) || !Number.isFinite(center.y)) return null;
  return arcEdge(a, b, center, ccw);
}

/** A circle that a stretch goes along, and by what angle. */
export interface Turning {
  readonly center: Point;
  readonly radius: number;
  readonly ccw: boolean;
  readonly sweep: number;
}

/**
 * How far a stretch, its segments included, leaves a circle; null if by more than the limit, or if it turns back or by
 * another angle. A segment is farthest inside at the foot of the perpendicular from the centre.
 */
export function leavingCircle({ points, from, to }: Stretch, round: Turning, limit: number): Leaving | null {
  const { center, radius } = round;
  const turnLimit = (BACKWARDS * limit) / radius;
  let [largest, squares, turned, furthest] = [0, 0, 0, 0];
  for (let i = from; i < to; i++) {
    const p = points[i] as Point;
    const q = points[i + 1] as Point;
    const [px, py] = [p.x - center.x, p.y - center.y];
    const [qx, qy] = [q.x - center.x, q.y - center.y];
    const cross = px * qy - py * qx;
    const off = Math.abs(Math.hypot(qx, qy) - radius);
    const far = Math.max(off, radius - nearest(px, py, qx, qy, cross));
    turned += (round.ccw ? 1 : -1) * Math.atan2(cross, px * qx + py * qy);
    if (far > limit || turned < furthest - turnLimit || turned > round.sweep + turnLimit) return null;
    furthest = Math.max(furthest, turned);
    largest = Math.max(largest, far);
    squares += off * off;
  }
  return Math.abs(turned - round.sweep) <= turnLimit ? { largest, squares } : null;
}

/** Distance from the origin to the segment between p and q. */
function nearest(px: number, py: number, qx: number, qy: number, cross: number): number {
  const [dx, dy] = [qx - px, qy - py];
  if (px * dx + py * dy >= 0) return Math.hypot(px, py);
  if (qx * dx + qy * dy <= 0) return Math.hypot(qx, qy);
  return Math.abs(cross) / Math.hypot(dx, dy);
}
