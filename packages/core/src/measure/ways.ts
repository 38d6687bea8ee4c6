/*
 * Room: how to measure the arc that a cut leaves, and what to correct.
 * In: sections at each height, the gauges at hand, readings.
 * Out: ways with what they should read; the arc fitted to readings; corrections of head and readout.
 */

import { midpoint, type Point, type Vector } from '../geometry/point.js';
import { pinFault } from './pins.js';
import {
  alongFace,
  type Face,
  hasRoom,
  LEAST_ROOM,
  type Measurable,
  placeOn,
  type Round,
  type Seat,
  type Span,
  stretchAt,
} from './seat.js';
import { type FaceLine, insideOf, readingOf, slopesOf, type Way } from './way.js';

/** The gauges at hand, in the unit of the part. */
export interface Gauges {
  /** Diameters of pins. */
  readonly pins: readonly number[];
  /** Diameters of balls. */
  readonly balls: readonly number[];
  /** Distances between the feet of gauges that read the height over a chord. */
  readonly feet: readonly number[];
  /** Where no feet are listed, a gauge stands on no shorter chord than this. */
  readonly shortest: number;
}

/** A way to measure a seat, with its reading and sensitivities. */
export interface Fitting {
  readonly way: Way;
  readonly reading: number;
  /** The growth of the reading for each unit of growth of the radius. */
  readonly byRadius: number;
  /** The largest growth of the reading for each unit of displacement of the centre. */
  readonly byPlace: number;
  /** Angles of metal at the horns that an opening is read across, radians; null for other ways. */
  readonly horns: readonly [number, number] | null;
}

/** An opening is read so far under its face, as a share of the depth, besides from horn to horn. */
const UNDER = 0.25;

/**
 * An opening is read no nearer to the widest place of an arc than this share of its radius: about there it is the same above and
 * below, so that it would tell a centre on the wrong side as well.
 */
const OFF_WIDEST = 0.3;

/** How far under a face an opening is read, that of an arc whose centre lies so far inside the face. */
function underOf(inside: number, radius: number): number {
  const usual = (inside + radius) * UNDER;
  const isWidest = Math.abs(inside - usual) < OFF_WIDEST * radius;
  return isWidest ? inside + OFF_WIDEST * radius : usual;
}

/** A chord is so much of what the arc has room for: its ends keep clear of the horns. */
const CHORD = 0.8;

/** A length that can be set by hand: two digits of it, cut off. */
function settable(length: number): number {
  const digit = 10 ** (Math.floor(Math.log10(length)) - 1);
  return Number((Math.floor(length / digit) * digit).toPrecision(2));
}

/** So many faces are told from which what is left is read, the nearest; so many walls to other arcs. */
const NEAREST = 2;

/** The ways to measure a seat in its section. The most sensitive to the radius come first. */
export function waysFor(
  seat: Seat,
  { faces, rounds, beside, locate, near }: Measurable,
  gauges: Gauges,
): Fitting[] {
  const fittingOf = ({ way, horns }: Drafted): Fitting => {
    const { radius, place } = slopesOf(way, seat);
    return {
      way,
      reading: readingOf(way, seat),
      byRadius: radius,
      byPlace: Math.hypot(place.dx, place.dy),
      horns: horns ?? null,
    };
  };
  const nearest = (drafts: readonly Drafted[], serves: (draft: Drafted) => boolean = () => true) => {
    const byReading = drafts.map((draft) => ({ draft, fitting: fittingOf(draft) }));
    byReading.sort((a, b) => a.fitting.reading - b.fitting.reading);
    const found: Fitting[] = [];
    for (const { draft, fitting } of byReading) {
      if (found.length < NEAREST && serves(draft)) found.push(fitting);
    }
    return found;
  };
  const isThroughMetal = ({ middle }: Drafted) => middle !== undefined && locate(middle) === 'inside';
  const across = nearest(faces.flatMap((face) => leftWays(seat, face, near)));
  return [
    ...across,
    ...nearest(
      rounds.flatMap((round) => roundWays(seat, round)),
      isThroughMetal,
    ),
    ...across.flatMap(({ way }) => overWays(seat, way, gauges)).map(fittingOf),
    ...faces.flatMap((face) => depthWays(seat, face, near, gauges)).map(fittingOf),
    ...acrossWays(seat).map(fittingOf),
    ...heightWays(seat, gauges).map(fittingOf),
    ...nearest(
      beside(seat).flatMap((other) => wallWays(seat, other)),
      isThroughMetal,
    ),
  ].sort(byRadiusShown);
}

interface Drafted {
  readonly way: Way;
  readonly horns?: readonly [number, number];
  /** The middle of what is measured straight through: metal is to be there. */
  readonly middle?: Point;
}

/** Sorts ways by their sensitivity to the radius, best first. */
export function byRadiusShown(a: Fitting, b: Fitting): number {
  return rankOf(b) - rankOf(a);
}

/** A horn is no good place to measure from, whatever its reading depends on. */
function rankOf({ byRadius, horns }: Fitting): number {
  return horns === null ? Math.abs(byRadius) : 0;
}

