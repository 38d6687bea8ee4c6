import Flatbush from 'flatbush';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';

/** Finds edges whose boxes come within a distance of a place along both axes, in the order given. */
export type EdgesNear<E extends Edge = Edge> = (center: Point, distance: number) => readonly E[];

/** An index of some edges. */
export function edgesNearOf<E extends Edge>(edges: readonly E[]): EdgesNear<E> {
  if (edges.length === 0) return () => [];
  const index = new Flatbush(edges.length);
  for (const { minX, minY, maxX, maxY } of edges.map(edgeBounds)) index.add(minX, minY, maxX, maxY);
  index.finish();
  return ({ x, y }, r) =>
    index
      .search(x - r, y - r, x + r, y + r)
      .sort((a, b) => a - b)
      .map((k) => edges[k] as E);
}
