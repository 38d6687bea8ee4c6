import { ROW } from '../geometry/curves.js';
import { meetRows, onSide } from '../geometry/meet.js';
import type { Curves } from './gather.js';
import { eachPair } from './pairs.js';
import { addPoint, isNear, type Points } from './points.js';
import type { RunIndex } from './runs.js';
import { isSameCrossing } from './same-crossing.js';
import { sharedJoints } from './shared-joints.js';

/** A point that lies on a piece, strictly between its ends. */
export interface Hits {
  readonly piece: number[];
  readonly point: number[];
}

const roots = new Float64Array(5);

/** Pairs of pieces that run beside each other somewhere, and the crossings found between two pieces. */
export interface Meetings {
  /** Two pieces each: they touch, cross at a shallow angle, or an end of one lies on the other. */
  readonly beside: number[];
  /** The two pieces and the point of each crossing. */
  readonly roots: number[];
  /** What the pieces were looked up in, if they were. */
  index: RunIndex | null;
}

/**
 * Finds where pieces meet: ends that lie on another piece and crossings go into `hits`, points that are one into `welds`.
 * @param twins see `twinsOf`; of pieces that are the same only the first is looked at
 */
export function findMeetings(
  curves: Curves,
  boxes: Float64Array,
  hits: Hits,
  welds: number[],
  twins: Int32Array | null,
): Meetings {
  const { rows, from, to, points, tolerance } = curves;
  const { x: px, y: py } = points;
  const meetings: Meetings = { beside: [], roots: [], index: null };
  /** Whether one of the two pieces at hand is of a circle of some tolerances, which has no good way to go beside another. */
  let isAtSpeck = false;
  /** Ends of the two pieces at hand that lie on the other one. */
  const common = [0, 0, 0, 0];
  let shared = 0;
  /** How many of these are joints of both. */
  let joints = 0;
  // Curves that touch are within tolerance of each other for a good way to both sides. What parts two arcs of one
  // circle there is no place of the other curve: it would depend on how the circle was written down.
  const isSharedJoint = sharedJoints(curves);
  const touchesElsewhere = (p: number, x: number, y: number) =>
    roots[4] === 1 &&
    points.isSeam[p] === true &&
    !isAtSpeck &&
    Math.hypot((roots[0] as number) - x, (roots[1] as number) - y) > tolerance &&
    !isSharedJoint(p);
  /** Looks whether an end of a piece lies on another one. */
  const onto = (p: number, other: number) => {
    const a = from[other] as number;
    const b = to[other] as number;
    if (p === a || p === b) {
      common[shared++] = p;
      joints++;
      return;
    }
    const x = px[p] as number;
    const y = py[p] as number;
    if (!isInBox(boxes, other, x, y, tolerance)) return;
    if (isNear(points, a, x, y, tolerance)) welds.push(p, a);
    else if (isNear(points, b, x, y, tolerance)) welds.push(p, b);
    else if (isShort[other] === 0 && isOn(rows, other * ROW, x, y, tolerance)) {
      if (touchesElsewhere(p, x, y)) {
        level(points, p, roots[1] as number, tolerance);
        return;
      }
      hits.piece.push(other);
      hits.point.push(p);
    } else return;
    common[shared++] = p;
  };
  const isShort = new Uint8Array(curves.count);
  for (let i = 0; i < curves.count; i++) {
    const a = from[i] as number;
    const b = to[i] as number;
    if (!isNear(points, a, px[b] as number, py[b] as number, tolerance)) continue;
    isShort[i] = 1;
    welds.push(a, b);
  }
  meetings.index = eachPair(curves, boxes, (i, j) => {
    if (twins !== null && (twins[i] !== i || twins[j] !== j)) return;
    shared = 0;
    joints = 0;
    // Of a piece shorter than the tolerance the ends say all; which way it runs is rounding.
    roots[4] = 0;
    const count = isShort[i] === 1 || isShort[j] === 1 ? 0 : meetRows(rows, i, j, tolerance, roots);
    isAtSpeck = roots[4] === 1 && (isSpeck(rows, i, tolerance) || isSpeck(rows, j, tolerance));
    onto(from[i] as number, j);
    onto(to[i] as number, j);
    onto(from[j] as number, i);
    onto(to[j] as number, i);
    let isBeside = roots[4] === 1 || shared > joints;
    for (let k = 0; k < count; k++) {
      const x = roots[2 * k] as number;
      const y = roots[2 * k + 1] as number;
      // An end that lies on the other piece is their crossing, however far along it rounding puts the root. A place of
      // touching is found precisely, and where others lie beside it, it is wanted too.
      if (roots[4] === 0 && isCommon(curves, i, j, common, shared, x, y)) continue;
      const p = addPoint(points, x, y, null);
      hits.piece.push(i, j);
      hits.point.push(p, p);
      meetings.roots.push(i, j, p);
      isBeside ||= isShallow(rows, i, j, x, y);
    }
    if (isBeside) meetings.beside.push(i, j);
  });
  return meetings;
}

/** A circle with a radius of so many tolerances is a speck. */
const SPECK = 64;

function isSpeck(rows: Float64Array, piece: number, tolerance: number): boolean {
  const o = piece * ROW;
  return rows[o + 7] !== 0 && (rows[o + 6] as number) < SPECK * tolerance;
}

/**
 * Brings a seam to the height of the place of touching beside it, where the two are level but for the tolerance. The highest
 * point of one circle and the lowest of another that touches it would else each be on the wrong side of the other circle.
 */
