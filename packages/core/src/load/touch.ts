import { nearestOnEdge } from '../geometry/distance.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { distance, type Point, type Vector } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/**
 * How far a disc can be moved back until it leaves some metal altogether. The metal lies within the disc where it
 * stands now, so that each place of it, once uncovered, stays so.
 *
 * Source: the disc leaves a place q when |c - t u - q| = r, so at t = (c - q) u + sqrt(((c - q) u)^2 + r^2 - |c - q|^2);
 * it leaves an edge last at one of its ends or where it touches it.
 * @param approach unit vector that leads forward; the disc moves the opposite way
 */
export function wayOut(metal: Region, center: Point, radius: number, approach: Vector): number {
  let way = 0;
  for (const edge of loopsOf(metal).flat()) {
    const touching =
      edge.kind === 'line'
        ? leavesLine(edge, center, radius, approach)
        : leavesArc(edge, center, radius, approach);
    way = Math.max(way, touching, ...waysTo(center, edge.a, radius, approach));
  }
  return way;
}

/** How far back a centre is `reach` from a place, for the first and the last time. */
function waysTo(center: Point, p: Point, reach: number, { dx, dy }: Vector): number[] {
  const qx = center.x - p.x;
  const qy = center.y - p.y;
  const along = qx * dx + qy * dy;
  const across = qx * dy - qy * dx;
  const square = (reach - across) * (reach + across);
  if (square < 0) return [];
  return [along - Math.sqrt(square), along + Math.sqrt(square)];
}

function leavesLine(edge: LineEdge, center: Point, radius: number, { dx, dy }: Vector): number {
  const length = distance(edge.a, edge.b);
  const ux = (edge.b.x - edge.a.x) / length;
  const uy = (edge.b.y - edge.a.y) / length;
  // How fast the centre's distance to the left of the line falls as it moves back.
  const rate = ux * dy - uy * dx;
  if (rate === 0) return 0;
  const left = ux * (center.y - edge.a.y) - uy * (center.x - edge.a.x);
  const way = Math.max((left - radius) / rate, (left + radius) / rate);
  const foot = ux * (center.x - way * dx - edge.a.x) + uy * (center.y - way * dy - edge.a.y);
  return foot >= 0 && foot <= length ? way : 0;
}

function leavesArc(arc: ArcEdge, center: Point, radius: number, approach: Vector): number {
  // From outside both circles touch at the sum of the radii; one within the other at the difference.
  const ways = [arc.radius + radius, arc.radius - radius].flatMap((reach) =>
    waysTo(center, arc.center, Math.abs(reach), approach).filter((way) => {
      const x = center.x - way * approach.dx - arc.center.x;
      const y = center.y - way * approach.dy - arc.center.y;
      const away = Math.hypot(x, y);
      if (away === 0) return false;
      // Where the arc is of the smaller circle, within the disc, they touch on its far side.
      const scale = (reach < 0 ? -arc.radius : arc.radius) / away;
      return onArcSide(arc, { x: arc.center.x + scale * x, y: arc.center.y + scale * y });
    }),
  );
  return Math.max(0, ...ways);
}

/** Distance from a place to some metal; 0 inside it. The metal is not empty. */
export function distanceTo(metal: Region, from: Point): number {
  if (contains(metal, from) !== 'outside') return 0;
  return distanceToBoundary(metal, from);
}

/** Distance from a place to the nearest boundary. */
export function distanceToBoundary(region: Region, from: Point): number {
  const away = (edge: Edge): number => nearestOnEdge(edge, from).distance;
  return loopsOf(region)
    .flat()
    .reduce((least, edge) => Math.min(least, away(edge)), Number.POSITIVE_INFINITY);
}
