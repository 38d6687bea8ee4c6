import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { edgesOf, placeAt } from './probe.js';

/** A place on the boundary of a region and the unit normal there that points into the metal. */
export interface Anchor {
  readonly at: Point;
  readonly inward: readonly [number, number];
  readonly edge: Edge;
}

const TRIPLES = [
  [3, 4, 5],
  [5, 12, 13],
  [8, 15, 17],
  [7, 24, 25],
] as const;

/** Unit vectors with rational parts, so that distances along them round as little as possible. */
export const RATIONAL_DIRECTIONS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  ...TRIPLES.flatMap(([p, q, r]) =>
    [
      [p, q],
      [-q, p],
      [-p, -q],
      [q, -p],
      [q, p],
      [-p, q],
      [-q, -p],
      [p, -q],
    ].map(([x, y]) => [(x as number) / r, (y as number) / r] as const),
  ),
];

/** The place at sixteenths `along` of an edge, edges counted round and round. */
export function anchorOn(region: Region, edgeIndex: number, along: number): Anchor {
  const edges = edgesOf(region);
  const edge = edges[edgeIndex % edges.length] as Edge;
  const at = placeAt(edge, along / 16);
  return { at, inward: inwardAt(edge, at), edge };
}

/** The place reached from an anchor by going into the metal (out of it, if negative). */
export function fromAnchor(anchor: Anchor, depth: number): Point {
  return { x: anchor.at.x + anchor.inward[0] * depth, y: anchor.at.y + anchor.inward[1] * depth };
}

/** A point moved by a distance along one of the rational directions. */
export function stepped(p: Point, direction: number, distance: number): Point {
  const [x, y] = RATIONAL_DIRECTIONS[direction % RATIONAL_DIRECTIONS.length] as readonly [number, number];
  return { x: p.x + x * distance, y: p.y + y * distance };
}

/** Metal lies to the left of every edge. */
function inwardAt(edge: Edge, p: Point): [number, number] {
  if (edge.kind === 'arc') {
    const side = edge.ccw ? 1 : -1;
    return [((edge.center.x - p.x) / edge.radius) * side, ((edge.center.y - p.y) / edge.radius) * side];
  }
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  return [(edge.a.y - edge.b.y) / length, (edge.b.x - edge.a.x) / length];
}
