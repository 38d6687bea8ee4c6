import { joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { loopBounds } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import type { ReportEdge, ReportRegion } from './report-schema.js';

/** A place as JSON has it; -0 becomes 0. */
export function placeJson(p: Point): [number, number] {
  return [p.x + 0, p.y + 0];
}

/** An edge as JSON has it. */
export function edgeJson(edge: Edge): ReportEdge {
  const ends = { a: placeJson(edge.a), b: placeJson(edge.b) };
  const source = edge.source === undefined ? {} : { source: edge.source };
  if (edge.kind === 'line') return { kind: 'line', ...ends, ...source };
  return {
    kind: 'arc',
    ...ends,
    center: placeJson(edge.center),
    radius: edge.radius,
    ccw: edge.ccw,
    ...source,
  };
}

/** A region as JSON has it. */
export function regionJson(region: Region): ReportRegion {
  const loop = (edges: Loop) => edges.map(edgeJson);
  return region.map(({ outer, holes }) => ({ outer: loop(outer), holes: holes.map(loop) }));
}

/** The box round a region that is not empty: [min x, min y, max x, max y]. */
export function boundsJson(region: Region): [number, number, number, number] {
  const box = region.map(({ outer }) => loopBounds(outer)).reduce(joined);
  return [box.minX + 0, box.minY + 0, box.maxX + 0, box.maxY + 0];
}
