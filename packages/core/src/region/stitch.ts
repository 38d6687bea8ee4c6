import type { Edge } from '../geometry/edge.js';
import { arcLike, lineLike } from '../geometry/parts.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { regionFault } from './certify-region.js';
import { type Border, borderOf } from './keep.js';
import type { Subdivision } from './label.js';
import { loopArea } from './measure.js';
import { OverlayError } from './overlay-error.js';
import { circleLoop, type Loop, type RegionPart } from './region.js';
import { endOf, startOf } from './rotate.js';
import { Sleeve } from './sleeve.js';
import { isSliver } from './sliver.js';

/** A part of a result, and one of the faces that it is made of. */
export interface CollectedPart extends RegionPart {
  readonly face: number;
}

/**
 * Which of the operands that run along an edge may lend it their name, by number. A cut that does not reach
 * a depth, for one, forms no wall there.
 */
export type MayName = (operand: number) => boolean;

/**
 * The faces marked in `kept` as a region. Parts that touch in a point only are parts of their own; loops are
 * split where they touch themselves; what is thinner than a few weld tolerances is left out.
 */
export function collect(
  subdivision: Subdivision,
  kept: Uint8Array,
  mayName: MayName = always,
): CollectedPart[] {
  const border = borderOf(subdivision, kept);
  const drawer = new Drawer(subdivision, border, mayName);
  const { tolerance } = subdivision.graph.curves;
  const bodies = new Map<number, { face: number; outer: Loop | null; area: number; holes: Loop[] }>();
  let dropped = 0;
  const done = new Uint8Array(border.isBorder.length);
  for (const first of border.halves) {
    if (done[first] === 1) continue;
    const face = subdivision.faceOf[first] as number;
    const id = border.bodyOf(face);
    const body = bodies.get(id) ?? { face, outer: null, area: 0, holes: [] };
    bodies.set(id, body);
    for (const halves of simpleLoops(subdivision, border, traced(subdivision, border, first, done))) {
      const loop = drawer.loop(halves);
      const size = loopArea(loop);
      if (isSliver(loop, Math.abs(size), tolerance)) dropped += size;
      else if (size < 0) body.holes.push(loop);
      else if (size > body.area) {
        body.outer = loop;
        body.area = size;
      }
    }
  }
  const parts: CollectedPart[] = [];
  for (const { face, outer, holes } of bodies.values())
    if (outer !== null) parts.push({ outer, holes, face });
  const fault = regionFault(subdivision, border, parts, dropped);
  if (fault === null) return parts;
  throw new OverlayError(
    `collect: ${fault}; this is a fault of the library, please report it with the input`,
  );
}

const always: MayName = () => true;

/** Arcs longer than this many tolerances have not been turned round by welding. */
const SHORT = 64;

/** A straight edge in the place of an arc, under the same name. */
function chordOf({ source }: Edge, a: Point, b: Point): Edge {
  return source === undefined ? { kind: 'line', a, b } : { kind: 'line', a, b, source };
}

/** Over 0 if the second place lies counter-clockwise of the first, as seen from a centre. */
function crossOf(center: Point, p: Point, q: Point): number {
  return (p.x - center.x) * (q.y - center.y) - (p.y - center.y) * (q.x - center.x);
}

/** Goes round once along the border with what is kept to the left, hugging it at every vertex. */
function traced(subdivision: Subdivision, border: Border, first: number, done: Uint8Array): number[] {
  const { cw } = subdivision.rotation;
  const halves: number[] = [];
  let half = first;
  do {
    halves.push(half);
    done[half] = 1;
    half = cw[half ^ 1] as number;
    while (border.isBorder[half] === 0) half = cw[half] as number;
  } while (half !== first);
  return halves;
}

/** Splits a closed walk into loops that visit no vertex twice. */
function simpleLoops({ graph }: Subdivision, { leaving }: Border, walk: number[]): number[][] {
  let k = 0;
  while (k < walk.length && leaving[startOf(graph, walk[k] as number)] === 1) k++;
  if (k === walk.length) return [walk];
  const loops: number[][] = [];
  const stack: number[] = [];
  const heightOf = new Map<number, number>();
  for (const half of walk) {
    heightOf.set(startOf(graph, half), stack.length);
    stack.push(half);
    const back = heightOf.get(endOf(graph, half));
    if (back === undefined) continue;
    const loop = stack.splice(back);
    for (const one of loop) heightOf.delete(startOf(graph, one));
    loops.push(loop);
  }
  return loops;
}

