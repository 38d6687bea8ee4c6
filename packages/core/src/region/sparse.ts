import type { Bounds } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { distance } from '../geometry/point.js';
import type { Chain, Strands } from './gather.js';
import type { Loop } from './region.js';

/** Loops of fewer edges are quicker taken whole. */
const SPARSE_FROM = 6;

/**
 * A loop with its edges far from a box put away in runs.
 * @param isNear whether an edge may come near the box
 * @param tolerance runs whose ends are closer than a few of it are not put away
 */
export function sparse(loop: Loop, isNear: (edge: Edge) => boolean, tolerance: number): Strands {
  const n = loop.length;
  if (n < SPARSE_FROM) return loop;
  // Begin at an edge that stays and has one put away before it, so that no run lies across the ends of the list.
  let begin = 0;
  let wasNear = isNear(loop[n - 1] as Edge);
  for (; begin < n; begin++) {
    const stays = isNear(loop[begin] as Edge);
    if (stays && !wasNear) break;
    wasNear = stays;
  }
  if (begin === n) return loop;
  const strands: (Edge | Chain)[] = [];
  let run: Edge[] = [];
  for (let k = begin; k <= begin + n; k++) {
    const edge = loop[k % n] as Edge;
    if (k < begin + n && !isNear(edge)) {
      run.push(edge);
      continue;
    }
    if (run.length > 0) {
      const { a } = run[0] as Edge;
      const { b } = run[run.length - 1] as Edge;
      if (distance(a, b) <= FEW * tolerance) return loop;
      strands.push(run.length === 1 ? (run[0] as Edge) : { kind: 'chain', a, b, edges: run });
      run = [];
    }
    if (k < begin + n) strands.push(edge);
  }
  return strands;
}

const FEW = 16;

/** Whether an edge may come near a box; some that do not are let through. */
export function mayMeet(edge: Edge, box: Bounds): boolean {
  if (edge.kind === 'line') {
    return (
      Math.min(edge.a.x, edge.b.x) <= box.maxX &&
      Math.max(edge.a.x, edge.b.x) >= box.minX &&
      Math.min(edge.a.y, edge.b.y) <= box.maxY &&
      Math.max(edge.a.y, edge.b.y) >= box.minY
    );
  }
  const { center, radius } = edge;
  return (
    center.x - radius <= box.maxX &&
    center.x + radius >= box.minX &&
    center.y - radius <= box.maxY &&
    center.y + radius >= box.minY
  );
}