function opposite({ dx, dy }: Vector): Vector {
  return { dx: -dx, dy: -dy };
}

/** What is left to a face, where the arc is nearest to it straight across. */
function leftWays(seat: Seat, face: Face, near: number): Drafted[] {
  const towards = opposite(face.into);
  if (stretchAt(face, alongFace(face, seat.center)) === undefined || !hasRoom(seat, towards)) return [];
  if (insideOf(face, placeOn(seat, towards)) <= near) return [];
  return [{ way: { kind: 'left', face: lineOf(face) } }];
}

/** The same over pins. */
function overWays(seat: Seat, way: Way, gauges: Gauges): Drafted[] {
  if (way.kind !== 'left') return [];
  const { face } = way;
  return bestPins(seat, opposite(face.into), gauges).map(({ pin, pins }) => ({
    way: { kind: 'over pins', face, pin, pins },
  }));
}

/** Depths under a face that the seat opens. */
function depthWays(seat: Seat, face: Face, near: number, gauges: Gauges): Drafted[] {
  const foot = stretchAt(face, alongFace(face, seat.center));
  if (foot !== undefined || !hasRoom(seat, face.into) || !isOpenTo(seat, face)) return [];
  const line = lineOf(face);
  const pins = bestPins(seat, face.into, gauges).map(({ pin, pins }): Drafted => {
    const below: Way = { kind: 'to pins', face: line, pin, pins };
    return { way: readingOf(below, seat) >= 0 ? below : { ...below, kind: 'pins out' } };
  });
  return [{ way: { kind: 'depth', face: line } }, ...pins, ...openingWays(seat, face, near)];
}

function lineOf({ source, at, into }: Face): FaceLine {
  return { source, at, into };
}

/** Of the pins that there are, the widest that lies in the arc by itself, and the widest pair. */
function bestPins(seat: Seat, towards: Vector, gauges: Gauges): { pin: number; pins: 1 | 2 }[] {
  return ([2, 1] as const).flatMap((pins) => {
    const fit = gauges.pins.filter((pin) => pinFault(seat, towards, pin, pins) === null);
    return fit.length === 0 ? [] : [{ pin: Math.max(...fit), pins }];
  });
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
  const line = lineOf(face);
  // Between the face and a tangent, on the side of the metal.
  const horn = Math.acos(Math.min(1, Math.max(-1, d / seat.radius)));
  return [
    { way: { kind: 'opening', face: line, under: settable(underOf(d, seat.radius)) } },
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

function heightWays(seat: Seat, { feet, shortest }: Gauges): Drafted[] {
  const widest = 2 * seat.radius * Math.sin(halfOf(seat));
  const usual = settable(widest * CHORD);
  const chords = feet.length > 0 ? feet.filter((one) => one < widest) : usual < shortest ? [] : [usual];
  return chords.map((chord) => ({ way: { kind: 'height', chord } }));
}

/** Across at the widest, in the middle of the widest stretch of directions both of whose ends are on the arc. */
function acrossWays({ spans }: Seat): Drafted[] {
  let best: Span | null = null;
  for (const one of spans) {
    for (const other of spans) {
      for (const turn of [-Math.PI, Math.PI]) {
        const from = Math.max(one.from, other.from + turn);
        const to = Math.min(one.to, other.to + turn);
        const least = best === null ? 2 * LEAST_ROOM : best.to - best.from + ROUNDING;
        if (to - from >= least) best = { from, to };
      }
    }
  }
  return best === null ? [] : [{ way: { kind: 'across', along: directionOf((best.from + best.to) / 2) } }];
}

/** Of two stretches that differ by less, radians, the first counts. */
const ROUNDING = 1e-9;

/** What is left to a round, where the line through both middles runs to it. */
function roundWays(seat: Seat, { source, center, radius, spans }: Round): Drafted[] {
  const [dx, dy] = [center.x - seat.center.x, center.y - seat.center.y];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return [];
  const towards = { dx: dx / length, dy: dy / length };
  if (!hasRoom(seat, towards) || !hasRoom({ spans }, towards)) return [];
  const [a, b] = [placeOn(seat, towards), placeOn({ center, radius }, towards)];
  const isAhead = (b.x - a.x) * towards.dx + (b.y - a.y) * towards.dy > 0;
  return isAhead ? [{ way: { kind: 'round', source, center, radius }, middle: midpoint(a, b) }] : [];
}

/** The wall to another seat. */
function wallWays(seat: Seat, other: Seat): Drafted[] {
  const [dx, dy] = [other.center.x - seat.center.x, other.center.y - seat.center.y];
  const length = Math.hypot(dx, dy);
  const wall = length - seat.radius - other.radius;
  if (!(wall > 0)) return [];
  const towards = { dx: dx / length, dy: dy / length };
  if (!hasRoom(seat, towards) || !hasRoom(other, opposite(towards))) return [];
  const a = placeOn(seat, towards);
  const b = placeOn(other, opposite(towards));
  const { cut, center, radius } = other;
  return [{ way: { kind: 'wall', cut, center, radius }, middle: midpoint(a, b) }];
}
