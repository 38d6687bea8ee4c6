import { ROW } from '../geometry/curves.js';
import { meetRows } from '../geometry/meet.js';
import { isSameCrossing } from '../noding/same-crossing.js';
import type { Subdivision } from './label.js';
import { LineOrder } from './line-order.js';
import type { Strands } from './strands.js';

/** A vertex lies at least so many tolerances off every edge that it is no end of; within one it would be on it. */
const CLEAR = 0.4;

/** A seam beside a place of touching is no place, and may lie so many tolerances on the wrong side; see `touchesElsewhere`. */
const SEAM = 2;

const roots = new Float64Array(5);
const other = new Float64Array(2);

/**
 * What keeps the edges of a subdivision from being a drawing in the plane with the faces that it says, or null.
 *
 * A line rises over all vertices and meets the edges that pass it in an order from left to right. Where that order, kept up
 * by what the subdivision says goes up and down at each vertex, agrees with where vertices lie, and neighbours in it do not
 * come together between vertices, no edges cross; where neighbours have one face between them, faces are what they are said
 * to be. It finds nothing out that it does not see for itself: only the drawing is asked.
 * Source: Shamos and Hoey, "Geometric intersection problems" (1976), for the order; McConnell, Mehlhorn, Näher and
 * Schweitzer, "Certifying algorithms" (2011), for answers that prove themselves.
 */
export function planeFault(subdivision: Subdivision): string | null {
  return new Rising(subdivision).fault();
}

class Rising {
  private readonly strands: Strands;
  private readonly line: LineOrder;
  /** Stands for what is left and right of all edges. */
  private readonly none: number;
  private readonly tolerance: number;
  private readonly faceOf: Int32Array;
  private readonly ccw: Int32Array;

  constructor(private readonly subdivision: Subdivision) {
    const { graph, strands, faceOf, rotation } = subdivision;
    this.strands = strands;
    this.none = graph.count;
    this.line = new LineOrder(graph.count);
    this.tolerance = graph.curves.tolerance;
    this.faceOf = faceOf;
    this.ccw = rotation.ccw;
  }

  fault(): string | null {
    const { anyAt } = this.subdivision.rotation;
    const order = inOrder(this.subdivision);
    for (let k = 0; k < order.length; k++) {
      const v = order[k] as number;
      const what = this.pass(v, anyAt[v] as number);
      if (what !== null) return `${what} at ${this.nameOf(v)}`;
    }
    return this.line.isEmpty() ? null : 'edges without an upper end';
  }

  /** Lifts the line over a vertex. */
  private pass(v: number, any: number): string | null {
    const { strands, line, ccw } = this;
    const { low, high } = strands;
    let downs = 0;
    let ups = 0;
    let half = any;
    /** The neighbour to the left of what ends here, and the last edge that does. */
    let left = this.none;
    let last = this.none;
    do {
      half = ccw[half] as number;
      const edge = half >> 1;
      if (low[edge] === v) ups++;
      else if (high[edge] !== v) return 'a strange edge in the order';
      else if (ups > 0) return 'a wrong order';
      else {
        if (!line.has(edge)) return 'an edge that does not come here';
        if (downs === 0) left = line.before(edge);
        else if (line.after(last) !== edge) return 'a wrong order below';
        last = edge;
        downs++;
      }
    } while (half !== any);
    if (downs === 0) {
      left = this.whereBetween(v, any);
      if (left < 0) return 'a wrong face';
      last = left;
    }
    const right = line.after(last);
    if (!this.isClear(left, right, v)) return 'a place on the wrong side of an edge';
    // Those that go up come from right to left, the leftmost of them last.
    half = any;
    for (let k = 0; k < downs; k++) half = ccw[half] as number;
    let next = right;
    for (let k = 0; k < ups; k++) {
      half = ccw[half] as number;
      const edge = half >> 1;
      if (!line.put(edge, next)) return 'an edge that is there already';
      const what = this.neighbourFault(edge, next);
      if (what !== null) return what;
      next = edge;
    }
    half = any;
    for (let k = 0; k < downs; k++) {
      half = ccw[half] as number;
      line.take(half >> 1, ups > 0 ? next : left);
    }
    line.join(left, next);
    return this.neighbourFault(left, next);
  }

