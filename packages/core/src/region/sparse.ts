import type { Bounds } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import type { Chain, Strands } from './gather.js';
import type { Loop } from './region.js';

/** Loops of fewer edges are quicker taken whole. */
const SPARSE_FROM = 16;

/**
 * A loop with its edges far from a box put away in runs. The edges round its lowest point stay, since an overlay
 * tells by these which side of the loop is outside.
 * @param isNear whether an edge may come near the box
 * @param tolerance runs whose ends are closer than a few of it are not put away
 */
export function sparse(loop: Loop, isNear: (edge: Edge) => boolean, tolerance: number): Strands {
  if (loop.length < SPARSE_FROM) return loop;
  const stays = loop.map(isNear);
  const lowest = lowestEdge(loop);
  const n = loop.length;
  for (const k of [lowest - 1, lowest, lowest + 1]) stays[(k + n) % n] = true;
  const strands: (Edge | Chain)[] = [];
  // Begin at an edge that stays and has one put away before it, so that no run lies across the ends of the list.
  const begin = stays.findIndex((stay, k) => stay && !stays[(k + n - 1) % n]);
  if (begin < 0) return loop;
  let run: Edge[] = [];
  for (let k = 0; k <= n; k++) {
    const edge = loop[(begin + k) % n] as Edge;
    if (k < n && !stays[(begin + k) % n]) {
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
    if (k < n) strands.push(edge);
  }
  return strands;
}

const FEW = 16;

/** The edge with the lowest point, of several such points the leftmost. */
function lowestEdge(loop: Loop): number {
  let lowest = 0;
  let best = { x: Infinity, y: Infinity };
  loop.forEach((edge, k) => {
    // The lowest point of an arc's circle is the lowest that it can reach; look closer only where that matters.
    if (edge.kind === 'arc' && edge.center.y - edge.radius > best.y) return;
    for (const p of lowPoints(edge)) {
      if (p.y > best.y || (p.y === best.y && p.x >= best.x)) continue;
      best = p;
      lowest = k;
    }
  });
  return lowest;
}

function lowPoints(edge: Edge): Point[] {
  if (edge.kind === 'line') return [edge.a, edge.b];
  const bottom = { x: edge.center.x, y: edge.center.y - edge.radius };
  return onArcSide(edge, bottom) ? [edge.a, edge.b, bottom] : [edge.a, edge.b];
}

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
