import { type BoxTree, boxTreeOf } from '../geometry/box-tree.js';
import { ROW } from '../geometry/curves.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, edgeBounds } from '../geometry/measure.js';
import { partOfEdge, reversed } from '../geometry/parts.js';
import type { Point, Vector } from '../geometry/point.js';
import { loopArea } from '../region/measure.js';
import { NEVER, NOWHERE, type Timeline } from './timeline.js';

/** Two places of walls that face each other in a slab: from when on, until when, and the walls with metal to the left. */
export interface Facing {
  readonly slab: number;
  readonly from: number;
  readonly to: number;
  readonly halves: readonly [number, number];
  readonly ends: readonly [Point, Point];
}

/** A wall that runs on towards the other side by more than this (as a sine) makes a place no narrowest one. */
const NEARER = 1e-6;

/** When a cell goes, by its moment: before all where it never was, after all where it stays. */
export function goneAt(moment: number): number {
  return moment === NEVER ? Infinity : moment === NOWHERE ? -1 : moment;
}

/** Whether metal stands to the left of a half-edge and none to the right after a moment. */
function isWall({ cells, momentOf }: Timeline, half: number, slab: number, moment: number): boolean {
  const n = cells.slabs.length;
  const { faceOf } = cells.subdivision;
  const gone = (h: number) => goneAt(momentOf[(faceOf[h] as number) * n + slab] as number);
  return gone(half) > moment && gone(half ^ 1) <= moment;
}

/**
 * The area that the way across a facing parts off on the left of its first wall: from there along the boundary until the
 * second. Below 0 where that is all but what lies within a hole; null where the boundary does not lead there.
 */
export function partedOff(timeline: Timeline, { halves, ends, slab, from }: Facing): number | null {
  const { graph, rotation } = timeline.cells.subdivision;
  const [first, second] = halves;
  const [p, q] = ends;
  const loop: Edge[] = [];
  let half = first;
  do {
    const edge = runAlong(timeline, half);
    if (half === second && loop.length > 0) {
      if (!isSame(edge.a, q)) loop.push(partOfEdge(edge, edge.a, q));
      if (!isSame(q, p)) loop.push({ kind: 'line', a: q, b: p });
      return loopArea(loop);
    }
    if (half !== first) loop.push(edge);
    else loop.push(isSame(p, edge.b) ? { kind: 'line', a: p, b: edge.b } : partOfEdge(edge, p, edge.b));
    half = rotation.cw[half ^ 1] as number;
    while (!isWall(timeline, half, slab, from)) half = rotation.cw[half] as number;
  } while (half !== first && loop.length <= graph.count);
  return null;
}

function isSame(p: Point, q: Point): boolean {
  return p.x === q.x && p.y === q.y;
}

/** An edge of the overlay, run along a half-edge of it. */
function runAlong(timeline: Timeline, half: number): Edge {
  const edge = edgeNumbered(timeline, half >> 1);
  return half & 1 ? reversed(edge) : edge;
}

/** The edges of an overlay that are walls at some time, and when. */
export class Walls {
  readonly edges: Edge[] = [];
  readonly tree: BoxTree;
  /** By wall: its edge of the overlay. */
  private readonly number: number[] = [];
  private readonly atVertex = new Map<number, number[]>();
  /** By wall and slab: from when on it is one, and until when; see `goneAt`. */
  private readonly begins: Float64Array;
  private readonly ends: Float64Array;

  constructor(private readonly timeline: Timeline) {
    const { graph } = timeline.cells.subdivision;
    for (let e = 0; e < graph.count; e++) {
      if (!this.isEver(e)) continue;
      for (const v of [graph.from[e], graph.to[e]] as number[]) {
        const list = this.atVertex.get(v);
        if (list === undefined) this.atVertex.set(v, [this.number.length]);
        else list.push(this.number.length);
      }
      this.number.push(e);
      this.edges.push(edgeNumbered(timeline, e));
    }
    this.tree = boxTreeOf(this.edges.map(edgeBounds));
    const { cells, momentOf } = timeline;
    const n = cells.slabs.length;
    this.begins = new Float64Array(this.edges.length * n);
    this.ends = new Float64Array(this.edges.length * n);
    for (let i = 0; i < this.edges.length; i++) {
      const [left, right] = this.facesOf(this.number[i] as number);
      for (let slab = 0; slab < n; slab++) {
        const one = goneAt(momentOf[left * n + slab] as number);
        const other = goneAt(momentOf[right * n + slab] as number);
        this.begins[i * n + slab] = Math.min(one, other);
        this.ends[i * n + slab] = Math.max(one, other);
      }
    }
  }

  /** Whether two walls stand at one time in some slab, once a step has been taken: others never face each other. */
  standTogether(i: number, j: number): boolean {
    const { begins, ends } = this;
    const n = this.timeline.cells.slabs.length;
    for (let slab = 0; slab < n; slab++) {
      const from = Math.max(begins[i * n + slab] as number, begins[j * n + slab] as number);
      const to = Math.min(ends[i * n + slab] as number, ends[j * n + slab] as number);
      if (from < to && from >= 0) return true;
    }
    return false;
  }

