import { withinTurn } from '../geometry/angle.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, onArcSide, pointAlong } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A stretch of boundary as seen from a place: each radius between its two angles meets it once. */
export interface Sighted {
  /** Angle of its clockwise end, and how far it goes counter-clockwise from there; radians. */
  readonly low: number;
  readonly span: number;
  /** +1 where a radius leaves the metal through it, -1 where it enters. */
  readonly sign: number;
  /** Distance from the place along the radius of an angle. */
  readonly reach: (angle: number) => number;
  /** Whether the distance is the same for all angles. */
  readonly isConstant: boolean;
  /** Angles between its ends at which the distance is smallest or largest. */
  readonly turning: readonly number[];
}

/** Nearer than this share of its size to a straight edge, a place is on it, and sees it edge-on. */
const EDGE_ON = 1e-14;

/**
 * Angles closer than this (radians) to that of an end are that of the end, whose distance is known: along an edge
 * that is seen nearly edge-on the distance changes by more than that with the last digit of an angle.
 */
const AT_END = 4e-15;

/** An end nearer than this share of an arc's radius to the place is at the place: it has no angle of its own. */
const AT_PLACE = 1e-12;

/** An arc whose centre is nearer than this share of its radius to the place is concentric: rounding. */
const CONCENTRIC = 1e-14;

/** A span that lacks less than this (radians) to a whole turn is a span of nothing, run backwards by rounding. */
const BACKWARD = 1e-9;

/** The boundaries of a region as seen from a place. */
export function sightedFrom(region: Region, from: Point): Sighted[] {
  return loopsOf(region)
    .flat()
    .flatMap((edge) => (edge.kind === 'line' ? sightedLine(edge, from) : sightedArc(edge, from)));
}

function sightedLine(edge: LineEdge, from: Point): Sighted[] {
  const ax = edge.a.x - from.x;
  const ay = edge.a.y - from.y;
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  const length = Math.hypot(dx, dy);
  // Over 0 where the place lies to the left, so that the line runs counter-clockwise round it.
  const left = (ax * dy - ay * dx) / length;
  const far = Math.max(Math.hypot(ax, ay), distance(edge.b, from));
  if (Math.abs(left) <= EDGE_ON * far) return [];
  const away = Math.abs(left);
  const foot = Math.atan2(-dx * left, dy * left);
  const reach = (angle: number): number => Math.min(far, away / Math.max(0, Math.cos(angle - foot)));
  return [sighted(edge, from, left > 0 ? 1 : -1, reach, false, [foot])];
}

function sightedArc(arc: ArcEdge, from: Point): Sighted[] {
  const away = distance(arc.center, from);
  const turn = arc.ccw ? 1 : -1;
  if (away <= CONCENTRIC * arc.radius) return [sighted(arc, from, turn, () => arc.radius, true, [])];
  const axis = Math.atan2(arc.center.y - from.y, arc.center.x - from.x);
  const at = (branch: number) => (angle: number) => distanceAlong(arc.radius, away, angle - axis, branch);
  if (away <= arc.radius) return [sighted(arc, from, turn, at(1), false, [axis, axis + Math.PI])];
  return atTangents(arc, from, away).map((part) => {
    const middle = pointAlong(part, 0.5);
    // Tangents from the place touch the circle at this distance; the nearer part of it is met first.
    const isNear = distance(middle, from) < Math.sqrt((away - arc.radius) * (away + arc.radius));
    return sighted(part, from, isNear ? -turn : turn, at(isNear ? -1 : 1), false, [axis]);
  });
}

/**
 * Distance along a radius to a circle of a given radius whose centre lies `away`, `angle` off the radius: the
 * farther crossing (+1) or the nearer one (-1).
 */
function distanceAlong(radius: number, away: number, angle: number, branch: number): number {
  const along = away * Math.cos(angle);
  const across = away * Math.sin(angle);
  const half = Math.sqrt(Math.max(0, (radius - across) * (radius + across)));
  if (branch < 0 === along < 0) return Math.max(0, along + branch * half);
  // The product of both crossings is known; their sum would cancel.
  const other = along - branch * half;
  return other === 0 ? 0 : Math.max(0, ((away - radius) * (away + radius)) / other);
}

/** An arc cut where the tangents from a place outside of its circle touch it. */
function atTangents(arc: ArcEdge, from: Point, away: number): ArcEdge[] {
  const { center, radius } = arc;
  const ux = (from.x - center.x) / away;
  const uy = (from.y - center.y) / away;
  const along = (radius * radius) / away;
  const across = (radius * Math.sqrt((away - radius) * (away + radius))) / away;
  const places = [1, -1].map(
    (side): Point => ({
      x: center.x + along * ux - side * across * uy,
      y: center.y + along * uy + side * across * ux,
    }),
  );
  const start = Math.atan2(arc.a.y - center.y, arc.a.x - center.x);
  const way = (p: Point): number =>
    withinTurn((Math.atan2(p.y - center.y, p.x - center.x) - start) * (arc.ccw ? 1 : -1));
  const cuts = places
    .filter((p) => onArcSide(arc, p) && Math.min(distance(p, arc.a), distance(p, arc.b)) > AT_PLACE * radius)
    .sort((p, q) => way(p) - way(q));
  let a = arc.a;
  return [...cuts, arc.b].map((b) => {
    const part = { ...arc, a, b };
    a = b;
    return part;
  });
}

function sighted(
  edge: Edge,
  from: Point,
  sign: number,
  reach: (angle: number) => number,
  isConstant: boolean,
  turning: readonly number[],
): Sighted {
  const start = angleOf(edge, from, 'a');
  const end = angleOf(edge, from, 'b');
  const low = sign > 0 ? start : end;
  const swept = withinTurn(sign > 0 ? end - start : start - end);
  // An edge that is seen edge-on spans nothing; rounding may put its ends in the wrong order.
  const span = swept > 2 * Math.PI - BACKWARD ? 0 : swept;
  const inside = turning.map((angle) => low + withinTurn(angle - low)).filter((angle) => angle < low + span);
  const [atLow, atHigh] = sign > 0 ? [edge.a, edge.b] : [edge.b, edge.a];
  const exact = (angle: number): number => {
    const off = withinTurn(angle - low + AT_END) - AT_END;
    if (off <= AT_END) return distance(atLow, from);
    return Math.abs(off - span) <= AT_END ? distance(atHigh, from) : reach(angle);
  };
  return { low, span, sign, reach: isConstant ? reach : exact, isConstant, turning: inside };
}

/** The angle at which an end of an edge is seen; where it is the place itself, that in which the edge goes there. */
function angleOf(edge: Edge, from: Point, end: 'a' | 'b'): number {
  const p = edge[end];
  const size = edge.kind === 'arc' ? edge.radius : distance(edge.a, edge.b);
  if (distance(p, from) > AT_PLACE * size) return Math.atan2(p.y - from.y, p.x - from.x);
  const heading = end === 'a' ? directionAtStart(edge) : directionAtEnd(edge);
  return end === 'a' ? Math.atan2(heading.dy, heading.dx) : Math.atan2(-heading.dy, -heading.dx);
}
