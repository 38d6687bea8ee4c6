import { ROW } from '../geometry/curves.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { arcLike, lineLike } from '../geometry/parts.js';
import { type Point, samePoint } from '../geometry/point.js';
import { NAMELESS } from '../noding/gather.js';
import { circleLoop, type Loop } from '../region/region.js';
import { Sleeve } from '../region/sleeve.js';
import type { Border } from './keep.js';
import type { Subdivision } from './label.js';
import { endOf, startOf } from './rotate.js';

/**
 * Which of the operands that run along an edge may lend it their name, by number. A cut that does not reach
 * a depth, for one, forms no wall there.
 */
export type MayName = (operand: number) => boolean;

/** A place that is off its circle by less than this share of the radius is off by rounding only. */
const ROUNDING = 1e-14;

/** Arcs longer than this many tolerances have not been turned round by welding. */
const SHORT = 64;

/** The place of a circle that is furthest from another one, which may lie a little off it by welding. */
function opposite({ center, radius }: ArcEdge, { x, y }: Point): Point {
  const [dx, dy] = [center.x - x, center.y - y];
  const away = Math.hypot(dx, dy);
  if (Math.abs(away - radius) <= ROUNDING * radius) return { x: 2 * center.x - x, y: 2 * center.y - y };
  return { x: center.x + (radius / away) * dx, y: center.y + (radius / away) * dy };
}

function isFurther(a: Point, b: Point, reach: number): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return dx * dx + dy * dy > reach * reach;
}

/** Over 0 if the second place lies counter-clockwise of the first, as seen from a centre. */
function crossOf(center: Point, p: Point, q: Point): number {
  return (p.x - center.x) * (q.y - center.y) - (p.y - center.y) * (q.x - center.x);
}

/** Turns half-edges back into edges. */
export class Drawer {
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
    while (k < n && this.isSameCircle(first.input, (runs[k] as Run).input)) k++;
    return k;
  }

  /**
   * Whether the run at a place in the loop still lies on the edge that some runs before it make: each may be next to
   * nothing off the one before, and all of them far off.
   */
  private goesOn(first: Run, last: Run, k: number, n: number): boolean {
    const run = this.runs[k % n] as Run;
    if (run.input === last.input) return true;
    if (first.given.kind === 'arc') return this.isSameCircle(first.input, run.input);
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
    const { shapes, names, tolerance } = this.subdivision.graph.curves;
    const name = names[before.input];
    if (name !== names[after.input] || (name === NAMELESS && before.operand !== after.operand)) return false;
    if (shapes[before.input * ROW + 7] !== 0) return this.isSameCircle(before.input, after.input);
    return shapes[after.input * ROW + 7] === 0 && inLine(shapes, before.input, after.input, tolerance);
  }

  /** Whether two edges are arcs of one circle, and turn the same way. */
  private isSameCircle(one: number, other: number): boolean {
    const { shapes, tolerance } = this.subdivision.graph.curves;
    const p = one * ROW;
    const q = other * ROW;
    const turn = shapes[p + 7] as number;
    if (turn === 0 || turn !== shapes[q + 7]) return false;
    const dx = (shapes[p + 4] as number) - (shapes[q + 4] as number);
    const dy = (shapes[p + 5] as number) - (shapes[q + 5] as number);
    const dr = (shapes[p + 6] as number) - (shapes[q + 6] as number);
    return Math.abs(dr) <= tolerance && dx * dx + dy * dy <= tolerance * tolerance;
  }

  /** Adds the edge that the runs from one place up to another are part of, of a loop of `n`. */
  private draw(from: number, to: number, n: number, edges: Edge[]): void {
    const { graph } = this.subdivision;
    const first = this.runs[from % n] as Run;
    const { given, along } = first;
    const a = this.startOf(first);
    const b = this.place(endOf(graph, (this.runs[(to - 1) % n] as Run).half));
    if (along && (given.a === a || samePoint(given.a, a)) && this.endsAt(first.input, b)) edges.push(given);
    else if (this.isStraight(first.input)) edges.push(lineLike(given as LineEdge, a, b));
    else this.drawArc(given as ArcEdge, from, to, n, edges);
  }

  private drawArc(given: ArcEdge, from: number, to: number, n: number, edges: Edge[]): void {
    const first = this.runs[from % n] as Run;
    const a = this.startOf(first);
    const b = this.place(endOf(this.subdivision.graph, (this.runs[(to - 1) % n] as Run).half));
    const ccw = this.isLeftTurn(first.input) === first.along;
    if (!samePoint(a, b)) {
      edges.push(this.hasTurnedRound(from, to, n, ccw) ? lineLike(given, a, b) : arcLike(given, a, b, ccw));
      return;
    }
    // Once round from a vertex to itself: two arcs, since one cannot be a full turn.
    const far = opposite(given, a);
    edges.push(arcLike(given, a, far, ccw), arcLike(given, far, b, ccw));
  }

  private isStraight(input: number): boolean {
    return this.subdivision.graph.curves.shapes[input * ROW + 7] === 0;
  }

  private isLeftTurn(input: number): boolean {
    return (this.subdivision.graph.curves.shapes[input * ROW + 7] as number) > 0;
  }

  /** Whether an edge as it was given ends in a place. */
  private endsAt(input: number, { x, y }: Point): boolean {
    const { shapes } = this.subdivision.graph.curves;
    return shapes[input * ROW + 2] === x && shapes[input * ROW + 3] === y;
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
      if (isFurther(a, b, SHORT * graph.curves.tolerance)) return false;
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
function inLine(shapes: Float64Array, one: number, other: number, tolerance: number): boolean {
  const p = one * ROW;
  const q = other * ROW;
  const ux = (shapes[p + 2] as number) - (shapes[p] as number);
  const uy = (shapes[p + 3] as number) - (shapes[p + 1] as number);
  const vx = (shapes[q + 2] as number) - (shapes[q] as number);
  const vy = (shapes[q + 3] as number) - (shapes[q + 1] as number);
  const cross = Math.abs(ux * vy - uy * vx);
  if (!(ux * vx + uy * vy > 0)) return false;
  const one2 = ux * ux + uy * uy;
  const other2 = vx * vx + vy * vy;
  const shorter = Math.sqrt(Math.min(one2, other2));
  const longer = Math.sqrt(Math.max(one2, other2));
  return cross <= tolerance * Math.min(longer, shorter * 2);
}
