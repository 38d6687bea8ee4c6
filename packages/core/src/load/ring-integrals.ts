import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';

/**
 * Integrals along an edge over the angle a at which a place sees it, p being the place of the edge as seen from there:
 * of the distance |p|, and of p itself.
 */
export interface AngleIntegrals {
  readonly reach: number;
  readonly x: number;
  readonly y: number;
}

/**
 * The integrals of an edge over the angle at which a place sees it; counter-clockwise counts as positive. Summed over
 * the boundary of a region they are the integrals of w(a) and of w(a) (cos a, sin a) over all angles, where w(a) is
 * the length of the region along the radius of a. To about 1e-13 of the largest reach; all but the reach of an
 * eccentric arc are closed forms.
 *
 * Source: Green's theorem for w(a) da = dA / |p|, with da = (p x dp) / |p|². Of a line at a distance h with t along
 * it, da = h dt / (h² + t²). Of an arc, p = c + s u with u the unit vector from its centre and b the angle of u:
 * da = (1/2 + (s² - d²) / (2 |p|²)) db with d = |c|, and the integral of p / |p|² db, taken in the complex plane, is
 * (b - a - i ln |p|) / conj(c).
 * @param from not on the edge
 */
export function integralsOf(edge: Edge, from: Point): AngleIntegrals {
  return edge.kind === 'line' ? ofLine(edge, from) : ofArc(edge, from);
}

/** A straight edge that comes nearer than this share of its length is seen edge-on, and less would overflow. */
const EDGE_ON = 1e-20;

function ofLine({ a, b }: LineEdge, from: Point): AngleIntegrals {
  const [ax, ay, bx, by] = [a.x - from.x, a.y - from.y, b.x - from.x, b.y - from.y];
  const length = Math.hypot(bx - ax, by - ay);
  const [tx, ty] = [(bx - ax) / length, (by - ay) / length];
  const h = ax * ty - ay * tx;
  if (Math.abs(h) <= EDGE_ON * length) return { reach: 0, x: 0, y: 0 };
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  const along = h * Math.log(Math.hypot(bx, by) / Math.hypot(ax, ay));
  return {
    reach:
      h * (Math.asinh((bx * tx + by * ty) / Math.abs(h)) - Math.asinh((ax * tx + ay * ty) / Math.abs(h))),
    x: h * ty * turn + tx * along,
    y: -h * tx * turn + ty * along,
  };
}

/** An arc whose centre is nearer than this share of its radius to the place is concentric: rounding. */
const CONCENTRIC = 1e-14;

function ofArc(arc: ArcEdge, from: Point): AngleIntegrals {
  const { a, b, center, radius: s } = arc;
  const [cx, cy] = [center.x - from.x, center.y - from.y];
  const d = Math.hypot(cx, cy);
  const beta = arc.ccw ? sweep(arc) : -sweep(arc);
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  if (d <= CONCENTRIC * s) return { reach: s * beta, x: dy, y: -dx };
  const [ax, ay] = [a.x - from.x, a.y - from.y];
  const lag = lagOf(arc, from);
  // |b|² - |a|² is 2 c (b - a) of places on one circle, without the cancelling.
  const log = Math.log1p((2 * (cx * dx + cy * dy)) / (ax * ax + ay * ay)) / 2;
  const factor = ((s - d) * (s + d)) / (2 * d * d);
  return {
    reach: reachAlong(arc, from, d, beta),
    x: (cx * beta + dy) / 2 + factor * (cx * lag + cy * log),
    y: (cy * beta - dx) / 2 + factor * (cy * lag - cx * log),
  };
}

/** The angle that an edge turns through as seen from a place that is not on it; counter-clockwise counts as positive. */
export function turnSeen(edge: Edge, from: Point): number {
  if (edge.kind === 'arc') return (edge.ccw ? sweep(edge) : -sweep(edge)) - lagOf(edge, from);
  const [ax, ay] = [edge.a.x - from.x, edge.a.y - from.y];
  const [bx, by] = [edge.b.x - from.x, edge.b.y - from.y];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

/** By how much less an arc turns as seen from a place than it does as seen from its own centre. */
function lagOf(arc: ArcEdge, from: Point): number {
  const { a, b, center, radius } = arc;
  const [cx, cy] = [center.x - from.x, center.y - from.y];
  if (Math.hypot(cx, cy) > radius) {
    // From outside all of it is seen within a right angle of its centre.
    const seen = (p: Point): number => {
      const [x, y] = [p.x - from.x, p.y - from.y];
      return Math.atan2(cx * y - cy * x, cx * x + cy * y);
    };
    return (arc.ccw ? sweep(arc) : -sweep(arc)) - (seen(b) - seen(a));
  }
  // From inside a place of it is seen within a right angle of the direction in which its own centre sees it.
  const off = (p: Point): number => {
    const [ux, uy] = [p.x - center.x, p.y - center.y];
    return Math.atan2(ux * cy - uy * cx, ux * (p.x - from.x) + uy * (p.y - from.y));
  };
  return off(a) - off(b);
}

/**
 * The integral of |p| over the angle along an eccentric arc: an elliptic one, taken by quadrature over the angle b at
 * the arc's centre, along which it is smooth. |p|² = (s + d)² cos² + (s - d)² sin² of half the angle off the centre.
 */
function reachAlong(arc: ArcEdge, from: Point, d: number, beta: number): number {
  const { a, center, radius: s } = arc;
  const axis = Math.atan2(center.y - from.y, center.x - from.x);
  const start = (Math.atan2(a.y - center.y, a.x - center.x) - axis) / 2;
  const [far, near] = [s + d, s - d];
  const product = far * near;
  const f = (half: number): number => {
    const p = Math.hypot(far * Math.cos(half), near * Math.sin(half));
    return p + product / p;
  };
  return quadrature(f, start, start + beta / 2, QUADRATURE * far, MOST_HALVINGS);
}

/** How far a quadrature may be off for each radian, as a share of the largest distance; rounding comes to as much. */
const QUADRATURE = 1e-14;

/** The integrand is smooth over a stretch of this many halvings, however near the arc comes. */
const MOST_HALVINGS = 40;

/** Nodes and weights on one side of Gauss-Legendre quadrature of 10 points (Abramowitz and Stegun, table 25.4). */
const NODES = [
  0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
] as const;
const WEIGHTS = [
  0.2955242247147529, 0.2692667193099963, 0.219086362515982, 0.1494513491505806, 0.0666713443086881,
] as const;

/** Integral of a smooth function; halved until whole and halves agree to a tolerance for each radian. */
function quadrature(
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
  halvings: number,
): number {
  const middle = (from + to) / 2;
  const whole = tenPoints(f, from, to);
  const halves = tenPoints(f, from, middle) + tenPoints(f, middle, to);
  if (halvings === 0 || Math.abs(whole - halves) <= tolerance * Math.max(Math.abs(to - from), 1))
    return halves;
  return (
    quadrature(f, from, middle, tolerance, halvings - 1) + quadrature(f, middle, to, tolerance, halvings - 1)
  );
}

function tenPoints(f: (x: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return (
    half *
    NODES.reduce(
      (sum, x, k) => sum + (WEIGHTS[k] as number) * (f(middle - half * x) + f(middle + half * x)),
      0,
    )
  );
}
