import { distance, type Point, type Vector } from '../geometry/point.js';
import { rollingOn } from './rolling.js';
import { alongWall, nearestOnWall, ROOM_SLACK, type Wall, type Walls } from './walls.js';

/** So many walls are passed at most, as many as are looked along for the disc at the end. */
const MOST_STEPS = 2 * 8192;

/** Lengths are worked out to this share of themselves. */
const PRECISE = 1e-11;

/** A stretch is halved so often at most in search of that. */
const MOST_HALVINGS = 20;

/** A place where a disc rests on two walls: how far along the first, and the number of each. */
export interface Rest {
  readonly one: number;
  readonly along: number;
  readonly other: number;
}

/**
 * Length of the mid-line of the metal, from a disc that rests on two walls to one further on: ahead along the first wall
 * and back along the second. The mid-line of two walls is the path of the centre of the disc that touches both: a line
 * between two lines, a parabola between a line and an arc or corner, an ellipse or hyperbola between two of these. Where
 * the disc comes to the end of a wall, the next one takes its place.
 *
 * The centre follows from the place on one wall in closed form, and its speed too; that is integrated by the rule of Gauss
 * and Legendre in five points, halved until it no longer changes. Where the metal forks on the way, the rest is taken straight.
 * Source: Blum, "A transformation for extracting new descriptors of shape" (1967), on the mid-line; the rule: Abramowitz and
 * Stegun, 25.4.29.
 * @param from its middle is `middle`
 * @param center where the mid-line ends: the centre of a disc of a radius
 */
export function midlineLength(
  walls: Walls,
  from: Rest,
  middle: Point,
  center: Point,
  radius: number,
): number {
  const slack = ROOM_SLACK * walls.tolerance;
  const rests = (wall: Wall) => Math.abs(nearestOnWall(wall, center).distance - radius) <= slack;
  let { one, along: s, other } = from;
  let at = middle;
  let length = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const a = walls.list[one] as Wall;
    const b = walls.list[other] as Wall;
    const end = alongWall(a, center);
    if (rests(a) && rests(b) && end >= s - slack) return length + between(a, b, s, end);
    const ofOne = (rollingOn(a, 0) as { length: number }).length;
    // Back along the second wall, its start comes last.
    const last = centerOn(b, a, 0).center;
    const ofOther = alongWall(a, last);
    const isOther = ofOther >= s - slack && ofOther < ofOne;
    const to = isOther ? ofOther : ofOne;
    const next = isOther ? last : centerOn(a, b, to).center;
    const size = distance(next, isOther ? nearestOnWall(b, next).at : nearestOnWall(a, next).at);
    if (!(size <= radius + slack)) break;
    length += between(a, b, s, to);
    at = next;
    if (isOther) {
      other = b.before;
      s = to;
    } else {
      one = a.after;
      s = 0;
    }
  }
  return length + distance(at, center);
}

interface Moving {
  readonly center: Point;
  /** How fast the centre goes as the place on the wall does. */
  readonly speed: number;
}

/** The disc that touches one wall at a place along it, and another, both run on past their ends. */
function centerOn(wall: Wall, other: Wall, along: number): Moving {
  const { p, n, dp, dn } = contactOn(wall, along);
  const [size, growth] =
    other.shape === 'flat'
      ? toFlat(other.edge.a, other.normal)
      : toRound(other.center, other.radius, other.side);
  const vx = dp.dx + growth * n.dx + size * dn.dx;
  const vy = dp.dy + growth * n.dy + size * dn.dy;
  return { center: { x: p.x + size * n.dx, y: p.y + size * n.dy }, speed: Math.hypot(vx, vy) };

  /** Radius of the disc that touches a line, and how it grows: the distance to the line is the radius. */
  function toFlat(a: Point, m: Vector): readonly [number, number] {
    const above = (p.x - a.x) * m.dx + (p.y - a.y) * m.dy;
    const lean = 1 - (n.dx * m.dx + n.dy * m.dy);
    const rise = dp.dx * m.dx + dp.dy * m.dy;
    const turn = -(dn.dx * m.dx + dn.dy * m.dy);
    return [above / lean, (rise * lean - above * turn) / lean ** 2];
  }

  /** The same for a circle: the square of the distance to its centre is that of its radius less or more that of the disc. */
  function toRound(c: Point, radius: number, side: 1 | -1): readonly [number, number] {
    const [wx, wy] = [p.x - c.x, p.y - c.y];
    const reach = Math.hypot(wx, wy);
    const gap = (radius - reach) * (radius + reach);
    const lean = 2 * (n.dx * wx + n.dy * wy + radius * side);
    const closes = -2 * (wx * dp.dx + wy * dp.dy);
    const turn = 2 * (dn.dx * wx + dn.dy * wy + n.dx * dp.dx + n.dy * dp.dy);
    return [gap / lean, (closes * lean - gap * turn) / lean ** 2];
  }
}

/** A place on a wall, the direction from there into the metal, and how both change along the wall. */
function contactOn(wall: Wall, along: number): { p: Point; n: Vector; dp: Vector; dn: Vector } {
  if (wall.shape === 'flat') {
    const { a } = wall.edge;
    const p = { x: a.x + wall.along.dx * along, y: a.y + wall.along.dy * along };
    return { p, n: wall.normal, dp: wall.along, dn: { dx: 0, dy: 0 } };
  }
  const { center, radius, side } = wall;
  if (wall.shape === 'corner') {
    const n = turned(wall.normalBefore, -along);
    return { p: center, n, dp: { dx: 0, dy: 0 }, dn: { dx: n.dy, dy: -n.dx } };
  }
  const { a } = wall.edge;
  const u = turned({ dx: (a.x - center.x) / radius, dy: (a.y - center.y) / radius }, (side * along) / radius);
  return {
    p: { x: center.x + u.dx * radius, y: center.y + u.dy * radius },
    n: { dx: -side * u.dx, dy: -side * u.dy },
    dp: { dx: -side * u.dy, dy: side * u.dx },
    dn: { dx: u.dy / radius, dy: -u.dx / radius },
  };
}

function turned({ dx, dy }: Vector, angle: number): Vector {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { dx: dx * cos - dy * sin, dy: dx * sin + dy * cos };
}

/** Length of the mid-line between two places along a wall. */
function between(wall: Wall, other: Wall, from: number, to: number): number {
  if (!(to > from)) return 0;
  const speed = (s: number) => centerOn(wall, other, s).speed;
  return halved(speed, from, to, gauss(speed, from, to), MOST_HALVINGS);
}

function halved(
  speed: (s: number) => number,
  from: number,
  to: number,
  whole: number,
  depth: number,
): number {
  const middle = from + (to - from) / 2;
  const [left, right] = [gauss(speed, from, middle), gauss(speed, middle, to)];
  const sum = left + right;
  if (depth === 0 || !(Math.abs(sum - whole) > PRECISE * sum)) return sum;
  return halved(speed, from, middle, left, depth - 1) + halved(speed, middle, to, right, depth - 1);
}

/** Places and weights of the rule in five points, from -1 to 1. */
const RULE = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const;

function gauss(f: (s: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = 0;
  for (const [place, weight] of RULE) {
    sum += weight * (place === 0 ? f(middle) : f(middle - place * half) + f(middle + place * half));
  }
  return sum * half;
}
