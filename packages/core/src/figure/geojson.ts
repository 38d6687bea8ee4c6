import { normalize, union } from '../combine/boolean.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { polygonsOf } from './chords.js';

/** A place as GeoJSON has it. */
type Position = readonly [number, number];

/** A geometry of GeoJSON that has an area. */
export type GeoJsonArea =
  | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Position[])[] }
  | { readonly type: 'MultiPolygon'; readonly coordinates: readonly (readonly (readonly Position[])[])[] };

/**
 * A region as a geometry of GeoJSON: a Polygon, or a MultiPolygon if it has several parts or none. GeoJSON has no arcs, so
 * they become chords that stay within a tolerance (see `polygonsOf`). Coordinates are plain lengths, in the unit of the
 * region, not degrees; names of edges are lost.
 * Source: RFC 7946, 3.1.6: rings closed, outer ones counter-clockwise.
 * @param tolerance in the unit of the region
 * @throws RangeError as `polygonsOf` does.
 */
export function toGeoJson(region: Region, tolerance: number): GeoJsonArea {
  const ring = (points: readonly Point[]): Position[] =>
    [...points, points[0] as Point].map(({ x, y }): Position => [x + 0, y + 0]);
  const parts = polygonsOf(region, tolerance).map(({ outer, holes }) => [ring(outer), ...holes.map(ring)]);
  return parts.length === 1
    ? { type: 'Polygon', coordinates: parts[0] as Position[][] }
    : { type: 'MultiPolygon', coordinates: parts };
}

/**
 * The region that a Polygon or MultiPolygon of GeoJSON describes, as a value, not as text. Rings may run in any direction;
 * what lies inside an odd number of those of one polygon belongs to it, and polygons that overlap become one. Heights, the
 * third numbers of positions, are not read.
 * Source: RFC 7946, 3.1.6 and 3.1.7.
 * @throws RangeError with the JSON Pointer of the first value that is missing or wrong.
 */
export function regionFromGeoJson(json: unknown): Region {
  const { type, coordinates } = Object(json) as { type?: unknown; coordinates?: unknown };
  if (type !== 'Polygon' && type !== 'MultiPolygon')
    throw wrong('/type', 'must be "Polygon" or "MultiPolygon"; take the geometry out of its feature');
  const polygons = type === 'Polygon' ? [coordinates] : list(coordinates, '/coordinates');
  const regions = polygons.map((polygon, k) => {
    const path = type === 'Polygon' ? '/coordinates' : `/coordinates/${k}`;
    return normalize(
      list(polygon, path).map((ring, n) => loopOf(ring, `${path}/${n}`)),
      'evenodd',
    );
  });
  return regions.length === 1 ? (regions[0] as Region) : union(regions);
}

function loopOf(json: unknown, path: string): Loop {
  const points = list(json, path).map((position, k) => pointOf(position, `${path}/${k}`));
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || points.length < 4)
    throw wrong(path, `has ${points.length} positions; a ring has four at least`);
  if (!samePoint(first, last)) throw wrong(path, 'does not end where it starts; a ring is closed');
  const edges = points.slice(1).flatMap((b, k): Edge[] => {
    const a = points[k] as Point;
    return samePoint(a, b) ? [] : [lineEdge(a, b)];
  });
  if (edges.length < 2) throw wrong(path, 'is one point; a ring goes round something');
  return edges;
}

function pointOf(json: unknown, path: string): Point {
  const [x, y] = list(json, path);
  if (!Number.isFinite(x) || !Number.isFinite(y)) throw wrong(path, 'must be two finite numbers');
  return { x: x as number, y: y as number };
}

function list(json: unknown, path: string): readonly unknown[] {
  if (Array.isArray(json)) return json;
  throw wrong(path, 'must be a list');
}

function wrong(path: string, what: string): RangeError {
  return new RangeError(`regionFromGeoJson: ${path} ${what}`);
}
