import { type Bounds, grown } from '../geometry/bounds.js';
import { distance, type Point } from '../geometry/point.js';
import { alongWall, ROOM_SLACK, restsOn, touchPoint, type Wall, type Walls } from './walls.js';

/** So many walls are followed at most for metal that is thick enough: a thin frame may be drawn in short edges. */
const MOST_WALLS = 8192;

/** Contacts closer than this share of the radius are one: of two walls that go over into each other, at their joint. */
const APART = 1e-3;

/** A place on the boundary: how far along a wall it is, see `alongWall`. */
export interface Place {
  readonly wall: number;
  readonly along: number;
}

/**
 * The centre of the first disc of a radius that one comes to on the way ahead from one place and back from another
 * that faces it, with no boundary inside it. It rests on both walls, or on others further on; where the metal parts
 * on the way, the first along the one wall is another than along the other, and the nearer of the two is taken.
 * @returns null where there is no such disc: the metal ends before it is that wide
 */
export function discAhead(
  walls: Walls,
  middle: Point,
  from: Place,
  facing: Place,
  radius: number,
): Point | null {
  const along = firstAlong(walls, stretches(walls, from, 'after', facing), radius, 1);
  const back = firstAlong(walls, stretches(walls, facing, 'before', from), radius, -1);
  if (along === null || back === null) return along ?? back;
  return distance(along, middle) <= distance(back, middle) ? along : back;
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
  { wall, along }: Place,
  way: 'before' | 'after',
  facing: Place,
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

/** The first disc that rolls along the boundary with room: where it comes free of what is on its other side. */
function firstAlong(walls: Walls, way: Iterable<Stretch>, radius: number, sign: 1 | -1): Point | null {
  for (const stretch of way) {
    const one = walls.list[stretch.wall] as Wall;
    const first = restingOn(walls, stretch, radius)
      .map((center) => ({ center, at: sign * alongWall(one, center) }))
      .reduce<{ center: Point; at: number } | null>((a, b) => (a !== null && a.at <= b.at ? a : b), null);
    if (first !== null) return first.center;
  }
  return null;
}

/** The discs of a radius that rest on a stretch of wall and on something else, and have room. */
function restingOn(walls: Walls, { wall, low, high }: Stretch, radius: number): Point[] {
  const slack = walls.tolerance * ROOM_SLACK;
  const one = walls.list[wall] as Wall;
  const near = walls.near(grown(walls.boxes[wall] as Bounds, 2 * radius + slack));
  return near.flatMap((k) => {
    if (k === wall) return [];
    const other = walls.list[k] as Wall;
    return restingPlaces(one, other, radius).filter((center) => {
      const along = alongWall(one, center);
      if (along < low || along > high) return false;
      if (!restsOn(one, center, slack) || !restsOn(other, center, slack)) return false;
      const apart = distance(touchPoint(one, center), touchPoint(other, center));
      return apart > APART * radius && walls.hasRoom(center, radius);
    });
  });
}

/** Centres of the discs of a radius that touch two walls (run on past their ends) from the metal's side. */
export function restingPlaces(p: Wall, q: Wall, radius: number): Point[] {
  if (p.shape === 'flat') return q.shape === 'flat' ? linesMeet(p, q, radius) : lineMeetsCircle(p, q, radius);
  if (q.shape === 'flat') return lineMeetsCircle(q, p, radius);
  const r = p.radius - p.side * radius;
  const s = q.radius - q.side * radius;
  if (r < 0 || s < 0) return [];
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
  if (r < 0) return [];
  return lineCircle(shifted(line, radius), line.along, round.center, r);
}

/** Crossings of a line, given by a point and a unit direction, with a circle. */
export function lineCircle(a: Point, along: { dx: number; dy: number }, center: Point, r: number): Point[] {
  const mx = center.x - a.x;
  const my = center.y - a.y;
  const away = Math.abs(mx * along.dy - my * along.dx);
  if (away > r) return [];
  const foot = mx * along.dx + my * along.dy;
  const half = Math.sqrt((r - away) * (r + away));
  return [foot - half, foot + half].map((s) => ({ x: a.x + s * along.dx, y: a.y + s * along.dy }));
}

/** Crossings of two circles. */
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
