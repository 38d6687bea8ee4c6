import type { Point, Vector } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import type { Region } from '../region/region.js';
import {
  alongFace,
  besides,
  type Face,
  insideOf,
  type Measurable,
  placeOn,
  type Seat,
  stretchAt,
} from './seat.js';
import { readingOf, slopesOf, type Way } from './way.js';

/** What there is to measure with, in the unit of the part. */
export interface Gauges {
  /** Diameters of pins and balls. */
  readonly pins: readonly number[];
  /** Distances between the feet of gauges that read the height over a chord. */
  readonly feet: readonly number[];
}

/** A way to measure a seat, and what to mind. */
export interface Fitting {
  readonly way: Way;
  readonly reading: number;
  /** How much the reading grows by for each unit that the radius does. */
  readonly byRadius: number;
  /** The same of the place: the most that it grows by for each unit that the centre moves. */
  readonly byPlace: number;
  /** Angles of metal at the horns that an opening is read across, radians; null for other ways. */
  readonly horns: readonly [number, number] | null;
}

/** An opening is read so far under its face, as a share of the depth, besides from horn to horn. */
const UNDER = 0.25;

/** A chord is so much of what the arc has room for: its ends keep clear of the horns. */
const CHORD = 0.8;

/** A pair of pins that goes in by less than this more than one pin does, of a change of the radius, tells nothing. */
const LEAST_GAIN = 0.02;

/** The ways to measure a seat in its section. Those by which the radius shows most come first. */
export function waysFor(
  seat: Seat,
  { seats, faces, near }: Measurable,
  section: Region,
  gauges: Gauges,
): Fitting[] {
  const ways = [
    ...faces.flatMap((face) => faceWays(seat, face, near, gauges)),
    ...heightWays(seat, gauges),
    ...seats.flatMap((other) => (other === seat ? [] : wallWays(seat, other, section))),
  ];
  return ways
    .map(({ way, horns = null }): Fitting => {
      const { radius, place } = slopesOf(way, seat);
      return {
        way,
        reading: readingOf(way, seat),
        byRadius: radius,
        byPlace: Math.hypot(place.dx, place.dy),
        horns,
      };
    })
    .sort((a, b) => rankOf(b) - rankOf(a));
}

interface Drafted {
  readonly way: Way;
  readonly horns?: readonly [number, number];
}

/** A horn is no good place to measure from, whatever its reading depends on. */
function rankOf({ byRadius, horns }: Fitting): number {
  return horns === null ? Math.abs(byRadius) : 0;
}

function opposite({ dx, dy }: Vector): Vector {
  return { dx: -dx, dy: -dy };
}

function faceWays(seat: Seat, face: Face, near: number, gauges: Gauges): Drafted[] {
  const line = { source: face.source, at: face.at, into: face.into };
  const ways: Drafted[] = [];
  const foot = stretchAt(face, alongFace(face, seat.center));
  const away = besides(seat, opposite(face.into));
  const nearest = insideOf(face, placeOn(seat, opposite(face.into)));
  if (foot !== undefined && away !== null && nearest > near) {
    ways.push({ way: { kind: 'left', face: line } });
    for (const pin of gauges.pins) {
      for (const pins of [1, 2] as const) {
        if (pinFault(seat, opposite(face.into), pin, pins) === null)
          ways.push({ way: { kind: 'over pins', face: line, pin, pins } });
      }
    }
  }
  const deepest = besides(seat, face.into);
  if (foot !== undefined || deepest === null || !isOpenTo(seat, face)) return ways;
  ways.push({ way: { kind: 'depth', face: line } });
  for (const pin of gauges.pins) {
    for (const pins of [1, 2] as const) {
      if (pinFault(seat, face.into, pin, pins) === null)
        ways.push({ way: { kind: 'to pins', face: line, pin, pins } });
    }
  }
  return [...ways, ...openingWays(seat, face, near)];
}

