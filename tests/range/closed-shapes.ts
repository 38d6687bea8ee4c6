import type { Point } from '@edgebite/core';

/*
 * Places, lines and circles with plain formulas of their own: the scan of closed forms is to agree with the library
 * because both are right, so it takes nothing but types from it.
 */

/** A corner, or the centre of something. */
export interface Place {
  readonly kind: 'place';
  readonly at: Point;
}

/** A straight edge. */
export interface Line {
  readonly kind: 'line';
  readonly a: Point;
  readonly b: Point;
}

/** A circle, or a stretch of one. */
export interface Circle {
  readonly kind: 'circle';
  readonly center: Point;
  readonly radius: number;
  /** From `a` to `b`, counter-clockwise; null for all of the circle. */
  readonly arc: { readonly a: Point; readonly b: Point } | null;
}

export type Shape = Place | Line | Circle;

/** An end of shapes, or where they cross. */
export interface Corner {
  readonly at: Point;
  readonly of: readonly Shape[];
}

export const place = (at: Point): Place => ({ kind: 'place', at });
export const plus = (p: Point, q: Point, share = 1): Point => ({
  x: p.x + q.x * share,
  y: p.y + q.y * share,
});
export const minus = (p: Point, q: Point): Point => plus(p, q, -1);
export const dot = (p: Point, q: Point): number => p.x * q.x + p.y * q.y;
export const cross = (p: Point, q: Point): number => p.x * q.y - p.y * q.x;
export const far = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

/** The direction of a line, of length 1. */
export function along({ a, b }: Line): Point {
  const length = far(a, b);
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

/** Height of a place over a line, to its left. */
export function height(line: Line, p: Point): number {
  return cross(along(line), minus(p, line.a));
}

/** The foot of the perpendicular from a place to a line. */
export function foot(line: Line, p: Point): Point {
  const u = along(line);
  return plus(line.a, u, dot(minus(p, line.a), u));
}

/** A shape moved by a vector, its radius made larger. */
export function shifted(shape: Shape, by: Point, larger: number): Shape {
  if (shape.kind === 'place') return place(plus(shape.at, by));
  if (shape.kind === 'line') return { kind: 'line', a: plus(shape.a, by), b: plus(shape.b, by) };
  const { center, radius, arc } = shape;
  const moved = arc === null ? null : { a: plus(arc.a, by), b: plus(arc.b, by) };
  return { kind: 'circle', center: plus(center, by), radius: radius + larger, arc: moved };
}

/** Whether a place that is on the line or circle of a shape is on its stretch, or no farther from it than the slack. */
export function isOn(shape: Shape, p: Point, slack: number): boolean {
  if (shape.kind === 'place') return far(shape.at, p) <= slack;
  if (shape.kind === 'line') {
    const t = dot(minus(p, shape.a), along(shape));
    return t >= -slack && t <= far(shape.a, shape.b) + slack;
  }
  const { arc, center } = shape;
  if (arc === null || far(arc.a, p) <= slack || far(arc.b, p) <= slack) return true;
  return turn(minus(arc.a, center), minus(p, center)) <= turn(minus(arc.a, center), minus(arc.b, center));
}

/** How far one direction is turned, counter-clockwise, to be another: from 0 to 2 pi. */
function turn(from: Point, to: Point): number {
  const angle = Math.atan2(cross(from, to), dot(from, to));
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

/** Where two shapes cross or touch; nothing where they lie along each other. */
export function crossings(one: Shape, other: Shape, slack: number): Point[] {
  return onBoth(one, other, slack).filter((p) => isOn(one, p, slack) && isOn(other, p, slack));
}

function onBoth(one: Shape, other: Shape, slack: number): Point[] {
  if (one.kind === 'place' || other.kind === 'place') return [];
  if (one.kind === 'circle') {
    return other.kind === 'circle' ? ofCircles(one, other, slack) : onBoth(other, one, slack);
  }
  const u = along(one);
  if (other.kind === 'line') {
    const sine = cross(u, along(other));
    if (Math.abs(sine) < 1e-9) return [];
    return [plus(one.a, u, cross(minus(other.a, one.a), along(other)) / sine)];
  }
  const middle = foot(one, other.center);
  const half = halfChord(other.radius, far(middle, other.center), slack);
  return half === null ? [] : [plus(middle, u, half), plus(middle, u, -half)];
}

/** By the common chord, which is (d² + r² - q²) / 2d from the first centre. */
function ofCircles(one: Circle, other: Circle, slack: number): Point[] {
  const d = far(one.center, other.center);
  if (d <= slack) return [];
  const u = { x: (other.center.x - one.center.x) / d, y: (other.center.y - one.center.y) / d };
  const off = (d * d + (one.radius - other.radius) * (one.radius + other.radius)) / (2 * d);
  const half = halfChord(one.radius, Math.abs(off), slack);
  if (half === null) return [];
  const middle = plus(one.center, u, off);
  return [1, -1].map((side) => plus(middle, { x: -u.y, y: u.x }, side * half));
}

function halfChord(radius: number, off: number, slack: number): number | null {
  if (off > radius + slack) return null;
  return Math.sqrt(Math.max(0, (radius - off) * (radius + off)));
}
