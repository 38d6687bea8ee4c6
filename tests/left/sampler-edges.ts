import type { ArcEdge, Edge, Point } from '@edgebite/core';

/* The sampler's own geometry of single edges: how large a disc may grow before it touches one. */

/** An edge with what is asked of it again and again. */
export type Obstacle = LineObstacle | ArcObstacle;

interface LineObstacle {
  readonly kind: 'line';
  readonly a: Point;
  readonly b: Point;
  /** Unit direction, and length. */
  readonly along: Point;
  readonly length: number;
}

interface ArcObstacle {
  readonly kind: 'arc';
  readonly a: Point;
  readonly b: Point;
  readonly center: Point;
  readonly radius: number;
  readonly ccw: boolean;
  /** Angle at which it starts, and by how much it turns, over 0. */
  readonly start: number;
  readonly turn: number;
}

/** Prepares an edge. */
export function obstacleOf(edge: Edge): Obstacle {
  const { a, b } = edge;
  if (edge.kind === 'line') {
    const length = gap(a, b);
    return { kind: 'line', a, b, along: { x: (b.x - a.x) / length, y: (b.y - a.y) / length }, length };
  }
  const { center, radius, ccw } = edge;
  return { kind: 'arc', a, b, center, radius, ccw, start: angleOf(center, a), turn: Math.abs(sweepOf(edge)) };
}

/** A disc that grows within a rounded end can grow to its radius. */
export function ownRadius(edge: Edge): number {
  return edge.kind === 'arc' && edge.ccw ? edge.radius : Infinity;
}

/** Radius of the disc with its centre on the normal through the foot that also passes through a place. */
export function toPoint(foot: Point, normal: Point, x: Point, near: number): number {
  const dx = x.x - foot.x;
  const dy = x.y - foot.y;
  const square = dx * dx + dy * dy;
  const up = dx * normal.x + dy * normal.y;
  if (square < near * near || up <= 0) return Infinity;
  return square / (2 * up);
}

/**
 * Radius of the disc with its centre on the normal through the foot that touches an edge away from its ends; Infinity
 * if there is none smaller than `most`, or if it touches within `near` of the foot.
 */
export function toEdge(foot: Point, normal: Point, edge: Obstacle, near: number, most: number): number {
  return edge.kind === 'line'
    ? toLine(foot, normal, edge, near, most)
    : toArc(foot, normal, edge, near, most);
}

function toLine(foot: Point, normal: Point, line: LineObstacle, near: number, most: number): number {
  const { a, along: u, length } = line;
  let height = (foot.x - a.x) * -u.y + (foot.y - a.y) * u.x;
  let rise = normal.x * -u.y + normal.y * u.x;
  if (height < 0) [height, rise] = [-height, -rise];
  if (1 - rise < 1e-15) return Infinity;
  const radius = height / (1 - rise);
  if (!(radius < most)) return Infinity;
  const s = (foot.x + normal.x * radius - a.x) * u.x + (foot.y + normal.y * radius - a.y) * u.y;
  if (!(s >= 0 && s <= length) || gap(foot, along(a, u, s)) < near) return Infinity;
  return radius;
}

function toArc(foot: Point, normal: Point, arc: ArcObstacle, near: number, most: number): number {
  const vx = foot.x - arc.center.x;
  const vy = foot.y - arc.center.y;
  const room = arc.radius * arc.radius - vx * vx - vy * vy;
  const up = vx * normal.x + vy * normal.y;
  let best = most;
  for (const side of [1, -1]) {
    const radius = room / (2 * (up + side * arc.radius));
    if (!(radius > 0) || radius >= best) continue;
    const center = along(foot, normal, radius);
    const away = gap(center, arc.center);
    if (away === 0) continue;
    // Within the circle (or round it) it touches on the far side of the disc's centre, outside on the near side.
    const reach = (side > 0 && radius > arc.radius ? -arc.radius : arc.radius) / away;
    const touch = {
      x: arc.center.x + (center.x - arc.center.x) * reach,
      y: arc.center.y + (center.y - arc.center.y) * reach,
    };
    if (turnTo(arc, touch) > arc.turn || gap(touch, foot) < near) continue;
    best = radius;
  }
  return best < most ? best : Infinity;
}

/** Distance from a place to an edge. */
export function distanceTo(edge: Obstacle, p: Point): number {
  const ends = Math.min(gap(edge.a, p), gap(edge.b, p));
  if (edge.kind === 'arc') {
    return turnTo(edge, p) <= edge.turn ? Math.min(ends, Math.abs(gap(edge.center, p) - edge.radius)) : ends;
  }
  const { a, along: u, length } = edge;
  const s = (p.x - a.x) * u.x + (p.y - a.y) * u.y;
  return s > 0 && s < length ? Math.abs((p.x - a.x) * -u.y + (p.y - a.y) * u.x) : ends;
}

/** Signed angle of an arc from its start to its end. */
export function sweepOf(arc: ArcEdge): number {
  const turned = turnTo({ ...arc, start: angleOf(arc.center, arc.a) }, arc.b);
  return arc.ccw ? turned : -turned;
}

/** Angle from the start of an arc to the direction of a place, the way the arc runs, 0 to 2 pi. */
export function turnTo(arc: Pick<ArcObstacle, 'center' | 'ccw' | 'start'>, p: Point): number {
  const to = angleOf(arc.center, p);
  const angle = arc.ccw ? to - arc.start : arc.start - to;
  return angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
}

/** Direction from one place to another, as an angle. */
export function angleOf(from: Point, to: Point): number {
  return Math.atan2(to.y - from.y, to.x - from.x);
}

/** The place reached from `p` by going along a direction. */
export function along(p: Point, n: Point, by: number): Point {
  return { x: p.x + n.x * by, y: p.y + n.y * by };
}

/** Distance between two places. */
export function gap(p: Point, q: Point): number {
  const dx = p.x - q.x;
  const dy = p.y - q.y;
  return Math.sqrt(dx * dx + dy * dy);
}
