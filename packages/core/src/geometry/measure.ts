import type { Bounds } from './bounds.js';
import { isWithinTurn } from './curves.js';
import type { ArcEdge, Edge } from './edge.js';
import { distance, type Point, type Vector } from './point.js';

/** Angle turned through by an arc, in radians, over 0 and under 2 pi. */
export function sweep(arc: ArcEdge): number {
  const turned = signedAngle(arc);
  if (arc.ccw) return turned > 0 ? turned : turned + 2 * Math.PI;
  return turned < 0 ? -turned : 2 * Math.PI - turned;
}

/** Angle from the start to the end of an arc as seen from its centre, counter-clockwise, from -pi to pi. */
function signedAngle(arc: ArcEdge): number {
  const ux = arc.a.x - arc.center.x;
  const uy = arc.a.y - arc.center.y;
  const vx = arc.b.x - arc.center.x;
  const vy = arc.b.y - arc.center.y;
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Length of an edge along itself. */
export function edgeLength(edge: Edge): number {
  return edge.kind === 'line' ? distance(edge.a, edge.b) : edge.radius * sweep(edge);
}

/**
 * Area between an arc and its chord: r² (t - sin t) / 2 for a sweep t, over 0 for a counter-clockwise arc.
 * Source: Machinery's Handbook, 31st ed., "Formulas for Segments of a Circle".
 */
export function segmentArea(arc: ArcEdge): number {
  const area = (arc.radius * arc.radius * sineExcess(sweep(arc))) / 2;
  return arc.ccw ? area : -area;
}

/** t - sin t; by its series where the difference would cancel. */
export function sineExcess(t: number): number {
  if (Math.abs(t) > 0.5) return t - Math.sin(t);
  const t2 = t * t;
  let term = (t * t2) / 6;
  let sum = term;
  for (let n = 5; Math.abs(term) > Math.abs(sum) * 1e-17; n += 2) {
    term *= -t2 / ((n - 1) * n);
    sum += term;
  }
  return sum;
}

/** Unit direction of travel at the start of an edge. */
export function directionAtStart(edge: Edge): Vector {
  return edge.kind === 'line' ? unit(edge.a, edge.b) : tangent(edge, edge.a);
}

/** Unit direction of travel at the end of an edge. */
export function directionAtEnd(edge: Edge): Vector {
  return edge.kind === 'line' ? unit(edge.a, edge.b) : tangent(edge, edge.b);
}

function tangent(arc: ArcEdge, p: Point): Vector {
  const { dx, dy } = unit(arc.center, p);
  return arc.ccw ? { dx: -dy, dy: dx } : { dx: dy, dy: -dx };
}

function unit(a: Point, b: Point): Vector {
  const length = distance(a, b);
  return { dx: (b.x - a.x) / length, dy: (b.y - a.y) / length };
}

/** How fast the direction turns to the left along an edge: 1/radius, below 0 for a clockwise arc, 0 for a line. */
export function curvature(edge: Edge): number {
  if (edge.kind === 'line') return 0;
  return edge.ccw ? 1 / edge.radius : -1 / edge.radius;
}

/** The place on an edge at a share of its length: 0 is its start, 1 its end, both to the last bit. */
export function pointAlong(edge: Edge, share: number): Point {
  if (share === 0) return edge.a;
  if (share === 1) return edge.b;
  if (edge.kind === 'line') {
    return { x: edge.a.x + (edge.b.x - edge.a.x) * share, y: edge.a.y + (edge.b.y - edge.a.y) * share };
  }
  const turn = (edge.ccw ? 1 : -1) * sweep(edge) * share;
  const ux = edge.a.x - edge.center.x;
  const uy = edge.a.y - edge.center.y;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return { x: edge.center.x + ux * cos - uy * sin, y: edge.center.y + ux * sin + uy * cos };
}

/** Whether a point lies in the direction of an arc as seen from its centre; its ends do. */
export function onArcSide(arc: ArcEdge, p: Point): boolean {
  const { a, b, center } = arc;
  return isWithinTurn(a.x, a.y, b.x, b.y, center.x, center.y, arc.ccw ? 1 : -1, p.x, p.y);
}

/** An arc that ends on an extreme of its circle may miss it by this share of the radius, by rounding. */
const EXTREME_SLACK = 1e-12;

/** The smallest box round an edge, the bulge of an arc included. */
export function edgeBounds(edge: Edge): Bounds {
  let minX = Math.min(edge.a.x, edge.b.x);
  let minY = Math.min(edge.a.y, edge.b.y);
  let maxX = Math.max(edge.a.x, edge.b.x);
  let maxY = Math.max(edge.a.y, edge.b.y);
  if (edge.kind === 'arc') {
    const { x, y } = edge.center;
    const r = edge.radius;
    const least = EXTREME_SLACK * r;
    if (minX - (x - r) > least && onArcSide(edge, { x: x - r, y })) minX = x - r;
    if (x + r - maxX > least && onArcSide(edge, { x: x + r, y })) maxX = x + r;
    if (minY - (y - r) > least && onArcSide(edge, { x, y: y - r })) minY = y - r;
    if (y + r - maxY > least && onArcSide(edge, { x, y: y + r })) maxY = y + r;
  }
  return { minX, minY, maxX, maxY };
}
