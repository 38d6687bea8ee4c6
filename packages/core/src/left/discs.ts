import { type Bounds, boxAround, grown, joined } from '../geometry/bounds.js';
import type { Source } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { openParts, type Rolling, rollingOn } from './rolling.js';
import { alongWall, ROOM_SLACK, restsOn, touchPoint, type Wall, type Walls } from './walls.js';

/** So many walls are followed at most for metal that is thick enough: a thin frame may be drawn in short edges. */
const MOST_WALLS = 8192;

/** So many boxes say where a way has led; of a longer one neighbours are taken together, which is more than enough. */
const MOST_BOXES = 64;

/** Contacts closer than this share of the radius are one: of two walls that go over into each other, at their joint. */
const APART = 1e-3;

/** A place on the boundary: how far along a wall it is, see `alongWall`. */
export interface WallPosition {
  readonly wall: number;
  readonly along: number;
}

/** Some boxes: what stays outside of all of them has no say. */
export type Zone = readonly Bounds[];

/** A neck of metal thinner than a limit. */
export interface Web {
  /** Diameter of the largest disc of metal at its thinnest place, in the unit of the section. */
  readonly thickness: number;
  /** Middle of that disc, and the two places where it touches the boundary. */
  readonly at: Point;
  readonly ends: readonly [Point, Point];
  /** Sources of the touched edges, cuts before outlines; a joint has that of the first of its edges in that order. */
  readonly between: readonly [Source | null, Source | null];
  /**
   * Length over which the metal stays under the limit: of the strip, and from each of its ends (or from the middle)
   * straight to the centre of the first disc as thick as the limit.
   */
  readonly length: number;
  /** Length over which the thickness is the same: between parallel or concentric faces; 0 for a single neck. */
  readonly strip: number;
  /** Which part of the section it is in. */
  readonly part: number;
}

/** A web, and the zone that affects it: boundary outside of that may change. */
export interface ZonedWeb extends Web {
  readonly zone: Zone;
}

/** Where a disc was found, and what had a say in it. */
export interface FirstDisc {
  /** null where there is no such disc: the metal ends before it is that wide. */
  readonly center: Point | null;
  readonly zone: Zone;
}

/**
 * The discs of one radius that rest on the boundary of a section. Each wall is looked at once, however many ways lead
 * along it.
 */
export class Discs {
  private readonly known = new Map<number, readonly Resting[]>();

  constructor(
    readonly walls: Walls,
    readonly radius: number,
  ) {}

  /**
   * The first disc that one comes to on the way ahead from one place and back from another that faces it, with no
   * boundary inside it. It rests on both walls, or on others further on; where the metal parts on the way, the first
   * along the one wall is another than along the other, and the nearer of the two is taken.
   */
  ahead(middle: Point, from: WallPosition, facing: WallPosition): FirstDisc {
    const along = this.firstAlong(stretches(this.walls, from, 'after', facing), 1);
    const back = this.firstAlong(stretches(this.walls, facing, 'before', from), -1);
    const [p, q] = [along.center, back.center].map((center) => center && distance(center, middle));
    if (p == null && q == null) return { center: null, zone: [...along.zone, ...back.zone] };
    const [first, other] = q == null || (p != null && p <= q) ? [along, back] : [back, along];
    return { center: first.center, zone: this.zoneOf(middle, first, other) };
  }

  /**
   * What has a say in the nearer of two discs: all on the way to it. On the way to the other one a disc that is not
   * as near changes nothing, as long as that other one stays.
   */
  private zoneOf(middle: Point, first: FirstDisc, other: FirstDisc): Zone {
    const { radius, walls } = this;
    const slack = 2 * ROOM_SLACK * walls.tolerance;
    const center = first.center as Point;
    const near = boxAround(middle, distance(center, middle) + 2 * radius + slack);
    const stays = other.center === null ? [] : [boxAround(other.center, radius + slack)];
    return [
      near,
      ...first.zone.filter((box) => !isWithin(box, near)),
      ...stays.filter((box) => !isWithin(box, near)),
    ];
  }

