import { intersect, union } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import { DEGREE } from '../geometry/angle.js';
import { checkOverZero, checkPlace } from '../geometry/checks.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { circleOf } from '../region/circle.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import { disc, type Region, ring } from '../region/region.js';
import { checkLayers, type Layer, type RoundTool } from './by-height.js';
import { alongDegrees, steady } from './machine-direction.js';
import { metalNear } from './near-tool.js';
import { rimOf, runsOf } from './rim.js';
import { stretchesOf, type Turned, widestGap } from './shadow.js';
import { nothingOf } from './tool-circle.js';
import { distanceTo, distanceToBoundary } from './touch.js';
import { type BoxedEdge, boxed, firstClear, firstNear, type Way } from './way-along.js';
import { headingsWhereItChanges } from './way-events.js';

/** An obstacle on the way of a tool, seen from above. */
export interface Obstacle {
  readonly id: string;
  readonly region: Region;
}

/** Why no way leads off a wall; depths as those of the layers. */
export type NoWay =
  /** The wall goes round by more than half a turn, or all the way: `share` of a turn, between two depths. */
  | { readonly reason: 'walled in'; readonly share: number; readonly from: number; readonly to: number }
  /** A core stands inside of a hollow cutter. */
  | { readonly reason: 'core stands' }
  /** Other metal leaves no place within a length that has the clearance on all sides, or no way there. */
  | { readonly reason: 'no room'; readonly within: number; readonly clearance: number }
  /** But for these there would be a way. */
  | { readonly reason: 'keep-out'; readonly ids: readonly string[] };

/** The move off the wall before a tool is lifted. Lengths in the unit of the metal. */
export type WayOff =
  /** No wall stands at it, at any height: it can be lifted as it is. */
  | { readonly kind: 'lift'; readonly gap: number | null }
  | {
      readonly kind: 'way';
      /** Unit vector, and degrees counter-clockwise from the x axis, in steps of a millionth; on the drawing. */
      readonly direction: Vector;
      readonly degrees: number;
      readonly by: number;
      /** The centre after the move. */
      readonly to: Point;
      /** Smallest distance from the tool to any metal after the move; null where there is none within `furthestOff`. */
      readonly gap: number | null;
    }
  | { readonly kind: 'none'; readonly why: NoWay };

/** The task of finding a way off a wall. */
export interface WayOffTask {
  readonly tool: RoundTool;
  /**
   * The metal that stands after the cut, at every height from the lowest that the tool comes to up to the face that lies
   * up; right to `metalReach` from the tool's centre.
   */
  readonly layers: readonly Layer[];
  /** The gap to reach from all metal, over 0. */
  readonly clearance: number;
  /** Obstacles to avoid on the way, at the heights of the tool. */
  readonly keepOuts: readonly Obstacle[];
}

/** The longest move off a wall: no wall that a tool has cut needs more. */
export function furthestOff(radius: number, clearance: number): number {
  return radius + clearance;
}

/** The distance from a tool's centre within which metal matters to its way off. */
export function metalReach(radius: number, clearance: number): number {
  return 3 * (radius + clearance);
}

/** A wall that goes round by more than half a turn by less than this (radians) is half a turn: rounding. */
const HALF_TURN_SLACK = 1e-9;

/**
 * The way off the wall before a tool is lifted: a straight one, on which it cuts nothing and meets no keep-out, to a
 * place where it is clear of all metal by the clearance, at every height that it then passes. Straight back from the
 * middle of the wall, or as near to that as other things allow, but a little off what it would graze. A tool is as
 * wide all the way up as it is below, so that all heights together are one wall, seen from above.
 *
 * Source: definition. A circle of radius r moved s off a wall point that lies h off straight ahead clears it by
 * sqrt(r^2 + 2 r s cos(h) + s^2) - r (law of cosines). The possible ways change with the direction only where the way
 * touches a parallel curve of the metal, or passes a corner of the area that is too near; all those directions are
 * worked out, and between two of them one decides for all. With more than 200 edges near the tool, every degree is
 * tried.
 * @throws RangeError if a length is not a finite number over 0, a coordinate or depth is not finite, or the layers
 *   are none, or not in order.
 */
