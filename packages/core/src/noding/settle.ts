import { ROW } from '../geometry/curves.js';
import { meetRows } from '../geometry/meet.js';
import { sortHits } from './along.js';
import type { Curves } from './gather.js';
import { type Hits, isInBox, isOn } from './meetings.js';
import { Net } from './net.js';
import type { Noding } from './node.js';
import { boxesOf, eachPair } from './pairs.js';
import { addPoint, isNear, type Points } from './points.js';
import { isSameCrossing } from './same-crossing.js';

/** So often are pieces cut again where they have come to lie; nearly all rest after two or three times. */
const ROUNDS = 24;

/**
 * Cuts the pieces as `node` does, where that was not enough, and again where they have come to lie by being cut, until
 * nothing changes: then no vertex is within the tolerance of another, nor of a piece that it is no end of, and no two pieces
 * cross. What each round moves is next to nothing, and it moves nothing twice: a vertex stays where it is for good.
 * Source: Halperin and Packer, "Iterated snap rounding" (2002), for going on to a fixpoint.
 * @returns null if it does not come to rest
 */
export function settle(given: Curves): Noding | null {
  let curves: Curves = { ...given, points: copyOf(given.points) };
  for (let round = 0; round < ROUNDS; round++) {
    const next = settledOnce(curves);
    if (next === null) {
      const { count, from, to } = curves;
      return { curves, index: null, count, from, to, piece: Int32Array.from({ length: count }, (_, k) => k) };
    }
    curves = next;
  }
  return null;
}

function copyOf({ x, y, given, isSeam }: Points): Points {
  return { x: x.slice(), y: y.slice(), given: given.slice(), isSeam: isSeam.map(() => false) };
}

/** The curves cut once where they meet; null if that changes nothing. */
function settledOnce(curves: Curves): Curves | null {
  const { points, count } = curves;
  const known = points.x.length;
  const hits = contactsOf(curves);
  const vertexOf = new Net(curves.tolerance).leaders(points);
  const isAtRest =
    hits.point.length === 0 &&
    points.x.length === known &&
    everyIsVertex(curves.from, count, vertexOf) &&
    everyIsVertex(curves.to, count, vertexOf);
  return isAtRest ? null : cutAt(curves, hits, vertexOf);
}

function everyIsVertex(list: Int32Array, count: number, vertexOf: Int32Array): boolean {
  for (let k = 0; k < count; k++) if (vertexOf[list[k] as number] !== list[k]) return false;
  return true;
}

/**
 * In tolerances. A vertex is put on a piece that it is so near to, and pieces touch that come so near. By less than half the root of 3, so that a piece between
 * vertices over one tolerance apart is always parted into shorter ones, which comes to an end.
 */
const ONTO = 0.8;

const roots = new Float64Array(5);

/** Ends that lie on other pieces, and places where pieces cross. */
function contactsOf(curves: Curves): Hits {
  const { rows, from, to, points, tolerance } = curves;
  const onto = ONTO * tolerance;
  const boxes = boxesOf(rows, curves.count);
  const hits: Hits = { piece: [], point: [] };
  const common: number[] = [];
  const isAt = (p: number, q: number) =>
    p === q || isNear(points, p, points.x[q] as number, points.y[q] as number, tolerance);
  const look = (p: number, other: number) => {
    if (isAt(p, from[other] as number) || isAt(p, to[other] as number)) {
      common.push(p);
      return;
    }
    const x = points.x[p] as number;
    const y = points.y[p] as number;
    if (!isInBox(boxes, other, x, y, tolerance) || !isOn(rows, other * ROW, x, y, onto)) return;
    hits.piece.push(other);
    hits.point.push(p);
    common.push(p);
  };
  eachPair(curves, boxes, (i, j) => {
    const [a, b, c, d] = [from[i] as number, to[i] as number, from[j] as number, to[j] as number];
    if ((a === c && b === d) || (a === d && b === c)) return;
    common.length = 0;
    look(a, j);
    look(b, j);
    look(c, i);
    look(d, i);
    const found = meetRows(rows, i, j, onto, roots);
    for (let k = 0; k < found; k++) {
      const x = roots[2 * k] as number;
      const y = roots[2 * k + 1] as number;
      const isKnown = common.some((p) =>
        isSameCrossing(rows, i, j, points.x[p] as number, points.y[p] as number, x, y, onto),
      );
      if (isKnown) continue;
      const p = addPoint(points, x, y, null);
      hits.piece.push(i, j);
      hits.point.push(p, p);
    }
  });
  return hits;
}

