import { ROW } from '../geometry/curves.js';
import type { Curves } from '../noding/gather.js';
import type { Noding } from '../noding/node.js';
import type { RunIndex } from '../noding/runs.js';

/** What of the operands runs along an edge: their pieces, and whether with it (+1) or against it (-1). */
export interface Graph {
  readonly curves: Curves;
  /** Finds edges by place, where they are the pieces that were given and many; null otherwise. */
  readonly index: RunIndex | null;
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Members of edge e are those from `start[e]` up to `start[e + 1]`; the first one gives its shape. */
  readonly start: Int32Array;
  readonly member: Int32Array;
  readonly sign: Int8Array;
}

/** Middles of coincident edges may lie this many tolerances apart: each may have been moved by one. */
const MIDDLE_SLACK = 2;

/**
 * Makes one edge of all that run together: same ends, same middle. A cut made again, a face cut flush and two
 * bores that share a wall all come to this. Edges along which every operand cancels itself are left out.
 */
export function merge(noding: Noding): Graph {
  const { curves, count: n, from, to, piece } = noding;
  const bulge = (s: number) => bulgeOf(curves, piece[s] as number, from[s] as number, to[s] as number);
  const slack = MIDDLE_SLACK * curves.tolerance;
  const headAt = new Int32Array(curves.points.x.length).fill(-1);
  const nextAtVertex = new Int32Array(n).fill(-1);
  const nextMember = new Int32Array(n).fill(-1);
  const lastMember = new Int32Array(n);
  const isHead = new Uint8Array(n);
  for (let s = 0; s < n; s++) {
    const low = Math.min(from[s] as number, to[s] as number);
    const high = Math.max(from[s] as number, to[s] as number);
    let head = headAt[low] as number;
    for (; head >= 0; head = nextAtVertex[head] as number) {
      if (Math.max(from[head] as number, to[head] as number) !== high) continue;
      const isAlike = from[head] === from[s];
      if (Math.abs(bulge(s) - (isAlike ? bulge(head) : -bulge(head))) <= slack) break;
    }
    if (head < 0) {
      nextAtVertex[s] = headAt[low] as number;
      headAt[low] = s;
      isHead[s] = 1;
      lastMember[s] = s;
    } else {
      nextMember[lastMember[head] as number] = s;
      lastMember[head] = s;
    }
  }

  const start = new Int32Array(n + 1);
  const member = new Int32Array(n);
  const sign = new Int8Array(n);
  const outFrom = new Int32Array(n);
  const outTo = new Int32Array(n);
  let count = 0;
  let at = 0;
  for (let s = 0; s < n; s++) {
    if (isHead[s] === 0 || cancels(curves, noding, nextMember, s)) continue;
    outFrom[count] = from[s] as number;
    outTo[count] = to[s] as number;
    start[count] = at;
    for (let k = s; k >= 0; k = nextMember[k] as number) {
      member[at] = piece[k] as number;
      sign[at] = from[k] === from[s] ? 1 : -1;
      at++;
    }
    count++;
    start[count] = at;
  }
  return {
    curves,
    index: count === curves.count ? noding.index : null,
    count,
    from: outFrom,
    to: outTo,
    start,
    member,
    sign,
  };
}

/** Whether every operand runs along an edge as often one way as the other, so that nothing changes across it. */
function cancels(curves: Curves, noding: Noding, nextMember: Int32Array, head: number): boolean {
  if ((nextMember[head] as number) < 0) return false;
  const sums = new Map<number, number>();
  for (let k = head; k >= 0; k = nextMember[k] as number) {
    const operand = curves.operand[noding.piece[k] as number] as number;
    sums.set(operand, (sums.get(operand) ?? 0) + (noding.from[k] === noding.from[head] ? 1 : -1));
  }
  for (const sum of sums.values()) if (sum !== 0) return false;
  return true;
}

/** How far the middle of a sub-edge lies to the left of its chord; for up to half a turn. */
function bulgeOf(curves: Curves, piece: number, from: number, to: number): number {
  const { rows, points } = curves;
  const o = piece * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return 0;
  const ax = points.x[from] as number;
  const ay = points.y[from] as number;
  const dx = (points.x[to] as number) - ax;
  const dy = (points.y[to] as number) - ay;
  const r = rows[o + 6] as number;
  const quarter = (dx * dx + dy * dy) / 4;
  const square = r * r;
  let depth: number;
  if (quarter < 0.75 * square) {
    depth = quarter / (r + Math.sqrt(square - quarter));
  } else {
    // Close to half a turn the root above would lose half its digits; the distance to the chord does not.
    const mx = ax + dx / 2 - (rows[o + 4] as number);
    const my = ay + dy / 2 - (rows[o + 5] as number);
    depth = r - Math.sqrt(mx * mx + my * my);
  }
  return -turn * depth;
}