export function wayOff(task: WayOffTask): WayOff {
  const { tool, layers, clearance } = task;
  const { center, radius } = tool;
  checkPlace('wayOff', 'center', center);
  checkOverZero('wayOff', 'radius', radius);
  checkOverZero('wayOff', 'clearance', clearance);
  checkLayers('wayOff', layers);
  const distinct = [...new Set(layers.map(({ metal }) => metal))];
  const reach = metalReach(radius, clearance);
  const near = distinct.map((metal) => metalNear(metal, center, reach));
  if (tool.kind === 'ring' && near.some((metal) => standsWithin(metal, center, tool.inner))) {
    return { kind: 'none', why: { reason: 'core stands' } };
  }
  const wall = near.length === 1 ? (near[0] as Region) : union(near);
  const walls = wallsOf(wall, tool);
  const between = openBetween(walls);
  if (walls.length > 0 && between === null) return { kind: 'none', why: walledIn(task, near, walls) };
  const scene = sceneOf(task, wall);
  const gap = gapAt(scene, center);
  if (walls.length === 0 && (gap === null || gap >= clearance)) return { kind: 'lift', gap };
  const open = between ?? anyWay(scene);
  const way = found(scene, open, scene.keepOuts);
  if (way !== null) return way;
  // Nothing that it touches: what is near keeps it from moving, but not from being lifted.
  if (walls.length === 0 && gap !== null && gap > scene.slack) return { kind: 'lift', gap };
  return { kind: 'none', why: noWay(scene, open) };
}

/** What all directions are tried in. */
interface Scene {
  readonly center: Point;
  readonly radius: number;
  readonly clearance: number;
  readonly furthest: number;
  /** What stands, seen from above, once the tool has cut, and those of its edges that a way can come near. */
  readonly metal: Region;
  readonly edges: readonly BoxedEdge[];
  readonly keepOuts: readonly Obstacle[];
  /** A length that is rounding. */
  readonly slack: number;
}

/** In lengths of the furthest way: no farther is it from its start to what is too near to its end, and a bit more. */
const SEEN = 2.001;

/** How many weld tolerances what stands may lie nearer than it is told: each of two overlays moves it by one or two. */
const MOVED = 4;

function sceneOf({ tool: { center, radius }, clearance, keepOuts }: WayOffTask, wall: Region): Scene {
  const slack = (MOVED * nothingOf(wall, { center, radius })) / (2 * Math.PI * radius);
  const metal = reachesInto(wall, center, radius - slack / MOVED)
    ? subtract(wall, [disc(center, radius)])
    : wall;
  const seen = SEEN * furthestOff(radius, clearance);
  const isSeen = (edge: Edge): boolean => nearestOnEdge(edge, center).distance <= seen;
  return {
    center,
    radius,
    clearance,
    furthest: furthestOff(radius, clearance),
    metal,
    edges: boxed(loopsOf(metal).flat().filter(isSeen)),
    keepOuts,
    slack,
  };
}

/** Whether some metal comes nearer to a place than a radius. */
function reachesInto(metal: Region, center: Point, radius: number): boolean {
  return metal.length > 0 && distanceTo(metal, center) < radius;
}

function standsWithin(metal: Region, center: Point, radius: number): boolean {
  return intersect([metal, disc(center, radius)]).length > 0;
}

/** Stretches of a tool's circle with metal on the outer side. */
function wallsOf(metal: Region, { center, radius }: RoundTool): readonly Turned[] {
  if (isBoreIn(metal, center, radius)) return [{ start: 0, sweep: 2 * Math.PI }];
  return runsOf(rimOf(metal, center, radius), ({ outer }) => outer);
}

