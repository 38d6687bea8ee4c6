import { type Bounds, extentOf, middleOf } from '../geometry/bounds.js';
import { ROW, writeRow } from '../geometry/curves.js';
import type { Edge, Source } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { turnsOf } from '../region/monotone.js';
import type { Loop } from '../region/region.js';
import { addPoint, type Points } from './points.js';

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
  /** These edges as rows of numbers, where they were given, and the number of the name of each. */
  readonly shapes: Float64Array;
  readonly names: Int32Array;
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
  const read = readEdges(operands);
  const box = frame ?? boxOfRows(read.shapes, read.edges);
  const { x: originX, y: originY } = middleOf(box);
  const extent = extentOf(box);
  const tolerance = weldTolerance(extent);
  const layout = new Layout(read, originX, originY, tolerance);
  const reach = Math.max(layout.reach, Math.abs(originX) / 100, Math.abs(originY) / 100);
  if (weldTolerance(extent, reach) === tolerance) return layout.curves();
  // What is cut reaches so far out, or lies so far from the origin, that rounding counts there: look closer.
  const magnitude = magnitudeOf(boxOfRows(read.shapes, read.edges), originX, originY);
  return new Layout(read, originX, originY, weldTolerance(extent, magnitude)).curves();
}

/** All edges as numbers, where they were given: objects are looked at once. */
interface Read {
  readonly edges: readonly Edge[];
  readonly shapes: Float64Array;
  readonly names: Int32Array;
  /** Loops that have edges: the first of each, with the number of all at the end, and the operands that they are of. */
  readonly first: readonly number[];
  readonly operand: readonly number[];
}

/** The number of no name. */
export const NAMELESS = 0;

function readEdges(operands: readonly Operand[]): Read {
  let total = 0;
  for (const loops of operands) for (const loop of loops) total += loop.length;
  const edges: Edge[] = [];
  const shapes = new Float64Array(total * ROW);
  const names = new Int32Array(total);
  const first = [0];
  const operand: number[] = [];
  const numbers = new Map<Source | undefined, number>();
  let before: Source | undefined;
  let name = NAMELESS;
  numbers.set(before, name);
  for (let o = 0; o < operands.length; o++) {
    for (const loop of operands[o] as Operand) {
      if (loop.length === 0) continue;
      for (const edge of loop) {
        const at = edges.length;
        edges.push(edge);
        writeRow(shapes, at, edge, 0, 0);
        if (edge.source !== before) {
          before = edge.source;
          const known = numbers.get(before);
          name = known ?? numbers.size;
          if (known === undefined) numbers.set(before, name);
        }
        names[at] = name;
      }
      first.push(edges.length);
      operand.push(o);
    }
  }
  return { edges, shapes, names, first, operand };
}

const turns = new Float64Array(2);

class Layout {
  /** No coordinate is larger; full circles are counted for arcs. */
  reach = 0;
  private count = 0;
  private rows: Float64Array;
  private from: Int32Array;
  private to: Int32Array;
  private operand: Int32Array;
  private input: Int32Array;
  private readonly points: Points = { x: [], y: [], given: [], isSeam: [] };

  constructor(
    private readonly read: Read,
    private readonly originX: number,
    private readonly originY: number,
    private readonly tolerance: number,
  ) {
    // Most arcs are parted once at most.
    const room = 2 * read.edges.length;
    this.rows = new Float64Array(room * ROW);
    this.from = new Int32Array(room);
    this.to = new Int32Array(room);
    this.operand = new Int32Array(room);
    this.input = new Int32Array(room);
    for (let l = 0; l < read.operand.length; l++) this.add(l);
  }

  private add(l: number): void {
    const { points, read } = this;
    const { edges, first } = read;
    const end = first[l + 1] as number;
    const operand = read.operand[l] as number;
    const start = points.x.length;
    const firstPiece = this.count;
    let before = -1;
    for (let e = first[l] as number; e < end; e++) {
      const at = this.count;
      if (at === this.from.length) this.widen();
      this.input[at] = e;
      this.operand[at] = operand;
      this.copy(e, at);
      const o = at * ROW;
      this.from[at] = points.x.length;
      points.x.push(this.rows[o] as number);
      points.y.push(this.rows[o + 1] as number);
      points.given.push((edges[e] as Edge).a);
      points.isSeam.push(before >= 0 && this.goesOn(before, at));
      this.note(o);
      before = at;
      this.count++;
      if (!runsOneWay(this.rows, o)) this.split(e, at);
      this.to[this.count - 1] = e + 1 < end ? points.x.length : start;
    }
    points.isSeam[start] = this.goesOn(before, firstPiece);
  }