/** Whether a face stands somewhere beside the opening of a seat, for a gauge to rest on. */
function isOpenTo(seat: Seat, face: Face): boolean {
  const d = insideOf(face, seat.center);
  return Math.abs(d) < seat.radius && face.stretches.length > 0;
}

/** Openings that go from a face to the same face: both horns are on it. */
function openingWays(seat: Seat, face: Face, near: number): Drafted[] {
  const d = insideOf(face, seat.center);
  const onFace = seat.spans.find((span) =>
    [span.from, span.to].every(
      (angle) => Math.abs(insideOf(face, placeOn(seat, directionOf(angle)))) <= near,
    ),
  );
  if (onFace === undefined) return [];
  const line = { source: face.source, at: face.at, into: face.into };
  // Between the face and a tangent, on the side of the metal.
  const horn = Math.acos(Math.min(1, Math.max(-1, d / seat.radius)));
  const depth = d + seat.radius;
  return [
    { way: { kind: 'opening', face: line, under: depth * UNDER } },
    { way: { kind: 'opening', face: line, under: 0 }, horns: [horn, horn] },
  ];
}

function directionOf(angle: number): Vector {
  return { dx: Math.cos(angle), dy: Math.sin(angle) };
}

/** Widest angle to both sides of the middle of a span at which feet still stand on it. */
function halfOf({ spans }: Seat): number {
  return Math.max(0, ...spans.map(({ from, to }) => Math.min((to - from) / 2, Math.PI / 2)));
}

function heightWays(seat: Seat, { feet }: Gauges): Drafted[] {
  const widest = 2 * seat.radius * Math.sin(halfOf(seat));
  const chords = feet.length > 0 ? feet.filter((one) => one < widest) : [widest * CHORD];
  return chords.map((chord) => ({ way: { kind: 'height', chord } }));
}

/** The wall to another seat, where there is metal between and nothing else. */
function wallWays(seat: Seat, other: Seat, section: Region): Drafted[] {
  const [dx, dy] = [other.center.x - seat.center.x, other.center.y - seat.center.y];
  const length = Math.hypot(dx, dy);
  const wall = length - seat.radius - other.radius;
  if (!(wall > 0) || wall > seat.radius) return [];
  const towards = { dx: dx / length, dy: dy / length };
  if (besides(seat, towards) === null || besides(other, opposite(towards)) === null) return [];
  const a = placeOn(seat, towards);
  const b = placeOn(other, opposite(towards));
  const middle: Point = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  if (contains(section, middle) !== 'inside') return [];
  const { cut, center, radius } = other;
  return [{ way: { kind: 'wall', cut, center, radius } }];
}

/** Why pins cannot be used in an arc. */
export type PinFault = 'too large' | 'too small' | 'touches a horn' | 'off the arc';

/**
 * Why pins do not serve in a seat, lying at its innermost place in a direction; null where they do. One pin that is as
 * wide as the seat touches its horns; a pair that is thin tells no more than one pin.
 */
export function pinFault(seat: Seat, towards: Vector, pin: number, pins: 1 | 2): PinFault | null {
  const { radius } = seat;
  const room = besides(seat, towards);
  if (pins * pin >= 2 * radius) return 'too large';
  if (room === null) return 'off the arc';
  if (pins === 1) return null;
  const phi = Math.asin(pin / 2 / (radius - pin / 2));
  if (phi >= room) return 'touches a horn';
  return 1 / Math.cos(phi) - 1 < LEAST_GAIN ? 'too small' : null;
}

/** The sizes of pins of which a pair tells the radius of a seat: those between the two; null if there are none. */
export function pairsFor(seat: Seat, towards: Vector): readonly [number, number] | null {
  const room = besides(seat, towards);
  if (room === null) return null;
  const sizeAt = (sine: number) => (2 * seat.radius * sine) / (1 + sine);
  const least = sizeAt(Math.sin(Math.acos(1 / (1 + LEAST_GAIN))));
  const most = sizeAt(Math.sin(Math.min(room, Math.PI / 2)));
  return least < most ? [least, most] : null;
}
