/*
 * Room: the centre of a partial hole from what a drawing gives.
 * In: radius with depth, opening, distances, tangent edges or three points.
 * Out: centres, with depth, chord and angles at the faces.
 */

import { checkFinite, checkOverZero, checkPlace } from '../geometry/checks.js';
import type { LineEdge } from '../geometry/edge.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { type Segment, segmentBetween, segmentOfDepth, segmentsOfOpening } from '../geometry/segment.js';
import { shownNumber } from '../geometry/shown.js';
import type { ArcEnd, FaceSide, PlacedBite } from '../load/bite.js';

/** A partial hole in a straight face. */
export interface FacePlacement extends PlacedBite {
  /** On which side of the face the centre lies. */
  readonly side: FaceSide | 'on the face';
  /** From the start of the face, along it, to the middle of the opening. */
  readonly along: number;
  /**
   * Whether the opening lies within the ends of the face as drawn. Where it does not, the dimensions are those of
   * the face drawn on beyond its end, and `bitesIn` gives those in the outline.
   */
  readonly withinFace: boolean;
}

/** Where a partial hole goes into a straight face. The metal lies to the left of the face's travel. */
export interface OnFace {
  readonly face: LineEdge;
  /** From the start of the face, along it, to the middle of the opening. */
  readonly along: number;
  readonly radius: number;
}

/**
 * Places a partial hole by its radius and how deep it bites into a straight face. Lengths in the unit of the face,
 * angles in radians.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83; the centre lies the radius short of the depth.
 * @throws RangeError if a number is not finite, a length is not over 0, or the depth is not under the diameter.
 */
export function placeByDepth({
  face,
  along,
  radius,
  depth,
}: OnFace & { readonly depth: number }): FacePlacement {
  checkFinite('placeByDepth', 'along', along);
  return onFace(face, along, segmentOfDepth(radius, depth), depth - radius);
}

/**
 * Places a partial hole by its radius and the width of its opening in a straight face: the two ways in which it
 * can stand, named by the side of the face on which the centre lies. They are one where the opening is as wide as
 * the diameter. Lengths in the unit of the face, angles in radians.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83.
 * @throws RangeError if a number is not finite, a length is not over 0, or the opening is over the diameter.
 */
export function placeByOpening({ face, along, radius, opening }: OnFace & { readonly opening: number }): {
  readonly outside: FacePlacement;
  readonly inside: FacePlacement;
} {
  checkFinite('placeByOpening', 'along', along);
  const { outside, inside } = segmentsOfOpening(radius, opening);
  const off = Math.sqrt((radius - opening / 2) * (radius + opening / 2));
  return { outside: onFace(face, along, outside, -off), inside: onFace(face, along, inside, off) };
}

/**
 * All dimensions of a circle that cuts a straight face. Lengths in the unit of the face, angles in radians.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83.
 * @throws RangeError if a number is not finite, the radius is not over 0, or the circle does not cut the face.
 */
export function placementOn(face: LineEdge, center: Point, radius: number): FacePlacement {
  checkPlace('placementOn', 'center', center);
  checkOverZero('placementOn', 'radius', radius);
  const { along, normal } = frameOf(face);
  const to = { dx: center.x - face.a.x, dy: center.y - face.a.y };
  const off = to.dx * normal.dx + to.dy * normal.dy;
  if (Math.abs(off) >= radius) {
    const where = off < 0 ? 'short of the face' : 'inside the metal';
    throw new RangeError(
      `placementOn: the centre lies ${shownNumber(Math.abs(off))} ${where}; with radius ${shownNumber(radius)} ` +
        `the circle cuts the face only if it lies less than ${shownNumber(radius)} from it`,
    );
  }
  const segment = segmentBetween(radius, radius + off, radius - off);
  return { ...onFace(face, to.dx * along.dx + to.dy * along.dy, segment, off), center };
}

/** Unit vectors of a face: along its travel, and to the left, into the metal. */
export function frameOf(face: LineEdge): {
  readonly along: Vector;
  readonly normal: Vector;
  readonly length: number;
} {
  const length = distance(face.a, face.b);
  const along = { dx: (face.b.x - face.a.x) / length, dy: (face.b.y - face.a.y) / length };
  return { along, normal: { dx: -along.dy, dy: along.dx }, length };
}

/** @param off how far inside the metal the centre lies */
function onFace(face: LineEdge, at: number, segment: Segment, off: number): FacePlacement {
  const { along, normal, length } = frameOf(face);
  const foot = moved(face.a, along, at);
  const half = segment.opening / 2;
  const angle = cornerAngle(segment);
  const end = (by: number): ArcEnd => ({ at: moved(foot, along, by), angle, source: face.source ?? null });
  return {
    ...segment,
    center: moved(foot, normal, off),
    // With the metal ahead, a tooth that turns clockwise goes through it from left to right: along the face.
    entry: end(-half),
    exit: end(half),
    side: off === 0 ? 'on the face' : off > 0 ? 'inside' : 'outside',
    along: at,
    withinFace: at - half >= 0 && at + half <= length,
  };
}

/**
 * The angle of the corner that a straight face keeps beside a segment: pi - t / 2.
 * Source: tangent-chord angle, Euclid III.32.
 */
export function cornerAngle({ includedAngle }: Segment): number {
  return Math.PI - includedAngle / 2;
}
