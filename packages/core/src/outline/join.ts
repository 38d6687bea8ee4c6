import { extentOf, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { distance, samePoint } from '../geometry/point.js';
import { withEnds } from './fit.js';

/**
 * A gap up to this share of the whole is closed by moving an end. A drawing's rounded numbers leave less;
 * more is an opening that somebody should look at.
 */
export const GAP_SHARE = 1e-6;

/** A shorter edge than this many times the gap would be bent too far by moving its end. */
const SHORTEST_MOVED = 2000;

/** Whether a gap after an edge is small enough to be closed by moving the end of that edge. */
export function closable(edge: Edge, gap: number, extent: number): boolean {
  return gap <= GAP_SHARE * extent && gap * SHORTEST_MOVED <= distance(edge.a, edge.b);
}

/** An edge that does not end where the next one starts. */
export interface Gap {
  /** Index of the edge that ends short of the next. */
  readonly edge: number;
  /** Index of the edge that should follow on. */
  readonly next: number;
  readonly size: number;
}

/** A chain of edges with its small gaps closed, and the gaps too large for that. */
export interface Joined {
  readonly edges: readonly Edge[];
  readonly gaps: readonly Gap[];
}

/** Larger side of the box round some edges; 0 for none. */
export function extentOfEdges(edges: readonly Edge[]): number {
  const [first, ...others] = edges.map(edgeBounds);
  return first === undefined ? 0 : extentOf(others.reduce(joined, first));
}

/** Makes each edge end exactly where the next one starts, and the last where the first starts if `closed`. */
export function joinEdges(edges: readonly Edge[], closed: boolean): Joined {
  const extent = extentOfEdges(edges);
  const gaps: Gap[] = [];
  const joinedUp = edges.map((edge, i) => {
    const next = edges[i + 1] ?? (closed ? edges[0] : undefined);
    if (next === undefined || samePoint(edge.b, next.a)) return edge;
    const size = distance(edge.b, next.a);
    if (closable(edge, size, extent)) return withEnds(edge, edge.a, next.a);
    gaps.push({ edge: i, next: i + 1 < edges.length ? i + 1 : 0, size });
    return edge;
  });
  return { edges: joinedUp, gaps };
}