/** Whether a hole of the metal is just this circle: a bore in the full, which needs no overlay to be told. */
function isBoreIn(metal: Region, { x, y }: Point, radius: number): boolean {
  return metal.some(({ holes }) =>
    holes.some((hole) => {
      const circle = circleOf(hole);
      return circle?.radius === radius && circle.center.x === x && circle.center.y === y;
    }),
  );
}

function gapAt({ metal, radius, furthest }: Scene, at: Point): number | null {
  const gap = Math.max(0, distanceToBoundary(metal, at) - radius);
  return gap <= furthest ? gap : null;
}

/** Directions to choose from: up to `half` to either side of the best one; radians. */
interface Open {
  readonly best: number;
  readonly half: number;
}

/**
 * Where there is no wall, all directions: best to the middle of the widest stretch without metal within the clearance,
 * which is straight back from a wall that stands a little off; away from what is nearest where metal is all round.
 */
function anyWay({ metal, edges, center, radius, clearance, slack }: Scene): Open {
  const near = intersect([metal, ring(center, radius + clearance, radius)]);
  const gap = widestGap(stretchesOf(near, center, slack / radius));
  if (gap !== null && gap.width > 0) return { best: gap.middle, half: Math.PI };
  let nearest = { distance: Number.POSITIVE_INFINITY, at: center };
  for (const { edge } of edges) {
    const one = nearestOnEdge(edge, center);
    if (one.distance < nearest.distance) nearest = one;
  }
  return { best: Math.atan2(center.y - nearest.at.y, center.x - nearest.at.x), half: Math.PI };
}

/** The directions that lead off all walls; null if they go round by more than half a turn, so that there is none. */
function openBetween(walls: readonly Turned[]): Open | null {
  const gap = widestGap(walls);
  const half = ((gap?.width ?? 0) - Math.PI) / 2;
  return gap === null || half < -HALF_TURN_SLACK / 2 ? null : { best: gap.middle, half: Math.max(0, half) };
}

/** The layer whose own wall closes the way; all of them where none does alone. */
function walledIn({ tool, layers }: WayOffTask, near: readonly Region[], walls: readonly Turned[]): NoWay {
  const distinct = [...new Set(layers.map(({ metal }) => metal))];
  const share = (runs: readonly Turned[]) =>
    Math.min(1, runs.reduce((sum, { sweep }) => sum + sweep, 0) / (2 * Math.PI));
  for (const layer of layers) {
    const own = near.length === 1 ? walls : wallsOf(near[distinct.indexOf(layer.metal)] as Region, tool);
    if (own.length === 0 || openBetween(own) !== null) continue;
    return { reason: 'walled in', share: share(own), from: layer.from, to: layer.to };
  }
  const [first, last] = [layers[0] as Layer, layers[layers.length - 1] as Layer];
  return { reason: 'walled in', share: share(walls), from: first.from, to: last.to };
}

/** A way is kept this far (radians) from directions in which it would graze something, where there is room. */
const INSET = 5 * DEGREE;

/** How often the stretch between a direction that is possible and a better one is halved. */
const HALVINGS = 20;

