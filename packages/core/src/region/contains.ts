import { extentOf } from '../geometry/bounds.js';
import { ROW, writeRow } from '../geometry/curves.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { circleOf } from './circle.js';
import { boundsOf, loopsOf } from './measure.js';
import { turnsOf } from './monotone.js';
import type { Loop, Region } from './region.js';

/**
 * Where a point lies with regard to a region.
 * @param tolerance how near to a boundary a point is taken to lie on it; a billionth of the region's extent
 *   unless given
 */
export function contains(region: Region, p: Point, tolerance?: number): Place {
  return locator(region, tolerance)(p);
}

/** Where a point lies with regard to a region. */
export type Place = 'inside' | 'boundary' | 'outside';

/** As `contains`, for many points of one region. */
export function locator(region: Region, tolerance?: number): (p: Point) => Place {
  const box = boundsOf(region);
  if (box === null) return () => 'outside';
  const near = tolerance ?? weldTolerance(extentOf(box));
  const edges = loopsOf(region).flat();
  return (p) => {
    if (p.x < box.minX - near || p.x > box.maxX + near || p.y < box.minY - near || p.y > box.maxY + near) {
      return 'outside';
    }
    let winding = 0;
    for (const edge of edges) {
      if (isAside(edge, p.y, near)) continue;
      if (nearestOnEdge(edge, p).distance <= near) return 'boundary';
      winding += crossings(edge, p, near);
    }
    return winding === 0 ? 'outside' : 'inside';
  };
}

/** Whether an edge lies all above or all below a height, and no nearer to it than so much. */
function isAside(edge: Edge, y: number, near: number): boolean {
  if (edge.kind === 'arc') return Math.abs(y - edge.center.y) > edge.radius + near;
  const [low, high] = [Math.min(edge.a.y, edge.b.y), Math.max(edge.a.y, edge.b.y)];
  return y < low - near || y > high + near;
}

/** How many times a loop goes round a point that is not on it, counter-clockwise. */
export function windingRound(loop: Loop, p: Point): number {
  const circle = circleOf(loop);
  if (circle !== null) return isWithin(circle, p) ? (circle.ccw ? 1 : -1) : 0;
  let winding = 0;
  for (const edge of loop) {
    // Most edges lie all above or all below the point. Ends decide, so that a joint counts once, bulges come second.
    const isLevel = edge.a.y > p.y === edge.b.y > p.y;
    if (isLevel && (edge.kind === 'line' || Math.abs(p.y - edge.center.y) > edge.radius)) continue;
    winding += crossings(edge, p, 0);
  }
  return winding;
}

function isWithin({ center, radius }: ArcEdge, p: Point): boolean {
  const dx = p.x - center.x;
  const dy = p.y - center.y;
  return dx * dx + dy * dy < radius * radius;
}

/** How often an edge crosses the ray from a point to the left, downward crossings counted as +1, upward as -1. */
function crossings(edge: Edge, p: Point, near: number): number {
  const { a, b } = edge;
  if (edge.kind === 'line') {
    if (!isPassed(a.y, b.y, p.y)) return 0;
    const isUp = a.y < b.y;
    const low = isUp ? a : b;
    const high = isUp ? b : a;
    const x = low.x + ((p.y - low.y) / (high.y - low.y)) * (high.x - low.x);
    return x < p.x ? (isUp ? -1 : 1) : 0;
  }
  writeRow(row, 0, edge, 0, 0);
  const count = turnsOf(row, 0, near, turns);
  const { center, radius, ccw } = edge;
  const dy = p.y - center.y;
  const half = Math.sqrt(Math.max(0, (radius - dy) * (radius + dy)));
  let sum = 0;
  let from = a.y;
  for (let k = 0; k <= count; k++) {
    const to = k === count ? b.y : (turns[k] as number);
    const isUp = from < to;
    if (isPassed(from, to, p.y) && center.x + (ccw === isUp ? half : -half) < p.x) sum += isUp ? -1 : 1;
    from = to;
  }
  return sum;
}

/** Written anew for each arc. */
const row = new Float64Array(ROW);
const turns = new Float64Array(2);

/** Whether a height is passed between two others; half open, so that a ray through a joint counts once. */
function isPassed(from: number, to: number, height: number): boolean {
  return from < to ? from <= height && height < to : to <= height && height < from;
}
