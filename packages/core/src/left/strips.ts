import { withinTurn } from '../geometry/angle.js';
import type { Bounds } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { sweep } from '../geometry/measure.js';
import type { Point, Vector } from '../geometry/point.js';
import { circlesMeet, lineCircle } from './discs.js';
import { turnBetween } from './interior-angle.js';
import { type RoundWall, SAME_DIRECTION, type Wall, type Walls } from './walls.js';

/** A stretch between two walls that keep their distance, walked along wall `one`. */
export interface Strip {
  readonly one: number;
  readonly other: number;
  readonly thickness: number;
  /** Length along its middle. */
  readonly length: number;
  /** The place on its middle at a distance from its start. */
  readonly at: (s: number) => Point;
  /** The box that all that can end it meets. */
  readonly zone: Bounds;
}

/** The middle line of a strip, and its places by distance along it. */
interface Midline {
  readonly length: number;
  readonly at: (s: number) => Point;
  /** Distances along it at which it crosses a line or a circle. */
  readonly onLine: (a: Point, along: Vector) => number[];
  readonly onCircle: (center: Point, radius: number) => number[];
}

/** The strips between two walls: parallel faces, or a hole or corner within a rounded end round the same centre. */
export function stripsBetween(walls: Walls, i: number, j: number, limit: number): Strip[] {
  const one = walls.list[i] as Wall;
  const other = walls.list[j] as Wall;
  const found = one.shape === 'flat' ? parallel(one, other) : concentric(one, other);
  return found.flatMap(({ thickness, line }) => {
    if (!(thickness > walls.tolerance) || thickness >= limit) return [];
    const zone = boxRound(line, thickness / 2);
    return freeStretches(walls, i, j, line, thickness / 2, zone).map(([from, to]) => {
      return { one: i, other: j, thickness, length: to - from, at: (s: number) => line.at(from + s), zone };
    });
  });
}

/** Walls at an equal distance, and the line halfway between them. */
interface Channel {
  readonly thickness: number;
  readonly line: Midline;
}

function parallel(one: Wall & { shape: 'flat' }, other: Wall): Channel[] {
  if (other.shape !== 'flat') return [];
  const { along, normal } = one;
  if (Math.abs(along.dx * other.along.dy - along.dy * other.along.dx) > SAME_DIRECTION) return [];
  const { a } = one.edge;
  const onOne = (p: Point) => (p.x - a.x) * along.dx + (p.y - a.y) * along.dy;
  const over = (p: Point) => (p.x - a.x) * normal.dx + (p.y - a.y) * normal.dy;
  // The other one runs back, or they share nothing: if it runs the same way it ends past where it starts.
  const from = Math.max(0, onOne(other.edge.b));
  const to = Math.min(one.length, onOne(other.edge.a));
  if (!(to > from)) return [];
  // Faces that are out of parallel by less than can be told are taken at their thinner end.
  const slope = (over(other.edge.a) - over(other.edge.b)) / (onOne(other.edge.a) - onOne(other.edge.b));
  const heightAt = (s: number) => over(other.edge.b) + slope * (s - onOne(other.edge.b));
  const thickness = Math.min(heightAt(from), heightAt(to));
  const start = {
    x: a.x + along.dx * from + (normal.dx * thickness) / 2,
    y: a.y + along.dy * from + (normal.dy * thickness) / 2,
  };
  return [{ thickness, line: straight(start, along, to - from) }];
}

function straight(start: Point, along: Vector, length: number): Midline {
  const place = (p: Point) => (p.x - start.x) * along.dx + (p.y - start.y) * along.dy;
  return {
    length,
    at: (s) => ({ x: start.x + along.dx * s, y: start.y + along.dy * s }),
    onLine: (a, d) => {
      const den = along.dx * d.dy - along.dy * d.dx;
      return den === 0 ? [] : [((a.x - start.x) * d.dy - (a.y - start.y) * d.dx) / den];
    },
    onCircle: (center, radius) => lineCircle(start, along, center, radius).map(place),
  };
}

function concentric(one: Wall, other: Wall): Channel[] {
  if (one.shape === 'flat' || other.shape === 'flat' || one.side === other.side) return [];
  const [hole, rim] = one.side < 0 ? [one, other] : [other, one];
  const d = Math.hypot(hole.center.x - rim.center.x, hole.center.y - rim.center.y);
  const radius = (hole.radius + rim.radius) / 2;
  if (d > SAME_DIRECTION * radius) return [];
  return sharedSpans(spanOf(rim), spanOf(hole)).map(({ from, turn }) => {
    // The rim runs counter-clockwise; the strip is walked along wall `one`.
    const begin = one.side > 0 ? from : from + turn;
    return {
      thickness: rim.radius - hole.radius - d,
      line: round(rim.center, radius, begin, turn, one.side),
    };
  });
}

