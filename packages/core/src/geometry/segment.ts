import { checkOverZero } from './checks.js';
import { sineExcess } from './measure.js';
import { shownNumber } from './shown.js';

/**
 * What a circle cuts out of a straight face: a circular segment. Lengths in the unit of the input, the angle in
 * radians, the area in square units.
 */
export interface Segment {
  readonly radius: number;
  /** From the face to the deepest place of the arc. */
  readonly depth: number;
  /** Width of the opening in the face: the chord. */
  readonly opening: number;
  /** Angle of the arc as seen from its centre. */
  readonly includedAngle: number;
  readonly arcLength: number;
  /** Between the arc and its chord. */
  readonly area: number;
}

/**
 * The segment of a given depth.
 *
 * Source: Machinery's Handbook, 31st ed., p. 83: c = 2 sqrt(h (2 r - h)) and t = 4 atan(2 h / c).
 * @throws RangeError if a length is not a finite number over 0, or the depth is not under the diameter.
 */
export function segmentOfDepth(radius: number, depth: number): Segment {
  checkOverZero('segmentOfDepth', 'radius', radius);
  checkOverZero('segmentOfDepth', 'depth', depth);
  if (depth >= 2 * radius) {
    throw new RangeError(
      `segmentOfDepth: depth is ${shownNumber(depth)}; with radius ${shownNumber(radius)} a bite is less than ` +
        `${shownNumber(2 * radius)} deep, from there on it is a full hole`,
    );
  }
  return segmentBetween(radius, depth, 2 * radius - depth);
}

/**
 * The two segments of a given opening: the shallow one, whose centre lies outside of the metal, and the deep one,
 * whose centre lies inside. With an opening as wide as the diameter they are one, with its centre on the face.
 *
 * Source: Machinery's Handbook, 31st ed., p. 83: c = 2 sqrt(h (2 r - h)), solved for h.
 * @throws RangeError if a length is not a finite number over 0, or the opening is over the diameter.
 */
export function segmentsOfOpening(
  radius: number,
  opening: number,
): { readonly outside: Segment; readonly inside: Segment } {
  checkOverZero('segmentsOfOpening', 'radius', radius);
  checkOverZero('segmentsOfOpening', 'opening', opening);
  if (opening > 2 * radius) {
    throw new RangeError(
      `segmentsOfOpening: opening is ${shownNumber(opening)}; a circle of radius ${shownNumber(radius)} opens a ` +
        `face ${shownNumber(2 * radius)} wide at most`,
    );
  }
  const half = opening / 2;
  const deep = radius + Math.sqrt((radius - half) * (radius + half));
  // The other root, as their product is half the opening squared; a difference would lose its digits.
  const shallow = (half * half) / deep;
  return { outside: segmentBetween(radius, shallow, deep), inside: segmentBetween(radius, deep, shallow) };
}

/**
 * The segment of a given opening and depth, which give the radius.
 *
 * Source: Machinery's Handbook, 31st ed., p. 79: r = (c^2 + 4 h^2) / (8 h).
 * @throws RangeError if a length is not a finite number over 0.
 */
export function segmentOfOpeningAndDepth(opening: number, depth: number): Segment {
  checkOverZero('segmentOfOpeningAndDepth', 'opening', opening);
  checkOverZero('segmentOfOpeningAndDepth', 'depth', depth);
  const rest = (opening / 2 / depth) * (opening / 2);
  return segmentBetween(depth / 2 + rest / 2, depth, rest);
}

/**
 * The segment with a given included angle.
 *
 * Source: Machinery's Handbook, 31st ed., p. 83: h = r (1 - cos(t / 2)), as 2 r sin^2(t / 4).
 * @param includedAngle radians, over 0 and under 2 pi
 * @throws RangeError if the radius is not a finite number over 0, or the angle out of its range.
 */
export function segmentOfAngle(radius: number, includedAngle: number): Segment {
  checkOverZero('segmentOfAngle', 'radius', radius);
  if (!(includedAngle > 0 && includedAngle < 2 * Math.PI)) {
    throw new RangeError(
      `segmentOfAngle: the included angle is ${includedAngle}; it must be over 0 and under 2 pi radians`,
    );
  }
  return segmentTurned(radius, includedAngle);
}

/** As `segmentOfAngle`, from 0 to 2 pi, both included. */
export function segmentTurned(radius: number, includedAngle: number): Segment {
  const sine = Math.sin(includedAngle / 4);
  const cosine = Math.cos(includedAngle / 4);
  return {
    radius,
    depth: 2 * radius * sine * sine,
    opening: 4 * radius * sine * cosine,
    includedAngle,
    arcLength: radius * includedAngle,
    area: (radius * radius * sineExcess(includedAngle)) / 2,
  };
}

/** From the depth and what it lacks to the diameter, so that neither has to be worked out by a difference. */
export function segmentBetween(radius: number, depth: number, rest: number): Segment {
  const includedAngle = 4 * Math.atan2(Math.sqrt(depth), Math.sqrt(rest));
  return {
    radius,
    depth,
    opening: 2 * Math.sqrt(depth) * Math.sqrt(rest),
    includedAngle,
    arcLength: radius * includedAngle,
    area: (radius * radius * sineExcess(includedAngle)) / 2,
  };
}
