import { turnKey } from '../geometry/circles.js';
import { ROW } from '../geometry/curves.js';
import { meetRows, onSide } from '../geometry/meet.js';
import { isInBox } from '../noding/meetings.js';
import { eachPair } from '../noding/pairs.js';
import { sortByKeys } from '../region/shell-sort.js';
import type { ShapeRows } from './shape-rows.js';

/** What happens to an edge, as one goes along it, where it crosses one of another operand. */
export const ENTERS = 1;
export const LEAVES = -1;

/** Where edges of different operands cross. */
export interface ShapeMeetings {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Those on edge e, in order along it, are from `start[e]` up to `start[e + 1]` of `place`. */
  readonly start: Int32Array;
  readonly place: Int32Array;
  /** What happens there, and with which operand. */
  readonly event: Int8Array;
  readonly other: Int32Array;
}

/** Of an arc with more margins of radius than this the rounding of its far centre may move a crossing too far. */
const FAR = 1e9;

/** Most edges have no more places than this. */
const FEW = 16;

const roots = new Float64Array(5);

/**
 * Finds where edges of different operands cross; those of one operand meet at their ends only.
 * @param shapes the loops of all operands
 * @param operand of each edge
 * @param after the edge that goes on where each ends
 * @returns null unless all is clear: no two edges come within `margin` of touching, none that near to an end of the other,
 *   no two places on one edge that near to each other, and no arc is almost a line
 */
export function shapeMeetings(
  shapes: ShapeRows,
  operand: Int32Array,
  after: Int32Array,
  margin: number,
): ShapeMeetings | null {
  const finder = new Finder(shapes, operand, margin);
  return finder.find(after) ? finder.inOrder() : null;
}

class Finder {
  private readonly edgeCount: number;
  private readonly rows: Float64Array;
  private readonly boxes: Float64Array;
  private readonly x: number[] = [];
  private readonly y: number[] = [];
  /** For each place two slots: an edge, where along it, and what happens there. */
  private readonly onEdge: number[] = [];
  private readonly keys: number[] = [];
  private readonly events: number[] = [];
  private isClear = true;

  constructor(
    { edges, rows, boxes }: ShapeRows,
    private readonly operand: Int32Array,
    private readonly margin: number,
  ) {
    this.edgeCount = edges.length;
    this.rows = rows;
    this.boxes = boxes;
    for (let e = 0; e < edges.length; e++) {
      if ((rows[e * ROW + 6] as number) > FAR * margin) this.isClear = false;
    }
  }

  /** False if something is not clear. */
  find(after: Int32Array): boolean {
    if (!this.isClear) return false;
    const { boxes, operand, margin } = this;
    const count = this.edgeCount;
    // Runs of edges are told by ends that are shared.
    const from = new Int32Array(count);
    for (let e = 0; e < count; e++) from[after[e] as number] = e;
    const to = new Int32Array(count);
    for (let e = 0; e < count; e++) to[e] = e;
    eachPair({ count, tolerance: margin, from, to }, boxes, (i, j) => {
      if (operand[i] !== operand[j] && this.isClear) this.isClear = this.meet(i, j);
    });
    return this.isClear;
  }

  private meet(i: number, j: number): boolean {
    const { rows, boxes, margin } = this;
    if (this.startsOn(i, j) || this.startsOn(j, i)) return false;
    const count = meetRows(rows, i, j, margin, roots);
    if (roots[4] === 1) {
      const x = roots[0] as number;
      const y = roots[1] as number;
      return !(isInBox(boxes, i, x, y, margin) && isInBox(boxes, j, x, y, margin));
    }
    for (let k = 0; k < count; k++) this.cross(i, j, roots[2 * k] as number, roots[2 * k + 1] as number);
    return true;
  }

  /** Whether an edge starts on another one, or near it. Where one ends the next one starts. */
  private startsOn(e: number, other: number): boolean {
    const { rows, boxes, margin } = this;
    const x = rows[e * ROW] as number;
    const y = rows[e * ROW + 1] as number;
    if (!isInBox(boxes, other, x, y, margin)) return false;
    const o = other * ROW;
    const ax = x - (rows[o] as number);
    const ay = y - (rows[o + 1] as number);
    if (rows[o + 7] === 0) {
      const dx = (rows[o + 2] as number) - (rows[o] as number);
      const dy = (rows[o + 3] as number) - (rows[o + 1] as number);
      const side = dx * ay - dy * ax;
      return side * side <= margin * margin * (dx * dx + dy * dy);
    }
    const cx = x - (rows[o + 4] as number);
    const cy = y - (rows[o + 5] as number);
    if (Math.abs(Math.sqrt(cx * cx + cy * cy) - (rows[o + 6] as number)) > margin) return false;
    const bx = x - (rows[o + 2] as number);
    const by = y - (rows[o + 3] as number);
    const isAtEnd = ax * ax + ay * ay <= margin * margin || bx * bx + by * by <= margin * margin;
    return isAtEnd || onSide(rows, o, x, y);
  }

