import type { Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { moved, type Vector } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { along } from './lie.js';

/** How far the outermost places of a region that is not empty lie along a unit vector, from the zero of the drawing. */
export function outermost(region: Region, way: Vector): readonly [number, number] {
  const ends = region.flatMap(({ outer }) => outer.flatMap((edge) => endsOf(edge, way)));
  return [Math.min(...ends), Math.max(...ends)];
}

/** An arc reaches furthest at an end, or where its tangent stands across. */
function endsOf(edge: Edge, way: Vector): number[] {
  const ends = [along(edge.a, way), along(edge.b, way)];
  if (edge.kind === 'line') return ends;
  const bulges = [-edge.radius, edge.radius].map((by) => moved(edge.center, way, by));
  return [...ends, ...bulges.filter((p) => onArcSide(edge, p)).map((p) => along(p, way))];
}
