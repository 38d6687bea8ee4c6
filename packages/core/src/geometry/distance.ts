import type { Edge } from './edge.js';
import { onArcSide } from './measure.js';
import { distance, type Point } from './point.js';

/** The place of an edge nearest to a point, and how far away it is. */
export interface Nearest {
  readonly at: Point;
  readonly distance: number;
}

/** The nearest place of an edge. At the centre of an arc all of it is equally near; its start is taken. */
export function nearestOnEdge(edge: Edge, p: Point): Nearest {
  const at = edge.kind === 'line' ? nearestOnLine(edge.a, edge.b, p) : nearestOnArc(edge, p);
  return { at, distance: distance(at, p) };
}

function nearestOnLine(a: Point, b: Point, p: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const share = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
  if (share <= 0) return a;
  if (share >= 1) return b;
  return { x: a.x + dx * share, y: a.y + dy * share };
}

function nearestOnArc(arc: Edge & { kind: 'arc' }, p: Point): Point {
  const away = distance(arc.center, p);
  if (away === 0) return arc.a;
  const at = {
    x: arc.center.x + ((p.x - arc.center.x) / away) * arc.radius,
    y: arc.center.y + ((p.y - arc.center.y) / away) * arc.radius,
  };
  if (onArcSide(arc, at)) return at;
  return distance(arc.a, p) <= distance(arc.b, p) ? arc.a : arc.b;
}