/** Turns half-edges back into edges. */
class Drawer {
  private readonly placeOf = new Map<number, Point>();
  /** The half-edges of the loop at hand; used again for each loop. */
  private readonly runs: Run[] = [];
  private readonly sleeve: Sleeve;

  constructor(
    private readonly subdivision: Subdivision,
    private readonly border: Border,
    private readonly mayName: MayName,
  ) {
    this.sleeve = new Sleeve(subdivision.graph.curves.tolerance);
  }

  /** The loop along some half-edges, with edges that were cut for the overlay only made whole again. */
  loop(halves: readonly number[]): Loop {
    const { runs } = this;
    const n = halves.length;
    for (let k = 0; k < n; k++) this.setRun(k, halves[k] as number);
    let begin = 0;
    while (begin < n && this.isSeam(runs[begin === 0 ? n - 1 : begin - 1] as Run, runs[begin] as Run))
      begin++;
    if (begin === n) {
      begin = this.firstOfAnother(n);
      if (begin === n) return this.unbroken(runs[0] as Run);
    }
    const edges: Edge[] = [];
    let first = begin;
    this.sleeve.start(this.startOf(runs[begin] as Run));
    for (let k = begin + 1; k < begin + n; k++) {
      const last = runs[(k - 1) % n] as Run;
      const run = runs[k % n] as Run;
      if (this.isSeam(last, run) && this.goesOn(runs[first % n] as Run, last, k, n)) continue;
      this.draw(first, k, n, edges);
      first = k;
      this.sleeve.start(this.startOf(run));
    }
    this.draw(first, begin + n, n, edges);
    return edges;
  }

  /** Where a loop of seams alone begins that is no circle: at an arc of another circle than the first. */
  private firstOfAnother(n: number): number {
    const { runs } = this;
    const first = runs[0] as Run;
    if (first.given.kind === 'line') return 0;
    let k = 1;
    while (k < n && this.isSameCircle(first.given, (runs[k] as Run).given)) k++;
    return k;
  }

  /**
   * Whether the run at a place in the loop still lies on the edge that some runs before it make: each may be next to
   * nothing off the one before, and all of them far off.
   */
  private goesOn(first: Run, last: Run, k: number, n: number): boolean {
    const run = this.runs[k % n] as Run;
    if (run.input === last.input) return true;
    if (first.given.kind === 'arc') return this.isSameCircle(first.given, run.given);
    this.sleeve.pass(this.startOf(run));
    let end = run;
    for (let j = k + 1; j < k + n; j++) {
      const next = this.runs[j % n] as Run;
      if (next.input !== run.input || !this.isSeam(end, next)) break;
      end = next;
    }
    return this.sleeve.reaches(this.place(endOf(this.subdivision.graph, end.half)));
  }

  private startOf(run: Run): Point {
    return this.place(startOf(this.subdivision.graph, run.half));
  }

  private setRun(slot: number, half: number): void {
    const { graph } = this.subdivision;
    const edge = half >> 1;
    const first = graph.start[edge] as number;
    const end = graph.start[edge + 1] as number;
    // Members stand in the order of their operands; where none may lend its name, the first one does.
    let chosen = first;
    while (chosen < end && !this.mayName(this.operandOf(chosen))) chosen++;
    if (chosen === end) chosen = first;
    const piece = graph.member[chosen] as number;
    const input = graph.curves.input[piece] as number;
    const given = graph.curves.edges[input] as Edge;
    const along = (graph.sign[chosen] as number) > 0 === ((half & 1) === 0);
    const touches = (this.border.leaving[startOf(graph, half)] as number) > 1;
    const operand = this.operandOf(chosen);
    const run = this.runs[slot];
    if (run === undefined) this.runs.push({ half, given, input, along, operand, touches });
    else {
      run.half = half;
      run.given = given;
      run.input = input;
      run.along = along;
      run.operand = operand;
      run.touches = touches;
    }
  }

  private operandOf(k: number): number {
    const { graph } = this.subdivision;
    return graph.curves.operand[graph.member[k] as number] as number;
  }