  /** The first disc that rolls along the boundary with room: where it comes free of what is on its other side. */
  private firstAlong(way: Iterable<Stretch>, sign: 1 | -1): FirstDisc {
    const zone: Bounds[] = [];
    for (const { wall, low, high } of way) {
      let first: Resting | null = null;
      for (const one of this.restingOn(wall)) {
        if (one.at < low || one.at > high) continue;
        if (first === null || sign * one.at < sign * first.at) first = one;
      }
      if (zone.length === 0 && first !== null) {
        return { center: first.center, zone: [this.rolledOver(wall, sign > 0 ? low : high, first.at)] };
      }
      if (zone.length === MOST_BOXES) halve(zone);
      zone.push(this.reached(this.walls.boxes[wall] as Bounds));
      if (first !== null) return { center: first.center, zone };
    }
    return { center: null, zone };
  }

  /** All that a disc meets that rolls along a wall from one place to another. */
  private rolledOver(wall: number, from: number, to: number): Bounds {
    const { length, pace, centerAt } = rollingOn(this.walls.list[wall] as Wall, this.radius) as Rolling;
    const start = Math.min(Math.max(from, 0), length);
    const slack = 2 * this.walls.tolerance * ROOM_SLACK;
    const sway = (Math.abs(to - start) / 2) * pace;
    return boxAround(centerAt((start + to) / 2), this.radius + sway + slack);
  }

  /** All that a disc meets that rests on walls within a box. */
  private reached(zone: Bounds): Bounds {
    return grown(zone, 2 * this.radius + this.walls.tolerance * ROOM_SLACK);
  }

  /** The discs that rest on a wall and on something else, and have room. */
  private restingOn(wall: number): readonly Resting[] {
    const known = this.known.get(wall);
    if (known !== undefined) return known;
    const found = this.findOn(wall);
    this.known.set(wall, found);
    return found;
  }

  private findOn(wall: number): Resting[] {
    const { walls, radius } = this;
    const slack = walls.tolerance * ROOM_SLACK;
    const one = walls.list[wall] as Wall;
    const open = openParts(walls, one, radius);
    if (open.length === 0) return [];
    const found: (Resting & { readonly other: number })[] = [];
    for (const k of walls.near(grown(walls.boxes[wall] as Bounds, 2 * radius + slack))) {
      if (k === wall) continue;
      const other = walls.list[k] as Wall;
      for (const center of restingPlaces(one, other, radius)) {
        const at = alongWall(one, center);
        if (!open.some(({ low, high }) => low <= at && at <= high)) continue;
        if (!restsOn(one, center, slack) || !restsOn(other, center, slack)) continue;
        const apart = distance(touchPoint(one, center), touchPoint(other, center));
        if (apart > APART * radius && walls.hasRoom(center, radius)) found.push({ center, at, other: k });
      }
    }
    // Not in the order of an index, which depends on what lies far away.
    return found.sort((a, b) => a.at - b.at || a.other - b.other);
  }
}

function isWithin(box: Bounds, other: Bounds): boolean {
  return box.minX >= other.minX && box.maxX <= other.maxX && box.minY >= other.minY && box.maxY <= other.maxY;
}

/** Makes one of each two boxes that follow each other. */
function halve(boxes: Bounds[]): void {
  const half = boxes.length >> 1;
  for (let k = 0; k < half; k++) boxes[k] = joined(boxes[2 * k] as Bounds, boxes[2 * k + 1] as Bounds);
  boxes.length = half;
}

/** A disc that rests on a wall, and how far along it. */
interface Resting {
  readonly center: Point;
  readonly at: number;
}

/** Part of a wall, between two places along it. */
interface Stretch {
  readonly wall: number;
  readonly low: number;
  readonly high: number;
}

