import type { ArcEdge, Edge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import { gapTo, lengthOf, placeAt, span, turnOf, turnTo } from './probe.js';

/** What is closer than this share of the weld tolerance, welding must have joined. */
const TOUCH_SHARE = 0.4;

/**
 * What is wrong between two edges of one region, or null. Edges may share end points and nothing else:
 * they must not cross, must not run along each other, and where they touch there must be a joint of both.
 * Anything shallower than `slack` counts as contact, since welding moves joints by that much.
 * @param weld the weld tolerance
 */
export function conflict(e: Edge, f: Edge, slack: number, weld: number): string | null {
  const near = weld * TOUCH_SHARE;
  if (sameEnds(e, f) && span(placeAt(e, 0.5), placeAt(f, 0.5)) <= near) return 'run along each other';
  return (
    touchWithoutJoint(e, f, near, slack) ?? touchWithoutJoint(f, e, near, slack) ?? crossing(e, f, slack)
  );
}

function sameEnds(e: Edge, f: Edge): boolean {
  return (samePoint(e.a, f.a) && samePoint(e.b, f.b)) || (samePoint(e.a, f.b) && samePoint(e.b, f.a));
}

/** Ends of an edge on another one. Beside an end that welding has moved off its circle, the circle is not the edge. */
function touchWithoutJoint(e: Edge, f: Edge, near: number, slack: number): string | null {
  for (const p of [f.a, f.b]) {
    if (samePoint(p, e.a) || samePoint(p, e.b)) continue;
    const away = Math.min(span(p, e.a), span(p, e.b));
    if (away <= near || (away > slack && gapTo(e, p) <= near))
      return `touch at (${p.x}, ${p.y}) without a common joint`;
  }
  return null;
}

/** A crossing: on both sides of a common place, `f` leaves `e` by more than the slack, to opposite sides. */
function crossing(e: Edge, f: Edge, slack: number): string | null {
  const places = commonPlaces(e, f).filter((p) => within(e, p) && within(f, p));
  for (const p of places) {
    const others = [e.a, e.b, f.a, f.b, ...places.filter((q) => q !== p)];
    const reach = Math.min(...others.map((q) => span(p, q)));
    if (!(reach > slack)) continue;
    const step = reach / 2 / lengthOf(f);
    const t = shareOf(f, p);
    const before = sideOf(e, placeAt(f, t - step));
    const after = sideOf(e, placeAt(f, t + step));
    if (before * after < 0 && Math.min(Math.abs(before), Math.abs(after)) > slack) {
      return `cross at (${p.x}, ${p.y})`;
    }
  }
  return null;
}

/** How far a place lies to the left of the line or circle that carries an edge. */
function sideOf(edge: Edge, p: Point): number {
  if (edge.kind === 'arc') return span(edge.center, p) - edge.radius;
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  return (dx * (p.y - edge.a.y) - dy * (p.x - edge.a.x)) / Math.hypot(dx, dy);
}

function shareOf(edge: Edge, p: Point): number {
  if (edge.kind === 'arc') return turnTo(edge, p) / turnOf(edge);
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  return ((p.x - edge.a.x) * dx + (p.y - edge.a.y) * dy) / (dx * dx + dy * dy);
}

function within(edge: Edge, p: Point): boolean {
  const share = shareOf(edge, p);
  return share > 0 && share < 1;
}

/** Where the lines or circles that carry two edges meet. */
function commonPlaces(e: Edge, f: Edge): Point[] {
  if (e.kind === 'line') return f.kind === 'line' ? linesMeet(e, f) : lineMeetsCircle(e, f);
  return f.kind === 'line' ? lineMeetsCircle(f, e) : circlesMeet(e, f);
}

function linesMeet(e: Edge, f: Edge): Point[] {
  const ex = e.b.x - e.a.x;
  const ey = e.b.y - e.a.y;
  const fx = f.b.x - f.a.x;
  const fy = f.b.y - f.a.y;
  const cross = ex * fy - ey * fx;
  if (cross === 0) return [];
  const t = ((f.a.x - e.a.x) * fy - (f.a.y - e.a.y) * fx) / cross;
  return [{ x: e.a.x + ex * t, y: e.a.y + ey * t }];
}

function lineMeetsCircle(line: Edge, arc: ArcEdge): Point[] {
  const length = span(line.a, line.b);
  const ux = (line.b.x - line.a.x) / length;
  const uy = (line.b.y - line.a.y) / length;
  const cx = arc.center.x - line.a.x;
  const cy = arc.center.y - line.a.y;
  const off = ux * cy - uy * cx;
  const half = (arc.radius - off) * (arc.radius + off);
  if (half < 0) return [];
  const along = ux * cx + uy * cy;
  const root = Math.sqrt(half);
  return [along - root, along + root].map((t) => ({ x: line.a.x + ux * t, y: line.a.y + uy * t }));
}

function circlesMeet(e: ArcEdge, f: ArcEdge): Point[] {
  const d = span(e.center, f.center);
  if (d === 0) return [];
  const ux = (f.center.x - e.center.x) / d;
  const uy = (f.center.y - e.center.y) / d;
  const along = (d + ((e.radius - f.radius) * (e.radius + f.radius)) / d) / 2;
  const half = (e.radius - along) * (e.radius + along);
  if (half < 0) return [];
  const root = Math.sqrt(half);
  return [root, -root].map((h) => ({
    x: e.center.x + ux * along - uy * h,
    y: e.center.y + uy * along + ux * h,
  }));
}
