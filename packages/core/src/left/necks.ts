import type { Point } from '../geometry/point.js';
import { closing, restsOn, SAME_DIRECTION, touchPoint, type Wall, type Walls } from './walls.js';

/** Two places of the boundary that face each other, and the walls that they lie on. */
export interface Facing {
  readonly one: number;
  readonly other: number;
  readonly p: Point;
  readonly q: Point;
  readonly middle: Point;
  readonly thickness: number;
}

/**
 * The neck between two walls, if there is one: the segment that stands upright on both, where the metal is
 * thinnest. Metal is thinnest only next to a wall that curves away from it (a hole or a reflex corner), on the
 * line through the two centres: between two rounded ends that bulge outward, and on the far side of an
 * eccentric hole, it is thickest there.
 */
export function neckBetween(walls: Walls, i: number, j: number, limit: number): Facing | null {
  const one = walls.list[i] as Wall;
  const other = walls.list[j] as Wall;
  const found =
    one.shape === 'flat'
      ? onFlat(one, other)
      : other.shape === 'flat'
        ? swap(onFlat(other, one))
        : onRound(one, other);
  if (found === null) return null;
  const { p, q } = found;
  const thickness = found.thickness;
  if (!(thickness > 2 * walls.tolerance) || thickness >= limit) return null;
  const middle = { x: p.x + (q.x - p.x) / 2, y: p.y + (q.y - p.y) / 2 };
  const slack = walls.tolerance;
  if (!restsOn(one, middle, slack) || !restsOn(other, middle, slack)) return null;
  const facing = { one: i, other: j, p, q, middle, thickness };
  return widensBothWays(walls, facing) && walls.hasRoom(middle, thickness / 2) ? facing : null;
}

interface Found {
  readonly p: Point;
  readonly q: Point;
  readonly thickness: number;
}

function swap(found: Found | null): Found | null {
  return found === null ? null : { p: found.q, q: found.p, thickness: found.thickness };
}

function onFlat(flat: Wall & { shape: 'flat' }, round: Wall): Found | null {
  if (round.shape === 'flat' || round.side > 0) return null;
  const { a } = flat.edge;
  const height = (round.center.x - a.x) * flat.normal.dx + (round.center.y - a.y) * flat.normal.dy;
  return {
    p: touchPoint(flat, round.center),
    q: {
      x: round.center.x - flat.normal.dx * round.radius,
      y: round.center.y - flat.normal.dy * round.radius,
    },
    thickness: height - round.radius,
  };
}

function onRound(
  one: Exclude<Wall, { shape: 'flat' }>,
  other: Exclude<Wall, { shape: 'flat' }>,
): Found | null {
  if (one.side > 0 && other.side > 0) return null;
  const dx = other.center.x - one.center.x;
  const dy = other.center.y - one.center.y;
  const d = Math.hypot(dx, dy);
  if (d === 0) return null;
  // Between two holes the neck lies between the centres; within a rounded end it lies away from its centre.
  const way = one.side === other.side ? 1 : -1;
  const p = -one.side * way;
  const q = other.side * way;
  return {
    p: { x: one.center.x + (p * one.radius * dx) / d, y: one.center.y + (p * one.radius * dy) / d },
    q: { x: other.center.x + (q * other.radius * dx) / d, y: other.center.y + (q * other.radius * dy) / d },
    thickness: way * d + one.side * one.radius + other.side * other.radius,
  };
}

/** Below this share of the two terms their sum is 0: the walls run parallel, and the neck is part of a strip. */
const BALANCED = SAME_DIRECTION;

/**
 * Whether the metal gets thicker to both sides of a facing pair. To second order a disc that rolls along two walls
 * grows by -(c1 + c2) s²/2 in diameter, where c is the `closing` of each.
 */
function widensBothWays(walls: Walls, facing: Facing): boolean {
  const radius = facing.thickness / 2;
  const one = sidesOf(walls, facing.one, facing.p, facing.middle, radius);
  const other = sidesOf(walls, facing.other, facing.q, facing.middle, radius);
  // Ahead along one wall is back along the wall that faces it.
  return widens(one.after, other.before) && widens(one.before, other.after);
}

function widens(a: number, b: number): boolean {
  return a + b < -BALANCED * (Math.abs(a) + Math.abs(b));
}

/** The closing of the boundary just before and just after a place of a wall: at its ends it is the neighbour's. */
function sidesOf(walls: Walls, number: number, at: Point, middle: Point, radius: number) {
  const wall = walls.list[number] as Wall;
  const own = closing(wall, radius);
  let before = own;
  let after = own;
  if (wall.shape === 'corner') {
    const ux = (middle.x - at.x) / radius;
    const uy = (middle.y - at.y) / radius;
    const { normalBefore: n0, normalAfter: n1 } = wall;
    if (Math.abs(ux * n0.dy - uy * n0.dx) <= 2 * SAME_DIRECTION)
      before = closing(walls.list[wall.before] as Wall, radius);
    if (Math.abs(ux * n1.dy - uy * n1.dx) <= 2 * SAME_DIRECTION)
      after = closing(walls.list[wall.after] as Wall, radius);
  } else {
    const near = 4 * walls.tolerance;
    const { a, b } = wall.edge;
    if (Math.hypot(at.x - a.x, at.y - a.y) <= near) before = closing(walls.list[wall.before] as Wall, radius);
    if (Math.hypot(at.x - b.x, at.y - b.y) <= near) after = closing(walls.list[wall.after] as Wall, radius);
  }
  return { before, after };
}
