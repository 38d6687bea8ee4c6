import { extentOf, grown, joined } from '../geometry/bounds.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { edgesInOf } from './edges-near.js';

/** Where metal ends that goes on from a place. */
export interface FarEnd {
  readonly distance: number;
  readonly edge: Edge;
  readonly at: Point;
}

/** Tells where the metal of a part ends, looking from a place in a direction; null where it meets no edge. */
export type FarEndFinder = (from: Point, direction: Vector) => FarEnd | null;

/** Share of the part's extent within which a look has not left where it starts. */
const START = 1e-7;

/** Share of an edge by which a look may miss its end, by rounding. */
const END = 1e-9;

/** Looks across an outline: the first edge that a straight line meets. */
export function farEndFinder(outline: Region): FarEndFinder {
  const box = boundsOf(outline);
  if (box === null) return () => null;
  const edgesIn = edgesInOf(loopsOf(outline).flat());
  return (from, direction) => {
    const around = joined(box, { minX: from.x, minY: from.y, maxX: from.x, maxY: from.y });
    const reach = 2 * (around.maxX - around.minX + around.maxY - around.minY);
    const least = START * extentOf(box);
    const step = reach / STEPS;
    // Step by step: the box round all of the line holds half of the edges, the one round a step few.
    for (let k = 0; k < STEPS; k++) {
      const first = firstWithin(edgesIn, from, direction, k * step, (k + 1) * step, least);
      if (first !== null) return { ...first, at: moved(from, direction, first.distance) };
    }
    return null;
  };
}

/** In so many steps a straight line is looked along. */
const STEPS = 128;

/** The nearest crossing of the edges beside one step of a straight line, if that is on this step or before. */
function firstWithin(
  edgesIn: ReturnType<typeof edgesInOf>,
  from: Point,
  direction: Vector,
  start: number,
  end: number,
  least: number,
): Omit<FarEnd, 'at'> | null {
  const [p, q] = [moved(from, direction, start), moved(from, direction, end)];
  const box = {
    minX: Math.min(p.x, q.x),
    minY: Math.min(p.y, q.y),
    maxX: Math.max(p.x, q.x),
    maxY: Math.max(p.y, q.y),
  };
  let best: Omit<FarEnd, 'at'> | null = null;
  for (const edge of edgesIn(grown(box, END * STEPS * (end - start)))) {
    for (const distance of crossings(edge, from, direction)) {
      if (distance > least && distance <= end && (best === null || distance < best.distance))
        best = { distance, edge };
    }
  }
  return best;
}

/** How far along a direction an edge is crossed. */
function crossings(edge: Edge, from: Point, d: Vector): number[] {
  return edge.kind === 'line' ? lineCrossing(edge, from, d) : arcCrossings(edge, from, d);
}

/** Source: Cramer's rule. */
function lineCrossing({ a, b }: LineEdge, from: Point, d: Vector): number[] {
  const [ex, ey] = [b.x - a.x, b.y - a.y];
  const [px, py] = [a.x - from.x, a.y - from.y];
  const turn = d.dx * ey - d.dy * ex;
  if (turn === 0) return [];
  const share = (px * d.dy - py * d.dx) / turn;
  return share < -END || share > 1 + END ? [] : [(px * ey - py * ex) / turn];
}

/** Source: quadratic formula, for |from + t d - centre| = radius. */
function arcCrossings(arc: ArcEdge, from: Point, d: Vector): number[] {
  const { center, radius } = arc;
  const [px, py] = [from.x - center.x, from.y - center.y];
  const square = d.dx * d.dx + d.dy * d.dy;
  const half = (px * d.dx + py * d.dy) / square;
  const root = half * half - (px * px + py * py - radius * radius) / square;
  if (root < 0) return [];
  return [-half - Math.sqrt(root), -half + Math.sqrt(root)].filter((t) => onArcSide(arc, moved(from, d, t)));
}
