import type { Edge } from '../geometry/edge.js';
import { renamed } from '../geometry/parts.js';
import type { Loop, Region } from '../region/region.js';

/** One edge of an outline, and where it stands in it. */
export interface OutlineEdge {
  readonly edge: Edge;
  readonly part: number;
  /** null for the outer loop. */
  readonly hole: number | null;
  /** Which edge of its loop. */
  readonly index: number;
}

/** A region whose edges are named by number, so that what an operation makes of them can be told apart. */
export interface Tagged {
  readonly region: Region;
  readonly edges: readonly OutlineEdge[];
}

/** Names every edge by its number among all edges of the region. */
export function tagged(region: Region): Tagged {
  const edges: OutlineEdge[] = [];
  const tag = (loop: Loop, part: number, hole: number | null): Loop =>
    loop.map((edge, index) => {
      edges.push({ edge, part, hole, index });
      return renamed(edge, String(edges.length - 1));
    });
  const named = region.map(({ outer, holes }, part) => ({
    outer: tag(outer, part, null),
    holes: holes.map((loop, hole) => tag(loop, part, hole)),
  }));
  return { region: named, edges };
}

/** The edges of a chain without a name, so that they are not taken for edges of a tagged region. */
export function nameless(edges: readonly Edge[]): Edge[] {
  return edges.map((edge) => renamed(edge, undefined));
}

/** The outline edge that an edge of a result is part of, or runs beside; null for those of something else. */
export function outlineEdgeOf({ edges }: Tagged, edge: Edge): OutlineEdge | null {
  return edge.source === undefined ? null : (edges[Number(edge.source)] ?? null);
}

/** An edge of a result with the source of the outline edge in place of its number. */
export function untagged(tags: Tagged, edge: Edge): Edge {
  return renamed(edge, outlineEdgeOf(tags, edge)?.edge.source);
}
