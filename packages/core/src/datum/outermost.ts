import type { Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import { along } from './lie.js';

/** How far the outermost places of a region that is not empty lie along a unit vector, from the zero of the drawing. */
export function outermost(region: Region, way: Vector): readonly [number, number] {
  const ends = placesOf(region, way).map((p) => along(p, way));
  return [Math.min(...ends), Math.max(...ends)];
}

/** Share of the outermost places' distance from the zero of the drawing, and of 1, within which they lie as far out. */
const SAME = 1e-9;

/** From where to where, along another unit vector, a region stands as far out as that; one place of a corner or a round. */
export function outermostStretch(
  region: Region,
  way: Vector,
  at: number,
  across: Vector,
): readonly [number, number] {
  const there = placesOf(region, way)
    .filter((p) => Math.abs(along(p, way) - at) <= SAME * (1 + Math.abs(at)))
    .map((p) => along(p, across));
  return [Math.min(...there), Math.max(...there)];
}

function placesOf(region: Region, way: Vector): Point[] {
  return region.flatMap(({ outer }) => outer.flatMap((edge) => endsOf(edge, way)));
}

/** An arc reaches furthest at an end, or where its tangent stands across. */
function endsOf(edge: Edge, way: Vector): Point[] {
  const ends = [edge.a, edge.b];
  if (edge.kind === 'line') return ends;
  const bulges = [-edge.radius, edge.radius].map((by) => moved(edge.center, way, by));
  return [...ends, ...bulges.filter((p) => onArcSide(edge, p))];
}
