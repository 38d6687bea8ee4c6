import type { ArcEdge, Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';

/*
 * The checker's own small geometry. It repeats what geometry/ and region/measure.ts do, by other formulas
 * where there are others, so that a fault there cannot hide itself from the laws.
 */

/** Joints closer than this share of the extent are one: each may be moved by it, and edges lie that far off where they belong. */
export const WELD = 1e-9;

/** A box with sides along the axes. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * The angle turned along an arc from `a` to `b`, in radians, 0 to 2 pi, positive in either direction.
 * A short arc's is taken from its chord: seen from a far centre, directions differ in their last digits only.
 */
export function turnOf(arc: ArcEdge): number {
  const turn = turnTo(arc, arc.b);
  return turn < 0.5 ? 2 * Math.asin(Math.min(1, span(arc.a, arc.b) / (2 * arc.radius))) : turn;
}

/** The angle from the start of an arc to the direction of `p`, along the arc's direction, 0 to 2 pi. */
export function turnTo(arc: ArcEdge, p: Point): number {
  const ux = arc.a.x - arc.center.x;
  const uy = arc.a.y - arc.center.y;
  const vx = p.x - arc.center.x;
  const vy = p.y - arc.center.y;
  const angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * (arc.ccw ? 1 : -1);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

/** Length of an edge. */
export function lengthOf(edge: Edge): number {
  return edge.kind === 'line' ? span(edge.a, edge.b) : edge.radius * turnOf(edge);
}

/** The place at share `t` (0 to 1) of an edge; exactly the stored ends at 0 and 1. */
export function placeAt(edge: Edge, t: number): Point {
  if (t <= 0) return edge.a;
  if (t >= 1) return edge.b;
  if (edge.kind === 'line') {
    return { x: edge.a.x + (edge.b.x - edge.a.x) * t, y: edge.a.y + (edge.b.y - edge.a.y) * t };
  }
  const { center, radius } = edge;
  const angle = Math.atan2(edge.a.y - center.y, edge.a.x - center.x) + turnOf(edge) * t * (edge.ccw ? 1 : -1);
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

/** Distance from a place to an edge. */
export function gapTo(edge: Edge, p: Point): number {
  const ends = Math.min(span(edge.a, p), span(edge.b, p));
  if (edge.kind === 'arc') {
    if (turnTo(edge, p) > turnOf(edge)) return ends;
    return Math.min(ends, Math.abs(span(edge.center, p) - edge.radius));
  }
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  const along = ((p.x - edge.a.x) * dx + (p.y - edge.a.y) * dy) / (dx * dx + dy * dy);
  if (!(along > 0 && along < 1)) return ends;
  return Math.min(ends, Math.abs(((p.x - edge.a.x) * dy - (p.y - edge.a.y) * dx) / Math.hypot(dx, dy)));
}

/** Distance between two places. */
export function span(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** The box round some edges; of no edges, a box with its minima at infinity. */
export function boxOf(edges: Iterable<Edge>): Box {
  let box: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const edge of edges) {
    for (const p of [edge.a, edge.b, ...(edge.kind === 'arc' ? extremes(edge) : [])]) box = grown(box, p);
  }
  return box;
}

/** Every edge of a region, outer loops and holes. */
export function edgesOf(region: Region): Edge[] {
  return region.flatMap((part) => [...part.outer, ...part.holes.flat()]);
}

/** The longer side of the box round some regions; 0 if there is nothing. */
export function extentOf(...regions: readonly Region[]): number {
  const box = boxOf(regions.flatMap(edgesOf));
  return Math.max(0, box.maxX - box.minX, box.maxY - box.minY);
}

/**
 * Signed area of a loop, positive counter-clockwise: the polygon of its joints, and between each arc and its
 * chord a segment of r^2 (t - sin t) / 2. Seen from the loop's first point, to keep digits far away.
 */
export function signedArea(loop: Loop): number {
  const from = loop[0]?.a ?? { x: 0, y: 0 };
  let twice = 0;
  for (const edge of loop) {
    twice += (edge.a.x - from.x) * (edge.b.y - from.y) - (edge.a.y - from.y) * (edge.b.x - from.x);
    if (edge.kind === 'arc')
      twice += edge.radius * edge.radius * lessSine(turnOf(edge)) * (edge.ccw ? 1 : -1);
  }
  return twice / 2;
}

/** t - sin t, by its series where the difference would cancel. */
function lessSine(t: number): number {
  if (t > 0.5) return t - Math.sin(t);
  const s = t * t;
  return ((t * s) / 6) * (1 - (s / 20) * (1 - (s / 42) * (1 - (s / 72) * (1 - (s / 110) * (1 - s / 156)))));
}

/** Area of a region: its outer loops less its holes. */
export function areaOf(region: Region): number {
  let total = 0;
  for (const part of region) {
    total += signedArea(part.outer);
    for (const hole of part.holes) total += signedArea(hole);
  }
  return total;
}

/**
 * How often a loop winds round a place that is not on it: the sum of the angles under which its edges are
 * seen. An arc is seen like its chord, but for a full turn if the place lies between chord and arc.
 */
export function windingOf(loop: Loop, p: Point): number {
  let angle = 0;
  for (const edge of loop) {
    for (const piece of edge.kind === 'arc' ? halves(edge) : [edge]) angle += seenFrom(piece, p);
  }
  return Math.round(angle / (2 * Math.PI));
}

function seenFrom(edge: Edge, p: Point): number {
  const ax = edge.a.x - p.x;
  const ay = edge.a.y - p.y;
  const bx = edge.b.x - p.x;
  const by = edge.b.y - p.y;
  const chord = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  if (edge.kind === 'line' || span(edge.center, p) > edge.radius) return chord;
  // Beside the chord there is nothing of an arc of up to half a turn, wherever rounding sees the circle and the chord.
  const [ux, uy] = [edge.b.x - edge.a.x, edge.b.y - edge.a.y];
  if (ax * ux + ay * uy > 0 || bx * ux + by * uy < 0) return chord;
  // Inside the circle, every arc is seen under an angle of its own sign; if the chord is not, add a turn.
  if (edge.ccw) return chord < 0 ? chord + 2 * Math.PI : chord;
  return chord > 0 ? chord - 2 * Math.PI : chord;
}

/** Both halves of an arc, so that neither is over half a turn. */
function halves(arc: ArcEdge): ArcEdge[] {
  const middle = placeAt(arc, 0.5);
  return [
    { ...arc, b: middle },
    { ...arc, a: middle },
  ];
}

function extremes(arc: ArcEdge): Point[] {
  const { center, radius } = arc;
  const turn = turnOf(arc);
  return [
    { x: center.x + radius, y: center.y },
    { x: center.x, y: center.y + radius },
    { x: center.x - radius, y: center.y },
    { x: center.x, y: center.y - radius },
  ].filter((p) => turnTo(arc, p) < turn);
}

function grown(box: Box, p: Point): Box {
  return {
    minX: Math.min(box.minX, p.x),
    minY: Math.min(box.minY, p.y),
    maxX: Math.max(box.maxX, p.x),
    maxY: Math.max(box.maxY, p.y),
  };
}
