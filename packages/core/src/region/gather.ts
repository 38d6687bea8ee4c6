import { type Bounds, extentOf, middleOf } from '../geometry/bounds.js';
import { ROW, writeRow } from '../geometry/curves.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { edgeBounds, onArcSide } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { addPoint, type Points } from './points.js';
import type { Loop } from './region.js';

/** What one operand of an overlay brings: closed loops, run so that their inside is to the left. */
export type Operand = readonly Loop[];

/**
 * The edges of all operands as rows of numbers, in coordinates moved to the middle of the input, with arcs cut
 * at their lowest and highest points: a piece then runs up or down all the way and turns by half a turn at most.
 */
export interface Curves {
  /** How many pieces there are; the lists may be longer. */
  readonly count: number;
  /** See `writeRow`; coordinates less the origin. */
  readonly rows: Float64Array;
  /** Where each piece starts and ends: a number of `points`, shared by neighbours. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly operand: Int32Array;
  /** The edge that a piece is of, in the order given, and that edge. */
  readonly input: Int32Array;
  readonly edges: readonly Edge[];
  readonly points: Points;
  readonly originX: number;
  readonly originY: number;
  readonly tolerance: number;
}

/**
 * Lays out the operands for an overlay.
 * @param frame box that says how large the work is; that of all operands unless given. What is cut out of a part
 *   may be far larger than the part.
 */
export function gather(operands: readonly Operand[], frame?: Bounds): Curves {
  const box = frame ?? boxOf(operands);
  const { x: originX, y: originY } = middleOf(box);
  const extent = extentOf(box);
  const tolerance = weldTolerance(extent);
  const layout = new Layout(operands, originX, originY, tolerance);
  const reach = Math.max(layout.reach, Math.abs(originX) / 100, Math.abs(originY) / 100);
  if (weldTolerance(extent, reach) === tolerance) return layout.curves();
  // What is cut reaches so far out, or lies so far from the origin, that rounding counts there: look closer.
  const magnitude = magnitudeOf(boxOf(operands), originX, originY);
  return new Layout(operands, originX, originY, weldTolerance(extent, magnitude)).curves();
}

class Layout {
  /** No coordinate is larger; full circles are counted for arcs. */
  reach = 0;
  private count = 0;
  private rows: Float64Array;
  private from: Int32Array;
  private to: Int32Array;
  private operand: Int32Array;
  private input: Int32Array;
  private readonly edges: Edge[] = [];
  private readonly points: Points = { x: [], y: [], given: [], isSeam: [] };

  constructor(
    operands: readonly Operand[],
    private readonly originX: number,
    private readonly originY: number,
    private readonly tolerance: number,
  ) {
    let total = 0;
    for (const loops of operands) for (const loop of loops) total += loop.length;
    this.rows = new Float64Array(total * ROW);
    this.from = new Int32Array(total);
    this.to = new Int32Array(total);
    this.operand = new Int32Array(total);
    this.input = new Int32Array(total);
    for (let o = 0; o < operands.length; o++) {
      for (const loop of operands[o] as Operand) this.add(loop, o);
    }
  }

  private add(loop: Loop, operand: number): void {
    const { points, originX, originY } = this;
    const n = loop.length;
    const first = points.x.length;
    const start = this.count;
    let before = -1;
    for (let i = 0; i < n; i++) {
      const edge = loop[i] as Edge;
      const at = this.count;
      if (at === this.from.length) this.widen();
      const o = at * ROW;
      this.edges.push(edge);
      this.input[at] = this.edges.length - 1;
      writeRow(this.rows, at, edge, originX, originY);
      points.x.push(this.rows[o] as number);
      points.y.push(this.rows[o + 1] as number);
      points.given.push(edge.a);
      points.isSeam.push(before >= 0 && this.goesOn(before, at));
      this.note(at);
      before = at;
      this.from[at] = points.x.length - 1;
      this.operand[at] = operand;
      this.count++;
      if (!runsOneWay(this.rows, o)) this.split(edge as ArcEdge, at);
      this.to[this.count - 1] = i + 1 < n ? points.x.length : first;
    }
    if (n > 0) points.isSeam[first] = this.goesOn(before, start);
  }

  /** Puts the parts of an arc that turns up or down in the place of it, if it has any. */
  private split(arc: ArcEdge, at: number): void {
    const { points, originX, originY } = this;
    const parts = monotone(arc, this.tolerance);
    if (parts.length === 1) return;
    const operand = this.operand[at] as number;
    const input = this.input[at] as number;
    for (let k = 0; k < parts.length; k++) {
      const part = parts[k] as ArcEdge;
      if (k > 0) {
        if (this.count === this.from.length) this.widen();
        const seam = addPoint(points, part.a.x - originX, part.a.y - originY, null, true);
        this.to[this.count - 1] = seam;
        this.from[this.count] = seam;
        this.operand[this.count] = operand;
        this.input[this.count] = input;
        this.count++;
      }
      writeRow(this.rows, this.count - 1, part, originX, originY);
    }
  }

