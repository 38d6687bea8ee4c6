import type { Bounds } from './bounds.js';
import type { Edge } from './edge.js';

/** Whether one of some edges may come near a box; see `mayMeet`. */
export function anyMayMeet(edges: readonly Edge[], box: Bounds): boolean {
  for (const edge of edges) if (mayMeet(edge, box)) return true;
  return false;
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
