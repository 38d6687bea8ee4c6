import type { ArcEdge, Edge, LineEdge, Source } from './edge.js';
import type { Point } from './point.js';

interface Named {
  readonly source?: Source | undefined;
}

/** The circle of an arc, and its name. */
interface NamedCircle extends Named {
  readonly center: Point;
  readonly radius: number;
}

/** A straight edge under the name of another. */
export function lineLike({ source }: Named, a: Point, b: Point): LineEdge {
  return source === undefined ? { kind: 'line', a, b } : { kind: 'line', a, b, source };
}

/** A part of a circle, under its name. */
export function arcLike({ center, radius, source }: NamedCircle, a: Point, b: Point, ccw: boolean): ArcEdge {
  if (source === undefined) return { kind: 'arc', a, b, center, radius, ccw };
  return { kind: 'arc', a, b, center, radius, ccw, source };
}

/** A part of an edge that runs the same way, under the same name. */
export function partOfEdge(edge: Edge, a: Point, b: Point): Edge {
  return edge.kind === 'line' ? lineLike(edge, a, b) : arcLike(edge, a, b, edge.ccw);
}

/** The same edge run the other way. */
export function reversed(edge: Edge): Edge {
  return edge.kind === 'line' ? lineLike(edge, edge.b, edge.a) : arcLike(edge, edge.b, edge.a, !edge.ccw);
}

/** The same edge under another name, or under none. */
export function renamed(edge: Edge, source: Source | undefined): Edge {
  const { a, b } = edge;
  if (edge.kind === 'line') return lineLike({ source }, a, b);
  return arcLike({ center: edge.center, radius: edge.radius, source }, a, b, edge.ccw);
}
