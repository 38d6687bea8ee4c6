import { ROW } from '../geometry/curves.js';
import { meetRows } from '../geometry/meet.js';
import type { Subdivision } from './label.js';
import { isSameCrossing } from './same-crossing.js';
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
  /** Edges that the line meets, from left to right. */
  private readonly status: Int32Array;
  private size = 0;
  private readonly tolerance: number;

  constructor(private readonly subdivision: Subdivision) {
    const { graph, strands } = subdivision;
    this.strands = strands;
    this.status = new Int32Array(graph.count + 1);
    this.tolerance = graph.curves.tolerance;
  }

  fault(): string | null {
    const { anyAt } = this.subdivision.rotation;
    for (const v of inOrder(this.subdivision)) {
      const what = this.pass(v, anyAt[v] as number);
      if (what !== null) return `${what} at ${this.nameOf(v)}`;
    }
    return this.size === 0 ? null : 'edges without an upper end';
  }

  /** Lifts the line over a vertex. */
  private pass(v: number, any: number): string | null {
    const { strands, status } = this;
    const { ccw } = this.subdivision.rotation;
    let downs = 0;
    let ups = 0;
    let half = any;
    do {
      half = ccw[half] as number;
      const edge = half >> 1;
      if (strands.low[edge] === v) ups++;
      else if (strands.high[edge] !== v) return 'a strange edge in the order';
      else if (ups > 0) return 'a wrong order';
      else downs++;
    } while (half !== any);
    const at = downs > 0 ? this.whereEnd(v) : this.whereBetween(v, any);
    if (at < 0) return downs > 0 ? 'an edge that does not come here' : 'a wrong face';
    half = any;
    for (let k = 0; k < downs; k++) {
      half = ccw[half] as number;
      if (status[at + k] !== half >> 1) return 'a wrong order below';
    }
    if (!this.isClear(at - 1, at + downs, v)) return 'a place on the wrong side of an edge';
    this.replace(at, downs, ups);
    for (let k = ups - 1; k >= 0; k--) {
      half = ccw[half] as number;
      status[at + k] = half >> 1;
    }
    for (let k = at; k <= at + ups; k++) {
      const what = this.neighbourFault(k - 1, k);
      if (what !== null) return what;
    }
    return null;
  }

  /** Where in the order the edges stand that end at a vertex; -1 if none does. */
  private whereEnd(v: number): number {
    const { status, strands } = this;
    const { high } = strands;
    let lo = 0;
    let hi = this.size;
    while (lo < hi) {
      const middle = (lo + hi) >> 1;
      const edge = status[middle] as number;
      if (high[edge] === v) {
        lo = middle;
        break;
      }
      if (strands.side(edge, v) > 0) lo = middle + 1;
      else hi = middle;
    }
    // Among edges closer together than they can be told apart the search may have gone by.
    if (lo >= this.size || high[status[lo] as number] !== v) {
      lo = 0;
      while (lo < this.size && high[status[lo] as number] !== v) lo++;
      if (lo === this.size) return -1;
    }
    while (lo > 0 && high[status[lo - 1] as number] === v) lo--;
    return lo;
  }

  /** Where in the order a vertex stands at which no edge ends: between two that have the face outside of it between them. */
  private whereBetween(v: number, any: number): number {
    const { status, strands } = this;
    const face = this.subdivision.faceOf[any] as number;
    let lo = 0;
    let hi = this.size;
    while (lo < hi) {
      const middle = (lo + hi) >> 1;
      if (strands.side(status[middle] as number, v) > 0) lo = middle + 1;
      else hi = middle;
    }
    if (this.faceRightOf(lo - 1) === face) return lo;
    const reach = SEAM * this.tolerance;
    for (let k = lo; k > 0 && strands.side(status[k - 1] as number, v) <= reach; k--) {
      if (this.faceRightOf(k - 2) === face) return k - 1;
    }
    for (let k = lo; k < this.size && strands.side(status[k] as number, v) >= -reach; k++) {
      if (this.faceRightOf(k) === face) return k + 1;
    }
    return -1;
  }

  /** Whether a vertex lies between two places in the order, clear of the edges there. */
  private isClear(left: number, right: number, v: number): boolean {
    const { status, strands } = this;
    const least = (this.subdivision.graph.curves.points.isSeam[v] ? -SEAM : CLEAR) * this.tolerance;
    return (
      (left < 0 || strands.side(status[left] as number, v) >= least) &&
      (right >= this.size || strands.side(status[right] as number, v) <= -least)
    );
  }

  private replace(at: number, gone: number, come: number): void {
    if (gone !== come) this.status.copyWithin(at + come, at + gone, this.size);
    this.size += come - gone;
  }

  private faceRightOf(place: number): number {
    if (place < 0) return 0;
    const edge = this.status[place] as number;
    const { faceOf, graph } = this.subdivision;
    return faceOf[graph.from[edge] === this.strands.low[edge] ? 2 * edge + 1 : 2 * edge] as number;
  }

  private faceLeftOf(place: number): number {
    if (place >= this.size) return 0;
    const edge = this.status[place] as number;
    const { faceOf, graph } = this.subdivision;
    return faceOf[graph.from[edge] === this.strands.low[edge] ? 2 * edge : 2 * edge + 1] as number;
  }

  /** What is wrong between two edges that have become neighbours. */
  private neighbourFault(left: number, right: number): string | null {
    if (this.faceRightOf(left) !== this.faceLeftOf(right)) return 'two faces between neighbours';
    if (left < 0 || right >= this.size) return null;
    const { strands, status } = this;
    const e = status[left] as number;
    const f = status[right] as number;
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
    const p = this.memberOf(e);
    const q = this.memberOf(f);
    if (rows[p * ROW + 7] === 0 && rows[q * ROW + 7] === 0) return false;
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
    const isBefore = strands.isBefore(ends[e] as number, ends[f] as number);
    const isWrong =
      isBefore === areUp ? strands.sideOfMiddle(f, e) > tolerance : strands.sideOfMiddle(e, f) < -tolerance;
    if (isWrong) return true;
    const { points, rows } = this.subdivision.graph.curves;
    const v = (areUp ? strands.low : strands.high)[e] as number;
    const x = points.x[v] as number;
    const y = points.y[v] as number;
    const p = this.memberOf(e);
    const q = this.memberOf(f);
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

  private memberOf(e: number): number {
    const { member, start } = this.subdivision.graph;
    return member[start[e] as number] as number;
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
