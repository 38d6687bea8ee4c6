import Flatbush from 'flatbush';
import { TURN } from '../geometry/angle.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { arcLike } from '../geometry/parts.js';
import type { Point, Vector } from '../geometry/point.js';
import { cutOfSource } from '../geometry/source.js';
import { locator, type Place } from '../region/contains.js';
import { loopBounds } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { insideOf } from './way.js';

/**
 * Measuring what a cut has left: a partial bore has no far side, so its radius and its place are told from depths,
 * openings, pins and heights over a chord. What comes in is the section of the finished part; what goes out are ways to
 * measure each arc, and from readings back to radius, place and what to correct.
 */

/** A stretch of angles, counter-clockwise, radians; `to` is over `from` by a full turn at most. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A hollow arc that a cut has left in the part. */
export interface Seat {
  /** id of the cut. */
  readonly cut: string;
  readonly center: Point;
  readonly radius: number;
  /** The angles of the arc, seen from its centre; not a whole circle, which a bore gauge measures. */
  readonly spans: readonly Span[];
}

/** A straight face of the part, as far as it stands. */
export interface Face {
  readonly source: string;
  readonly at: Point;
  /** Unit vector along the face. */
  readonly along: Vector;
  /** Unit vector into the metal. */
  readonly into: Vector;
  /** Where it stands, as distances from `at` along the face, sorted. */
  readonly stretches: readonly Span[];
}

/** A round of the outline that metal lies inside of. */
export interface Round {
  readonly source: string;
  readonly center: Point;
  readonly radius: number;
  readonly spans: readonly Span[];
}

/** The seats and faces of a section. */
export interface Measurable {
  readonly seats: readonly Seat[];
  readonly faces: readonly Face[];
  /** The widest first. */
  readonly rounds: readonly Round[];
  /** The seats next to one, the nearest first. */
  readonly beside: (seat: Seat) => readonly Seat[];
  /** Where a place lies with regard to the section. */
  readonly locate: (p: Point) => Place;
  /** Places closer than this are one. */
  readonly near: number;
}

/** Share of the part's extent within which places are one: a hundred times that at which points are welded. */
const NEAR_SHARE = 1e-7;

/** The seats and faces of a section of the part. */
export function measurableIn(section: Region): Measurable {
  const loops = section.flatMap(({ outer, holes }) => [outer, ...holes]);
  const boxes = section.map(({ outer }) => loopBounds(outer));
  const extent = Math.max(0, ...boxes.map((box) => Math.max(box.maxX - box.minX, box.maxY - box.minY)));
  const near = NEAR_SHARE * extent;
  const seats = seatsOf(loops, near);
  return {
    seats,
    faces: longest(facesOf(loops, near)),
    rounds: roundsOf(loops, near),
    beside: besideOf(seats),
    locate: locator(section),
    near,
  };
}

/** So many faces are measured from, the longest: nobody measures from the facets of a curve. */
const MOST_FACES = 64;

function longest(faces: readonly Face[]): readonly Face[] {
  if (faces.length <= MOST_FACES) return faces;
  const lengthOf = ({ stretches }: Face) => stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  return [...faces].sort((a, b) => lengthOf(b) - lengthOf(a)).slice(0, MOST_FACES);
}

/** So many seats are next to one. */
const MOST_BESIDE = 8;

function besideOf(seats: readonly Seat[]): (seat: Seat) => readonly Seat[] {
  if (seats.length < 2) return () => [];
  const index = new Flatbush(seats.length);
  for (const { center, radius } of seats) {
    index.add(center.x - radius, center.y - radius, center.x + radius, center.y + radius);
  }
  index.finish();
  return (seat) =>
    index
      .neighbors(seat.center.x, seat.center.y, MOST_BESIDE + 1)
      .map((k) => seats[k] as Seat)
      .filter((other) => other !== seat);
}

/** An arc is hollow where its centre lies on the side of the air, on the right. */
function seatsOf(loops: readonly (readonly Edge[])[], near: number): Seat[] {
  const circles = new Map<string, { cut: string; arc: ArcEdge; spans: Span[] }[]>();
  for (const edge of loops.flat()) {
    if (edge.kind === 'line' || edge.ccw) continue;
    const cut = cutOfSource(edge.source ?? '');
    if (cut === null) continue;
    const known = circles.get(cut) ?? [];
    const same = known.find(({ arc }) => sameCircle(arc, edge, near));
    const span = spanOf(edge);
    if (same === undefined) known.push({ cut, arc: edge, spans: [span] });
    else same.spans.push(span);
    circles.set(cut, known);
  }
  return [...circles.values()].flat().flatMap(({ cut, arc, spans }): Seat[] => {
    const { center, radius } = arc;
    const joined = joinedSpans(spans, near / radius);
    return joined === null ? [] : [{ cut, center, radius, spans: joined }];
  });
}

/** So many rounds are measured to, the widest. */
const MOST_ROUNDS = 16;

