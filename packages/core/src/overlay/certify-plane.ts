import { ROW } from '../geometry/curves.js';
import { meetRows } from '../geometry/meet.js';
import { runsBeside } from './beside.js';
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
  /** The face to the left and to the right of each edge on its way up. */
  private readonly faceLeft: Int32Array;
  private readonly faceRight: Int32Array;
  private readonly isSeam: readonly boolean[];
  private readonly x: readonly number[];
  private readonly y: readonly number[];
  private readonly rows: Float64Array;

  constructor(private readonly subdivision: Subdivision) {
    const { graph, strands, faceOf } = subdivision;
    const { count, from } = graph;
    this.strands = strands;
    this.none = count;
    this.line = new LineOrder(count);
    this.tolerance = graph.curves.tolerance;
    const { points, rows } = graph.curves;
    this.isSeam = points.isSeam;
    this.x = points.x;
    this.y = points.y;
    this.rows = rows;
    const faces = new Int32Array(2 * count + 2);
    this.faceLeft = faces.subarray(0, count + 1);
    this.faceRight = faces.subarray(count + 1);
    for (let e = 0; e < count; e++) {
      const isUp = from[e] === strands.low[e];
      this.faceLeft[e] = faceOf[isUp ? 2 * e : 2 * e + 1] as number;
      this.faceRight[e] = faceOf[isUp ? 2 * e + 1 : 2 * e] as number;
    }
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

  /** Lifts the line over a vertex; `any` is the leftmost half-edge that goes up from it, or the rightmost that goes down. */
  private pass(v: number, any: number): string | null {
    const { strands, line, none } = this;
    const { ccw } = this.subdivision.rotation;
    const { low, high } = strands;
    let half = ccw[any] as number;
    /** The neighbour to the left of what ends here, and the first and last edge that does. */
    let left = none;
    let first = none;
    let last = none;
    let downs = 0;
    let ups = true;
    while (low[half >> 1] !== v) {
      const edge = half >> 1;
      if (high[edge] !== v) return 'a strange edge in the order';
      if (!line.has(edge)) return 'an edge that does not come here';
      if (downs === 0) {
        left = line.before(edge);
        first = edge;
      } else if (line.after(last) !== edge) return 'a wrong order below';
      last = edge;
      downs++;
      ups = half !== any;
      if (!ups) break;
      half = ccw[half] as number;
    }
    if (downs === 0) {
      left = this.whereBetween(v, any);
      if (left < 0) return 'a wrong face';
      last = left;
    }
    const right = line.after(last);
    const what = this.placeFault(v, left, right);
    if (what !== null) return what;
    // What ends here stands where the leftmost does that begins here.
    const heir = ups ? any >> 1 : left;
    for (let edge = first; downs > 0; downs--) {
      const next = line.after(edge);
      line.take(edge, heir);
      edge = next;
    }
    // Those that go up come from right to left, the leftmost of them last.
    let next = right;
    while (ups) {
      const edge = half >> 1;
      if (low[edge] !== v) return 'a wrong order';
      if (!line.put(edge, next)) return 'an edge that is there already';
      const what = this.neighbourFault(edge, next);
      if (what !== null) return what;
      next = edge;
      if (half === any) break;
      half = ccw[half] as number;
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
    const face = this.subdivision.faceOf[any] as number;
    const left = line.lastLeft((edge) => strands.side(edge, v) > 0);
    if (this.faceRight[left] === face) return left;
    const reach = SEAM * this.tolerance;
    for (let e = left; e !== none && strands.side(e, v) <= reach; ) {
      e = line.before(e);
      if (this.faceRight[e] === face) return e;
    }
    for (let e = line.after(left); e !== none && strands.side(e, v) >= -reach; e = line.after(e)) {
      if (this.faceRight[e] === face) return e;
    }
    return -1;
  }

  /** What is wrong with where a vertex lies: between two neighbours, and clear of both. */
  private placeFault(v: number, left: number, right: number): string | null {
    const { strands, none, tolerance } = this;
    const toLeft = left === none ? Infinity : strands.side(left, v);
    const toRight = right === none ? Infinity : -strands.side(right, v);
    const isSeam = this.isSeam[v] === true;
    const clear = CLEAR * tolerance;
    if (toLeft >= clear && toRight >= clear) return null;
    const least = isSeam ? -SEAM * tolerance : clear;
    if (!(toLeft >= least && toRight >= least)) return 'a place on the wrong side of an edge';
    const isBeside =
      (toLeft < clear && runsBeside(this.subdivision, v, left)) ||
      (toRight < clear && runsBeside(this.subdivision, v, right));
    return isBeside ? 'edges that run beside each other' : null;
  }

  /** What is wrong between two edges that have become neighbours. */
  private neighbourFault(e: number, f: number): string | null {
    if (this.faceRight[e] !== this.faceLeft[f]) return 'two faces between neighbours';
    if (e === this.none || f === this.none) return null;
    const { strands } = this;
    if ((strands.maxX[e] as number) + this.tolerance < (strands.minX[f] as number)) return null;
    return this.meet(e, f) ? 'edges that meet beyond it' : null;
  }

  /** Whether two neighbours come together where they have no vertex. One crossing shows at the end of the shorter one. */
  private meet(e: number, f: number): boolean {
    const { strands, rows } = this;
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
    const { strands, tolerance, isSeam, rows } = this;
    const endOfE = ends[e] as number;
    const endOfF = ends[f] as number;
    // The end of the shorter one lies clear on its side of the other one, or is told of when it is come to; a seam may not.
    if (isSeam[endOfE] === true || isSeam[endOfF] === true) {
      const isFirst = strands.isBefore(endOfE, endOfF) === areUp;
      const isSure = isSeam[isFirst ? endOfE : endOfF] !== true;
      const isWrong =
        !isSure &&
        (isFirst ? strands.sideOfMiddle(f, e) > tolerance : strands.sideOfMiddle(e, f) < -tolerance);
      if (isWrong) return true;
    }
    const wayOfE = strands.way[e] as number;
    const wayOfF = strands.way[f] as number;
    if (wayOfE === 0 && wayOfF === 0) return false;
    const v = (areUp ? strands.low : strands.high)[e] as number;
    const x = this.x[v] as number;
    const y = this.y[v] as number;
    // Chords in order part what bulges away from them on either side.
    if (wayOfE <= 0 && wayOfF >= 0) {
      const turn =
        ((this.x[endOfF] as number) - x) * ((this.y[endOfE] as number) - y) -
        ((this.y[endOfF] as number) - y) * ((this.x[endOfE] as number) - x);
      if (areUp ? turn > 0 : turn < 0) return false;
    }
    const p = (strands.row[e] as number) / ROW;
    const q = (strands.row[f] as number) / ROW;
    if (!otherMeeting(rows, p, q, x, y, other)) return false;
    const ox = other[0] as number;
    const oy = other[1] as number;
    if (!this.isInBox(e, ox, oy) || !this.isInBox(f, ox, oy)) return false;
    return lensBetween(rows, p, q, x, y, ox, oy) > tolerance + lastDigits(rows, p) + lastDigits(rows, q);
  }

  private isInBox(e: number, x: number, y: number): boolean {
    const { low, high, minX, maxX } = this.strands;
    return (
      y > (this.y[low[e] as number] as number) &&
      y < (this.y[high[e] as number] as number) &&
      x >= (minX[e] as number) - this.tolerance &&
      x <= (maxX[e] as number) + this.tolerance
    );
  }

  private nameOf(v: number): string {
    const { points, originX, originY } = this.subdivision.graph.curves;
    return `(${(points.x[v] as number) + originX}, ${(points.y[v] as number) + originY})`;
  }
}

/** How far apart two pieces come between two places in which both meet. The centres may be so far away that distances from them say nothing. */
function lensBetween(
  rows: Float64Array,
  p: number,
  q: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const bow = (piece: number): number => {
    const o = piece * ROW;
    if (rows[o + 7] === 0) return 0;
    const r = rows[o + 6] as number;
    const quarter = ((bx - ax) ** 2 + (by - ay) ** 2) / 4;
    const depth = quarter / (r + Math.sqrt(Math.max(0, r * r - quarter)));
    const toCenter = (bx - ax) * ((rows[o + 5] as number) - ay) - (by - ay) * ((rows[o + 4] as number) - ax);
    return toCenter > 0 ? -depth : depth;
  };
  return Math.abs(bow(p) - bow(q));
}

/** What rounding of its centre and radius may have moved an arc by. */
function lastDigits(rows: Float64Array, piece: number): number {
  return 2 * Number.EPSILON * (rows[piece * ROW + 6] as number);
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
  let min = Infinity;
  let max = -Infinity;
  for (let v = 0; v < anyAt.length; v++) {
    if ((anyAt[v] as number) < 0) continue;
    n++;
    const height = y[v] as number;
    if (height < min) min = height;
    if (height > max) max = height;
  }
  // Whole numbers sort natively, and have room for the vertex behind the height; what they round is mended after.
  const places = 2 ** Math.ceil(Math.log2(anyAt.length + 1));
  const scale = max > min ? (2 ** 53 / places - 1) / (max - min) : 0;
  const keys = new Float64Array(n);
  let at = 0;
  for (let v = 0; v < anyAt.length; v++) {
    if ((anyAt[v] as number) >= 0) keys[at++] = Math.floor(((y[v] as number) - min) * scale) * places + v;
  }
  keys.sort();
  const order = new Int32Array(n);
  for (let k = 0; k < n; k++) {
    const key = keys[k] as number;
    const v = key - Math.floor(key / places) * places;
    let slot = k;
    while (slot > 0 && strands.isBefore(v, order[slot - 1] as number)) {
      order[slot] = order[slot - 1] as number;
      slot--;
    }
    order[slot] = v;
  }
  return order;
}
