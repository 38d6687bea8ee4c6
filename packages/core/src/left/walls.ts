import Flatbush from 'flatbush';
import { type Bounds, boxAround, extentOf, joined } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge, Source } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, edgeBounds, onArcSide } from '../geometry/measure.js';
import type { Point, Vector } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { windingRound } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { type Crowd, crowdOf } from './crowd.js';
import { interiorAngle, turnBetween } from './interior-angle.js';

/** A straight wall: the metal lies along `normal` from it. */
export interface FlatWall extends WallBase {
  readonly shape: 'flat';
  readonly along: Vector;
  readonly normal: Vector;
  readonly length: number;
}

/**
 * A wall round a centre: an arc, or a reflex corner as an arc of radius 0. `side` is +1 where the metal lies
 * within the circle (a rounded end), -1 where it lies outside of it (a hole, a corner that points into metal).
 */
export interface RoundWall extends WallBase {
  readonly shape: 'arc' | 'corner';
  readonly center: Point;
  readonly radius: number;
  readonly side: 1 | -1;
  /** For a corner: directions into the metal at the end of the edge before it and the start of the one after. */
  readonly normalBefore: Vector;
  readonly normalAfter: Vector;
}

interface WallBase {
  /** The edge; for a corner the edge that arrives at it. */
  readonly edge: Edge;
  /** Which part of the region it bounds. */
  readonly part: number;
  /** Numbers of its neighbours along the loop; a corner is a wall of its own between two edges. */
  readonly before: number;
  readonly after: number;
}

/** A stretch of boundary, or a reflex corner, that a disc of metal can rest against. */
export type Wall = FlatWall | RoundWall;

/** All that bounds a section, with what it takes to ask whether a disc has room. */
export interface Walls {
  readonly section: Region;
  readonly list: readonly Wall[];
  /** The box round each. */
  readonly boxes: readonly Bounds[];
  readonly tolerance: number;
  /** Numbers of the walls whose boxes meet a box. */
  readonly near: (box: Bounds) => number[];
  /** Where walls start. */
  readonly crowd: Crowd;
  /** Whether no boundary enters a disc, but for the tolerance. */
  readonly hasRoom: (center: Point, radius: number) => boolean;
  /** Whether a place that is on no boundary lies in metal; looks at every edge. */
  readonly isMetal: (p: Point) => boolean;
}

/**
 * Directions closer than this (radians) count as one: a joint is smooth, faces are parallel. Coordinates that were
 * rounded to a millionth of a part's size turn its edges by about as much.
 */
export const SAME_DIRECTION = 1e-7;

/** Discs may be entered by this many tolerances: joints have been moved by up to one each. */
export const ROOM_SLACK = 4;

/** A place within this many tolerances of a joint is at the joint, where the next wall takes over. */
export const NEAR_JOINT = 4;

/** Angles this little under 0 (radians) are the start of an arc and not the end of a full turn. */
const JUST_BEFORE = 1e-6;

/**
 * Lists the walls of a section; null for an empty one.
 * @param likeTolerance tolerance to work with; that of the section's extent unless given
 */
