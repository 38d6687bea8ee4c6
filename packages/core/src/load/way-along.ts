import { type Bounds, boxesMeet, grown } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { moved, type Point, type Vector } from '../geometry/point.js';

/** From where to where, along a way, its place is near something. */
export type NearStretch = readonly [from: number, to: number];

/** A straight way: where it starts, its unit vector, and how far it is looked along. */
export interface Way {
  readonly from: Point;
  readonly direction: Vector;
  readonly furthest: number;
}

/** The first place of a way at which it is as far as `reach` from all edges; null if there is none. */
export function firstClear(way: Way, edges: readonly Edge[], reach: number): number | null {
  const stretches = stretchesNear(way, edges, reach).sort((a, b) => a[0] - b[0]);
  let at = 0;
  for (const [from, to] of stretches) {
    if (from > at) break;
    at = Math.max(at, to);
  }
  return at < way.furthest ? at : null;
}

/** The first place of a way from which on it is nearer than `reach` to some edge; null if there is none. */
export function firstNear(way: Way, edges: readonly Edge[], reach: number): number | null {
  const stretches = stretchesNear(way, edges, reach);
  return stretches.length === 0 ? null : Math.min(...stretches.map(([from]) => from));
}

function stretchesNear(way: Way, edges: readonly Edge[], reach: number): NearStretch[] {
  const box = grown(boxOf(way), reach);
  return edges.flatMap((edge) => (boxesMeet(edgeBounds(edge), box) ? nearEdge(way, edge, reach) : []));
}

function boxOf({ from, direction, furthest }: Way): Bounds {
  const to = moved(from, direction, furthest);
  return {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
}

/**
 * Where a way is nearer than `reach` to an edge. It comes and goes only where it crosses the circles of that radius
 * round the ends, the parallels to a line, or the circles beside an arc; what lies between two crossings, its middle
 * tells.
 *
 * Source: boundary of the Minkowski sum of an edge and a disc.
 */
function nearEdge(way: Way, edge: Edge, reach: number): NearStretch[] {
  const { from, direction, furthest } = way;
  const crossings = [
    ...throughCircle(way, edge.a, reach),
    ...throughCircle(way, edge.b, reach),
    ...(edge.kind === 'line'
      ? throughParallels(way, edge, reach)
      : [
          ...throughCircle(way, edge.center, edge.radius + reach),
          ...throughCircle(way, edge.center, Math.abs(edge.radius - reach)),
        ]),
  ].filter((s) => s > 0 && s < furthest);
  const places = [0, ...crossings.sort((a, b) => a - b), furthest];
  const found: NearStretch[] = [];
  for (let k = 1; k < places.length; k++) {
    const [a, b] = [places[k - 1] as number, places[k] as number];
    if (a === b || nearestOnEdge(edge, moved(from, direction, (a + b) / 2)).distance >= reach) continue;
    const last = found[found.length - 1];
    if (last !== undefined && last[1] === a) found[found.length - 1] = [last[0], b];
    else found.push([a, b]);
  }
  return found;
}

function throughCircle({ from, direction }: Way, center: Point, radius: number): number[] {
  const [x, y] = [center.x - from.x, center.y - from.y];
  const along = x * direction.dx + y * direction.dy;
  const across = x * direction.dy - y * direction.dx;
  const square = (radius - across) * (radius + across);
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [along - half, along + half];
}

function throughParallels({ from, direction }: Way, { a, b }: Edge, away: number): number[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const rate = ux * direction.dy - uy * direction.dx;
  if (rate === 0) return [];
  const left = ux * (from.y - a.y) - uy * (from.x - a.x);
  return [(away - left) / rate, (-away - left) / rate];
}
