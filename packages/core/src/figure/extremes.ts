import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { distance, midpoint, type Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { reachOf, type Stretch, supportOf } from './support.js';

/** A circle by its centre and radius. */
export interface BoundingCircle {
  readonly center: Point;
  readonly radius: number;
}

/** Rounds of exchange; three or four are enough as a rule, since each closes in by the square. */
const ROUNDS = 200;

/**
 * The smallest circle round a region; null for an empty one. It grows by the farthest place of the boundary until none is
 * outside by more than rounding.
 * Source: Welzl, "Smallest enclosing disks" (1991), for points; farthest places are exchanged as in Remez's method.
 */
export function boundingCircle(region: Region): BoundingCircle | null {
  const edges = region.flatMap(({ outer }) => outer);
  const first = edges[0];
  if (first === undefined) return null;
  let circle: BoundingCircle = { center: first.a, radius: 0 };
  let on: Point[] = [first.a];
  for (let round = 0; round < ROUNDS; round++) {
    const far = farthest(edges, circle.center);
    const away = distance(far, circle.center);
    if (away <= circle.radius * (1 + ROUNDING)) break;
    [circle, on] = around([...on, far]);
  }
  return { center: circle.center, radius: distance(farthest(edges, circle.center), circle.center) };
}

const ROUNDING = 1e-14;

function farthest(edges: readonly Edge[], from: Point): Point {
  let best = (edges[0] as Edge).a;
  for (const edge of edges) {
    const places = [edge.a];
    if (edge.kind === 'arc') {
      const away = distance(from, edge.center);
      const share = away === 0 ? 0 : edge.radius / away;
      const opposite = {
        x: edge.center.x + share * (edge.center.x - from.x),
        y: edge.center.y + share * (edge.center.y - from.y),
      };
      if (away > 0 && onArcSide(edge, opposite)) places.push(nearestOnEdge(edge, opposite).at);
    }
    for (const p of places) if (distance(p, from) > distance(best, from)) best = p;
  }
  return best;
}

/** The smallest circle round four points at most, and those of them that it goes through. */
function around(points: readonly Point[]): [BoundingCircle, Point[]] {
  let best: [BoundingCircle, Point[]] | null = null;
  const take = (circle: BoundingCircle | null, on: Point[]) => {
    if (circle === null || (best !== null && best[0].radius <= circle.radius)) return;
    const most = Math.max(...points.map((p) => distance(p, circle.center)));
    if (most <= circle.radius * (1 + 1e-12)) best = [circle, on];
  };
  points.forEach((p, i) => {
    points.slice(i + 1).forEach((q, j) => {
      take({ center: midpoint(p, q), radius: distance(p, q) / 2 }, [p, q]);
      for (const r of points.slice(i + j + 2)) take(through(p, q, r), [p, q, r]);
    });
  });
  return best ?? [{ center: points[0] as Point, radius: 0 }, [points[0] as Point]];
}

function through(p: Point, q: Point, r: Point): BoundingCircle | null {
  const [bx, by, cx, cy] = [q.x - p.x, q.y - p.y, r.x - p.x, r.y - p.y];
  const double = 2 * (bx * cy - by * cx);
  if (double === 0) return null;
  const [b, c] = [bx * bx + by * by, cx * cx + cy * cy];
  const x = (cy * b - by * c) / double;
  const y = (bx * c - cx * b) / double;
  return { center: { x: p.x + x, y: p.y + y }, radius: Math.hypot(x, y) };
}

/** The narrowest pair of parallel lines that a region fits between. */
export interface SmallestWidth {
  readonly width: number;
  /** Square to the lines, radians from 0 to pi. */
  readonly angle: number;
}

/**
 * The smallest width of a region: what the narrowest gap is that its convex hull slides through; null for an empty one.
 * Source: the width in a direction is the sum of the support function there and in the opposite one; between two places
 * where either changes it is one sinusoid and a constant.
 */
export function smallestWidth(region: Region): SmallestWidth | null {
  const support = supportOf(region);
  if (support.length === 0) return null;
  const stops = [0, Math.PI, ...support.flatMap(({ from, to }) => [from % Math.PI, to % Math.PI])].sort(
    (a, b) => a - b,
  );
  let best: SmallestWidth | null = null;
  const take = (angle: number, width: number) => {
    if (best === null || width < best.width) best = { width, angle };
  };
  for (let k = 0; k + 1 < stops.length; k++) {
    const [from, to] = [stops[k] as number, stops[k + 1] as number];
    const middle = (from + to) / 2;
    const one = farthestIn(support, middle);
    const other = farthestIn(support, middle + Math.PI);
    const width = (angle: number) => reachOf(one.bulge, angle) + reachOf(other.bulge, angle + Math.PI);
    take(from, width(from));
    const [dx, dy] = [one.bulge.center.x - other.bulge.center.x, one.bulge.center.y - other.bulge.center.y];
    const lowest = Math.atan2(-dy, -dx);
    for (const angle of [lowest, lowest + Math.PI, lowest + 2 * Math.PI])
      if (angle > from && angle < to) take(angle, width(angle));
  }
  return best;
}

function farthestIn(support: readonly Stretch[], angle: number): Stretch {
  let [low, high] = [0, support.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((support[middle] as Stretch).to < angle) low = middle + 1;
    else high = middle;
  }
  return support[low] as Stretch;
}
