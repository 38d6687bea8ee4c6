import { isWithinTurn, ROW } from '../geometry/curves.js';
import type { Graph } from './merge.js';

/** Up to so many tolerances off an edge it cannot be told on which side of it a place lies: both may have been moved. */
export const DOUBT = 0.75;

/** Further off, in tolerances, it does not matter how far. */
const FAR = 4;

/**
 * Edges of a graph as they run up: from the lower end to the higher one, the left one counted lower at one height. Said in
 * this way, at each vertex some edges go up and the others down, and a line that rises meets them in an order from left to right.
 */
export class Strands {
  readonly low: Int32Array;
  readonly high: Int32Array;
  /** The row of the curve that each edge is a stretch of; which way it bulges, to the right (1) or the left (-1); 0 if straight. */
  readonly row: Int32Array;
  readonly way: Int8Array;
  /** Left and right side of the box round each edge. */
  readonly minX: Float64Array;
  readonly maxX: Float64Array;
  private readonly x: readonly number[];
  private readonly y: readonly number[];
  private readonly rows: Float64Array;

  constructor(private readonly graph: Graph) {
    const { count, from, to, start, member, curves } = graph;
    const { rows, points } = curves;
    const { x, y } = points;
    this.x = x;
    this.y = y;
    this.rows = rows;
    this.low = new Int32Array(count);
    this.high = new Int32Array(count);
    this.row = new Int32Array(count);
    this.way = new Int8Array(count);
    this.minX = new Float64Array(count);
    this.maxX = new Float64Array(count);
    for (let e = 0; e < count; e++) {
      const a = from[e] as number;
      const b = to[e] as number;
      const isUp = this.isBefore(a, b);
      const low = isUp ? a : b;
      const high = isUp ? b : a;
      const ax = x[a] as number;
      const bx = x[b] as number;
      let minX = Math.min(ax, bx);
      let maxX = Math.max(ax, bx);
      const o = (member[start[e] as number] as number) * ROW;
      const turn = rows[o + 7] as number;
      this.row[e] = o;
      if (turn !== 0) {
        const isRight = turn > 0 === isUp;
        this.way[e] = isRight ? 1 : -1;
        const cy = rows[o + 5] as number;
        if (cy > (y[low] as number) && cy < (y[high] as number)) {
          const cx = rows[o + 4] as number;
          const r = rows[o + 6] as number;
          if (isRight) maxX = Math.max(maxX, cx + r);
          else minX = Math.min(minX, cx - r);
        }
      }
      this.low[e] = low;
      this.high[e] = high;
      this.minX[e] = minX;
      this.maxX[e] = maxX;
    }
  }

  /** Whether a rising line comes to the first of two vertices before it comes to the other. */
  isBefore(v: number, w: number): boolean {
    const rise = (this.y[w] as number) - (this.y[v] as number);
    return rise !== 0 ? rise > 0 : (this.x[v] as number) < (this.x[w] as number);
  }

  /**
   * How far a vertex lies to the right of an edge that passes its height, below 0 if to the left. No more than the distance,
   * and of the right sign; exact near the edge.
   */
  side(e: number, v: number): number {
    return this.sideOf(e, this.x[v] as number, this.y[v] as number);
  }

  /** The same for a place. */
  sideOf(e: number, px: number, py: number): number {
    const { tolerance } = this.graph.curves;
    const minX = this.minX[e] as number;
    if (px < minX - tolerance) return px - minX;
    const maxX = this.maxX[e] as number;
    if (px > maxX + tolerance) return px - maxX;
    const low = this.low[e] as number;
    const lx = this.x[low] as number;
    const ly = this.y[low] as number;
    const dx = (this.x[this.high[e] as number] as number) - lx;
    const dy = (this.y[this.high[e] as number] as number) - ly;
    const right = (px - lx) * dy - (py - ly) * dx;
    const way = this.way[e] as number;
    let side = right / Math.sqrt(dx * dx + dy * dy);
    if (way !== 0) {
      const o = this.row[e] as number;
      const cx = px - (this.rows[o + 4] as number);
      const cy = py - (this.rows[o + 5] as number);
      const out = Math.sqrt(cx * cx + cy * cy) - (this.rows[o + 6] as number);
      // Beyond the chord of an arc that bulges to the other side its circle says nothing of the side.
      if (way > 0) side = side >= 0 ? out : -Math.max(Math.abs(out), -side);
      else side = side <= 0 ? -out : Math.max(Math.abs(out), side);
    }
    if (Math.abs(side) > FAR * tolerance) return side;
    return this.isBeside(e, px, py) ? side : this.pastEnd(e, px, py, side);
  }

