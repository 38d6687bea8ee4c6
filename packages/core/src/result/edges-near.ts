import Flatbush from 'flatbush';
import { type Bounds, boxAround } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';

/** Finds edges whose boxes come within a distance of a place along both axes, in the order given. */
export type EdgesNear<E extends Edge = Edge> = (center: Point, distance: number) => readonly E[];

/** Finds edges whose boxes meet a box, in the order given. */
export type EdgesIn<E extends Edge = Edge> = (box: Bounds) => readonly E[];

/** An index of some edges. */
export function edgesInOf<E extends Edge>(edges: readonly E[]): EdgesIn<E> {
  if (edges.length === 0) return () => [];
  const index = new Flatbush(edges.length);
  for (const { minX, minY, maxX, maxY } of edges.map(edgeBounds)) index.add(minX, minY, maxX, maxY);
  index.finish();
  return ({ minX, minY, maxX, maxY }) =>
    index
      .search(minX, minY, maxX, maxY)
      .sort((a, b) => a - b)
      .map((k) => edges[k] as E);
}

/** The same, asked by place and distance. */
export function edgesNearOf<E extends Edge>(edges: readonly E[]): EdgesNear<E> {
  const inBox = edgesInOf(edges);
  return (center, r) => inBox(boxAround(center, r));
}
