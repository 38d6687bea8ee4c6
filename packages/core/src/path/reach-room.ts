import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';

/** The largest disc that touches a place of a wall, and where something stops it from being larger. */
export interface Room {
  readonly radius: number;
  readonly stop: Point;
}

/**
 * The largest disc on one side of a wall that touches it at a place and does not cross an edge; null where the edge
 * stops none. Its centre is c = p + r n.
 *
 * Source: solved for r. An end q of the edge is on the circle when |c - q| = r, so r = |q - p|^2 / (2 n (q - p)). A
 * line with the normal m, p being h before it, is touched when h + r n m = r. With w from the centre of an arc of
 * radius R to p, the circles touch when |w + r n| = R + r, or R - r if p lies inside: both give
 * r = (|w|^2 - R^2) / (2 (R - n w)), with R below 0 in the second case.
 * @param n unit vector upright on the wall, to the side of the disc
 * @param tolerance what rises above the wall by no more than this is part of it, or rounding
 */
export function roomAt(p: Point, n: Vector, edge: Edge, tolerance: number): Room | null {
  let best: Room | null = null;
  const take = (radius: number, stop: Point) => {
    const rises = n.dx * (stop.x - p.x) + n.dy * (stop.y - p.y) > tolerance;
    if (rises && radius > 0 && radius < (best?.radius ?? Infinity)) best = { radius, stop };
  };
  for (const end of [edge.a, edge.b]) {
    const height = n.dx * (end.x - p.x) + n.dy * (end.y - p.y);
    if (height > tolerance) take(distance(p, end) ** 2 / (2 * height), end);
  }
  if (edge.kind === 'line') touchingLine(p, n, edge, tolerance, take);
  else touchingArc(p, n, edge, tolerance, take);
  return best;
}

type Take = (radius: number, stop: Point) => void;

function touchingLine(p: Point, n: Vector, { a, b }: LineEdge, tolerance: number, take: Take): void {
  const length = distance(a, b);
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const left = ux * (p.y - a.y) - uy * (p.x - a.x);
  const before = Math.abs(left);
  if (before <= tolerance) return;
  const side = Math.sign(left);
  const m = { dx: -uy * side, dy: ux * side };
  const closing = 1 - (n.dx * m.dx + n.dy * m.dy);
  if (!(closing > 0)) return;
  const radius = before / closing;
  const stop = moved(moved(p, n, radius), m, -radius);
  const along = ux * (stop.x - a.x) + uy * (stop.y - a.y);
  if (along > 0 && along < length) take(radius, stop);
}

function touchingArc(p: Point, n: Vector, arc: ArcEdge, tolerance: number, take: Take): void {
  const wx = p.x - arc.center.x;
  const wy = p.y - arc.center.y;
  const away = Math.hypot(wx, wy);
  const off = away - arc.radius;
  if (Math.abs(off) <= tolerance) return;
  const signed = off > 0 ? arc.radius : -arc.radius;
  const closing = signed - (n.dx * wx + n.dy * wy);
  if (closing === 0) return;
  const radius = (off * (away + arc.radius)) / (2 * closing);
  if (!(radius > 0)) return;
  const c = moved(p, n, radius);
  const reach = distance(arc.center, c);
  if (reach === 0) return;
  const scale = arc.radius / reach;
  const stop = {
    x: arc.center.x + (c.x - arc.center.x) * scale,
    y: arc.center.y + (c.y - arc.center.y) * scale,
  };
  if (onArcSide(arc, stop)) take(radius, stop);
}
