import { withinTurn } from '../geometry/angle.js';
import { ROW } from '../geometry/curves.js';
import type { Source } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import { boundsOfOperands } from '../noding/gather.js';
import { arrange } from '../overlay/arrange.js';
import type { Subdivision } from '../overlay/label.js';
import { endOf, startOf } from '../overlay/rotate.js';
import { windings } from '../overlay/windings.js';
import { loopsOf } from '../region/measure.js';
import { circleLoop, type Region } from '../region/region.js';
import type { ArcEnd } from './bite.js';
import { metalNear } from './near-tool.js';

/** A stretch of a tool's circle along which nothing changes, run counter-clockwise. */
export interface RimStep {
  /** Half-edge of the overlay, run counter-clockwise round the tool. */
  readonly half: number;
  /** Angle turned through, radians. */
  readonly sweep: number;
  /** Whether there is metal on the inner and on the outer side of the circle. */
  readonly inner: boolean;
  readonly outer: boolean;
}

/** The overlay of some metal and a tool's circle, and the circle's stretches once round. */
export interface Rim {
  readonly subdivision: Subdivision;
  readonly center: Point;
  readonly steps: readonly RimStep[];
}

/** Neighbouring stretches of a rim that have something in common. */
export interface RimRun {
  readonly first: RimStep;
  readonly last: RimStep;
  /** Angle of its clockwise end from the x axis, and how far it goes counter-clockwise from there; radians. */
  readonly start: number;
  readonly sweep: number;
  /** Whether it goes all the way round. */
  readonly full: boolean;
}

const METAL = 0;
const TOOL = 1;

/**
 * Lays a tool's circle over some metal, in one overlay, so that what touches, runs along or crosses the circle is
 * decided there and nowhere else.
 * @throws RangeError if the radius is not a finite number over 0 or a coordinate is not finite.
 */
export function rimOf(metal: Region, center: Point, radius: number): Rim {
  const loops = loopsOf(metal);
  const subdivision = arrange(
    [loops, [circleLoop(center, radius)]],
    loops.length > 0 ? boundsOfOperands([loops]) : undefined,
  );
  const inMetal = windings(subdivision, (operand) => operand === METAL);
  const { graph, faceOf } = subdivision;
  const leaving = new Map<number, RimStep>();
  for (let edge = 0; edge < graph.count; edge++) {
    const half = halfOfTool(subdivision, edge);
    if (half < 0) continue;
    leaving.set(startOf(graph, half), {
      half,
      sweep: sweepAlong(subdivision, center, half),
      inner: (inMetal[faceOf[half] as number] as number) > 0,
      outer: (inMetal[faceOf[half ^ 1] as number] as number) > 0,
    });
  }
  return { subdivision, center, steps: onceRound(subdivision, leaving) };
}

/** Of each metal the last circle that was laid over it: load, burrs and footing ask for the same one after another. */
const lastRims = new WeakMap<
  Region,
  { readonly center: Point; readonly radius: number; readonly rim: Rim }
>();

/**
 * As `rimOf`, of the metal that the circle comes near, and without a second overlay for the same circle.
 * @throws RangeError as `rimOf`
 */
export function rimNear(metal: Region, center: Point, radius: number): Rim {
  const last = lastRims.get(metal);
  if (last !== undefined && last.radius === radius && samePoint(last.center, center)) return last.rim;
  const rim = rimOf(metalNear(metal, center, radius), center, radius);
  lastRims.set(metal, { center, radius, rim });
  return rim;
}

/** The half-edge of an edge that the tool's circle runs along, counter-clockwise; -1 if it does not. */
function halfOfTool({ graph }: Subdivision, edge: number): number {
  for (let m = graph.start[edge] as number; m < (graph.start[edge + 1] as number); m++) {
    if (graph.curves.operand[graph.member[m] as number] !== TOOL) continue;
    return (graph.sign[m] as number) > 0 ? 2 * edge : 2 * edge + 1;
  }
  return -1;
}

function onceRound({ graph }: Subdivision, leaving: ReadonlyMap<number, RimStep>): RimStep[] {
  const steps: RimStep[] = [];
  const [first] = leaving.values();
  for (let step = first; step !== undefined && (steps.length === 0 || step !== first); ) {
    steps.push(step);
    if (steps.length > leaving.size) break;
    step = leaving.get(endOf(graph, step.half));
  }
  return steps;
}