  private isEver(e: number): boolean {
    const { cells, momentOf } = this.timeline;
    const n = cells.slabs.length;
    const [left, right] = this.facesOf(e);
    for (let s = 0; s < n; s++) if (momentOf[left * n + s] !== momentOf[right * n + s]) return true;
    return false;
  }

  private facesOf(e: number): readonly [number, number] {
    const { faceOf } = this.timeline.cells.subdivision;
    return [faceOf[2 * e] as number, faceOf[2 * e + 1] as number];
  }

  share(i: number, j: number): boolean {
    const { from, to } = this.timeline.cells.subdivision.graph;
    const [e, f] = [this.number[i] as number, this.number[j] as number];
    return from[e] === from[f] || from[e] === to[f] || to[e] === from[f] || to[e] === to[f];
  }

  /** Where two walls face each other with metal between, and part from there on: by slab from when, and until when. */
  facing(i: number, p: Point, j: number, q: Point): Facing[] {
    const toQ = { dx: q.x - p.x, dy: q.y - p.y };
    const toP = { dx: -toQ.dx, dy: -toQ.dy };
    const one = this.sidesOf(i, p, toQ);
    const other = this.sidesOf(j, q, toP);
    if (one === null || other === null) return [];
    const { momentOf, cells } = this.timeline;
    const n = cells.slabs.length;
    return cells.slabs.flatMap((_, slab): Facing[] => {
      const gone = (face: number) => goneAt(momentOf[face * n + slab] as number);
      const from = Math.max(gone(one.out), gone(other.out));
      const to = Math.min(gone(one.in), gone(other.in));
      // What the outline makes narrow by itself no step does.
      if (!(from < to) || from < 0) return [];
      if (this.goesNearer(i, p, toQ, from, slab) || this.goesNearer(j, q, toP, from, slab)) return [];
      return [{ slab, from, to, halves: [one.half, other.half], ends: [p, q] }];
    });
  }

  /** The faces on both sides of a wall as seen from a place, and the half-edge with metal to its left; null if it runs straight there. */
  private sidesOf(i: number, at: Point, to: Vector): { in: number; out: number; half: number } | null {
    const { dx, dy } = directionAt(this.edges[i] as Edge, at);
    const cross = dx * to.dy - dy * to.dx;
    if (cross === 0) return null;
    const e = this.number[i] as number;
    const [left, right] = this.facesOf(e);
    return cross > 0 ? { in: left, out: right, half: 2 * e } : { in: right, out: left, half: 2 * e + 1 };
  }

  /** Whether another wall that starts at a place goes nearer to the other side. */
  private goesNearer(i: number, at: Point, to: Vector, moment: number, slab: number): boolean {
    const { graph } = this.timeline.cells.subdivision;
    const edge = this.edges[i] as Edge;
    const e = this.number[i] as number;
    for (const [end, v] of [
      [edge.a, graph.from[e] as number],
      [edge.b, graph.to[e] as number],
    ] as const) {
      if (end.x !== at.x || end.y !== at.y) continue;
      for (const k of this.atVertex.get(v) as number[]) {
        if (k === i) continue;
        const f = this.number[k] as number;
        if (!isWall(this.timeline, 2 * f, slab, moment) && !isWall(this.timeline, 2 * f + 1, slab, moment))
          continue;
        const other = this.edges[k] as Edge;
        const start = graph.from[f] === v ? directionAtStart(other) : directionAtEnd(other);
        const sign = graph.from[f] === v ? 1 : -1;
        if (sign * (start.dx * to.dx + start.dy * to.dy) > NEARER * Math.hypot(to.dx, to.dy)) return true;
      }
    }
    return false;
  }
}

/** An edge of the overlay as it lies; its ends are those of its vertices. */
function edgeNumbered({ cells }: Timeline, e: number): Edge {
  const { graph } = cells.subdivision;
  const { rows, points, originX, originY } = graph.curves;
  const place = (v: number): Point => ({
    x: (points.x[v] as number) + originX,
    y: (points.y[v] as number) + originY,
  });
  const a = place(graph.from[e] as number);
  const b = place(graph.to[e] as number);
  const o = (graph.member[graph.start[e] as number] as number) * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return { kind: 'line', a, b };
  const center = { x: (rows[o + 4] as number) + originX, y: (rows[o + 5] as number) + originY };
  const arc: ArcEdge = { kind: 'arc', a, b, center, radius: rows[o + 6] as number, ccw: turn > 0 };
  return arc;
}

/** The way an edge runs at a place on it. */
function directionAt(edge: Edge, at: Point): Vector {
  if (edge.kind === 'line') return { dx: edge.b.x - edge.a.x, dy: edge.b.y - edge.a.y };
  const [dx, dy] = [at.x - edge.center.x, at.y - edge.center.y];
  return edge.ccw ? { dx: -dy, dy: dx } : { dx: dy, dy: -dx };
}
