import { type ArcEdge, arcEdge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { leavingCircle, ROUNDING } from './polyline-fit.js';

/** A full circle along a closed polyline, and how far the polyline leaves it. */
export interface CircleFit {
  readonly edges: readonly [ArcEdge, ArcEdge];
  readonly deviation: number;
}

/**
 * The full circle that a closed polyline follows within the tolerance, as two arcs that begin beside its first point;
 * null if there is none.
 * @param ring the points, the first one again as the last
 */
export function circleRound(ring: readonly Point[], tolerance: number): CircleFit | null {
  const circle = meanCircle(ring);
  const first = ring[0];
  if (circle === null || first === undefined) return null;
  const { center, radius } = circle;
  const away = distance(center, first);
  if (!(away > 0 && radius > tolerance)) return null;
  const ux = ((first.x - center.x) / away) * radius;
  const uy = ((first.y - center.y) / away) * radius;
  const ccw = turnsLeft(ring, center);
  const round = { center, radius, ccw, sweep: 2 * Math.PI };
  const stretch = { points: ring, from: 0, to: ring.length - 1 };
  const leaving = leavingCircle(stretch, round, tolerance * (1 + ROUNDING));
  if (leaving === null) return null;
  const a = { x: center.x + ux, y: center.y + uy };
  const b = { x: center.x - ux, y: center.y - uy };
  return { edges: [arcEdge(a, b, center, ccw), arcEdge(b, a, center, ccw)], deviation: leaving.largest };
}

/**
 * The circle of least squares of x^2 + y^2 - 2 px - 2 qy - k, seen from the mean of the points: unbiased where they go
 * all the way round. Null for points in line.
 * Source: I. Kasa, "A circle fitting procedure and its error analysis" (1976), from memory.
 */
function meanCircle(ring: readonly Point[]): { center: Point; radius: number } | null {
  const points = ring.slice(1);
  const n = points.length;
  const mean = { x: 0, y: 0 };
  for (const p of points) {
    mean.x += p.x / n;
    mean.y += p.y / n;
  }
  let [xx, xy, yy, xz, yz, z] = [0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p.x - mean.x, p.y - mean.y];
    const square = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * square;
    yz += y * square;
    z += square;
  }
  const det = 2 * (xx * yy - xy * xy);
  const [px, py] = [(xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det];
  const radius = Math.sqrt(px * px + py * py + z / n);
  const center = { x: mean.x + px, y: mean.y + py };
  return Number.isFinite(radius) && Number.isFinite(center.x + center.y) ? { center, radius } : null;
}

function turnsLeft(ring: readonly Point[], center: Point): boolean {
  let twice = 0;
  for (let i = 0; i + 1 < ring.length; i++) {
    const [p, q] = [ring[i] as Point, ring[i + 1] as Point];
    twice += (p.x - center.x) * (q.y - center.y) - (p.y - center.y) * (q.x - center.x);
  }
  return twice > 0;
}
