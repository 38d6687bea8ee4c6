import { type Edge, reversed } from '../geometry/edge.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import type { Chain } from './gather.js';
import { type Border, borderOf } from './keep.js';
import type { Subdivision } from './label.js';
import { loopArea, loopLength } from './measure.js';
import { circleLoop, type Loop, type RegionPart } from './region.js';
import { endOf, startOf } from './rotate.js';

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
  const parts: CollectedPart[] = [];
  for (const { face, outer, holes } of bodiesIn(subdivision, kept, mayName)) {
    if (outer !== null) parts.push({ outer, holes, face });
  }
  return parts;
}

/** Kept faces that hang together: the loops that bound them, and one of the faces. */
export interface Body {
  readonly face: number;
  /** null where they go on without end, or are thinner than a few weld tolerances. */
  readonly outer: Loop | null;
  readonly holes: readonly Loop[];
  /** Whether the unbounded face is one of them. */
  readonly isEndless: boolean;
}

/**
 * The bodies that the faces marked in `kept` form; the unbounded face may be one of these.
 * @param keepsJoints which operands have all joints between their edges kept, since something that is not in the
 *   overlay may touch there
 */
export function bodiesIn(
  subdivision: Subdivision,
  kept: Uint8Array,
  mayName: MayName = always,
  keepsJoints: (operand: number) => boolean = never,
): Body[] {
  const border = borderOf(subdivision, kept);
  const drawer = new Drawer(subdivision, border, mayName, keepsJoints);
  const { tolerance } = subdivision.graph.curves;
  const bodies = new Map<number, { face: number; outer: Loop | null; area: number; holes: Loop[] }>();
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
      if (Math.abs(size) <= (SLIVER * tolerance * loopLength(loop)) / 2) continue;
      if (size < 0) body.holes.push(loop);
      else if (size > body.area) {
        body.outer = loop;
        body.area = size;
      }
    }
  }
  const endless = kept[0] === 1 ? border.bodyOf(0) : -1;
  return [...bodies].map(([id, { face, outer, holes }]) => ({
    face,
    outer,
    holes,
    isEndless: id === endless,
  }));
}

/** Mean thickness, in weld tolerances, up to which a part or hole is nothing: each side may have been moved by one. */
const SLIVER = 4;

const always: MayName = () => true;
const never = () => false;

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
  if (walk.every((half) => leaving[startOf(graph, half)] === 1)) return [walk];
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

  constructor(
    private readonly subdivision: Subdivision,
    private readonly border: Border,
    private readonly mayName: MayName,
    private readonly keepsJoints: (operand: number) => boolean,
  ) {}

  /** The loop along some half-edges, with edges that were cut for the overlay only made whole again. */
  loop(halves: readonly number[]): Loop {
    const runs = halves.map((half) => this.run(half));
    const n = runs.length;
    const joint = runs.map((run, k) => !this.isSeam(runs[(k + n - 1) % n] as Run, run));
    const begin = joint.indexOf(true);
    if (begin < 0) return this.unbroken(runs);
    const edges: Edge[] = [];
    let group: Run[] = [];
    for (let k = 0; k < n; k++) {
      group.push(runs[(begin + k) % n] as Run);
      if (joint[(begin + k + 1) % n] === true) {
        for (const edge of this.drawn(group)) edges.push(edge);
        group = [];
      }
    }
    return edges;
  }

  private run(half: number): Run {
    const { graph } = this.subdivision;
    const edge = half >> 1;
    let chosen = graph.start[edge] as number;
    for (let k = chosen; k < (graph.start[edge + 1] as number); k++) {
      const operand = this.operandOf(k);
      if (!this.mayName(operand)) continue;
      if (!this.mayName(this.operandOf(chosen)) || operand < this.operandOf(chosen)) chosen = k;
    }
    const piece = graph.member[chosen] as number;
    const input = graph.curves.input[piece] as number;
    const given = graph.curves.edges[input] as Edge | Chain;
    const along = (graph.sign[chosen] as number) > 0 === ((half & 1) === 0);
    const touches = (this.border.leaving[startOf(graph, half)] as number) > 1;
    return { half, given, input, along, operand: this.operandOf(chosen), touches };
  }

  private operandOf(k: number): number {
    const { graph } = this.subdivision;
    return graph.curves.operand[graph.member[k] as number] as number;
  }

  /** Whether two runs that follow each other are one edge of the input, or two that only its encoding parts. */
  private isSeam(before: Run, after: Run): boolean {
    if (after.touches || before.along !== after.along || before.half === after.half) return false;
    if (before.input === after.input) return true;
    if (this.keepsJoints(before.operand)) return false;
    const p = before.given;
    const q = after.given;
    if (p.kind === 'chain' || q.kind === 'chain') return false;
    if (p.source !== q.source || (p.source === undefined && before.operand !== after.operand)) return false;
    const { tolerance } = this.subdivision.graph.curves;
    if (p.kind === 'arc' && q.kind === 'arc') {
      return (
        p.ccw === q.ccw &&
        Math.abs(p.radius - q.radius) <= tolerance &&
        distance(p.center, q.center) <= tolerance
      );
    }
    return p.kind === 'line' && q.kind === 'line' && inLine(p, q, tolerance);
  }

  private drawn(group: readonly Run[]): readonly Edge[] {
    const { graph } = this.subdivision;
    const first = group[0] as Run;
    const last = group[group.length - 1] as Run;
    const a = this.place(startOf(graph, first.half));
    const b = this.place(endOf(graph, last.half));
    const { given } = first;
    if (given.kind === 'chain') return first.along ? given.edges : given.edges.map(reversed).reverse();
    if (given.kind === 'arc') {
      const ccw = given.ccw === first.along;
      if (!samePoint(a, b)) return [whole(given, a, b, first.along) ?? { ...given, a, b, ccw }];
      // Once round from a vertex to itself: two arcs, since one cannot be a full turn.
      const far = { x: 2 * given.center.x - a.x, y: 2 * given.center.y - a.y };
      return [
        { ...given, a, b: far, ccw },
        { ...given, a: far, b, ccw },
      ];
    }
    return [whole(given, a, b, first.along) ?? { ...given, a, b }];
  }

  /** A loop without any joint is a circle. */
  private unbroken(runs: readonly Run[]): Loop {
    const { given, along } = runs[0] as Run;
    if (given.kind !== 'arc') throw new RangeError('collect: a straight edge cannot close on itself');
    return circleLoop(given.center, given.radius, given.ccw === along, given.source);
  }

  private place(vertex: number): Point {
    const known = this.placeOf.get(vertex);
    if (known !== undefined) return known;
    const { points, originX, originY } = this.subdivision.graph.curves;
    const place = points.given[vertex] ?? {
      x: (points.x[vertex] as number) + originX,
      y: (points.y[vertex] as number) + originY,
    };
    this.placeOf.set(vertex, place);
    return place;
  }
}

/** A half-edge and the edge of the input that it is part of. */
interface Run {
  readonly half: number;
  readonly given: Edge | Chain;
  readonly input: number;
  readonly along: boolean;
  readonly operand: number;
  /** Whether another part of the border meets this one at its start. */
  readonly touches: boolean;
}

/** The edge itself where all of it is used as it was given. */
function whole(given: Edge, a: Point, b: Point, along: boolean): Edge | null {
  return along && samePoint(given.a, a) && samePoint(given.b, b) ? given : null;
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