  /** Notes that two edges cross in a place. */
  private cross(i: number, j: number, x: number, y: number): void {
    const { rows, x: xs, y: ys } = this;
    const p = i * ROW;
    const q = j * ROW;
    const ux = directionX(rows, p, y);
    const uy = directionY(rows, p, x);
    const vx = directionX(rows, q, y);
    const vy = directionY(rows, q, x);
    // What an edge encloses lies to the left of it: one that is crossed to the left takes the other one in.
    const isLeft = ux * vy - uy * vx > 0;
    xs.push(x);
    ys.push(y);
    this.note(i, x, y, isLeft ? LEAVES : ENTERS);
    this.note(j, x, y, isLeft ? ENTERS : LEAVES);
  }

  private note(e: number, x: number, y: number, event: number): void {
    this.onEdge.push(e);
    this.keys.push(keyOf(this.rows, e * ROW, x, y));
    this.events.push(event);
  }

  /** All of it by edge; null if two places on one edge are too near to each other. */
  inOrder(): ShapeMeetings | null {
    const { x, y, onEdge, keys, events, operand } = this;
    const count = this.edgeCount;
    const start = new Int32Array(count + 1);
    for (const e of onEdge) start[e + 1] = (start[e + 1] as number) + 1;
    for (let e = 0; e < count; e++) start[e + 1] = (start[e + 1] as number) + (start[e] as number);
    const fill = start.slice();
    const order = new Int32Array(onEdge.length);
    for (let k = 0; k < onEdge.length; k++) {
      const e = onEdge[k] as number;
      const slot = fill[e] as number;
      fill[e] = slot + 1;
      order[slot] = k;
    }
    const place = new Int32Array(onEdge.length);
    const event = new Int8Array(onEdge.length);
    const other = new Int32Array(onEdge.length);
    let own = new Float64Array(FEW);
    for (let e = 0; e < count; e++) {
      const lo = start[e] as number;
      const n = (start[e + 1] as number) - lo;
      if (n === 0) continue;
      if (n > own.length) own = new Float64Array(2 * n);
      for (let k = 0; k < n; k++) own[k] = keys[order[lo + k] as number] as number;
      if (n > 1) sortByKeys(own, order, lo, n);
      for (let k = lo; k < lo + n; k++) {
        const slot = order[k] as number;
        place[k] = slot >> 1;
        event[k] = events[slot] as number;
        other[k] = operand[onEdge[slot ^ 1] as number] as number;
        if (k > lo && this.areNear(place[k - 1] as number, place[k] as number)) return null;
      }
    }
    return { x, y, start, place, event, other };
  }

  private areNear(p: number, q: number): boolean {
    const { x, y, margin } = this;
    return (
      Math.abs((x[p] as number) - (x[q] as number)) <= margin &&
      Math.abs((y[p] as number) - (y[q] as number)) <= margin
    );
  }
}

/** Which way the edge of a row runs at a place. */
function directionX(rows: Float64Array, o: number, y: number): number {
  const turn = rows[o + 7] as number;
  if (turn === 0) return (rows[o + 2] as number) - (rows[o] as number);
  return -turn * (y - (rows[o + 5] as number));
}

function directionY(rows: Float64Array, o: number, x: number): number {
  const turn = rows[o + 7] as number;
  if (turn === 0) return (rows[o + 3] as number) - (rows[o + 1] as number);
  return turn * (x - (rows[o + 4] as number));
}

/** Grows along the edge of a row. */
function keyOf(rows: Float64Array, o: number, x: number, y: number): number {
  const ax = rows[o] as number;
  const ay = rows[o + 1] as number;
  const turn = rows[o + 7] as number;
  if (turn === 0) {
    return (x - ax) * ((rows[o + 2] as number) - ax) + (y - ay) * ((rows[o + 3] as number) - ay);
  }
  const cx = rows[o + 4] as number;
  const cy = rows[o + 5] as number;
  const turned = turn * (turnKey(x - cx, y - cy) - turnKey(ax - cx, ay - cy));
  return turned < 0 ? turned + FULL_TURN : turned;
}

/** What `turnKey` grows by all the way round. */
const FULL_TURN = 4;
