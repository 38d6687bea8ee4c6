import { ROW } from '../geometry/curves.js';
import { sineExcess } from '../geometry/measure.js';
import type { Curves } from '../noding/gather.js';
import { planeFault } from './certify-plane.js';
import type { Subdivision } from './label.js';

/** So many tolerances at most may welding have moved an end of an edge off the curve that the edge is of. */
export const OFF_CURVE = 4;

/**
 * What is wrong with a subdivision, in words, or null: then it is proven to be that of the operands with their edges moved by
 * a few tolerances. Every vertex lies on the curves that it is a place of; the boundary of each operand goes round what it
 * went round before; winding numbers agree across each edge; and edges meet in vertices only, with faces as said.
 * @param given the operands as they were laid out for the overlay
 */
export function certify(subdivision: Subdivision, given: Curves): string | null {
  return (
    placeFault(subdivision, given) ??
    curveFault(subdivision) ??
    areaFault(subdivision, given) ??
    windingFault(subdivision) ??
    planeFault(subdivision)
  );
}

/** A seam may have been brought to the height of the place of touching beside it, by so many tolerances; see `level`. */
const LEVELLED = 2;

/** A place of the operands that is no longer where it was. */
function placeFault({ graph, rotation }: Subdivision, { points: before }: Curves): string | null {
  const { points, tolerance } = graph.curves;
  const most = LEVELLED * tolerance;
  for (let v = 0; v < before.x.length; v++) {
    if ((rotation.anyAt[v] as number) < 0) continue;
    const isThere =
      points.x[v] === before.x[v] && Math.abs((points.y[v] as number) - (before.y[v] as number)) <= most;
    if (!isThere) return 'a place that has been moved';
  }
  return null;
}

/** An edge whose ends are not on the curve that it is said to be a stretch of. */
function curveFault({ graph }: Subdivision): string | null {
  const { curves } = graph;
  const { points, tolerance } = curves;
  const most = OFF_CURVE * tolerance;
  for (let e = 0; e < graph.count; e++) {
    const a = graph.from[e] as number;
    const b = graph.to[e] as number;
    for (let m = graph.start[e] as number; m < (graph.start[e + 1] as number); m++) {
      const piece = graph.member[m] as number;
      const p = curves.from[piece] as number;
      const q = curves.to[piece] as number;
      // The ends of a piece that were given are where they were.
      const isOwnStart = a === p || a === q;
      const isOwnEnd = b === p || b === q;
      if (isOwnStart && isOwnEnd) continue;
      const edge = (curves.input[piece] as number) * ROW;
      const off = Math.max(
        isOwnStart ? 0 : offEdge(curves, edge, points.x[a] as number, points.y[a] as number),
        isOwnEnd ? 0 : offEdge(curves, edge, points.x[b] as number, points.y[b] as number),
      );
      if (!(off <= most) && !(off <= most + ownError(curves.shapes, edge))) {
        return `an end ${off / tolerance} tolerances off its curve`;
      }
    }
  }
  return null;
}

/** How far the ends of an arc are off its circle as it was given. */
function ownError(shapes: Float64Array, o: number): number {
  if (shapes[o + 7] === 0) return 0;
  return Math.max(
    offCircle(shapes, o, shapes[o] as number, shapes[o + 1] as number),
    offCircle(shapes, o, shapes[o + 2] as number, shapes[o + 3] as number),
  );
}

/** How far a place is from the line or circle of an edge. */
function offEdge({ originX, originY, shapes }: Curves, o: number, x: number, y: number): number {
  const px = x + originX;
  const py = y + originY;
  if (shapes[o + 7] !== 0) return offCircle(shapes, o, px, py);
  const ax = shapes[o] as number;
  const ay = shapes[o + 1] as number;
  const dx = (shapes[o + 2] as number) - ax;
  const dy = (shapes[o + 3] as number) - ay;
  return Math.abs(dx * (py - ay) - dy * (px - ax)) / Math.sqrt(dx * dx + dy * dy);
}

function offCircle(shapes: Float64Array, o: number, x: number, y: number): number {
  const dx = x - (shapes[o + 4] as number);
  const dy = y - (shapes[o + 5] as number);
  return Math.abs(Math.sqrt(dx * dx + dy * dy) - (shapes[o + 6] as number));
}