function level({ y }: Points, seam: number, height: number, tolerance: number): void {
  if (Math.abs((y[seam] as number) - height) <= LEVEL * tolerance) y[seam] = height;
}

/** In tolerances: of the touching place and of the seam, each may be off by one. */
const LEVEL = 2;

/** Whether a crossing of two pieces is at one of some points that lie on both. */
function isCommon(
  { rows, points, tolerance }: Curves,
  i: number,
  j: number,
  common: readonly number[],
  count: number,
  x: number,
  y: number,
): boolean {
  for (let k = 0; k < count; k++) {
    const p = common[k] as number;
    if (isSameCrossing(rows, i, j, points.x[p] as number, points.y[p] as number, x, y, tolerance))
      return true;
  }
  return false;
}

/** Crossings under this sine are shallow: pieces are within the tolerance of each other for so many of it. */
const SHALLOW = 1 / 64;

/** Whether two pieces cross at a shallow angle at a place. */
function isShallow(rows: Float64Array, i: number, j: number, x: number, y: number): boolean {
  const p = i * ROW;
  const q = j * ROW;
  const isLine = rows[p + 7] === 0;
  const isOther = rows[q + 7] === 0;
  // Directions that both turn by a right angle from where the pieces run: of a line along it, of an arc to its centre.
  const ux = isLine ? (rows[p + 3] as number) - (rows[p + 1] as number) : x - (rows[p + 4] as number);
  const uy = isLine ? (rows[p] as number) - (rows[p + 2] as number) : y - (rows[p + 5] as number);
  const vx = isOther ? (rows[q + 3] as number) - (rows[q + 1] as number) : x - (rows[q + 4] as number);
  const vy = isOther ? (rows[q] as number) - (rows[q + 2] as number) : y - (rows[q + 5] as number);
  const cross = ux * vy - uy * vx;
  return cross * cross < SHALLOW * SHALLOW * (ux * ux + uy * uy) * (vx * vx + vy * vy);
}

/**
 * A crossing of two pieces that lies on a third is a place of that one too, wherever its own crossings with the
 * two have been found: pieces that run beside each other cross a third in places that rounding sets apart. Where all three
 * cross at clear angles their crossings are neighbours along each of them, and are welded as such.
 */
export function shareRoots(
  curves: Curves,
  boxes: Float64Array,
  meetings: Meetings,
  hits: Hits,
  welds: number[],
): void {
  const { beside } = meetings;
  if (meetings.roots.length === 0 || beside.length === 0) return;
  const { rows, from, to, points, tolerance } = curves;
  const start = new Int32Array(curves.count + 1);
  for (const piece of beside) start[piece + 1] = (start[piece + 1] as number) + 1;
  for (let i = 0; i < curves.count; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const fill = start.slice();
  const others = new Int32Array(beside.length);
  for (let k = 0; k < beside.length; k++) {
    const piece = beside[k] as number;
    const slot = fill[piece] as number;
    fill[piece] = slot + 1;
    others[slot] = beside[k ^ 1] as number;
  }
  for (let r = 0; r < meetings.roots.length; r += 3) {
    const i = meetings.roots[r] as number;
    const j = meetings.roots[r + 1] as number;
    const point = meetings.roots[r + 2] as number;
    for (let side = 0; side < 2; side++) {
      const piece = side === 0 ? i : j;
      for (let k = start[piece] as number; k < (start[piece + 1] as number); k++) {
        const third = others[k] as number;
        if (third !== i && third !== j) share(point, third);
      }
    }
  }

  function share(point: number, third: number): void {
    const x = points.x[point] as number;
    const y = points.y[point] as number;
    if (!isInBox(boxes, third, x, y, tolerance)) return;
    const a = from[third] as number;
    const b = to[third] as number;
    if (isNear(points, a, x, y, tolerance)) welds.push(point, a);
    else if (isNear(points, b, x, y, tolerance)) welds.push(point, b);
    else if (
      !isNear(points, a, points.x[b] as number, points.y[b] as number, tolerance) &&
      isOn(rows, third * ROW, x, y, tolerance)
    ) {
      hits.piece.push(third);
      hits.point.push(point);
    }
  }
}

/** Whether a place lies in the box of a piece, or beside it by no more than the tolerance. */
export function isInBox(
  boxes: Float64Array,
  piece: number,
  x: number,
  y: number,
  tolerance: number,
): boolean {
  const o = 4 * piece;
  return (
    x >= (boxes[o] as number) - tolerance &&
    y >= (boxes[o + 1] as number) - tolerance &&
    x <= (boxes[o + 2] as number) + tolerance &&
    y <= (boxes[o + 3] as number) + tolerance
  );
}

/** Whether a place lies on the curve of a row, between its ends, to within the tolerance. */
export function isOn(rows: Float64Array, o: number, x: number, y: number, tolerance: number): boolean {
  const turn = rows[o + 7] as number;
  if (turn === 0) {
    const ax = rows[o] as number;
    const ay = rows[o + 1] as number;
    const dx = (rows[o + 2] as number) - ax;
    const dy = (rows[o + 3] as number) - ay;
    const side = dx * (y - ay) - dy * (x - ax);
    const square = dx * dx + dy * dy;
    const along = (x - ax) * dx + (y - ay) * dy;
    return along > 0 && along < square && side * side <= tolerance * tolerance * square;
  }
  const cx = x - (rows[o + 4] as number);
  const cy = y - (rows[o + 5] as number);
  if (Math.abs(Math.sqrt(cx * cx + cy * cy) - (rows[o + 6] as number)) > tolerance) return false;
  return onSide(rows, o, x, y);
}