  /** Whether two runs that follow each other are one edge of the input, or two that only its encoding parts. */
  private isSeam(before: Run, after: Run): boolean {
    if (after.touches || before.along !== after.along) return false;
    if (before.input === after.input) return true;
    const p = before.given;
    const q = after.given;
    if (p.source !== q.source || (p.source === undefined && before.operand !== after.operand)) return false;
    if (p.kind === 'arc') return this.isSameCircle(p, q);
    return q.kind === 'line' && inLine(p, q, this.subdivision.graph.curves.tolerance);
  }

  private isSameCircle(p: Edge, q: Edge): boolean {
    const { tolerance } = this.subdivision.graph.curves;
    return (
      p.kind === 'arc' &&
      q.kind === 'arc' &&
      p.ccw === q.ccw &&
      Math.abs(p.radius - q.radius) <= tolerance &&
      distance(p.center, q.center) <= tolerance
    );
  }

  /** Adds the edge that the runs from one place up to another are part of, of a loop of `n`. */
  private draw(from: number, to: number, n: number, edges: Edge[]): void {
    const { graph } = this.subdivision;
    const first = this.runs[from % n] as Run;
    const { given, along } = first;
    const a = this.startOf(first);
    const b = this.place(endOf(graph, (this.runs[(to - 1) % n] as Run).half));
    if (along && samePoint(given.a, a) && samePoint(given.b, b)) edges.push(given);
    else if (given.kind === 'line') edges.push(lineLike(given, a, b));
    else {
      const ccw = given.ccw === along;
      if (!samePoint(a, b)) {
        edges.push(this.hasTurnedRound(from, to, n, ccw) ? chordOf(given, a, b) : arcLike(given, a, b, ccw));
        return;
      }
      // Once round from a vertex to itself: two arcs, since one cannot be a full turn.
      const far = { x: 2 * given.center.x - a.x, y: 2 * given.center.y - a.y };
      edges.push(arcLike(given, a, far, ccw), arcLike(given, far, b, ccw));
    }
  }

  /**
   * Whether welding has moved the ends of an arc past each other: from the one to the other it would go all the way round.
   * No run turns by more than half a turn, and such an arc is as short as what welding moves.
   */
  private hasTurnedRound(from: number, to: number, n: number, ccw: boolean): boolean {
    const { graph } = this.subdivision;
    const { given } = this.runs[from % n] as Run;
    if (given.kind === 'line') return false;
    const a = this.startOf(this.runs[from % n] as Run);
    let turned = 0;
    let before = a;
    for (let k = from; k < to; k++) {
      const b = this.place(endOf(graph, (this.runs[k % n] as Run).half));
      if (distance(a, b) > SHORT * graph.curves.tolerance) return false;
      turned += crossOf(given.center, before, b);
      before = b;
    }
    return ccw ? turned < 0 : turned > 0;
  }

  /** A loop without any joint is a circle. */
  private unbroken({ given, along }: Run): Loop {
    if (given.kind !== 'arc') throw new RangeError('collect: a straight edge cannot close on itself');
    return circleLoop(given.center, given.radius, given.ccw === along, given.source);
  }

  private place(vertex: number): Point {
    const { points, originX, originY } = this.subdivision.graph.curves;
    const known = points.given[vertex] ?? this.placeOf.get(vertex);
    if (known !== undefined) return known;
    const place = { x: (points.x[vertex] as number) + originX, y: (points.y[vertex] as number) + originY };
    this.placeOf.set(vertex, place);
    return place;
  }
}

/** A half-edge and the edge of the input that it is part of. */
interface Run {
  half: number;
  given: Edge;
  input: number;
  along: boolean;
  operand: number;
  /** Whether another part of the border meets this one at its start. */
  touches: boolean;
}

/** Whether two lines continue each other. */
function inLine(p: Edge, q: Edge, tolerance: number): boolean {
  const ux = p.b.x - p.a.x;
  const uy = p.b.y - p.a.y;
  const vx = q.b.x - q.a.x;
  const vy = q.b.y - q.a.y;
  const shorter = Math.min(Math.hypot(ux, uy), Math.hypot(vx, vy));
  const longer = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
  return ux * vx + uy * vy > 0 && Math.abs(ux * vy - uy * vx) <= tolerance * Math.min(longer, shorter * 2);
}