/** Arcs of the outline that bulge out, of one circle each. */
function roundsOf(loops: readonly (readonly Edge[])[], near: number): Round[] {
  const rounds: (Round & { readonly arc: ArcEdge; readonly spans: Span[] })[] = [];
  for (const edge of loops.flat()) {
    if (edge.kind === 'line' || !edge.ccw || edge.source === undefined || cutOfSource(edge.source) !== null)
      continue;
    const { a, b, center, radius, source } = edge;
    const span = spanOf(arcLike(edge, b, a, edge.ccw));
    const same = rounds.find(({ arc }) => sameCircle(arc, edge, near));
    if (same !== undefined) same.spans.push(span);
    else if (rounds.length < MOST_SEEN) rounds.push({ source, center, radius, arc: edge, spans: [span] });
  }
  return rounds
    .sort((one, other) => other.radius - one.radius)
    .slice(0, MOST_ROUNDS)
    .map(({ source, center, radius, spans }) => ({ source, center, radius, spans }));
}

/** Of an outline of very many arcs, so many are looked at. */
const MOST_SEEN = 256;

function sameCircle(a: ArcEdge, b: ArcEdge, near: number): boolean {
  return (
    Math.abs(a.radius - b.radius) <= near &&
    Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y) <= near
  );
}

/** Angles of a clockwise arc, counter-clockwise. */
function spanOf({ a, b, center }: ArcEdge): Span {
  const from = Math.atan2(b.y - center.y, b.x - center.x);
  const to = Math.atan2(a.y - center.y, a.x - center.x);
  return { from, to: to > from ? to : to + TURN };
}

/** Spans put together where one begins as another ends; null where they come to a whole circle. */
function joinedSpans(spans: readonly Span[], slack: number): Span[] | null {
  const sorted = [...spans].sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of sorted) {
    const last = joined[joined.length - 1];
    if (last !== undefined && from <= last.to + slack) last.to = Math.max(last.to, to);
    else joined.push({ from, to });
  }
  const [first] = joined;
  const last = joined[joined.length - 1];
  if (first === undefined || last === undefined) return [];
  if (joined.length > 1 && first.from + TURN <= last.to + slack) {
    last.to = Math.max(last.to, first.to + TURN);
    joined.shift();
  }
  return joined.some((one) => one.to - one.from >= TURN - slack) ? null : joined;
}

/** Straight edges of one source in one line are one face. */
function facesOf(loops: readonly (readonly Edge[])[], near: number): Face[] {
  const faces = new Map<string, (Face & { readonly stretches: Span[] })[]>();
  for (const edge of loops.flat()) {
    if (edge.kind === 'arc' || edge.source === undefined || cutOfSource(edge.source) !== null) continue;
    const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
    if (length <= near) continue;
    const known = faces.get(edge.source) ?? [];
    const along = { dx: (edge.b.x - edge.a.x) / length, dy: (edge.b.y - edge.a.y) / length };
    const same = known.find((face) => isInLine(face, edge.a, near) && isInLine(face, edge.b, near));
    const face = same ?? {
      source: edge.source,
      at: edge.a,
      along,
      into: { dx: -along.dy, dy: along.dx },
      stretches: [],
    };
    if (same === undefined) known.push(face);
    face.stretches.push({ from: alongFace(face, edge.a), to: alongFace(face, edge.b) });
    faces.set(edge.source, known);
  }
  const all = [...faces.values()].flat();
  for (const { stretches } of all) stretches.sort((a, b) => a.from - b.from);
  return all;
}

function isInLine(face: Face, p: Point, near: number): boolean {
  return Math.abs(insideOf(face, p)) <= near;
}

/** Where the foot of a place lies along a face. */
export function alongFace({ at, along }: Pick<Face, 'at' | 'along'>, p: Point): number {
  return (p.x - at.x) * along.dx + (p.y - at.y) * along.dy;
}

/** The stretch of a face that a place along it is on; undefined where the face is open or ends. */
export function stretchAt({ stretches }: Face, s: number): Span | undefined {
  let [low, high] = [0, stretches.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stretches[middle] as Span).from <= s) low = middle + 1;
    else high = middle;
  }
  const span = stretches[low - 1];
  return span !== undefined && s <= span.to ? span : undefined;
}

/** How far the arc goes on to both sides of a direction, radians; null where it is not on the arc. */
export function besides(seat: Pick<Seat, 'spans'>, { dx, dy }: Vector): number | null {
  const angle = Math.atan2(dy, dx);
  for (const { from, to } of seat.spans) {
    const turned = angle + TURN * Math.ceil((from - angle) / TURN);
    if (turned <= to) return Math.min(turned - from, to - turned);
  }
  return null;
}

/** A place nearer to a horn than this is not found by hand, and may be off the arc as it is made: 5 degrees. */
export const LEAST_ROOM = (5 * Math.PI) / 180;

/** Whether the arc goes on far enough to both sides of a direction to be measured there. */
export function hasRoom(seat: Pick<Seat, 'spans'>, towards: Vector): boolean {
  return (besides(seat, towards) ?? 0) >= LEAST_ROOM;
}

/** The place on the circle of a seat in a direction. */
export function placeOn({ center, radius }: Pick<Seat, 'center' | 'radius'>, { dx, dy }: Vector): Point {
  return { x: center.x + radius * dx, y: center.y + radius * dy };
}
