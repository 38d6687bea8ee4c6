import type { Point } from '../geometry/point.js';
import { restsOn, type Wall, type Walls } from './walls.js';

/**
 * How many walls on either side are tried for a disc to rest on, when it is too large for the first ones. Past so
 * many short edges a disc that is looked for has other neighbours, and its place says nothing on this spot.
 */
const REACH = 8;

/**
 * The centre nearest to `from` of a disc that rests on two walls, the first of them `one` or one further along the
 * loop, the second `other` or one further back, with no boundary inside it.
 * @param isAhead which centres count
 * @returns null where there is no such disc: the metal ends before it is that wide
 */
export function discBetween(
  walls: Walls,
  one: number,
  other: number,
  radius: number,
  from: Point,
  isAhead: (center: Point) => boolean,
): Point | null {
  const forward = chain(walls, one, 'after');
  const backward = chain(walls, other, 'before');
  let best: Point | null = null;
  let nearest = Infinity;
  for (const p of forward) {
    for (const q of backward) {
      if (p === q) continue;
      for (const center of restingPlaces(walls.list[p] as Wall, walls.list[q] as Wall, radius)) {
        const away = Math.hypot(center.x - from.x, center.y - from.y);
        if (away >= nearest || !isAhead(center)) continue;
        const slack = walls.tolerance * 4;
        if (!restsOn(walls.list[p] as Wall, center, slack) || !restsOn(walls.list[q] as Wall, center, slack))
          continue;
        if (!walls.hasRoom(center, radius)) continue;
        best = center;
        nearest = away;
      }
    }
  }
  return best;
}

function chain(walls: Walls, first: number, way: 'before' | 'after'): number[] {
  const numbers = [first];
  for (let k = first; numbers.length < REACH; numbers.push(k)) {
    k = (walls.list[k] as Wall)[way];
    if (k === first) break;
  }
  return numbers;
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