/** The way in the best direction that is possible; null if none is. */
function found(
  scene: Scene,
  { best, half }: Open,
  keepOuts: readonly Obstacle[],
): (WayOff & { kind: 'way' }) | null {
  const straight = wayIn(scene, best, keepOuts);
  if (straight !== null) return straight;
  const [low, high] = [best - half, best + half];
  const changes = headingsTold(scene, keepOuts).flatMap((angle) => {
    const inside = low + ((((angle - low) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI));
    return inside < high ? [inside] : [];
  });
  const ends = [...apart([low, ...changes.sort((a, b) => a - b)]), high];
  const possible: [number, number][] = [];
  for (let k = 1; k < ends.length; k++) {
    const [a, b] = [ends[k - 1] as number, ends[k] as number];
    if (wayIn(scene, (a + b) / 2, keepOuts) === null) continue;
    const last = possible[possible.length - 1];
    if (last !== undefined && last[1] === a) last[1] = b;
    else possible.push([a, b]);
  }
  const ranked = possible.map((ends) => ({ ends, heading: insideOf(ends, best) }));
  // Of two that are as good, the one counter-clockwise.
  ranked.sort((p, q) => {
    const [a, b] = [Math.abs(p.heading - best), Math.abs(q.heading - best)];
    return Math.abs(a - b) > HALF_TURN_SLACK ? a - b : q.heading - p.heading;
  });
  for (const { ends, heading } of ranked) {
    const way = towards(scene, ends, heading, keepOuts);
    if (way !== null) return way;
  }
  return null;
}

/** Past this many edges near a tool every degree has to do: what is worked out would cost seconds. */
const MOST_EDGES = 200;

function headingsTold(scene: Scene, keepOuts: readonly Obstacle[]): number[] {
  if (scene.edges.length <= MOST_EDGES) return headingsWhereItChanges(scene, keepOuts);
  return Array.from({ length: 360 }, (_, k) => k * DEGREE);
}

/** Directions in order, without those that are others but for rounding. */
function apart(sorted: readonly number[]): number[] {
  return sorted.filter((angle, k) => k === 0 || angle - (sorted[k - 1] as number) > HALF_TURN_SLACK);
}

/** The direction nearest to the best one that is a little off both ends of what is possible. */
function insideOf([low, high]: readonly [number, number], best: number): number {
  const inset = Math.min(INSET, (high - low) / 2);
  return Math.min(high - inset, Math.max(low + inset, best));
}

/** The way in a direction, or as near to it as is possible from the middle of a stretch. */
function towards(
  scene: Scene,
  [low, high]: readonly [number, number],
  wanted: number,
  keepOuts: readonly Obstacle[],
): (WayOff & { kind: 'way' }) | null {
  let [good, bad] = [(low + high) / 2, wanted];
  let way = wayIn(scene, wanted, keepOuts);
  if (way !== null) return way;
  way = wayIn(scene, good, keepOuts);
  for (let k = 0; k < HALVINGS && way !== null; k++) {
    const middle = (good + bad) / 2;
    const next = wayIn(scene, middle, keepOuts);
    if (next === null) bad = middle;
    else [good, way] = [middle, next];
  }
  return way;
}

/** The way in a direction; null if it cuts, meets a keep-out, or comes to no place that is clear. */
function wayIn(
  scene: Scene,
  heading: number,
  keepOuts: readonly Obstacle[],
): (WayOff & { kind: 'way' }) | null {
  const { center, radius, clearance, edges, slack } = scene;
  const degrees = steady(heading / DEGREE);
  const direction = alongDegrees(degrees);
  const way: Way = { from: center, direction, furthest: scene.furthest * (1 + FURTHEST_SLACK) };
  const by = firstClear(way, edges, radius + clearance);
  if (by === null) return null;
  const upTo = { ...way, furthest: by };
  if (firstNear(upTo, edges, radius - slack) !== null) return null;
  if (keepOuts.some((keepOut) => meets(upTo, keepOut, radius - slack))) return null;
  const to = moved(center, direction, by);
  return { kind: 'way', direction, degrees, by, to, gap: gapAt(scene, to) };
}

/** So that a wall of half a turn, which asks for a length just under the furthest, is not cut short by rounding. */
const FURTHEST_SLACK = 1e-9;

function meets(way: Way, { region }: Obstacle, radius: number): boolean {
  return (
    contains(region, way.from) === 'inside' || firstNear(way, boxed(loopsOf(region).flat()), radius) !== null
  );
}

function noWay(scene: Scene, open: Open): NoWay {
  const { radius, slack, keepOuts, furthest: within, clearance } = scene;
  const without = keepOuts.length === 0 ? null : found(scene, open, []);
  if (without === null) return { reason: 'no room', within, clearance };
  const way: Way = { from: scene.center, direction: without.direction, furthest: without.by };
  return {
    reason: 'keep-out',
    ids: keepOuts.flatMap((keepOut) => (meets(way, keepOut, radius - slack) ? [keepOut.id] : [])),
  };
}
