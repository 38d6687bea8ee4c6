import { extentOf } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { circleOf } from './circle.js';
import { boundsOf, loopsOf } from './measure.js';
import { monotone } from './monotone.js';
import type { Loop, Region } from './region.js';

/**
 * Where a point lies with regard to a region.
 * @param tolerance how near to a boundary a point is taken to lie on it; a billionth of the region's extent
 *   unless given
 */
export function contains(region: Region, p: Point, tolerance?: number): 'inside' | 'boundary' | 'outside' {
  const box = boundsOf(region);
  if (box === null) return 'outside';
  const near = tolerance ?? weldTolerance(extentOf(box));
  if (p.x < box.minX - near || p.x > box.maxX + near || p.y < box.minY - near || p.y > box.maxY + near) {
    return 'outside';
  }
  let winding = 0;
  for (const loop of loopsOf(region)) {
    for (const edge of loop) {
      if (nearestOnEdge(edge, p).distance <= near) return 'boundary';
      winding += crossings(edge, p, near);
    }
  }
  return winding === 0 ? 'outside' : 'inside';
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
  if (edge.kind === 'line') return crossing(edge, p);
  let sum = 0;
  for (const part of monotone(edge, near)) sum += crossing(part, p);
  return sum;
}

function crossing(edge: Edge, p: Point): number {
  const up = edge.a.y < edge.b.y;
  const low = up ? edge.a : edge.b;
  const high = up ? edge.b : edge.a;
  // Half open, so that a ray through a joint counts once.
  if (!(low.y <= p.y && p.y < high.y)) return 0;
  return xAt(edge, low, high, p.y, up) < p.x ? (up ? -1 : 1) : 0;
}

function xAt(edge: Edge, low: Point, high: Point, y: number, up: boolean): number {
  if (edge.kind === 'line') return low.x + ((y - low.y) / (high.y - low.y)) * (high.x - low.x);
  const dy = y - edge.center.y;
  const half = Math.sqrt(Math.max(0, (edge.radius - dy) * (edge.radius + dy)));
  return edge.center.x + (edge.ccw === up ? half : -half);
}