  /** Whether two pieces are arcs of one circle and one name, the second going on where the first ends. */
  private goesOn(before: number, piece: number): boolean {
    const { rows, tolerance } = this;
    const sourceOf = (k: number) => this.edges[this.input[k] as number]?.source;
    if (sourceOf(before) !== sourceOf(piece)) return false;
    const p = before * ROW;
    const q = piece * ROW;
    const turn = rows[p + 7] as number;
    if (turn !== rows[q + 7] || (turn !== 1 && turn !== -1)) return false;
    const dx = (rows[p + 4] as number) - (rows[q + 4] as number);
    const dy = (rows[p + 5] as number) - (rows[q + 5] as number);
    const dr = (rows[p + 6] as number) - (rows[q + 6] as number);
    return Math.abs(dr) <= tolerance && dx * dx + dy * dy <= tolerance * tolerance;
  }

  private note(piece: number): void {
    const { rows } = this;
    const o = piece * ROW;
    const x = Math.max(
      Math.abs(rows[o] as number),
      Math.abs(rows[o + 4] as number) + (rows[o + 6] as number),
    );
    const y = Math.max(
      Math.abs(rows[o + 1] as number),
      Math.abs(rows[o + 5] as number) + (rows[o + 6] as number),
    );
    this.reach = Math.max(this.reach, x, y);
  }

  private widen(): void {
    const size = 2 * this.from.length;
    this.rows = widened(this.rows, new Float64Array(size * ROW));
    this.from = widened(this.from, new Int32Array(size));
    this.to = widened(this.to, new Int32Array(size));
    this.operand = widened(this.operand, new Int32Array(size));
    this.input = widened(this.input, new Int32Array(size));
  }

  curves(): Curves {
    const { count, edges, points, originX, originY, tolerance } = this;
    return {
      count,
      rows: this.rows,
      from: this.from,
      to: this.to,
      operand: this.operand,
      input: this.input,
      edges,
      points,
      originX,
      originY,
      tolerance,
    };
  }
}

function widened<List extends Float64Array | Int32Array>(list: List, wider: List): List {
  wider.set(list);
  return wider;
}

/** The largest coordinate in use, what the coordinates have lost far from the origin included. */
function magnitudeOf(box: Bounds, originX: number, originY: number): number {
  return Math.max(
    Math.abs(box.minX - originX),
    Math.abs(box.maxX - originX),
    Math.abs(box.minY - originY),
    Math.abs(box.maxY - originY),
    Math.abs(originX) / 100,
    Math.abs(originY) / 100,
  );
}

/** Whether a piece is an arc on one side of its centre or no arc; most are, and this is a quick way to tell. */
function runsOneWay(rows: Float64Array, o: number): boolean {
  const turn = rows[o + 7] as number;
  if (turn !== 1 && turn !== -1) return true;
  const cx = rows[o + 4] as number;
  const isUp = (rows[o + 1] as number) < (rows[o + 3] as number);
  return isUp === turn > 0
    ? (rows[o] as number) >= cx && (rows[o + 2] as number) >= cx
    : (rows[o] as number) <= cx && (rows[o + 2] as number) <= cx;
}

/** An arc cut at the lowest and the highest point of its circle, where these lie inside it and not at an end. */
export function monotone(arc: ArcEdge, tolerance: number): readonly ArcEdge[] {
  const { center, radius } = arc;
  const low = { x: center.x, y: center.y - radius };
  const high = { x: center.x, y: center.y + radius };
  const cuts: Point[] = [];
  for (const p of [low, high]) {
    if (!isEnd(arc, p, tolerance) && onArcSide(arc, p)) cuts.push(p);
  }
  if (cuts.length === 0) return [arc];
  // Counter-clockwise from a start on the right half the highest point comes first, on the left half the lowest.
  if (arc.a.x > center.x === arc.ccw) cuts.reverse();
  const parts: ArcEdge[] = [];
  let a = arc.a;
  for (const b of [...cuts, arc.b]) {
    parts.push({ ...arc, a, b });
    a = b;
  }
  return parts;
}

/** So close to an end, as a share of the radius, the rest of the arc rises by nothing that a number can hold. */
const SAME_HEIGHT = 1e-9;

function isEnd(arc: ArcEdge, p: Point, tolerance: number): boolean {
  return Math.min(distance(p, arc.a), distance(p, arc.b)) <= Math.max(tolerance, SAME_HEIGHT * arc.radius);
}

/** The box round all edges; a point at the origin where there are none. */
export function boxOf(operands: readonly Operand[]): Bounds {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const operand of operands) {
    for (const loop of operand) {
      for (const edge of loop) {
        stretch(box, edge.a.x, edge.a.y);
        if (edge.kind !== 'arc' || isCovered(box, edge)) continue;
        const own = edgeBounds(edge);
        stretch(box, own.minX, own.minY);
        stretch(box, own.maxX, own.maxY);
      }
    }
  }
  return box.minX <= box.maxX ? box : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

/** Whether all of an arc's circle is in a box already. */
function isCovered(box: Bounds, { center, radius }: ArcEdge): boolean {
  return (
    center.x - radius >= box.minX &&
    center.x + radius <= box.maxX &&
    center.y - radius >= box.minY &&
    center.y + radius <= box.maxY
  );
}

function stretch(
  box: { minX: number; minY: number; maxX: number; maxY: number },
  x: number,
  y: number,
): void {
  if (x < box.minX) box.minX = x;
  if (x > box.maxX) box.maxX = x;
  if (y < box.minY) box.minY = y;
  if (y > box.maxY) box.maxY = y;
}