/** The pieces between vertices, each laid through its own. */
function cutAt(curves: Curves, hits: Hits, vertexOf: Int32Array): Curves {
  const along = sortHits(curves, hits);
  const most = curves.count + along.point.length;
  const cut = {
    rows: new Float64Array(most * ROW),
    from: new Int32Array(most),
    to: new Int32Array(most),
    operand: new Int32Array(most),
    input: new Int32Array(most),
  };
  let count = 0;
  for (let i = 0; i < curves.count; i++) {
    const end = along.start[i + 1] as number;
    let before = vertexOf[curves.from[i] as number] as number;
    for (let k = along.start[i] as number; k <= end; k++) {
      const p = k === end ? (curves.to[i] as number) : (along.point[k] as number);
      const vertex = vertexOf[p] as number;
      if (vertex === before) continue;
      cut.from[count] = before;
      cut.to[count] = vertex;
      cut.operand[count] = curves.operand[i] as number;
      cut.input[count] = curves.input[i] as number;
      layRow(curves, i, before, vertex, cut.rows, count);
      count++;
      before = vertex;
    }
  }
  return { ...curves, ...cut, count };
}

/** A bow that rises by less than this many tolerances over its chord is taken for straight. */
const STRAIGHT = 0.01;

/**
 * The part of a piece between two vertices, which may lie a little off it: an arc that turns as far as the piece does there,
 * so that its middle moves by no more than its ends.
 */
function layRow(curves: Curves, i: number, from: number, to: number, rows: Float64Array, at: number): void {
  const { points, tolerance } = curves;
  const given = curves.rows;
  const o = i * ROW;
  const t = at * ROW;
  const ax = points.x[from] as number;
  const ay = points.y[from] as number;
  const bx = points.x[to] as number;
  const by = points.y[to] as number;
  rows[t] = ax;
  rows[t + 1] = ay;
  rows[t + 2] = bx;
  rows[t + 3] = by;
  const turn = given[o + 7] as number;
  if (turn === 0) return;
  const isWhole = given[o] === ax && given[o + 1] === ay && given[o + 2] === bx && given[o + 3] === by;
  if (isWhole) {
    for (let k = 4; k < ROW; k++) rows[t + k] = given[o + k] as number;
    return;
  }
  const px = ax - (given[o + 4] as number);
  const py = ay - (given[o + 5] as number);
  const qx = bx - (given[o + 4] as number);
  const qy = by - (given[o + 5] as number);
  const turned = Math.atan2(turn * (px * qy - py * qx), px * qx + py * qy);
  // Half a turn may have become a little more.
  const half = (turned < -Math.PI / 2 ? turned + 2 * Math.PI : turned) / 2;
  const chord = Math.hypot(bx - ax, by - ay);
  // Ends that have passed each other leave nothing of an arc but its chord.
  if (!((chord / 2) * Math.tan(half / 2) > STRAIGHT * tolerance)) return;
  const radius = chord / (2 * Math.sin(half));
  const away = (turn * radius * Math.cos(half)) / chord;
  rows[t + 4] = (ax + bx) / 2 - (by - ay) * away;
  rows[t + 5] = (ay + by) / 2 + (bx - ax) * away;
  rows[t + 6] = radius;
  rows[t + 7] = turn;
}
