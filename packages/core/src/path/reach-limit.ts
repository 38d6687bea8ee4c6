import { boxAround } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { feetOn, type NearEdges } from '../geometry/edge-gap.js';
import { curvature, directionAtEnd, directionAtStart, edgeBounds, pointAlong } from '../geometry/measure.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, RegionPart } from '../region/region.js';
import { shareAt } from './path-share.js';
import { roomAt } from './reach-room.js';
import { limitBetweenTips } from './reach-tips.js';

/** The outline that a tool works along. */
export interface Walls {
  readonly edges: NearEdges;
  /** Radius of the tool. */
  readonly radius: number;
  /** Lengths up to this are nothing. */
  readonly tolerance: number;
}

/**
 * The largest radius of a tool that reaches all of a place, and what sets it: a sharp `corner` (0: no round tool
 * does), an `arc` of the outline (its radius), a `gap` between walls, or three `tips`.
 */
export interface ReachLimit {
  readonly radius: number;
  readonly by: 'corner' | 'arc' | 'gap' | 'tips';
  /** The corner; the middle of the arc; the place of a wall, or between tips, that no larger tool gets at. */
  readonly at: Point;
}

/** Two walls that face each other squarely, with nothing between them. */
export interface NarrowPlace {
  /** Half the gap. */
  readonly radius: number;
  /** The middle between the walls. */
  readonly at: Point;
}

/** What is told about the size of tool that a place would want. */
export interface Limits {
  readonly limit: ReachLimit;
  readonly narrowest: NarrowPlace | null;
}

/** Turned back as good as straight: the walls are tangent, and rounding has put the turn on one side or the other. */
const TURNED_BACK = Math.PI - 1e-4;

/** Stops that leave a disc as large as a hollow arc, but for this share of its radius, are the arc. */
const HOLLOW = 1e-9;

/** A stop opposite to a place, as a share of the disc's radius. */
const OPPOSITE = 1e-6;

/**
 * The largest radius that reaches all of a place; exact, from closed forms.
 *
 * A disc reaches a smooth place of a wall only by touching it, and the largest one that does so is stopped by some
 * other wall. Along an edge its radius has its least value at an end of the untouched stretch, opposite to a wall
 * (or an end of one) that faces the edge squarely, or on a hollow arc at the radius of the arc: with the centre
 * c = p + r n, r changes along the edge by (t v) / (1 - n v), where v leads from c to the stop and t along the edge,
 * so it does not change where v = -n. What no smooth wall limits lies between tips.
 * @param part what the tool leaves, which lies to the left of its loops
 * @param isWall whether an edge of it is part of the outline
 */
export function limitOf(walls: Walls, part: RegionPart, isWall: (edge: Edge) => boolean): Limits {
  const loops = loopsOf([part]);
  const edges = loops.flat().filter(isWall);
  const found = edges.map((edge) => alongEdge(walls, edge));
  const limits: ReachLimit[] = [
    ...cornersOf(walls, loops.flat(), isWall).map((at): ReachLimit => ({ radius: 0, by: 'corner', at })),
    ...edges
      .filter(isHollow)
      .map((edge): ReachLimit => ({ radius: edge.radius, by: 'arc', at: pointAlong(edge, 0.5) })),
    ...found.flatMap(({ least }) => (least === null ? [] : [least])),
  ];
  const smooth = smallest(limits);
  const below = Math.min(smooth?.radius ?? walls.radius, walls.radius);
  const reaches = (p: Point) => contains([part], p, walls.tolerance) !== 'outside';
  const tips = below === 0 ? null : limitBetweenTips(tipsOf(walls, loops, isWall), below, reaches);
  const [first] = loops as [Loop];
  return {
    limit:
      tips !== null
        ? { ...tips, by: 'tips' }
        : (smooth ?? { radius: below, by: 'gap', at: (first[0] as Edge).a }),
    narrowest: smallest(found.flatMap(({ facing }) => (facing === null ? [] : [facing]))),
  };
}

function smallest<T extends { readonly radius: number }>(all: readonly T[]): T | null {
  return all.reduce<T | null>((best, one) => (best === null || one.radius < best.radius ? one : best), null);
}

/** Whether an edge that has the air on its left is an arc that the air bulges into. */
function isHollow(edge: Edge): edge is Edge & { kind: 'arc' } {
  return edge.kind === 'arc' && edge.ccw;
}

/**
 * Joints at which the air comes to a corner that a tool would leave more than nothing in. Loops may touch there: each
 * wedge of air goes from an edge that leaves, counter-clockwise to the next one that arrives.
 */
function cornersOf(
  { radius, tolerance }: Walls,
  edges: readonly Edge[],
  isWall: (edge: Edge) => boolean,
): Point[] {
  const arriving = new Map<string, Edge[]>();
  for (const edge of edges) arriving.set(keyOf(edge.b), [...(arriving.get(keyOf(edge.b)) ?? []), edge]);
  return edges.filter(isWall).flatMap((edge) => {
    const wedges = (arriving.get(keyOf(edge.a)) as Edge[]).map((before) => ({
      before,
      angle: wedgeBetween(edge, before),
    }));
    const { before, angle } = wedges.reduce((least, one) => (one.angle < least.angle ? one : least));
    if (!isWall(before)) return [];
    // What a disc leaves along the bisector; without end where walls touch.
    return radius / Math.sin(Math.min(Math.PI, angle) / 2) - radius > tolerance ? [edge.a] : [];
  });
}

function keyOf({ x, y }: Point): string {
  return `${x} ${y}`;
}

