import type { Bounds, ReportEdge, ReportRegion } from '@edgebite/core';
import { boundsOfEdges, distanceTo, type Place, type ReportArc, turnOf } from './edges.js';

/** A stretch along x, from its left to its right end. */
export type Stretch = readonly [number, number];

/** Where a region lies on the level line at `y`: stretches from left to right. */
export function stretchesAt(region: ReportRegion, y: number): readonly Stretch[] {
  const crossings = region
    .flatMap((part) => [part.outer, ...part.holes])
    .flatMap((loop) => loop.flatMap((edge) => crossingsOf(edge, y)))
    .sort((a, b) => a - b);
  const stretches: Stretch[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    stretches.push([crossings[i] as number, crossings[i + 1] as number]);
  }
  return stretches.filter(([from, to]) => to > from);
}

/** Levels to look at, as shares of the height; odd ones, so that they miss corners that lie at round shares. */
const LEVELS = [0.503, 0.377, 0.631, 0.249, 0.757, 0.127, 0.873, 0.061, 0.939, 0.017, 0.983];

/** A place well inside a region: of the middles of some level stretches, the one with the most metal round it. */
export function placeInside(region: ReportRegion): Place | null {
  const box = boundsOfRegion(region);
  if (box === null) return null;
  const edges = region.flatMap((part) => [part.outer, ...part.holes]).flat();
  let best: { place: Place; clearance: number } | null = null;
  for (const share of LEVELS) {
    const y = box.minY + share * (box.maxY - box.minY);
    for (const [from, to] of stretchesAt(region, y)) {
      const place: Place = [(from + to) / 2, y];
      const least = best?.clearance ?? -1;
      let clearance = (to - from) / 2;
      // Once it is no better than the best, how much worse it is does not matter.
      for (let i = 0; i < edges.length && clearance > least; i++) {
        clearance = Math.min(clearance, distanceTo(edges[i] as ReportEdge, place));
      }
      if (clearance > least) best = { place, clearance };
    }
  }
  return best?.place ?? null;
}

/** Bounds of a region; null for an empty one. */
export function boundsOfRegion(region: ReportRegion): Bounds | null {
  return boundsOfEdges(region.flatMap((part) => part.outer));
}

// An end counts to the upper side only, so that a corner on the line is crossed once or twice, never by half.
function crossingsOf(edge: ReportEdge, y: number): readonly number[] {
  if (edge.kind === 'line') {
    const [ax, ay] = edge.a;
    const [bx, by] = edge.b;
    return ay <= y !== by <= y ? [ax + ((y - ay) / (by - ay)) * (bx - ax)] : [];
  }
  const places = risesAndFalls(edge);
  const dy = y - edge.center[1];
  const half = Math.sqrt(Math.max(edge.radius * edge.radius - dy * dy, 0));
  const crossings: number[] = [];
  for (let i = 0; i + 1 < places.length; i++) {
    const from = (places[i] as Place)[1];
    const to = (places[i + 1] as Place)[1];
    if (from <= y === to <= y) continue;
    // Counter-clockwise rises on the right side of its circle and falls on the left.
    const right = edge.ccw === to > from;
    crossings.push(edge.center[0] + (right ? half : -half));
  }
  return crossings;
}

// The ends of an arc and its highest and lowest places between them: from each to the next y only rises or falls.
function risesAndFalls(arc: ReportArc): readonly Place[] {
  const { a, b, center, radius, ccw } = arc;
  const from = Math.atan2(a[1] - center[1], a[0] - center[0]);
  const to = from + (ccw ? turnOf(arc) : -turnOf(arc));
  const between: Place[] = [];
  const half = Math.PI;
  for (let k = Math.ceil(Math.min(from, to) / half - 0.5); (k + 0.5) * half < Math.max(from, to); k++) {
    if ((k + 0.5) * half <= Math.min(from, to)) continue;
    between.push([center[0], center[1] + (k % 2 === 0 ? radius : -radius)]);
  }
  return [a, ...(ccw ? between : between.reverse()), b];
}