  /**
   * The edge to the left of a vertex at which no edge ends: between two that have the face outside of it between them; -1 if
   * there is no such place.
   */
  private whereBetween(v: number, any: number): number {
    const { line, strands, none } = this;
    const face = this.faceOf[any] as number;
    const left = line.lastLeft((edge) => strands.side(edge, v) > 0);
    if (this.faceRightOf(left) === face) return left;
    const reach = SEAM * this.tolerance;
    for (let e = left; e !== none && strands.side(e, v) <= reach; ) {
      e = line.before(e);
      if (this.faceRightOf(e) === face) return e;
    }
    for (let e = line.after(left); e !== none && strands.side(e, v) >= -reach; e = line.after(e)) {
      if (this.faceRightOf(e) === face) return e;
    }
    return -1;
  }

  /** Whether a vertex lies between two neighbours, clear of both. */
  private isClear(left: number, right: number, v: number): boolean {
    const { strands, none } = this;
    const least = (this.subdivision.graph.curves.points.isSeam[v] ? -SEAM : CLEAR) * this.tolerance;
    return (
      (left === none || strands.side(left, v) >= least) &&
      (right === none || strands.side(right, v) <= -least)
    );
  }

  private faceRightOf(edge: number): number {
    if (edge === this.none) return 0;
    const isUp = this.subdivision.graph.from[edge] === this.strands.low[edge];
    return this.faceOf[isUp ? 2 * edge + 1 : 2 * edge] as number;
  }

  private faceLeftOf(edge: number): number {
    if (edge === this.none) return 0;
    const isUp = this.subdivision.graph.from[edge] === this.strands.low[edge];
    return this.faceOf[isUp ? 2 * edge : 2 * edge + 1] as number;
  }

  /** What is wrong between two edges that have become neighbours. */
  private neighbourFault(e: number, f: number): string | null {
    if (this.faceRightOf(e) !== this.faceLeftOf(f)) return 'two faces between neighbours';
    if (e === this.none || f === this.none) return null;
    const { strands } = this;
    if ((strands.maxX[e] as number) + this.tolerance < (strands.minX[f] as number)) return null;
    return this.meet(e, f) ? 'edges that meet beyond it' : null;
  }

  /** Whether two neighbours come together where they have no vertex. One crossing shows at the end of the shorter one. */
  private meet(e: number, f: number): boolean {
    const { strands } = this;
    const { rows } = this.subdivision.graph.curves;
    const hasLow = strands.low[e] === strands.low[f];
    const hasHigh = strands.high[e] === strands.high[f];
    if (hasLow && hasHigh) return strands.bulge(e) >= strands.bulge(f);
    if (hasLow || hasHigh) return this.isCrossed(e, f, hasLow ? strands.high : strands.low, hasLow);
    if (strands.way[e] === 0 && strands.way[f] === 0) return false;
    const p = (strands.row[e] as number) / ROW;
    const q = (strands.row[f] as number) / ROW;
    const count = meetRows(rows, p, q, CLEAR * this.tolerance, roots);
    for (let k = 0; k < count; k++) {
      const x = roots[2 * k] as number;
      const y = roots[2 * k + 1] as number;
      if (this.isInBox(e, x, y) && this.isInBox(f, x, y)) return true;
    }
    return false;
  }