/** An operand that goes round less, or more, than it did, by more than welding moves it. */
function areaFault({ graph }: Subdivision, given: Curves): string | null {
  const { curves, count, start, member, sign } = graph;
  let operands = 0;
  for (let k = 0; k < given.count; k++) operands = Math.max(operands, (given.operand[k] as number) + 1);
  /** By operand: the area that is missing, and no less than the length of what has been cut. */
  const lost = new Float64Array(operands);
  const most = new Float64Array(operands);
  const add = (of: Curves, piece: number, sign: number, p: number, q: number) => {
    const operand = of.operand[piece] as number;
    lost[operand] = (lost[operand] as number) + sign * areaUnder(of, piece, p, q);
    most[operand] = (most[operand] as number) + lengthOf(of, p, q);
  };
  // A piece that is an edge as it was given has lost nothing, and most are.
  const isSame = new Uint8Array(given.count);
  const isGiven = curves.rows === given.rows;
  for (let e = 0; e < count; e++) {
    const a = graph.from[e] as number;
    const b = graph.to[e] as number;
    for (let m = start[e] as number; m < (start[e + 1] as number); m++) {
      const piece = member[m] as number;
      const s = sign[m] as number;
      const p = s > 0 ? a : b;
      const q = s > 0 ? b : a;
      if (isGiven && given.from[piece] === p && given.to[piece] === q) isSame[piece] = 1;
      else add(curves, piece, -1, p, q);
    }
  }
  for (let piece = 0; piece < given.count; piece++) {
    if (isSame[piece] === 1) continue;
    add(given, piece, 1, given.from[piece] as number, given.to[piece] as number);
  }
  for (let operand = 0; operand < operands; operand++) {
    const area = lost[operand] as number;
    // Steiner: what lies within r of a curve has an area of its length times 2 r, and of the disc besides.
    const off = OFF_CURVE * curves.tolerance;
    const bound = off * (most[operand] as number) + Math.PI * off * off;
    if (!(Math.abs(area) <= bound)) return `operand ${operand} has lost an area of ${area}`;
  }
  return null;
}

/**
 * The share of a piece between two places in the area of a chain that closes: the triangle from the origin to the chord, and
 * the segment of the circle; the piece runs from the one to the other.
 */
export function areaUnder({ rows, points }: Curves, piece: number, from: number, to: number): number {
  const ax = points.x[from] as number;
  const ay = points.y[from] as number;
  const bx = points.x[to] as number;
  const by = points.y[to] as number;
  const triangle = (ax * by - ay * bx) / 2;
  const o = piece * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return triangle;
  const r = rows[o + 6] as number;
  const px = ax - (rows[o + 4] as number);
  const py = ay - (rows[o + 5] as number);
  const qx = bx - (rows[o + 4] as number);
  const qy = by - (rows[o + 5] as number);
  const swept = Math.abs(Math.atan2(px * qy - py * qx, px * qx + py * qy));
  if (swept === 0 || (ax === bx && ay === by)) return triangle;
  return triangle + (turn * r * r * sineExcess(swept)) / 2;
}

/** No shorter than a piece between two places, and longer by a little, for what rounding adds. */
function lengthOf({ points }: Curves, from: number, to: number): number {
  const dx = (points.x[to] as number) - (points.x[from] as number);
  const dy = (points.y[to] as number) - (points.y[from] as number);
  return (Math.abs(dx) + Math.abs(dy)) * Math.PI;
}

/** An edge across which the winding numbers of some operand do not differ by how often its boundary runs along it. */
function windingFault({ graph, order, via, faceOf, faceCount }: Subdivision): string | null {
  // All operands at once: each counts with a weight of its own, sums of which do not come out right by chance.
  const change = new Int32Array(graph.count);
  for (let e = 0; e < graph.count; e++) {
    let sum = 0;
    for (let m = graph.start[e] as number; m < (graph.start[e + 1] as number); m++) {
      const weight = weightOf(graph.curves.operand[graph.member[m] as number] as number);
      sum = (sum + Math.imul(graph.sign[m] as number, weight)) | 0;
    }
    change[e] = sum;
  }
  const winding = new Int32Array(faceCount);
  for (let k = 0; k < order.length; k++) {
    const half = via[k] as number;
    const step = change[half >> 1] as number;
    winding[order[k] as number] = (winding[faceOf[half ^ 1] as number] as number) + (half & 1 ? -step : step);
  }
  for (let e = 0; e < graph.count; e++) {
    const left = winding[faceOf[2 * e] as number] as number;
    const right = winding[faceOf[2 * e + 1] as number] as number;
    if ((left - right - (change[e] as number)) | 0) return 'winding numbers that do not agree across an edge';
  }
  return null;
}

/** A number of 32 bits that looks like chance. Source: the finalizer of MurmurHash3 by Appleby, in the public domain. */
function weightOf(operand: number): number {
  let h = operand + 1;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
