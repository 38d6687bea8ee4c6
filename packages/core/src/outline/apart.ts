import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';

/**
 * Whether two edges are further apart than `gap` as a few multiplications can tell; false if it takes a closer
 * look. Spares nearly all pairs of a tangle the exact intersection.
 */
export function surelyApart(e: Edge, f: Edge, gap: number): boolean {
  if (e.kind === 'line') {
    return f.kind === 'line' ? onOneSide(e, f, gap) || onOneSide(f, e, gap) : lineOffCircle(e, f, gap);
  }
  return f.kind === 'line' ? lineOffCircle(f, e, gap) : circlesApart(e, f, gap);
}

/** How far a point lies to the left of a line, times the length of the line. */
function leftOf({ a, b }: LineEdge, p: Point): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

/** Square of a distance: roots would take most of the time here. */
function squared(a: Point, b: Point): number {
  return (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
}

function onOneSide(line: LineEdge, other: LineEdge, gap: number): boolean {
  const p = leftOf(line, other.a);
  const q = leftOf(line, other.b);
  if (p > 0 !== q > 0) return false;
  return Math.min(p * p, q * q) > gap * gap * squared(line.a, line.b);
}

/** Whether a line passes its arc's circle by, or stays inside of it. */
function lineOffCircle(line: LineEdge, { center, radius }: ArcEdge, gap: number): boolean {
  const off = leftOf(line, center);
  const outer = radius + gap;
  if (off * off > outer * outer * squared(line.a, line.b)) return true;
  const inner = Math.max(0, radius - gap);
  return Math.max(squared(line.a, center), squared(line.b, center)) < inner * inner;
}

/** Whether the circles of two arcs pass each other by, or lie one inside the other. */
function circlesApart(e: ArcEdge, f: ArcEdge, gap: number): boolean {
  const away = squared(e.center, f.center);
  const outer = e.radius + f.radius + gap;
  const inner = Math.max(0, Math.abs(e.radius - f.radius) - gap);
  return away > outer * outer || away < inner * inner;
}