/** The runs of stretches that `belongs` holds for, counter-clockwise. */
export function runsOf(rim: Rim, belongs: (step: RimStep) => boolean): RimRun[] {
  const { steps } = rim;
  const n = steps.length;
  const begin = steps.findIndex((step, k) => belongs(step) && !belongs(steps[(k + n - 1) % n] as RimStep));
  if (begin < 0) {
    const [first] = steps;
    if (first === undefined || !belongs(first)) return [];
    const last = steps[n - 1] as RimStep;
    return [{ first, last, start: angleAt(rim, first), sweep: 2 * Math.PI, full: true }];
  }
  const runs: (RimRun & { last: RimStep; sweep: number })[] = [];
  for (let k = 0; k < n; k++) {
    const step = steps[(begin + k) % n] as RimStep;
    if (!belongs(step)) continue;
    const run = runs[runs.length - 1];
    const before = steps[(begin + k + n - 1) % n] as RimStep;
    if (run !== undefined && k > 0 && run.last === before) {
      run.last = step;
      run.sweep += step.sweep;
    } else {
      runs.push({ first: step, last: step, start: angleAt(rim, step), sweep: step.sweep, full: false });
    }
  }
  return runs;
}

function angleAt({ subdivision, center }: Rim, step: RimStep): number {
  const p = pointOfVertex(subdivision, startOf(subdivision.graph, step.half));
  return Math.atan2(p.y - center.y, p.x - center.x);
}

/** Where a run begins, which is where a tooth that turns clockwise leaves it. */
export function clockwiseEnd({ subdivision }: Rim, { first }: RimRun): ArcEnd {
  const vertex = startOf(subdivision.graph, first.half);
  const face = subdivision.rotation.cw[first.half] as number;
  return endAt(subdivision, vertex, face, face, first.half);
}

/** Where a run ends, which is where a tooth that turns clockwise enters it. */
export function counterClockwiseEnd({ subdivision }: Rim, { last }: RimRun): ArcEnd {
  const vertex = endOf(subdivision.graph, last.half);
  const back = last.half ^ 1;
  const face = subdivision.rotation.ccw[back] as number;
  return endAt(subdivision, vertex, face, back, face);
}

/** The wedge of metal outside of the circle at a vertex: counter-clockwise from one half-edge to another. */
function endAt(subdivision: Subdivision, vertex: number, face: number, from: number, to: number): ArcEnd {
  const turn = headingOf(subdivision, to) - headingOf(subdivision, from);
  const angle = withinTurn(turn);
  return {
    at: pointOfVertex(subdivision, vertex),
    // The circle itself leaves the vertex both ways, so the wedge is half a turn at most; more is a rounded 0.
    angle: angle > 1.5 * Math.PI ? 0 : Math.min(angle, Math.PI),
    source: sourceOf(subdivision, face >> 1),
  };
}

function sourceOf({ graph }: Subdivision, edge: number): Source | null {
  for (let m = graph.start[edge] as number; m < (graph.start[edge + 1] as number); m++) {
    const piece = graph.member[m] as number;
    if (graph.curves.operand[piece] !== METAL) continue;
    return graph.curves.edges[graph.curves.input[piece] as number]?.source ?? null;
  }
  return null;
}

function pointOfVertex({ graph }: Subdivision, vertex: number): Point {
  const { points, originX, originY } = graph.curves;
  return (
    points.given[vertex] ?? {
      x: (points.x[vertex] as number) + originX,
      y: (points.y[vertex] as number) + originY,
    }
  );
}

/** Angle from the start to the end of a half-edge as seen from the tool's centre, radians; up to half a turn. */
function sweepAlong({ graph }: Subdivision, center: Point, half: number): number {
  const { points, originX, originY } = graph.curves;
  const cx = center.x - originX;
  const cy = center.y - originY;
  const a = startOf(graph, half);
  const b = endOf(graph, half);
  const ux = (points.x[a] as number) - cx;
  const uy = (points.y[a] as number) - cy;
  const vx = (points.x[b] as number) - cx;
  const vy = (points.y[b] as number) - cy;
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}

/** Direction in which a half-edge leaves its start, radians from -pi to pi. */
function headingOf({ graph }: Subdivision, half: number): number {
  const { rows, points } = graph.curves;
  const a = startOf(graph, half);
  const ax = points.x[a] as number;
  const ay = points.y[a] as number;
  // The first member gives the shape of an edge, and it runs along it.
  const o = (graph.member[graph.start[half >> 1] as number] as number) * ROW;
  const turn = (rows[o + 7] as number) * (half & 1 ? -1 : 1);
  if (turn === 0) {
    const b = endOf(graph, half);
    return Math.atan2((points.y[b] as number) - ay, (points.x[b] as number) - ax);
  }
  const px = ax - (rows[o + 4] as number);
  const py = ay - (rows[o + 5] as number);
  return turn > 0 ? Math.atan2(px, -py) : Math.atan2(-px, py);
}
