import type { Edge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { area, centroid, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** Second moments of area, in the fourth power of the unit. */
export interface SecondMoments {
  /** What they are taken about. */
  readonly about: Point;
  /** Of y squared: about the line along x. */
  readonly xx: number;
  /** Of x squared: about the line along y. */
  readonly yy: number;
  /** Of x times y. */
  readonly xy: number;
  /** The largest and the smallest about any line through the place, and the angle of the line of the largest, radians. */
  readonly largest: number;
  readonly smallest: number;
  readonly angle: number;
}

/**
 * Second moments of area about a place; null for an empty region.
 * Source: Green's theorem: of y squared, minus a third of the integral of y cubed dx round the boundary, and so on;
 * moved from the centroid by Steiner's theorem (Machinery's Handbook, 31st ed., moments of inertia).
 * @param about the centroid unless given
 */
export function secondMoments(region: Region, about?: Point): SecondMoments | null {
  const center = centroid(region);
  if (center === null) return null;
  let [xx, yy, xy] = [0, 0, 0];
  for (const loop of loopsOf(region)) {
    for (const edge of loop) {
      const [a, b, c] = along(edge, center);
      xx += a;
      yy += b;
      xy += c;
    }
  }
  const place = about ?? center;
  const mass = area(region);
  const dx = center.x - place.x;
  const dy = center.y - place.y;
  xx += mass * dy * dy;
  yy += mass * dx * dx;
  xy += mass * dx * dy;
  const half = Math.hypot((xx - yy) / 2, xy);
  const middle = (xx + yy) / 2;
  const angle = Math.atan2(-2 * xy, xx - yy) / 2;
  return { about: place, xx, yy, xy, largest: middle + half, smallest: middle - half, angle };
}

/** Nodes and weights of Gauss and Legendre for five places: exact for lines, and for short arcs to the last digits. */
const NODES = [
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
] as const;

/** Arcs are taken in pieces of this turn at most, radians. */
const PIECE = Math.PI / 16;

function along(edge: Edge, origin: Point): [number, number, number] {
  const pieces = edge.kind === 'line' ? 1 : Math.ceil(sweep(edge) / PIECE);
  const sums: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < pieces; k++) {
    for (const [node, weight] of NODES) {
      const { x, y, dx, dy } = at(edge, (k + (1 + node) / 2) / pieces, origin);
      const w = weight / 2 / pieces;
      sums[0] -= (w * y * y * y * dx) / 3;
      sums[1] += (w * x * x * x * dy) / 3;
      sums[2] += (w * x * x * y * dy) / 2;
    }
  }
  return sums;
}

/** A place of an edge at a share of it, seen from another place, and how it moves with the share. */
function at(edge: Edge, share: number, origin: Point): { x: number; y: number; dx: number; dy: number } {
  if (edge.kind === 'line') {
    const dx = edge.b.x - edge.a.x;
    const dy = edge.b.y - edge.a.y;
    return { x: edge.a.x - origin.x + share * dx, y: edge.a.y - origin.y + share * dy, dx, dy };
  }
  const { center, radius, a } = edge;
  const turn = sweep(edge) * (edge.ccw ? 1 : -1);
  const angle = Math.atan2(a.y - center.y, a.x - center.x) + share * turn;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    x: center.x - origin.x + radius * cos,
    y: center.y - origin.y + radius * sin,
    dx: -radius * sin * turn,
    dy: radius * cos * turn,
  };
}
