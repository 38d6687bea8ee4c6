import { boxAround } from '../geometry/bounds.js';
import { directionAtEnd, directionAtStart } from '../geometry/measure.js';
import type { Point, Vector } from '../geometry/point.js';
import { turnBetween } from './interior-angle.js';
import {
  closing,
  leftOf,
  NEAR_JOINT,
  nearestOnWall,
  ROOM_SLACK,
  restsOn,
  SAME_DIRECTION,
  touchPoint,
  type Wall,
  type Walls,
} from './walls.js';

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
  if (!(thickness > walls.tolerance) || thickness >= limit) return null;
  const middle = { x: p.x + (q.x - p.x) / 2, y: p.y + (q.y - p.y) / 2 };
  const slack = walls.tolerance;
  if (!restsOn(one, middle, slack) || !restsOn(other, middle, slack)) return null;
  const facing = { one: i, other: j, p, q, middle, thickness };
  if (!widensBothWays(walls, facing) || !walls.hasRoom(middle, thickness / 2)) return null;
  return isAlone(walls, facing) ? facing : null;
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

/**
 * Below this share of the two terms their sum is 0: the walls run parallel, and the neck is part of a strip. Round
 * a hole in a round the share is the distance of the centres over the sum of the radii; a strip is told by its share
 * in the mean radius, which is twice that.
 */
const BALANCED = SAME_DIRECTION / 2;

/** A contact this far from the line across a neck, as a share of its radius, is a third one and not a neighbour. */
const ASIDE = 0.1;

/** How the boundary goes on from a place that a disc rests on, to one side. */
interface Course {
  /** Angle by which it turns at once towards the disc, radians; below 0 away from it. */
  readonly lean: number;
  /** How it curves after that, see `closing`. */
  readonly closing: number;
}

/**
 * Whether the metal gets thicker to both sides of a facing pair. To first order the thickness grows as the two
 * walls lean apart; to second order a disc that rolls along them grows by -(c1 + c2) s²/2 in diameter, where c is
 * the `closing` of each.
 */
function widensBothWays(walls: Walls, facing: Facing): boolean {
  const one = coursesFrom(walls, facing.one, facing.p, facing);
  const other = coursesFrom(walls, facing.other, facing.q, facing);
  // Ahead along one wall is back along the wall that faces it.
  return widens(one.after, other.before) && widens(one.before, other.after);
}

function widens(a: Course, b: Course): boolean {
  const lean = a.lean + b.lean;
  if (Math.abs(lean) > SAME_DIRECTION) return lean < 0;
  return a.closing + b.closing < -BALANCED * (Math.abs(a.closing) + Math.abs(b.closing));
}

/** The course of the boundary before and after a place on a wall: at the wall's ends it is the neighbour's. */
function coursesFrom(walls: Walls, number: number, at: Point, facing: Facing) {
  const radius = facing.thickness / 2;
  const wall = walls.list[number] as Wall;
  const inward = inwardAt(walls, number, facing);
  const along = { dx: inward.dy, dy: -inward.dx };
  const own: Course = { lean: 0, closing: closing(wall, radius) };
  const { before, after } = endsAt(walls, wall, at, along);
  return {
    before: before ? courseOf(walls.list[wall.before] as Wall, along, radius, 'before') : own,
    after: after ? courseOf(walls.list[wall.after] as Wall, along, radius, 'after') : own,
  };
}

/**
 * Unit vector into the metal where a facing pair rests on a wall. It follows from the wall, or from the one that it
 * faces, if one of them has a size of its own: the neck can be so thin that, far from the origin, the rounding of its
 * two ends would turn it.
 */
function inwardAt(walls: Walls, number: number, { one, other, p, q, middle, thickness }: Facing): Vector {
  const [at, facing, facingAt] = number === one ? [p, other, q] : [q, one, p];
  const own = normalOf(walls.list[number] as Wall, at);
  if (own !== null) return own;
  const across = normalOf(walls.list[facing] as Wall, facingAt);
  if (across !== null) return { dx: -across.dx, dy: -across.dy };
  return { dx: (2 * (middle.x - at.x)) / thickness, dy: (2 * (middle.y - at.y)) / thickness };
}

/** Unit vector into the metal at a place on a wall; null for a corner, which has none of its own. */
function normalOf(wall: Wall, at: Point): Vector | null {
  if (wall.shape === 'flat') return wall.normal;
  if (wall.shape === 'corner') return null;
  const inward = wall.side > 0 ? -1 : 1;
  return {
    dx: (inward * (at.x - wall.center.x)) / wall.radius,
    dy: (inward * (at.y - wall.center.y)) / wall.radius,
  };
}

/** Whether a place on a wall is its start, where the wall before it takes over, or its end. */
function endsAt(walls: Walls, wall: Wall, at: Point, along: Vector): { before: boolean; after: boolean } {
  if (wall.shape === 'corner') {
    const { normalBefore, normalAfter } = wall;
    const normal = leftOf(along);
    return {
      before: Math.abs(turnBetween(normal, normalBefore)) <= 2 * SAME_DIRECTION,
      after: Math.abs(turnBetween(normal, normalAfter)) <= 2 * SAME_DIRECTION,
    };
  }
  const near = NEAR_JOINT * walls.tolerance;
  const { a, b } = wall.edge;
  return {
    before: Math.hypot(at.x - a.x, at.y - a.y) <= near,
    after: Math.hypot(at.x - b.x, at.y - b.y) <= near,
  };
}

function courseOf(wall: Wall, along: Vector, radius: number, side: 'before' | 'after'): Course {
  const curve = closing(wall, radius);
  // A disc rolls round a corner that points into metal: it leans by nothing and curves away.
  if (wall.shape === 'corner') return { lean: 0, closing: curve };
  const lean =
    side === 'after'
      ? turnBetween(along, directionAtStart(wall.edge))
      : -turnBetween(along, directionAtEnd(wall.edge));
  return { lean, closing: curve };
}

/**
 * Whether the disc across a facing pair is one of metal that touches nothing aside. Where it touches a third place
 * the metal narrows towards that: between four holes on a square it is thickest, though two of them face each other
 * there. And where holes touch, the pair may face each other across the one between them.
 */
function isAlone(walls: Walls, facing: Facing): boolean {
  const { one, other, p, q, middle, thickness } = facing;
  const radius = thickness / 2;
  const reach = radius + ROOM_SLACK * walls.tolerance;
  const box = boxAround(middle, reach);
  const own = [one, other].map((k) => walls.list[k] as Wall);
  let hasStranger = false;
  for (const k of walls.near(box)) {
    if (k === one || k === other) continue;
    const { at, distance } = nearestOnWall(walls.list[k] as Wall, middle);
    if (distance > reach) continue;
    const aside = (at.x - middle.x) * (q.y - p.y) - (at.y - middle.y) * (q.x - p.x);
    if (Math.abs(aside) > ASIDE * radius * thickness) return false;
    if (!own.some(({ before, after }) => k === before || k === after)) hasStranger = true;
  }
  return !hasStranger || walls.isMetal(middle);
}