/** The boundary from a place on, one way, until it comes to the place that faces it or its loop is gone round. */
function* stretches(
  walls: Walls,
  { wall, along }: WallPosition,
  way: 'before' | 'after',
  facing: WallPosition,
): Generator<Stretch> {
  const slack = walls.tolerance * ROOM_SLACK;
  const isAfter = way === 'after';
  const from = (at: number) => (isAfter ? { low: at, high: Infinity } : { low: -Infinity, high: at });
  const upTo = (at: number) => (isAfter ? { low: -Infinity, high: at } : { low: at, high: Infinity });
  yield { wall, ...from(isAfter ? along - slack : along + slack) };
  let k = (walls.list[wall] as Wall)[way];
  for (let count = 1; k !== facing.wall && k !== wall && count < MOST_WALLS; count++) {
    yield { wall: k, low: -Infinity, high: Infinity };
    k = (walls.list[k] as Wall)[way];
  }
  if (k === facing.wall) yield { wall: k, ...upTo(facing.along) };
  else if (k === wall) yield { wall, ...upTo(along) };
}

/** Centres of the discs of a radius that touch two walls (run on past their ends) from the metal's side. */
export function restingPlaces(p: Wall, q: Wall, radius: number): Point[] {
  if (p.shape === 'flat') return q.shape === 'flat' ? linesMeet(p, q, radius) : lineMeetsCircle(p, q, radius);
  if (q.shape === 'flat') return lineMeetsCircle(q, p, radius);
  const r = p.radius - p.side * radius;
  const s = q.radius - q.side * radius;
  // A disc larger than a rounded end has a radius under 0 here, and no circle meets one of that.
  return circlesMeet(p.center, r, q.center, s);
}

type Flat = Wall & { shape: 'flat' };

function shifted(wall: Flat, radius: number): Point {
  return { x: wall.edge.a.x + wall.normal.dx * radius, y: wall.edge.a.y + wall.normal.dy * radius };
}

function linesMeet(p: Flat, q: Flat, radius: number): Point[] {
  const a = shifted(p, radius);
  const b = shifted(q, radius);
  const den = p.along.dx * q.along.dy - p.along.dy * q.along.dx;
  if (den === 0) return [];
  const t = ((b.x - a.x) * q.along.dy - (b.y - a.y) * q.along.dx) / den;
  return [{ x: a.x + t * p.along.dx, y: a.y + t * p.along.dy }];
}

function lineMeetsCircle(line: Flat, round: Exclude<Wall, Flat>, radius: number): Point[] {
  const r = round.radius - round.side * radius;
  return lineCircle(shifted(line, radius), line.along, round.center, r);
}

/** Crossings of a line, given by a point and a unit direction, with a circle; none if its radius is under 0. */
export function lineCircle(a: Point, along: { dx: number; dy: number }, center: Point, r: number): Point[] {
  const mx = center.x - a.x;
  const my = center.y - a.y;
  const away = Math.abs(mx * along.dy - my * along.dx);
  if (away > r) return [];
  const foot = mx * along.dx + my * along.dy;
  const half = Math.sqrt((r - away) * (r + away));
  return [foot - half, foot + half].map((s) => ({ x: a.x + s * along.dx, y: a.y + s * along.dy }));
}

/** Crossings of two circles; none if a radius is under 0. */
export function circlesMeet(c: Point, r: number, e: Point, s: number): Point[] {
  const dx = e.x - c.x;
  const dy = e.y - c.y;
  const d = Math.hypot(dx, dy);
  if (d === 0 || d > r + s || d < Math.abs(r - s)) return [];
  const along = (d + ((r - s) * (r + s)) / d) / 2;
  const half = Math.sqrt((d + r + s) * (r + s - d) * (d - Math.abs(r - s)) * (d + Math.abs(r - s))) / (2 * d);
  return [-half, half].map((h) => ({
    x: c.x + (dx * along - dy * h) / d,
    y: c.y + (dy * along + dx * h) / d,
  }));
}
