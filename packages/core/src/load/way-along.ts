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

/** An edge with the box round it. */
export interface BoxedEdge {
  readonly edge: Edge;
  readonly box: Bounds;
}

/** Edges with the boxes round them. */
export function boxed(edges: readonly Edge[]): BoxedEdge[] {
  return edges.map((edge) => ({ edge, box: edgeBounds(edge) }));
}

/** The first place of a way at which it is as far as `reach` from all edges; null if there is none. */
export function firstClear(way: Way, edges: readonly BoxedEdge[], reach: number): number | null {
  const stretches = stretchesNear(way, edges, reach).sort((a, b) => a[0] - b[0]);
  let at = 0;
  for (const [from, to] of stretches) {
    if (from > at) break;
    at = Math.max(at, to);
  }
  return at < way.furthest ? at : null;
}

/** The first place of a way from which on it is nearer than `reach` to some edge; null if there is none. */
export function firstNear(way: Way, edges: readonly BoxedEdge[], reach: number): number | null {
  const stretches = stretchesNear(way, edges, reach);
  return stretches.length === 0
    ? null
    : stretches.reduce((least, [from]) => Math.min(least, from), way.furthest);
}

function stretchesNear(way: Way, edges: readonly BoxedEdge[], reach: number): NearStretch[] {
  const around = grown(boundsOfWay(way), reach);
  const found: NearStretch[] = [];
  for (const { edge, box } of edges) if (boxesMeet(box, around)) addNear(way, edge, reach, found);
  return found;
}

function boundsOfWay({ from, direction, furthest }: Way): Bounds {
  const to = moved(from, direction, furthest);
  return {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
}

/**
 * Adds where a way is nearer than `reach` to an edge. It comes and goes only where it crosses the circles of that radius
 * round the ends, the parallels to a line, or the circles beside an arc; what lies between two crossings, its middle
 * tells.
 *
 * Source: boundary of the Minkowski sum of an edge and a disc.
 */
function addNear(way: Way, edge: Edge, reach: number, found: NearStretch[]): void {
  const { from, direction, furthest } = way;
  const places = [0, furthest];
  const add = (s: number): void => {
    if (s > 0 && s < furthest) places.push(s);
  };
  throughCircle(way, edge.a, reach, add);
  throughCircle(way, edge.b, reach, add);
  if (edge.kind === 'line') throughParallels(way, edge, reach, add);
  else {
    throughCircle(way, edge.center, edge.radius + reach, add);
    throughCircle(way, edge.center, Math.abs(edge.radius - reach), add);
  }
  places.sort((a, b) => a - b);
  let start = -1;
  for (let k = 1; k < places.length; k++) {
    const [a, b] = [places[k - 1] as number, places[k] as number];
    if (a === b) continue;
    const isNear = nearestOnEdge(edge, moved(from, direction, (a + b) / 2)).distance < reach;
    if (isNear && start < 0) start = a;
    if (!isNear && start >= 0) {
      found.push([start, a]);
      start = -1;
    }
  }
  if (start >= 0) found.push([start, furthest]);
}

function throughCircle(
  { from, direction }: Way,
  center: Point,
  radius: number,
  add: (s: number) => void,
): void {
  const x = center.x - from.x;
  const y = center.y - from.y;
  const across = x * direction.dy - y * direction.dx;
  const square = (radius - across) * (radius + across);
  if (square < 0) return;
  const along = x * direction.dx + y * direction.dy;
  const half = Math.sqrt(square);
  add(along - half);
  add(along + half);
}

function throughParallels(
  { from, direction }: Way,
  { a, b }: Edge,
  away: number,
  add: (s: number) => void,
): void {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const rate = ux * direction.dy - uy * direction.dx;
  if (rate === 0) return;
  const left = ux * (from.y - a.y) - uy * (from.x - a.x);
  add((away - left) / rate);
  add((-away - left) / rate);
}