  /** Puts an edge into the row of a piece, moved to the origin. */
  private copy(e: number, at: number): void {
    const { rows, originX, originY } = this;
    const { shapes } = this.read;
    const s = e * ROW;
    const o = at * ROW;
    rows[o] = (shapes[s] as number) - originX;
    rows[o + 1] = (shapes[s + 1] as number) - originY;
    rows[o + 2] = (shapes[s + 2] as number) - originX;
    rows[o + 3] = (shapes[s + 3] as number) - originY;
    const turn = shapes[s + 7] as number;
    if (turn === 0) return;
    rows[o + 4] = (shapes[s + 4] as number) - originX;
    rows[o + 5] = (shapes[s + 5] as number) - originY;
    rows[o + 6] = shapes[s + 6] as number;
    rows[o + 7] = turn;
  }

  /** Parts the piece of an arc where that turns up or down. */
  private split(e: number, at: number): void {
    const { points, originX, originY } = this;
    const { shapes } = this.read;
    const count = turnsOf(shapes, e * ROW, this.tolerance, turns);
    const x = (shapes[e * ROW + 4] as number) - originX;
    for (let k = 0; k < count; k++) {
      const y = (turns[k] as number) - originY;
      const piece = this.count;
      if (piece === this.from.length) this.widen();
      const { rows } = this;
      const seam = addPoint(points, x, y, null, true);
      this.to[piece - 1] = seam;
      this.from[piece] = seam;
      this.operand[piece] = this.operand[at] as number;
      this.input[piece] = e;
      const o = piece * ROW;
      rows.copyWithin(o, o - ROW, o);
      rows[o - ROW + 2] = x;
      rows[o - ROW + 3] = y;
      rows[o] = x;
      rows[o + 1] = y;
      this.count++;
    }
  }

  /** Whether two pieces are arcs of one circle and one name, the second going on where the first ends. */
  private goesOn(before: number, piece: number): boolean {
    const { rows, tolerance, input } = this;
    const { names } = this.read;
    if (names[input[before] as number] !== names[input[piece] as number]) return false;
    const p = before * ROW;
    const q = piece * ROW;
    const turn = rows[p + 7] as number;
    if (turn !== rows[q + 7] || (turn !== 1 && turn !== -1)) return false;
    const dx = (rows[p + 4] as number) - (rows[q + 4] as number);
    const dy = (rows[p + 5] as number) - (rows[q + 5] as number);
    const dr = (rows[p + 6] as number) - (rows[q + 6] as number);
    return Math.abs(dr) <= tolerance && dx * dx + dy * dy <= tolerance * tolerance;
  }

  private note(o: number): void {
    const { rows } = this;
    const r = rows[o + 6] as number;
    const x = Math.max(Math.abs(rows[o] as number), Math.abs(rows[o + 4] as number) + r);
    const y = Math.max(Math.abs(rows[o + 1] as number), Math.abs(rows[o + 5] as number) + r);
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
    const { count, points, originX, originY, tolerance } = this;
    const { edges, shapes, names } = this.read;
    return {
      count,
      rows: this.rows,
      from: this.from,
      to: this.to,
      operand: this.operand,
      input: this.input,
      edges,
      shapes,
      names,
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

/** The box round all edges; a point at the origin where there are none. */
export function boundsOfOperands(operands: readonly Operand[]): Bounds {
  const box = emptyBox();
  for (const operand of operands) {
    for (const loop of operand) {
      for (const edge of loop) {
        stretch(box, edge.a.x, edge.a.y);
        if (edge.kind === 'arc' && !isCovered(box, edge.center.x, edge.center.y, edge.radius))
          stretchRound(box, edge);
      }
    }
  }
  return box.minX <= box.maxX ? box : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

/** The same for edges that have been read. */
function boxOfRows(shapes: Float64Array, edges: readonly Edge[]): Bounds {
  const box = emptyBox();
  for (let e = 0; e < edges.length; e++) {
    const o = e * ROW;
    stretch(box, shapes[o] as number, shapes[o + 1] as number);
    if (shapes[o + 7] === 0) continue;
    if (isCovered(box, shapes[o + 4] as number, shapes[o + 5] as number, shapes[o + 6] as number)) continue;
    stretchRound(box, edges[e] as Edge);
  }
  return box.minX <= box.maxX ? box : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

interface Growing {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

function emptyBox(): Growing {
  return { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
}

/** Whether all of a circle is in a box already. */
function isCovered(box: Growing, x: number, y: number, radius: number): boolean {
  return x - radius >= box.minX && x + radius <= box.maxX && y - radius >= box.minY && y + radius <= box.maxY;
}

function stretchRound(box: Growing, edge: Edge): void {
  const { minX, minY, maxX, maxY } = edgeBounds(edge);
  stretch(box, minX, minY);
  stretch(box, maxX, maxY);
}

function stretch(box: Growing, x: number, y: number): void {
  if (x < box.minX) box.minX = x;
  if (x > box.maxX) box.maxX = x;
  if (y < box.minY) box.minY = y;
  if (y > box.maxY) box.maxY = y;
}
