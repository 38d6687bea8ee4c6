import {
  type ArcEdge,
  type Bounds,
  type Edge,
  edgeBounds,
  joined,
  nearestOnEdge,
  pointAlong,
  type ReportEdge,
  sweep,
} from '@edgebite/core';

/** A place of a report: x, then y upwards. */
export type Place = readonly [number, number];

/** An arc of a report. */
export type ReportArc = Extract<ReportEdge, { kind: 'arc' }>;

/** How far an arc turns, in radians, over 0 and under a full turn. */
export function turnOf(arc: ReportArc): number {
  return sweep(edgeOf(arc) as ArcEdge);
}

/** The ends of an edge and so many equal steps between them, in its direction. */
export function placesAlong(edge: ReportEdge, steps: number): readonly Place[] {
  const whole = edgeOf(edge);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const { x, y } = pointAlong(whole, i / steps);
    return [x, y];
  });
}

/** How far a place is from an edge. */
export function distanceTo(edge: ReportEdge, [x, y]: Place): number {
  return nearestOnEdge(edgeOf(edge), { x, y }).distance;
}

/** Bounds of a run of edges, exact for arcs; null for none. */
export function boundsOfEdges(edges: readonly ReportEdge[]): Bounds | null {
  return edges
    .map((edge) => edgeBounds(edgeOf(edge)))
    .reduce<Bounds | null>((sum, box) => (sum === null ? box : joined(sum, box)), null);
}

/** The bounds of one place. */
export function boundsOfPlace([x, y]: Place): Bounds {
  return { minX: x, minY: y, maxX: x, maxY: y };
}

/** A report's edge in the library's own form. */
function edgeOf(edge: ReportEdge): Edge {
  const ends = { a: point(edge.a), b: point(edge.b) };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  const { radius, ccw } = edge;
  return { kind: 'arc', ...ends, center: point(edge.center), radius, ccw };
}

function point([x, y]: Place): { readonly x: number; readonly y: number } {
  return { x, y };
}