  /** Whether two neighbours with a common end run in the wrong order, or meet once more. */
  private isCrossed(e: number, f: number, ends: Int32Array, areUp: boolean): boolean {
    const { strands, tolerance } = this;
    const { points, rows } = this.subdivision.graph.curves;
    const isFirst = strands.isBefore(ends[e] as number, ends[f] as number) === areUp;
    // The end of the shorter one lies clear on its side of the other one, or is told of when it is come to; a seam may not.
    const isSure = points.isSeam[ends[isFirst ? e : f] as number] !== true;
    const isWrong =
      !isSure && (isFirst ? strands.sideOfMiddle(f, e) > tolerance : strands.sideOfMiddle(e, f) < -tolerance);
    if (isWrong) return true;
    const v = (areUp ? strands.low : strands.high)[e] as number;
    const x = points.x[v] as number;
    const y = points.y[v] as number;
    if (strands.way[e] === 0 && strands.way[f] === 0) return false;
    const p = (strands.row[e] as number) / ROW;
    const q = (strands.row[f] as number) / ROW;
    if (!otherMeeting(rows, p, q, x, y, other)) return false;
    const ox = other[0] as number;
    const oy = other[1] as number;
    if (!this.isInBox(e, ox, oy) || !this.isInBox(f, ox, oy)) return false;
    return !isSameCrossing(rows, p, q, x, y, ox, oy, tolerance);
  }

  private isInBox(e: number, x: number, y: number): boolean {
    const { low, high, minX, maxX } = this.strands;
    const heights = this.subdivision.graph.curves.points.y;
    return (
      y > (heights[low[e] as number] as number) &&
      y < (heights[high[e] as number] as number) &&
      x >= (minX[e] as number) - this.tolerance &&
      x <= (maxX[e] as number) + this.tolerance
    );
  }

  private nameOf(v: number): string {
    const { points, originX, originY } = this.subdivision.graph.curves;
    return `(${(points.x[v] as number) + originX}, ${(points.y[v] as number) + originY})`;
  }
}

/** Where two pieces that meet in a place do so once more: its mirror image, in the line of centres or across a line. */
function otherMeeting(
  rows: Float64Array,
  p: number,
  q: number,
  x: number,
  y: number,
  out: Float64Array,
): boolean {
  const isLine = rows[p * ROW + 7] === 0;
  const isOtherLine = rows[q * ROW + 7] === 0;
  if (isLine && isOtherLine) return false;
  const arc = (isLine ? q : p) * ROW;
  const cx = rows[arc + 4] as number;
  const cy = rows[arc + 5] as number;
  const o = (isLine ? p : q) * ROW;
  // The mirror: through a centre, along the line of centres, or square to the straight piece.
  const mx =
    isLine || isOtherLine ? (rows[o + 1] as number) - (rows[o + 3] as number) : (rows[o + 4] as number) - cx;
  const my =
    isLine || isOtherLine ? (rows[o + 2] as number) - (rows[o] as number) : (rows[o + 5] as number) - cy;
  const square = mx * mx + my * my;
  if (square === 0) return false;
  const away = (2 * ((x - cx) * my - (y - cy) * mx)) / square;
  out[0] = x - away * my;
  out[1] = y + away * mx;
  return true;
}

/** The vertices of a subdivision from low to high, those of one height from left to right. */
function inOrder({ graph, strands, rotation }: Subdivision): Int32Array {
  const { anyAt } = rotation;
  const { y } = graph.curves.points;
  let n = 0;
  const list = new Int32Array(anyAt.length);
  let min = Infinity;
  let max = -Infinity;
  for (let v = 0; v < anyAt.length; v++) {
    if ((anyAt[v] as number) < 0) continue;
    list[n++] = v;
    const height = y[v] as number;
    if (height < min) min = height;
    if (height > max) max = height;
  }
  // Whole numbers sort natively, and have room for the place in the list behind the height; what they round is mended after.
  const places = 2 ** Math.ceil(Math.log2(n + 1));
  const scale = max > min ? (2 ** 53 / places - 1) / (max - min) : 0;
  const keys = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    keys[k] = Math.floor(((y[list[k] as number] as number) - min) * scale) * places + k;
  }
  keys.sort();
  const order = new Int32Array(n);
  for (let k = 0; k < n; k++) {
    const key = keys[k] as number;
    const v = list[key - Math.floor(key / places) * places] as number;
    let slot = k;
    while (slot > 0 && strands.isBefore(v, order[slot - 1] as number)) {
      order[slot] = order[slot - 1] as number;
      slot--;
    }
    order[slot] = v;
  }
  return order;
}
