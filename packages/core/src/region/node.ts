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
  /** Sub-edges: how many, the vertices they lead from and to, and the piece that they are of; the lists may be longer. */
  readonly count: number;
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
  shareRoots(curves, boxes, meetings, hits, welds);
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
  /** The two pieces and the point of each crossing. */
  readonly roots: number[];
}

function findMeetings(curves: Curves, boxes: Float64Array, hits: Hits, welds: number[]): Meetings {
  const { rows, from, to, points, tolerance } = curves;
  const { x: px, y: py } = points;
  const meetings: Meetings = { one: [], other: [], roots: [] };
  /** Ends of the two pieces at hand that lie on the other one. */
  const common = [0, 0, 0, 0];
  let shared = 0;
  // Curves that touch are within tolerance of each other for a good way to both sides. What parts two arcs of one
  // circle there is no place of the other curve: it would depend on how the circle was written down.
  const isSharedJoint = sharedJoints(curves);
  const touchesElsewhere = (p: number, x: number, y: number) =>
    roots[4] === 1 &&
    points.isSeam[p] === true &&
    Math.hypot((roots[0] as number) - x, (roots[1] as number) - y) > tolerance &&
    !isSharedJoint(p);
  /** Looks whether an end of a piece lies on another one. */
  const onto = (p: number, other: number) => {
    const a = from[other] as number;
    const b = to[other] as number;
    if (p === a || p === b) {
      common[shared++] = p;
      return;
    }
    const x = px[p] as number;
    const y = py[p] as number;
    if (!isInBox(boxes, other, x, y, tolerance)) return;
    if (isNear(points, a, x, y, tolerance)) welds.push(p, a);
    else if (isNear(points, b, x, y, tolerance)) welds.push(p, b);
    else if (isShort[other] === 0 && !touchesElsewhere(p, x, y) && isOn(rows, other * ROW, x, y, tolerance)) {
      hits.piece.push(other);
      hits.point.push(p);
    } else return;
    common[shared++] = p;
  };
  const isShort = new Uint8Array(curves.count);
  for (let i = 0; i < curves.count; i++) {
    const a = from[i] as number;
    const b = to[i] as number;
    if (isChain(rows, i) || !isNear(points, a, px[b] as number, py[b] as number, tolerance)) continue;
    isShort[i] = 1;
    welds.push(a, b);
  }
  eachPair(curves, boxes, (i, j) => {
    if (isChain(rows, i) || isChain(rows, j)) return;
    shared = 0;
    // Of a piece shorter than the tolerance the ends say all; which way it runs is rounding.
    roots[4] = 0;
    const count = isShort[i] === 1 || isShort[j] === 1 ? 0 : meetRows(rows, i, j, tolerance, roots);
    onto(from[i] as number, j);
    onto(to[i] as number, j);
    onto(from[j] as number, i);
    onto(to[j] as number, i);
    let added = 0;
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
      added++;
    }
    if (added > 0 || shared > 0) {
      meetings.one.push(i);
      meetings.other.push(j);
    }
  });
  return meetings;
}

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

/**
 * A crossing of two pieces that lies on a third is a place of that one too, wherever its own crossings with the
 * two have been found: pieces that run together cross a third in places that rounding sets apart.
 */
function shareRoots(
  curves: Curves,
  boxes: Float64Array,
  meetings: Meetings,
  hits: Hits,
  welds: number[],
): void {
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
  for (let r = 0; r < meetings.roots.length; r += 3) {
    const i = meetings.roots[r] as number;
    const j = meetings.roots[r + 1] as number;
    const point = meetings.roots[r + 2] as number;
    const fewer = size(i) <= size(j) ? i : j;
    const x = points.x[point] as number;
    const y = points.y[point] as number;
    for (let k = start[fewer] as number; k < (start[fewer + 1] as number); k++) {
      const third = met[k] as number;
      if (third === i || third === j || !isInBox(boxes, third, x, y, tolerance)) continue;
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

/** Whether a place lies in the box of a piece, or beside it by no more than the tolerance. */
function isInBox(boxes: Float64Array, piece: number, x: number, y: number, tolerance: number): boolean {
  const o = 4 * piece;
  return (
    x >= (boxes[o] as number) - tolerance &&
    y >= (boxes[o + 1] as number) - tolerance &&
    x <= (boxes[o + 2] as number) + tolerance &&
    y <= (boxes[o + 3] as number) + tolerance
  );
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

/** Shell's sort, its gaps 2.25 times apart. Source: Tokuda, "An improved Shellsort", IFIP 1992. */
function sortRange(curves: Curves, piece: number, point: Int32Array, lo: number, hi: number): void {
  const n = hi - lo;
  const keys = n > FEW ? new Float64Array(n) : fewKeys;
  for (let k = 0; k < n; k++) keys[k] = keyOf(curves, piece, point[lo + k] as number);
  let gap = n;
  while (gap > 1) {
    gap = Math.max(1, Math.floor(gap / GAP_RATIO));
    for (let k = gap; k < n; k++) {
      const key = keys[k] as number;
      const one = point[lo + k] as number;
      let slot = k;
      for (; slot >= gap; slot -= gap) {
        const ahead = (keys[slot - gap] as number) - key;
        const other = point[lo + slot - gap] as number;
        if (!(ahead > 0 || (!(ahead < 0) && other > one))) break;
        keys[slot] = keys[slot - gap] as number;
        point[lo + slot] = other;
      }
      keys[slot] = key;
      point[lo + slot] = one;
    }
  }
}

/** Most pieces have no more points than this; for them the same list is used again. */
const FEW = 8;
const fewKeys = new Float64Array(FEW);

const GAP_RATIO = 2.25;

/**
 * Where a point is along a piece of up to half a turn: from the squared distance to the nearer end, which is precise
 * at both of them.
 */
function keyOf({ rows, points }: Curves, piece: number, point: number): number {
  const o = piece * ROW;
  const x = points.x[point] as number;
  const y = points.y[point] as number;
  const ax = x - (rows[o] as number);
  const ay = y - (rows[o + 1] as number);
  const bx = x - (rows[o + 2] as number);
  const by = y - (rows[o + 3] as number);
  const fromA = ax * ax + ay * ay;
  const fromB = bx * bx + by * by;
  return fromB < fromA ? 1 / fromB : -1 / fromA;
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
  return { vertexOf, count: n, from, to, piece };
}
