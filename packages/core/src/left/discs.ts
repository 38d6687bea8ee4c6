import { type Bounds, boxesMeet, grown } from '../geometry/bounds.js';
import type { Point } from '../geometry/point.js';
import { alongWall, restsOn, type Wall, type Walls } from './walls.js';

/**
 * How many walls on either side are tried for a disc to rest on, when it is too large for the first ones: as many
 * as a curve that was drawn in short straight edges may have within a flare.
 */
const REACH = 64;

/** A place on the boundary: how far along a wall it is, see `alongWall`. */
export interface Place {
  readonly wall: number;
  readonly along: number;
}

/**
 * The centre of the first disc of a radius that one comes to on the way ahead from one place and back from another
 * that faces it: it rests on two walls, from the first place on along its loop and from the second place back, with
 * no boundary inside it.
 * @returns null where there is no such disc: the metal ends, or parts, before it is that wide
 */
export function discAhead(walls: Walls, from: Place, facing: Place, radius: number): Point | null {
  const slack = walls.tolerance * 4;
  const forward = chain(walls, from, 'after', facing.wall, slack);
  const backward = chain(walls, facing, 'before', from.wall, slack);
  const rankOf = new Map(forward.map(({ wall }, rank) => [wall, rank]));
  const rests = ({ wall, low, high }: Stretch, center: Point) => {
    const along = alongWall(walls.list[wall] as Wall, center);
    return along >= low && along <= high && restsOn(walls.list[wall] as Wall, center, slack);
  };
  for (const [rank, p] of forward.entries()) {
    const one = walls.list[p.wall] as Wall;
    const box = grown(walls.boxes[p.wall] as Bounds, 2 * radius + walls.tolerance);
    // Where both run along one loop they come towards each other, and must not pass.
    const there = backward.filter(
      ({ wall }) => (rankOf.get(wall) ?? Infinity) > rank && boxesMeet(box, walls.boxes[wall] as Bounds),
    );
    const first = there
      .flatMap((q) => {
        const centers = restingPlaces(one, walls.list[q.wall] as Wall, radius);
        return centers.filter((c) => rests(p, c) && rests(q, c) && walls.hasRoom(c, radius));
      })
      .reduce<Point | null>((a, b) => (a !== null && alongWall(one, a) <= alongWall(one, b) ? a : b), null);
    if (first !== null) return first;
  }
  return null;
}

/** Part of a wall, between two places along it. */
interface Stretch {
  readonly wall: number;
  readonly low: number;
  readonly high: number;
}

/** The boundary from a place on, one way, until its loop is gone round or a wall is reached. */
function chain(
  walls: Walls,
  { wall, along }: Place,
  way: 'before' | 'after',
  until: number,
  slack: number,
): Stretch[] {
  const isAfter = way === 'after';
  const stretches: Stretch[] = [
    { wall, low: isAfter ? along - slack : -Infinity, high: isAfter ? Infinity : along + slack },
  ];
  for (let k = (walls.list[wall] as Wall)[way]; k !== until; k = (walls.list[k] as Wall)[way]) {
    if (k === wall) {
      stretches.push({ wall, low: isAfter ? -Infinity : along, high: isAfter ? along : Infinity });
      break;
    }
    if (stretches.length === REACH) break;
    stretches.push({ wall: k, low: -Infinity, high: Infinity });
  }
  return stretches;
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
