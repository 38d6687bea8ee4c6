/** A place in the plane, in the unit of the job. y points up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A displacement between two places. A type of its own, so that places are never added up by mistake. */
export interface Vector {
  readonly dx: number;
  readonly dy: number;
}

/** The displacement that leads from `a` to `b`. */
export function vector(a: Point, b: Point): Vector {
  return { dx: b.x - a.x, dy: b.y - a.y };
}

/** The place reached from `p` along `v`, taken `times` over. */
export function moved(p: Point, v: Vector, times = 1): Point {
  return { x: p.x + v.dx * times, y: p.y + v.dy * times };
}

/** Distance between two places, without overflow on the way. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** The place halfway between two others. */
export function midpoint(a: Point, b: Point): Point {
  return { x: a.x + (b.x - a.x) / 2, y: a.y + (b.y - a.y) / 2 };
}

/** Exact equality of both coordinates: joints are shared to the last bit, so nothing weaker is needed. */
export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