export function wallsOf(section: Region, likeTolerance?: number): Walls | null {
  if (section.length === 0) return null;
  const list: Wall[] = [];
  section.forEach((part, k) => {
    for (const loop of [part.outer, ...part.holes]) addLoop(list, loop, k);
  });
  const boxes = list.map(boundsOfWall);
  const tolerance = likeTolerance ?? weldTolerance(extentOf(boxes.reduce(joined)));
  const index = new Flatbush(list.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  const near = (box: Bounds) => index.search(box.minX, box.minY, box.maxX, box.maxY);
  const crowd = crowdOf(list.map(({ edge }) => edge.a));
  const hasRoom = (center: Point, radius: number) => {
    const least = radius - ROOM_SLACK * tolerance;
    if (radius >= crowd.least && crowd.isWithin(center, least - tolerance)) return false;
    const box = {
      minX: center.x - radius,
      minY: center.y - radius,
      maxX: center.x + radius,
      maxY: center.y + radius,
    };
    return near(box).every((k) => nearestOnWall(list[k] as Wall, center).distance >= least);
  };
  const loops = loopsOf(section);
  const isMetal = (p: Point) => loops.reduce((sum, loop) => sum + windingRound(loop, p), 0) > 0;
  return { section, list, boxes, tolerance, near, crowd, hasRoom, isMetal };
}

/** The place of a wall nearest to a point, and its distance. */
export function nearestOnWall(wall: Wall, p: Point): { at: Point; distance: number } {
  if (wall.shape !== 'corner') return nearestOnEdge(wall.edge, p);
  return { at: wall.center, distance: Math.hypot(p.x - wall.center.x, p.y - wall.center.y) };
}

function addLoop(list: Wall[], loop: readonly Edge[], part: number): void {
  const first = list.length;
  const walls: NewWall[] = [];
  loop.forEach((edge, k) => {
    walls.push(edgeWall(edge, part));
    const next = loop[(k + 1) % loop.length] as Edge;
    // A corner that points into metal: over half a turn of metal round it.
    if (interiorAngle(next, edge) > Math.PI + SAME_DIRECTION) {
      walls.push(cornerWall(edge, directionAtEnd(edge), directionAtStart(next), part));
    }
  });
  const n = walls.length;
  walls.forEach((wall, k) => {
    wall.before = first + ((k + n - 1) % n);
    wall.after = first + ((k + 1) % n);
    list.push(wall);
  });
}

/** A wall that does not know its neighbours yet. */
type NewWall = Wall & { before: number; after: number };

const NOWHERE: Vector = { dx: 0, dy: 0 };

function edgeWall(edge: Edge, part: number): NewWall {
  if (edge.kind === 'line') {
    const along = directionAtStart(edge);
    const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
    return { shape: 'flat', edge, part, before: -1, after: -1, along, normal: leftOf(along), length };
  }
  return {
    shape: 'arc',
    edge,
    part,
    before: -1,
    after: -1,
    center: edge.center,
    radius: edge.radius,
    side: edge.ccw ? 1 : -1,
    normalBefore: NOWHERE,
    normalAfter: NOWHERE,
  };
}

function cornerWall(edge: Edge, arriving: Vector, leaving: Vector, part: number): NewWall {
  return {
    shape: 'corner',
    edge,
    part,
    before: -1,
    after: -1,
    center: edge.b,
    radius: 0,
    side: -1,
    normalBefore: leftOf(arriving),
    normalAfter: leftOf(leaving),
  };
}

/** A quarter turn to the left. */
export function leftOf({ dx, dy }: Vector): Vector {
  return { dx: -dy, dy: dx };
}

/** Whether two sources stand in the order in which they are reported: by name, so that cuts come first. */
export function namesInOrder(a: Source | null, b: Source | null): boolean {
  return (a ?? '') <= (b ?? '');
}

/** The box round a wall. */
function boundsOfWall(wall: Wall): Bounds {
  if (wall.shape !== 'corner') return edgeBounds(wall.edge);
  return boxAround(wall.center);
}

/**
 * How strongly a wall curves towards the metal as a disc of some radius that rests on it sees it: the inverse of
 * the distance from the disc's centre to the wall's, below 0 where the wall curves away. Infinite where the disc is
 * as large as the rounded end that it lies in, or larger.
 */
export function closing(wall: Wall, radius: number): number {
  if (wall.shape === 'flat') return 0;
  const away = wall.radius - wall.side * radius;
  return away > SAME_DIRECTION * wall.radius ? wall.side / away : Infinity;
}

/** Whether a disc with its centre at `from`, outside the wall's own material, rests on the wall where it should. */
export function restsOn(wall: Wall, from: Point, slack: number): boolean {
  if (wall.shape === 'flat') {
    const { a } = wall.edge;
    const s = (from.x - a.x) * wall.along.dx + (from.y - a.y) * wall.along.dy;
    return s >= -slack && s <= wall.length + slack;
  }
  const dx = from.x - wall.center.x;
  const dy = from.y - wall.center.y;
  if (wall.shape === 'corner') {
    const away = Math.hypot(dx, dy);
    const { normalBefore: n0, normalAfter: n1 } = wall;
    const reach = away * SAME_DIRECTION + slack;
    return dx * n0.dy - dy * n0.dx >= -reach && n1.dx * dy - n1.dy * dx >= -reach;
  }
  const touch = touchPoint(wall, from);
  const { edge } = wall;
  if (edge.kind !== 'arc') return false;
  return (
    onArcSide(edge, touch) ||
    Math.hypot(touch.x - edge.a.x, touch.y - edge.a.y) <= slack ||
    Math.hypot(touch.x - edge.b.x, touch.y - edge.b.y) <= slack
  );
}

/** Where a disc with its centre at `from` touches a wall. */
export function touchPoint(wall: Wall, from: Point): Point {
  if (wall.shape === 'flat') {
    const { a } = wall.edge;
    const s = (from.x - a.x) * wall.along.dx + (from.y - a.y) * wall.along.dy;
    return { x: a.x + s * wall.along.dx, y: a.y + s * wall.along.dy };
  }
  const dx = from.x - wall.center.x;
  const dy = from.y - wall.center.y;
  const away = Math.hypot(dx, dy);
  if (away === 0) return wall.edge.a;
  return {
    x: wall.center.x + (dx / away) * wall.radius,
    y: wall.center.y + (dy / away) * wall.radius,
  };
}

/**
 * How far along a wall a disc with its centre at `from` touches it: a length from the wall's start; round a corner
 * the angle from where its disc leaves the edge before. Just under 0 before the start.
 */
export function alongWall(wall: Wall, from: Point): number {
  if (wall.shape === 'flat') {
    const { a } = wall.edge;
    return (from.x - a.x) * wall.along.dx + (from.y - a.y) * wall.along.dy;
  }
  const out = { dx: from.x - wall.center.x, dy: from.y - wall.center.y };
  if (wall.shape === 'corner') return -turnBetween(wall.normalBefore, out);
  const { a } = wall.edge;
  const turn = wall.side * turnBetween({ dx: a.x - wall.center.x, dy: a.y - wall.center.y }, out);
  return (turn < -JUST_BEFORE ? turn + 2 * Math.PI : turn) * wall.radius;
}
