import {
  arcEdge,
  type Edge,
  lineEdge,
  type Region,
  type ReportEdge,
  type ReportRegion,
} from '@edgebite/core';

/** A region of a report as the library has it. */
export function regionOf(json: ReportRegion): Region {
  return json.map(({ outer, holes }) => ({
    outer: outer.map(edgeOf),
    holes: holes.map((hole) => hole.map(edgeOf)),
  }));
}

function edgeOf(edge: ReportEdge): Edge {
  const a = { x: edge.a[0], y: edge.a[1] };
  const b = { x: edge.b[0], y: edge.b[1] };
  if (edge.kind === 'line') return lineEdge(a, b, edge.source);
  return arcEdge(a, b, { x: edge.center[0], y: edge.center[1] }, edge.ccw, edge.source);
}
