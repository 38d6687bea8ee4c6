import { nearestOnEdge } from '../geometry/distance.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { directionAtStart, onArcSide } from '../geometry/measure.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { type Motion, movedEdge } from './number.js';

/** A straight stretch of a boundary. */
export interface Straight {
  readonly shape: 'straight';
  readonly edge: LineEdge;
  readonly along: Vector;
  /** To the left of `along`. */
  readonly normal: Vector;
}

/** A round stretch of a boundary, or a place as a circle of radius 0. */
export interface Round {
  readonly shape: 'round';
  readonly center: Point;
  readonly radius: number;
  /** The stretch; null for all of the circle. */
  readonly edge: ArcEdge | null;
  /** +1 where the boundary goes round what it bounds, -1 where it is the rim of a hole in it. */
  readonly way: 1 | -1;
}

/** Anything that a rim can touch. */
export type Curve = Straight | Round;

/** The curve of an edge. */
export function curveOf(edge: Edge): Curve {
  if (edge.kind === 'arc') {
    return { shape: 'round', center: edge.center, radius: edge.radius, edge, way: edge.ccw ? 1 : -1 };
  }
  const along = directionAtStart(edge);
  return { shape: 'straight', edge, along, normal: { dx: -along.dy, dy: along.dx } };
}

/** All of a circle. */
export function circle(center: Point, radius: number, way: 1 | -1 = 1): Round {
  return { shape: 'round', center, radius, edge: null, way };
}

/** A curve as it stands when the free number has grown by `s`. */
export function carried(curve: Curve, { velocity, growth }: Motion, s: number): Curve {
  const by = { dx: velocity.dx * s, dy: velocity.dy * s };
  if (curve.shape === 'straight') return { ...curve, edge: movedEdge(curve.edge, by) as LineEdge };
  return {
    ...curve,
    center: moved(curve.center, by),
    radius: curve.radius + growth * s,
    edge: curve.edge === null ? null : (movedEdge(curve.edge, by) as ArcEdge),
  };
}

/** The rim moved outward by an amount; a round one may close up, and has a radius below 0 then. */
export function widened(curve: Curve, by: number): Curve {
  if (curve.shape === 'round') return { ...curve, radius: curve.radius + curve.way * by };
  // What it bounds lies to the left, so outward is to the right.
  const shift = { dx: -curve.normal.dx * by, dy: -curve.normal.dy * by };
  return { ...curve, edge: movedEdge(curve.edge, shift) as LineEdge };
}

/** Whether a place on the line or circle of a curve lies on its stretch, or no farther from it than the slack. */
export function isOn(curve: Curve, p: Point, slack: number): boolean {
  if (curve.edge === null) return true;
  const { a, b } = curve.edge;
  if (curve.shape === 'straight') {
    const s = (p.x - a.x) * curve.along.dx + (p.y - a.y) * curve.along.dy;
    return s >= -slack && s <= distance(a, b) + slack;
  }
  return onArcSide(curve.edge as ArcEdge, p) || distance(p, a) <= slack || distance(p, b) <= slack;
}

/** Distance from a place to a curve. */
export function away(curve: Curve, p: Point): number {
  if (curve.edge !== null) return nearestOnEdge(curve.edge, p).distance;
  return curve.shape === 'round' ? Math.abs(distance(curve.center, p) - curve.radius) : Infinity;
}

/** On which side of a curve, run on past its ends, a place lies: a length, 0 on it. */
export function sideOf(curve: Curve, p: Point): number {
  if (curve.shape === 'round') return distance(curve.center, p) - curve.radius;
  return heightOver(curve, p);
}

/** Height of a place over a straight curve, to its left over 0. */
export function heightOver({ edge, normal }: Straight, p: Point): number {
  return (p.x - edge.a.x) * normal.dx + (p.y - edge.a.y) * normal.dy;
}
