import { union } from '../combine/boolean.js';
import { offset } from '../combine/offset.js';
import type { Edge } from '../geometry/edge.js';
import { meet } from '../geometry/meet.js';
import { distance, type Point } from '../geometry/point.js';
import { loopsOf } from '../region/measure.js';
import { circleLoop, type Region } from '../region/region.js';

/** What the directions of a way are looked at for. */
interface Surroundings {
  readonly center: Point;
  readonly radius: number;
  readonly clearance: number;
  readonly furthest: number;
  readonly metal: Region;
  readonly slack: number;
}

/**
 * The directions, radians, in which what is possible for a way changes: where it touches the parallel of an edge at the
 * tool's radius or at that and the clearance, where it passes a corner of the places too near to something, and where
 * the border of those is as far away as the way is long.
 *
 * Source: the borders are those of Minkowski sums with a disc; as a ray turns, the order of what it crosses changes at
 * tangents and at corners only.
 */
export function headingsWhereItChanges(
  { center, radius, clearance, furthest, metal, slack }: Surroundings,
  keepOuts: readonly { readonly region: Region }[],
): number[] {
  const wide = radius + clearance;
  const edges = loopsOf(metal).flat();
  const others = keepOuts.flatMap(({ region }) => loopsOf(region).flat());
  const far = furthest + wide;
  const tooNear = union([offset(metal, wide), ...keepOuts.map(({ region }) => offset(region, radius))]);
  const borders = loopsOf(tooNear).flat();
  const ring = circleLoop(center, furthest);
  const corners = borders.flatMap((edge) => [edge.a, ...ring.flatMap((arc) => meetings(edge, arc, slack))]);
  return [
    ...edges.flatMap((edge) => tangents(edge, center, [radius, wide], far)),
    ...others.flatMap((edge) => tangents(edge, center, [radius], far)),
    ...corners.flatMap((p) => (distance(p, center) > 0 ? [Math.atan2(p.y - center.y, p.x - center.x)] : [])),
  ];
}

function meetings(edge: Edge, arc: Edge, slack: number): Point[] {
  const met = meet(edge, arc, slack);
  switch (met.kind) {
    case 'points':
      return met.points.map(({ at }) => at);
    case 'overlap':
      return met.ends.flat();
    case 'apart':
      return [];
  }
}

/** Directions in which a ray touches the places that are some distances away from an edge. */
function tangents(edge: Edge, from: Point, reaches: readonly number[], far: number): number[] {
  const atEnds = [edge.a, edge.b].flatMap((p) => reaches.flatMap((reach) => touching(from, p, reach, far)));
  if (edge.kind === 'line') return atEnds;
  const { center, radius } = edge;
  const beside = reaches.flatMap((reach) => [radius + reach, Math.abs(radius - reach)]);
  return [...atEnds, ...beside.flatMap((reach) => touching(from, center, reach, far + radius))];
}

/** Directions of the tangents from a place to a circle; source: their right-angled triangle. */
function touching(from: Point, center: Point, radius: number, far: number): number[] {
  const away = distance(from, center);
  if (away <= radius || away > far) return [];
  const [middle, half] = [Math.atan2(center.y - from.y, center.x - from.x), Math.asin(radius / away)];
  return [middle - half, middle + half];
}
