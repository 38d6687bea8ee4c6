import type { ReportEdge } from '@edgebite/core';
import type { Place } from '../worker/sketch.js';
import { between, cross, dot, lengthOf, unitOf } from './vector.js';

/** A round hole, or the round end of one: a circle about a place. */
export interface Disc {
  readonly at: Place;
  readonly radius: number;
}

/** Something that metal can end at: an edge of the part, or what another cut takes, as wide as it is to either side of a line. */
export interface Obstacle {
  /** An edge of the outline, or the middle line of a cut. */
  readonly edge: ReportEdge | null;
  /** The middle of a round cut; where its edge is null. */
  readonly at: Place;
  /** How far it reaches round its edge or its middle: 0 for an edge of the part. */
  readonly reach: number;
  /** What it is, as reports name it: `outline:0`, `cut:pin`. */
  readonly source: string;
}

/** The place of an edge that is nearest to another. */
export function nearestOn(edge: ReportEdge, place: Place): Place {
  if (edge.kind === 'line') {
    const along = between(edge.a, edge.b);
    const share = dot(between(edge.a, place), along) / (dot(along, along) || 1);
    const held = Math.min(1, Math.max(0, share));
    return [edge.a[0] + held * along[0], edge.a[1] + held * along[1]];
  }
  const [x, y] = unitOf(between(edge.center, place));
  const on: Place = [edge.center[0] + edge.radius * x, edge.center[1] + edge.radius * y];
  if (isOnArc(edge, on)) return on;
  return lengthOf(between(edge.a, place)) <= lengthOf(between(edge.b, place)) ? edge.a : edge.b;
}

type Arc = Extract<ReportEdge, { kind: 'arc' }>;

// Counted from its start the way it runs, the place comes before its end.
function isOnArc({ a, b, center, ccw }: Arc, place: Place): boolean {
  const turn = (to: Place): number => {
    const [from, at] = [between(center, a), between(center, to)];
    const angle = Math.atan2(cross(from, at), dot(from, at)) * (ccw ? 1 : -1);
    return angle < 0 ? angle + 2 * Math.PI : angle;
  };
  return turn(place) <= turn(b);
}

/** Whether the metal, which lies to the left of an edge, is on that side where a place is. */
export function isInside(edge: ReportEdge, place: Place): boolean {
  if (edge.kind === 'line') return cross(between(edge.a, edge.b), between(edge.a, place)) > 0;
  return lengthOf(between(edge.center, place)) < edge.radius === edge.ccw;
}

/** How far a place is from an obstacle, less than 0 inside of a cut; and the nearest place on its rim. */
export function wayTo(
  { edge, at, reach }: Obstacle,
  place: Place,
): { readonly far: number; readonly on: Place } {
  const middle = edge === null ? at : nearestOn(edge, place);
  const off = between(middle, place);
  const [x, y] = unitOf(off);
  return { far: lengthOf(off) - reach, on: [middle[0] + reach * x, middle[1] + reach * y] };
}

/** Whether one circle lies in the other, as the ring and the bore of a bite do: there is no metal between the two. */
export function isWithin({ edge, at, reach }: Obstacle, disc: Disc): boolean {
  return edge === null && lengthOf(between(at, disc.at)) <= Math.abs(reach - disc.radius);
}
