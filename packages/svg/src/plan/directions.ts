import type { ReportEdge } from '@edgebite/core';
import type { Place } from '../view/edges.js';

/** The direction in which an edge leaves its start, or its end backwards: a vector of length 1, y up. */
export function directionAt(edge: ReportEdge, end: 'start' | 'end'): Place {
  const [from, to] = end === 'start' ? [edge.a, edge.b] : [edge.b, edge.a];
  if (edge.kind === 'line') return unit([to[0] - from[0], to[1] - from[1]]);
  const [rx, ry] = [from[0] - edge.center[0], from[1] - edge.center[1]];
  // Forwards a counter-clockwise arc leaves to the left of its radius; backwards to the right.
  const left = edge.ccw === (end === 'start');
  return unit(left ? [-ry, rx] : [ry, -rx]);
}

function unit([x, y]: Place): Place {
  const length = Math.hypot(x, y);
  return length === 0 ? [1, 0] : [x / length, y / length];
}
