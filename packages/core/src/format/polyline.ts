import type { Edge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import { circleRound } from './polyline-circle.js';
import type { Fit } from './polyline-fit.js';
import { Joints } from './polyline-joints.js';

/** How a polyline is read. */
export interface PolylineOptions {
  /** Whether the last point leads back to the first; if not given, it does where the two are the same. */
  readonly closed?: boolean | undefined;
}

/** Lines and arcs found along a polyline. */
export interface RecoveredEdges {
  /** In order, each beginning where the one before it ends. A full circle is two arcs. */
  readonly edges: readonly Edge[];
  readonly closed: boolean;
  /** Largest distance between the polyline, its segments included, and the edges; not over the tolerance. */
  readonly deviation: number;
}

/** Most times all joints are settled anew; each round begins with the neighbours that the last one found. */
const ROUNDS = 2;

/**
 * Lines and arcs along a polyline of many short segments, such as a flattened outline: as few as keep within
 * `tolerance` of all of it. They join at points of the polyline, so corners stay where they are; where an edge runs on
 * into the next without a corner, the joint is where both fit best. A closed polyline may start anywhere; one all round
 * a circle gives two arcs.
 *
 * The tolerance must be at least that to which the polyline was flattened; noise on its points up to a third of the
 * tolerance does no harm. An arc that bulges by less than the tolerance becomes a line. Takes time in proportion to
 * n log n.
 *
 * Arcs by least squares between held ends (V. Pratt 1987), circles after I. Kasa 1976; see docs/maths.md.
 * @throws RangeError if the tolerance is not a finite number over 0, a coordinate is not finite, or fewer than two
 *   different points are given (three for a closed polyline).
 */
export function arcsFromPolyline(
  points: readonly Point[],
  tolerance: number,
  options: PolylineOptions = {},
): RecoveredEdges {
  checkInput(points, tolerance);
  const distinct = points.filter((p, i) => i === 0 || !samePoint(p, points[i - 1] as Point));
  const meets = distinct.length > 2 && samePoint(distinct[0] as Point, distinct.at(-1) as Point);
  const closed = options.closed ?? meets;
  const ring = closed && !meets ? [...distinct, distinct[0] as Point] : distinct;
  const least = closed ? 4 : 2;
  if (ring.length < least) {
    throw new RangeError(
      `arcsFromPolyline: ${closed ? 'a closed polyline needs three' : 'a polyline needs two'} different points`,
    );
  }
  return closed ? aroundLoop(ring, tolerance) : recovered(edgesAlong(ring, tolerance), false);
}

function checkInput(points: readonly Point[], tolerance: number): void {
  if (!(tolerance > 0 && Number.isFinite(tolerance))) {
    throw new RangeError(`arcsFromPolyline: tolerance is ${tolerance}; it must be a finite number over 0`);
  }
  const bad = points.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y));
  if (bad >= 0) {
    const { x, y } = points[bad] as Point;
    throw new RangeError(
      `arcsFromPolyline: point ${bad} is (${x}, ${y}); coordinates must be finite numbers`,
    );
  }
}

/** @param ring the points, the first one again as the last */
function aroundLoop(ring: readonly Point[], tolerance: number): RecoveredEdges {
  const circle = circleRound(ring, tolerance);
  if (circle !== null) return { ...circle, closed: true };
  const first = edgesAlong(begunAt(ring, firstJoint(ring, tolerance)), tolerance);
  // A joint that was settled between two whole edges is a surer start than the first one found.
  const inner = first[Math.floor(first.length / 2)]?.edge.a as Point;
  const second = edgesAlong(begunAt(ring, ring.indexOf(inner)), tolerance);
  return recovered(second.length <= first.length ? second : first, true);
}

/** The same points all the way round from another one. */
function begunAt(ring: readonly Point[], start: number): readonly Point[] {
  return [...ring.slice(start), ...ring.slice(1, start + 1)];
}

/** A point of a closed polyline where two edges join: the end of the edge that its first point lies on. */
function firstJoint(ring: readonly Point[], tolerance: number): number {
  const size = ring.length - 1;
  const joints = new Joints([...ring, ...ring.slice(1)], tolerance);
  const end = joints.reach(0, size - 1);
  const next = joints.reach(end, end + size - 1);
  const at = joints.settled(Math.floor(end / 2), end, Math.ceil((end + next) / 2));
  return at % size;
}

function edgesAlong(points: readonly Point[], tolerance: number): readonly Fit[] {
  const joints = new Joints(points, tolerance);
  const greedy = joints.greedy(0, points.length - 1);
  return merged(joints, sound(joints, settledEnds(joints, greedy), greedy));
}

function recovered(fits: readonly Fit[], closed: boolean): RecoveredEdges {
  return {
    edges: fits.map(({ edge }) => edge),
    closed,
    deviation: fits.reduce((most, { largest }) => Math.max(most, largest), 0),
  };
}

/** The ends of edges, each moved to its best place between its neighbours. */
function settledEnds(joints: Joints, greedy: readonly number[]): number[] {
  const ends = [...greedy];
  for (let round = 0; round < ROUNDS; round++) {
    for (let k = 1; k + 1 < ends.length; k++) {
      const [before, at, after] = [ends[k - 1], ends[k], ends[k + 1]] as [number, number, number];
      // Going forward, the next end still lies as far on as it can, into the edge after: half of the way is safe.
      ends[k] = joints.settled(before, at, round === 0 ? Math.ceil((at + after) / 2) : after);
    }
  }
  return ends;
}

/** The same ends, those of edges that do not fit put back to where they were found. */
function sound(joints: Joints, ends: readonly number[], greedy: readonly number[]): number[] {
  const kept = [...ends];
  for (let k = 1; k < kept.length; k++) {
    if (joints.fit(kept[k - 1] as number, kept[k] as number) !== null) continue;
    for (const at of [k - 1, k]) kept[at] = greedy[at] as number;
    // The edge before has a new end now: look at it again, at worst back to the start.
    k = Math.max(0, k - 2);
  }
  return kept;
}

/** The edges between the ends; where one goes along two stretches, it stands for both. */
function merged(joints: Joints, ends: readonly number[]): Fit[] {
  const kept: number[] = [ends[0] as number];
  for (const [k, end] of ends.entries()) {
    const next = ends[k + 1];
    if (k === 0) continue;
    if (next !== undefined && joints.fit(kept.at(-1) as number, next) !== null) continue;
    kept.push(end);
  }
  return kept.slice(1).map((end, k) => joints.fit(kept[k] as number, end) as Fit);
}
