import { checkOverZero } from '../geometry/checks.js';
import type { ArcEdge } from '../geometry/edge.js';
import { pointAlong, sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';

/** A part of a region as polygons, whose last point joins the first. */
export interface PolygonPart {
  readonly outer: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** A finer polygon than that serves nobody. */
const MOST_CHORDS = 100_000;

/**
 * The region as polygons, for what knows no arcs: each arc as chords that stay within a tolerance of it. All corners lie
 * on the boundary of the region, so that outward arcs lose a little metal, and inward ones gain as little. Outer polygons
 * run counter-clockwise, holes clockwise. Two loops that nearly touch may cross by up to the tolerance.
 * Source: a chord of an arc of turn t lies r (1 - cos(t/2)) from it at most.
 * @param tolerance in the unit of the region
 * @throws RangeError if the tolerance is not a finite number over 0, or so small that an arc takes over 100,000 chords.
 */
export function polygonsOf(region: Region, tolerance: number): PolygonPart[] {
  checkOverZero('polygonsOf', 'tolerance', tolerance);
  return region.map(({ outer, holes }) => ({
    outer: cornersOf(outer, tolerance),
    holes: holes.map((hole) => cornersOf(hole, tolerance)),
  }));
}

function cornersOf(loop: Loop, tolerance: number): Point[] {
  const corners: Point[] = [];
  for (const edge of loop) {
    corners.push(edge.a);
    if (edge.kind === 'line') continue;
    const count = chordsOf(edge, tolerance);
    for (let k = 1; k < count; k++) corners.push(pointAlong(edge, k / count));
  }
  return corners;
}

function chordsOf(arc: ArcEdge, tolerance: number): number {
  const turn = 4 * Math.asin(Math.sqrt(Math.min(1, tolerance / (2 * arc.radius))));
  // A quarter turn at most, so that even a coarse circle has an inside.
  const count = Math.ceil(sweep(arc) / Math.min(turn, Math.PI / 2));
  if (count <= MOST_CHORDS) return count;
  throw new RangeError(
    `polygonsOf: tolerance is ${tolerance}; an arc of radius ${arc.radius} takes ${count} chords then; ` +
      `it must take ${MOST_CHORDS} at most`,
  );
}