/** The angle from one edge counter-clockwise to the one that arrives where it starts: from 0 to a full turn. */
function wedgeBetween(leaving: Edge, arriving: Edge): number {
  const out = directionAtStart(leaving);
  const into = directionAtEnd(arriving);
  const turn = Math.atan2(into.dx * out.dy - into.dy * out.dx, into.dx * out.dx + into.dy * out.dy);
  if (Math.abs(turn) < TURNED_BACK) return Math.PI - turn;
  // Tangent, both leading away: the one that bends more to the left lies to the left.
  return -curvature(arriving) > curvature(leaving) ? 0 : 2 * Math.PI;
}

interface AlongEdge {
  readonly least: ReachLimit | null;
  readonly facing: NarrowPlace | null;
}

/** The smallest of the largest discs that touch places of an edge, and the narrowest gap that opens from it. */
function alongEdge({ edges, radius, tolerance }: Walls, edge: Edge): AlongEdge {
  // A tool that only just fits is stopped too. In a hollow arc its own neighbours stop a disc at the radius of the arc.
  const most = isHollow(edge) ? Math.min(radius, edge.radius * (1 - HOLLOW)) : radius + tolerance;
  const near = edges
    .within(edgeBounds(edge), 2 * most)
    .filter((other) => !sameCircle(edge, other, tolerance));
  const gaps: ReachLimit[] = [];
  const facing: NarrowPlace[] = [];
  for (const p of [edge.a, edge.b]) {
    const n = normalAt(edge, p);
    for (const other of near) {
      const room = roomAt(p, n, other, tolerance);
      if (room !== null && room.radius <= most) gaps.push({ radius: room.radius, by: 'gap', at: p });
    }
  }
  for (const other of near) {
    for (const p of facingPlaces(edge, other)) {
      if (touches(edge, p, other, tolerance)) gaps.push({ radius: 0, by: 'gap', at: p });
      const n = normalAt(edge, p);
      const room = roomAt(p, n, other, tolerance);
      if (room === null || room.radius > most) continue;
      gaps.push({ radius: room.radius, by: 'gap', at: p });
      const at = moved(p, n, room.radius);
      const isOpposite = distance(moved(at, n, room.radius), room.stop) <= OPPOSITE * room.radius;
      if (isOpposite && edges.distanceFrom(at) >= room.radius - tolerance)
        facing.push({ radius: room.radius, at });
    }
  }
  return { least: smallest(gaps), facing: smallest(facing) };
}

/** As many tolerances from a joint of a wall, what comes as near as one is not its neighbour. */
const OFF_JOINT = 8;

/** Whether another wall comes so near to a place inside an edge that nothing fits between. */
function touches(edge: Edge, p: Point, other: Edge, tolerance: number): boolean {
  if (Math.min(distance(p, edge.a), distance(p, edge.b)) <= OFF_JOINT * tolerance) return false;
  // Two lines touch at an end of one; in between, one is the other, or part of it.
  const isStraight = edge.kind === 'line' && other.kind === 'line';
  const near = isStraight ? [other.a, other.b] : [nearestOnEdge(other, p).at];
  const n = normalAt(edge, p);
  // What comes as near through the metal is none of the tool's.
  return near.some((q) => distance(p, q) <= tolerance && n.dx * (q.x - p.x) + n.dy * (q.y - p.y) >= 0);
}

/** Arcs of one circle stop a disc only in being hollow. */
function sameCircle(edge: Edge, other: Edge, tolerance: number): boolean {
  return (
    edge.kind === 'arc' &&
    other.kind === 'arc' &&
    distance(edge.center, other.center) <= tolerance &&
    Math.abs(edge.radius - other.radius) <= tolerance
  );
}

/**
 * The places of an edge that another edge, or an end of it, faces squarely; of a stretch that it runs beside at the
 * same distance, the middle too, since at its ends something else may be in the way.
 */
function facingPlaces(edge: Edge, other: Edge): Point[] {
  const feet = [other.a, other.b].flatMap((end) => feetOn(edge, end));
  if (other.kind === 'arc') feet.push(...feetOn(edge, other.center));
  // The line through the centre of an arc that stands square on a straight edge.
  else if (edge.kind === 'arc')
    feet.push(...feetOn(other, edge.center).flatMap((foot) => feetOn(edge, foot)));
  const stops = [0, ...feet.map((foot) => shareAt(edge, foot)).sort((p, q) => p - q), 1];
  const middles = stops.slice(1).map((stop, k) => pointAlong(edge, ((stops[k] as number) + stop) / 2));
  return [...feet, ...middles];
}

/** Unit vector to the left of an edge at a place of it. */
function normalAt(edge: Edge, p: Point): Vector {
  if (edge.kind === 'line') {
    const { dx, dy } = directionAtStart(edge);
    return { dx: -dy, dy: dx };
  }
  const side = edge.ccw ? 1 : -1;
  const away = distance(p, edge.center);
  return { dx: (side * (edge.center.x - p.x)) / away, dy: (side * (edge.center.y - p.y)) / away };
}

/** Joints of the outline that a place comes to, or that stop the tool as it cuts along the place. */
function tipsOf(
  { edges, radius, tolerance }: Walls,
  loops: readonly Loop[],
  isWall: (edge: Edge) => boolean,
): Point[] {
  const tips = new Map<string, Point>();
  const add = (p: Point, away: number) => {
    const near = edges.within(boxAround(p), away + tolerance);
    for (const end of near.flatMap((edge) => [edge.a, edge.b])) {
      if (Math.abs(distance(end, p) - away) <= tolerance) tips.set(keyOf(end), end);
    }
  };
  for (const edge of loops.flat()) {
    add(edge.a, 0);
    if (edge.kind === 'arc' && !isWall(edge)) add(edge.center, radius);
  }
  return [...tips.values()];
}
