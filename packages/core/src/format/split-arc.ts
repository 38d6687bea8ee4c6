import { type ArcEdge, arcEdge } from '../geometry/edge.js';
import { pointAlong } from '../geometry/measure.js';

/** An arc in equal pieces, in order. */
export function inPieces(arc: ArcEdge, count: number): readonly ArcEdge[] {
  const stops = Array.from({ length: count + 1 }, (_, i) => pointAlong(arc, i / count));
  return stops.slice(1).map((b, i) => arcEdge(stops[i] as typeof b, b, arc.center, arc.ccw, arc.source));
}