/** A stretch of angle seen from a centre, counter-clockwise from a direction. */
interface Span {
  readonly from: number;
  readonly turn: number;
}

/** The angles over which a wall runs round its centre; of a corner, those of the discs that rest on it. */
function spanOf(wall: RoundWall): Span {
  if (wall.shape === 'corner') {
    const { normalBefore, normalAfter } = wall;
    const turn = turnBetween(normalAfter, normalBefore);
    return { from: Math.atan2(normalAfter.dy, normalAfter.dx), turn: withinTurn(turn) };
  }
  const { edge, center } = wall;
  if (edge.kind !== 'arc') return { from: 0, turn: 0 };
  const start = edge.ccw ? edge.a : edge.b;
  return { from: Math.atan2(start.y - center.y, start.x - center.x), turn: sweep(edge) };
}

/** An arc as a middle line, from an angle on, `way` +1 for counter-clockwise. */
function round(center: Point, radius: number, begin: number, turn: number, way: 1 | -1): Midline {
  const place = (p: Point) => {
    const angle = way * (Math.atan2(p.y - center.y, p.x - center.x) - begin);
    return (angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI))) * radius;
  };
  return {
    length: turn * radius,
    at: (s) => {
      const angle = begin + (way * s) / radius;
      return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
    },
    onLine: (a, along) => lineCircle(a, along, center, radius).map(place),
    onCircle: (c, r) => circlesMeet(center, radius, c, r).map(place),
  };
}

/** The stretches of angle that two spans share: up to two, where both are over half a turn. */
function sharedSpans(p: Span, q: Span): Span[] {
  // Both start within half a turn of 0 and turn by a full turn at most.
  return [-1, 0, 1].flatMap((shift) => {
    const start = q.from + shift * 2 * Math.PI;
    const from = Math.max(p.from, start);
    const turn = Math.min(p.from + p.turn, start + q.turn) - from;
    return turn > 0 ? [{ from, turn }] : [];
  });
}

/**
 * Shorter stretches than this many tolerances are not told from none: where the disc of a strip just touches a third
 * wall too, what may be entered of that by rounding is about as long. And a short one is a neck between joints.
 */
const SHORTEST = 16;

/** The stretches of a middle line along which a disc of the strip's thickness has room. */
function freeStretches(
  walls: Walls,
  i: number,
  j: number,
  line: Midline,
  radius: number,
  zone: Bounds,
): [number, number][] {
  const places = [0, line.length];
  const others = walls.near(zone).filter((k) => k !== i && k !== j);
  for (const k of others) {
    for (const s of changes((walls.list[k] as Wall).edge, line, radius)) {
      if (s > 0 && s < line.length) places.push(s);
    }
  }
  places.sort((a, b) => a - b);
  const free: [number, number][] = [];
  for (let k = 0; k + 1 < places.length; k++) {
    const from = places[k] as number;
    const to = places[k + 1] as number;
    if (!(to > from)) continue;
    const middle = line.at((from + to) / 2);
    const least = radius - walls.tolerance;
    if (others.some((n) => nearestOnEdge((walls.list[n] as Wall).edge, middle).distance < least)) continue;
    const last = free[free.length - 1];
    if (last !== undefined && from - last[1] <= walls.tolerance) last[1] = to;
    else free.push([from, to]);
  }
  return free.filter(([from, to]) => to - from > SHORTEST * walls.tolerance);
}

/** Where along a middle line the distance to an edge can pass through a radius. */
function changes(edge: Edge, line: Midline, radius: number): number[] {
  const places = [...line.onCircle(edge.a, radius), ...line.onCircle(edge.b, radius)];
  if (edge.kind === 'arc') {
    places.push(...line.onCircle(edge.center, edge.radius + radius));
    if (edge.radius > radius) places.push(...line.onCircle(edge.center, edge.radius - radius));
    return places;
  }
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  const along = { dx: (edge.b.x - edge.a.x) / length, dy: (edge.b.y - edge.a.y) / length };
  for (const side of [radius, -radius]) {
    places.push(...line.onLine({ x: edge.a.x - along.dy * side, y: edge.a.y + along.dx * side }, along));
  }
  return places;
}

function boxRound(line: Midline, by: number): Bounds {
  const points = Array.from({ length: 9 }, (_, k) => line.at((line.length * k) / 8));
  // Between neighbouring samples a curved middle line leaves their box by no more than their distance.
  const gap = Math.hypot(
    (points[1] as Point).x - (points[0] as Point).x,
    (points[1] as Point).y - (points[0] as Point).y,
  );
  return {
    minX: Math.min(...points.map((p) => p.x)) - by - gap,
    minY: Math.min(...points.map((p) => p.y)) - by - gap,
    maxX: Math.max(...points.map((p) => p.x)) + by + gap,
    maxY: Math.max(...points.map((p) => p.y)) + by + gap,
  };
}
