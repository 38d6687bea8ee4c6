import { ROW } from '../geometry/curves.js';
import { sortByKeys } from '../region/shell-sort.js';
import type { Curves } from './gather.js';
import type { Hits } from './meetings.js';

/** For each piece, where its points begin in `point`; they are in order along the piece, its own ends left out. */
export interface Along {
  readonly start: Int32Array;
  readonly point: Int32Array;
}

/** Deals the points that lie on pieces out to these, and puts them in order. */
export function sortHits(curves: Curves, hits: Hits): Along {
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

/** Puts the points of a piece in order. */
function sortRange(curves: Curves, piece: number, point: Int32Array, lo: number, hi: number): void {
  const n = hi - lo;
  const keys = n > FEW ? new Float64Array(n) : fewKeys;
  for (let k = 0; k < n; k++) keys[k] = keyOf(curves, piece, point[lo + k] as number);
  sortByKeys(keys, point, lo, n);
}

/** Most pieces have no more points than this; for them the same list is used again. */
const FEW = 8;
const fewKeys = new Float64Array(FEW);

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
