import type { Edge } from '../geometry/edge.js';
import { pointOf } from '../job/read-edges.js';
import type { Region } from '../region/region.js';
import type { ReportEdge, ReportRegion } from './report-schema.js';

/** The region that a report's region is of; the reverse of `regionToJson`. */
export function regionOf(region: ReportRegion): Region {
  return region.map(({ outer, holes }) => ({
    outer: outer.map(edgeOf),
    holes: holes.map((hole) => hole.map(edgeOf)),
  }));
}

/** The edge that a report's edge is of. */
export function edgeOf(edge: ReportEdge): Edge {
  const source = edge.source === undefined ? {} : { source: edge.source };
  const ends = { a: pointOf(edge.a), b: pointOf(edge.b), ...source };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  return { kind: 'arc', ...ends, center: pointOf(edge.center), radius: edge.radius, ccw: edge.ccw };
}
