import { type Edge, lineEdge } from '../geometry/edge.js';
import { distance, samePoint } from '../geometry/point.js';
import { withEnds } from './fit.js';
import { closable, extentOfEdges } from './join.js';

/** Edges drawn one after another without lifting the pen. */
export interface Chain {
  readonly edges: readonly Edge[];
  /** Whether it was asked to close, or ends exactly where it starts. */
  readonly closed: boolean;
}

/** A chain as drawn. */
export function openChain(edges: readonly Edge[]): Chain {
  const first = edges[0];
  const last = edges.at(-1);
  return { edges, closed: first !== undefined && last !== undefined && samePoint(first.a, last.b) };
}

/**
 * The chain led back to its start: by a straight edge, or, where only rounding is amiss, by moving its last end.
 */
export function closedChain(edges: readonly Edge[]): Chain {
  const first = edges[0];
  const last = edges.at(-1);
  if (first === undefined || last === undefined || samePoint(first.a, last.b)) return { edges, closed: true };
  if (edges.length > 1 && closable(last, distance(first.a, last.b), extentOfEdges(edges))) {
    return { edges: [...edges.slice(0, -1), withEnds(last, last.a, first.a)], closed: true };
  }
  return { edges: [...edges, lineEdge(last.b, first.a)], closed: true };
}
