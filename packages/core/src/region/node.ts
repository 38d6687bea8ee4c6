import { CHAIN_TURN, ROW } from '../geometry/curves.js';
import { meetRows, onSide } from '../geometry/meet.js';
import { addPoint, type Curves, type Points } from './gather.js';
import { Groups } from './groups.js';
import { boxesOf, eachPair } from './pairs.js';
import { isSameCrossing } from './same-crossing.js';
import { sharedJoints } from './shared-joints.js';

/** Pieces of curves between vertices, none of which meets another but at its ends. */
export interface Noding {
  readonly curves: Curves;
  readonly boxes: Float64Array;
  /** The vertex that each point has become. Coordinates of a vertex are those of its own point. */
  readonly vertexOf: Int32Array;
  /** Sub-edges: the vertices they lead from and to, and the piece that they are of. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly piece: Int32Array;
}

/** A point that lies on a piece, strictly between its ends. */
interface Hits {
  readonly piece: number[];
  readonly point: number[];
}

/**
 * Finds every place where pieces meet, welds what is closer than the tolerance, and cuts the pieces there.
 * All later steps go by the numbers of vertices; distances are not looked at again.
 */
export function node(curves: Curves): Noding {
  const boxes = boxesOf(curves.rows, curves.count);
  const hits: Hits = { piece: [], point: [] };
  const welds: number[] = [];
  const meetings = findMeetings(curves, boxes, hits, welds);
  shareRoots(curves, meetings, hits, welds);
  const along = sortHits(curves, hits);
  const groups = new Groups(curves.points.x.length, preferGiven(curves.points));
  for (let k = 0; k < welds.length; k += 2) groups.join(welds[k] as number, welds[k + 1] as number);
  weldNeighbours(curves, along, groups);
  return { curves, boxes, ...cut(curves, along, groups) };
}

function preferGiven(points: Points): (a: number, b: number) => boolean {
  return (a, b) => {
    const givenA = points.given[a] !== null;
    const givenB = points.given[b] !== null;
    return givenA === givenB ? a < b : givenA;
  };
}

const roots = new Float64Array(5);

/** Pairs of pieces that come together somewhere, and the crossings found between two pieces. */
interface Meetings {
  readonly one: number[];
  readonly other: number[];
  readonly roots: { readonly i: number; readonly j: number; readonly point: number }[];
}

function findMeetings(curves: Curves, boxes: Float64Array, hits: Hits, welds: number[]): Meetings {
  const { rows, from, to, points, tolerance } = curves;
  const meetings: Meetings = { one: [], other: [], roots: [] };
  let shared = false;
  /** Ends of the two pieces at hand that lie on the other one. */
  const common: number[] = [];
  // Curves that touch are within tolerance of each other for a good way to both sides. What parts two arcs of one
  // circle there is no place of the other curve: it would depend on how the circle was written down.
  const isSharedJoint = sharedJoints(curves);
  const touchesElsewhere = (p: number, x: number, y: number) =>
    roots[4] === 1 &&
    points.isSeam[p] === true &&
    Math.hypot((roots[0] as number) - x, (roots[1] as number) - y) > tolerance &&
    !isSharedJoint(p);
  const onto = (piece: number, other: number) => {
    const a = from[other] as number;
    const b = to[other] as number;
    for (let k = 0; k < 2; k++) {
      const p = k === 0 ? (from[piece] as number) : (to[piece] as number);
      if (p === a || p === b) {
        shared = true;
        common.push(p);
        continue;
      }
      const x = points.x[p] as number;
      const y = points.y[p] as number;
      if (isNear(points, a, x, y, tolerance)) welds.push(p, a);
      else if (isNear(points, b, x, y, tolerance)) welds.push(p, b);
      else if (
        isShort[other] === 0 &&
        !touchesElsewhere(p, x, y) &&
        isOn(rows, other * ROW, x, y, tolerance)
      ) {
        hits.piece.push(other);
        hits.point.push(p);
      } else continue;
      common.push(p);
    }
  };
  const isShort = new Uint8Array(curves.count);
  for (let i = 0; i < curves.count; i++) {
    const a = from[i] as number;
    const b = to[i] as number;
    if (isChain(rows, i) || !isNear(points, a, points.x[b] as number, points.y[b] as number, tolerance))
      continue;
    isShort[i] = 1;
    welds.push(a, b);
  }
  eachPair(curves, boxes, (i, j) => {
    if (isChain(rows, i) || isChain(rows, j)) return;
    const before = hits.piece.length + welds.length;
    shared = false;
    common.length = 0;
    // Of a piece shorter than the tolerance the ends say all; which way it runs is rounding.
    roots[4] = 0;
    const count = isShort[i] === 1 || isShort[j] === 1 ? 0 : meetRows(rows, i, j, tolerance, roots);
    onto(i, j);
    onto(j, i);
    for (let k = 0; k < count; k++) {
      const x = roots[2 * k] as number;
      const y = roots[2 * k + 1] as number;
      // An end that lies on the other piece is their crossing, however far along it rounding puts the root. A place of
      // touching is found precisely, and where others lie beside it, it is wanted too.
      const isKnown = (p: number) =>
        roots[4] === 0 &&
        isSameCrossing(rows, i, j, points.x[p] as number, points.y[p] as number, x, y, tolerance);
      if (common.some(isKnown)) continue;
      const p = addPoint(points, x, y, null);
      hits.piece.push(i, j);
      hits.point.push(p, p);
      meetings.roots.push({ i, j, point: p });
    }
    if (shared || hits.piece.length + welds.length > before) {
      meetings.one.push(i);
      meetings.other.push(j);
    }
  });
  return meetings;
}

/**
 * A crossing of two pieces that lies on a third is a place of that one too, wherever its own crossings with the
 * two have been found: pieces that run together cross a third in places that rounding sets apart.
 */
function shareRoots(curves: Curves, meetings: Meetings, hits: Hits, welds: number[]): void {
  if (meetings.roots.length === 0) return;
  const { rows, from, to, points, tolerance } = curves;
  const start = new Int32Array(curves.count + 1);
  for (const list of [meetings.one, meetings.other]) {
    for (const piece of list) start[piece + 1] = (start[piece + 1] as number) + 1;
  }
  for (let i = 0; i < curves.count; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const fill = start.slice();
  const met = new Int32Array(2 * meetings.one.length);
  const add = (piece: number, other: number) => {
    const slot = fill[piece] as number;
    fill[piece] = slot + 1;
    met[slot] = other;
  };
  for (let k = 0; k < meetings.one.length; k++) {
    add(meetings.one[k] as number, meetings.other[k] as number);
    add(meetings.other[k] as number, meetings.one[k] as number);
  }
  const size = (piece: number) => (start[piece + 1] as number) - (start[piece] as number);
  for (const { i, j, point } of meetings.roots) {
    const fewer = size(i) <= size(j) ? i : j;
    const x = points.x[point] as number;
    const y = points.y[point] as number;
    for (let k = start[fewer] as number; k < (start[fewer + 1] as number); k++) {
      const third = met[k] as number;
      if (third === i || third === j) continue;
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
}

function isChain(rows: Float64Array, piece: number): boolean {
  return rows[piece * ROW + 7] === CHAIN_TURN;
}

function isNear(points: Points, p: number, x: number, y: number, tolerance: number): boolean {
  const dx = (points.x[p] as number) - x;
  const dy = (points.y[p] as number) - y;
  return dx * dx + dy * dy <= tolerance * tolerance;
}

/** Whether a place lies on the curve of a row, between its ends, to within the tolerance. */
function isOn(rows: Float64Array, o: number, x: number, y: number, tolerance: number): boolean {
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

/** For each piece, where its points begin in `point`; they are in order along the piece, its own ends left out. */
interface Along {
  readonly start: Int32Array;
  readonly point: Int32Array;
}

function sortHits(curves: Curves, hits: Hits): Along {
  const start = new Int32Array(curves.count + 1);
  for (const piece of hits.piece) start[piece + 1] = (start[piece + 1] as number) + 1;
  for (let i = 0; i < curves.count; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const fill = start.slice();
  const point = new Int32Array(hits.point.length);
  for (let k = 0; k < hits.point.length; k++) {
    const piece = hits.piece[k] as number;
    const slot = fill[piece] as number;
    fill[piece] = slot + 1;
    point[slot] = hits.point[k] as number;
  }
  for (let i = 0; i < curves.count; i++) {
    const lo = start[i] as number;
    const hi = start[i + 1] as number;
    if (hi - lo > 1) sortRange(curves, i, point, lo, hi);
  }
  return { start, point };
}

function sortRange(curves: Curves, piece: number, point: Int32Array, lo: number, hi: number): void {
  const places: Place[] = [];
  for (let k = lo; k < hi; k++) places.push(placeOf(curves, piece, point[k] as number));
  places.sort(alongPiece);
  for (let k = lo; k < hi; k++) point[k] = (places[k - lo] as Place).point;
}

/**
 * Where a point is along a piece of up to half a turn: the squared distance from the nearer end, which is precise
 * at both of them.
 */
interface Place {
  readonly point: number;
  readonly isNearEnd: boolean;
  readonly square: number;
}

function placeOf({ rows, points }: Curves, piece: number, point: number): Place {
  const o = piece * ROW;
  const x = points.x[point] as number;
  const y = points.y[point] as number;
  const ax = x - (rows[o] as number);
  const ay = y - (rows[o + 1] as number);
  const bx = x - (rows[o + 2] as number);
  const by = y - (rows[o + 3] as number);
  const fromA = ax * ax + ay * ay;
  const fromB = bx * bx + by * by;
  const isNearEnd = fromB < fromA;
  return { point, isNearEnd, square: isNearEnd ? fromB : fromA };
}

function alongPiece(a: Place, b: Place): number {
  if (a.isNearEnd !== b.isNearEnd) return a.isNearEnd ? 1 : -1;
  const ahead = a.isNearEnd ? b.square - a.square : a.square - b.square;
  return ahead || a.point - b.point;
}

/**
 * In tolerances. A point of a piece may lie off it by one; where it stands beside an end, that alone parts the two, and a
 * piece cut between them would lie across. A little more than one: it is then one tolerance but for rounding.
 */
const NEIGHBOURS = 1.001;

/** Points that follow each other along a piece within the tolerance are one. */
function weldNeighbours(curves: Curves, along: Along, groups: Groups): void {
  const { points, tolerance } = curves;
  for (let i = 0; i < curves.count; i++) {
    const lo = along.start[i] as number;
    const hi = along.start[i + 1] as number;
    if (lo === hi) continue;
    let before = curves.from[i] as number;
    for (let k = lo; k <= hi; k++) {
      const p = k === hi ? (curves.to[i] as number) : (along.point[k] as number);
      if (isNear(points, before, points.x[p] as number, points.y[p] as number, NEIGHBOURS * tolerance))
        groups.join(before, p);
      before = p;
    }
  }
}

function cut(curves: Curves, along: Along, groups: Groups): Omit<Noding, 'curves' | 'boxes'> {
  const vertexOf = groups.leaders();
  const most = curves.count + along.point.length;
  const from = new Int32Array(most);
  const to = new Int32Array(most);
  const piece = new Int32Array(most);
  let n = 0;
  for (let i = 0; i < curves.count; i++) {
    const hi = along.start[i + 1] as number;
    let before = vertexOf[curves.from[i] as number] as number;
    for (let k = along.start[i] as number; k <= hi; k++) {
      const p = k === hi ? (curves.to[i] as number) : (along.point[k] as number);
      const vertex = vertexOf[p] as number;
      if (vertex === before) continue;
      from[n] = before;
      to[n] = vertex;
      piece[n] = i;
      n++;
      before = vertex;
    }
  }
  return { vertexOf, from: from.subarray(0, n), to: to.subarray(0, n), piece: piece.subarray(0, n) };
}
