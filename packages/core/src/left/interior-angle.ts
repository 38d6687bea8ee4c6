import { withinTurn } from '../geometry/angle.js';
import type { Edge } from '../geometry/edge.js';
import { curvature, directionAtEnd, directionAtStart } from '../geometry/measure.js';
import type { Vector } from '../geometry/point.js';

/** Tangents closer than this (radians) are one direction: then curvature says on which side the metal lies. */
export const TANGENT = 1e-6;

/** Curvatures that differ by no more than this share are one: circles of one size, whose radii rounding tells apart. */
const SAME_CURVATURE = 1e-9;

/**
 * Angle counter-clockwise from the edge that leaves a vertex to the edge that arrives at it, which is through metal:
 * from 0, where the edges close in on a tip of metal, to 2 pi, where they close in on a slit.
 */
export function interiorAngle(leaving: Edge, arriving: Edge): number {
  const angle = turnBetween(directionAtStart(leaving), opposite(directionAtEnd(arriving)));
  if (Math.abs(angle) > TANGENT) return withinTurn(angle);
  // Same direction: seen along it, the edge that curves more to the left lies to the left.
  const one = outwardCurvature(arriving);
  const other = curvature(leaving);
  const isEven = Math.abs(one - other) <= SAME_CURVATURE * Math.max(Math.abs(one), Math.abs(other));
  const isTip = isEven ? angle > 0 : one > other;
  return isTip ? Math.max(0, angle) : 2 * Math.PI - Math.max(0, -angle);
}

/** Curvature of an edge that arrives at a vertex, seen from there. */
export function outwardCurvature(arriving: Edge): number {
  return -curvature(arriving);
}

/** Angle from one direction to another, to the left over 0, from -pi to pi. */
export function turnBetween(from: Vector, to: Vector): number {
  return Math.atan2(from.dx * to.dy - from.dy * to.dx, from.dx * to.dx + from.dy * to.dy);
}

function opposite({ dx, dy }: Vector): Vector {
  return { dx: -dx, dy: -dy };
}