  /** Whether the place of an edge nearest to a place next to it is none of its ends. */
  private isBeside(e: number, px: number, py: number): boolean {
    const { x, y, rows } = this;
    const low = this.low[e] as number;
    const high = this.high[e] as number;
    const way = this.way[e] as number;
    if (way === 0) {
      const dx = (x[high] as number) - (x[low] as number);
      const dy = (y[high] as number) - (y[low] as number);
      const along = (px - (x[low] as number)) * dx + (py - (y[low] as number)) * dy;
      return along >= 0 && along <= dx * dx + dy * dy;
    }
    // Up along what bulges to the right is counter-clockwise.
    const o = this.row[e] as number;
    return isWithinTurn(
      x[low] as number,
      y[low] as number,
      x[high] as number,
      y[high] as number,
      rows[o + 4] as number,
      rows[o + 5] as number,
      way,
      px,
      py,
    );
  }

  /** The distance to the nearer end, on the side that is given. */
  private pastEnd(e: number, px: number, py: number, side: number): number {
    const { x, y } = this;
    const low = this.low[e] as number;
    const high = this.high[e] as number;
    const away = Math.min(
      Math.hypot(px - (x[low] as number), py - (y[low] as number)),
      Math.hypot(px - (x[high] as number), py - (y[high] as number)),
    );
    return side < 0 ? -Math.max(away, -side) : Math.max(away, side);
  }

  /** Whether the first of two edges that leave one vertex upwards leaves it to the left of the other. */
  isLeftAbove(e: number, f: number): boolean {
    return this.isLeft(e, f, this.high, this.isBefore(this.high[e] as number, this.high[f] as number));
  }

  /** The same for two that leave it downwards. */
  isLeftBelow(e: number, f: number): boolean {
    return this.isLeft(e, f, this.low, this.isBefore(this.low[f] as number, this.low[e] as number));
  }

  /**
   * Edges meet at their ends only, so where the shorter one ends both are in the order in which they have left. If it ends
   * within the doubt of the longer one, its middle may be clear of it; if that is nearer still, they part only beyond, and
   * which of them does so to the left is seen by how they bend.
   */
  private isLeft(e: number, f: number, ends: Int32Array, isFirstShorter: boolean): boolean {
    if (ends[e] === ends[f]) return this.bulge(e) < this.bulge(f);
    const shorter = isFirstShorter ? e : f;
    const longer = isFirstShorter ? f : e;
    const end = this.side(longer, ends[shorter] as number);
    if (Math.abs(end) > DOUBT * this.graph.curves.tolerance) return end < 0 === isFirstShorter;
    const middle = this.sideOfMiddle(longer, shorter);
    if (Math.abs(middle) > Math.abs(end)) return middle < 0 === isFirstShorter;
    const bend = this.bend(e) - this.bend(f);
    return bend !== 0 ? bend > 0 : end < 0 === isFirstShorter;
  }

  /** How far the middle of the second edge lies to the right of the first one, which passes its height. */
  sideOfMiddle(e: number, f: number): number {
    const low = this.low[f] as number;
    const high = this.high[f] as number;
    const dx = (this.x[high] as number) - (this.x[low] as number);
    const dy = (this.y[high] as number) - (this.y[low] as number);
    const bow = this.bulge(f) / Math.sqrt(dx * dx + dy * dy);
    return this.sideOf(
      e,
      (this.x[low] as number) + dx / 2 + bow * dy,
      (this.y[low] as number) + dy / 2 - bow * dx,
    );
  }

  /** How much an edge turns to the left on its way up, for each unit of length. */
  private bend(e: number): number {
    const way = this.way[e] as number;
    return way === 0 ? 0 : way / (this.rows[(this.row[e] as number) + 6] as number);
  }

  /** How far the middle of an edge lies to the right of its chord, on its way up. */
  bulge(e: number): number {
    const way = this.way[e] as number;
    if (way === 0) return 0;
    const o = this.row[e] as number;
    const low = this.low[e] as number;
    const high = this.high[e] as number;
    const r = this.rows[o + 6] as number;
    const mx = ((this.x[low] as number) + (this.x[high] as number)) / 2 - (this.rows[o + 4] as number);
    const my = ((this.y[low] as number) + (this.y[high] as number)) / 2 - (this.rows[o + 5] as number);
    const dx = (this.x[high] as number) - (this.x[low] as number);
    const dy = (this.y[high] as number) - (this.y[low] as number);
    const quarter = (dx * dx + dy * dy) / 4;
    const depth =
      quarter < 0.75 * r * r ? quarter / (r + Math.sqrt(r * r - quarter)) : r - Math.sqrt(mx * mx + my * my);
    return way > 0 ? depth : -depth;
  }
}
