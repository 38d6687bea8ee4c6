/*
 * Room: the first half of an overlay: every edge of every operand is split where it meets another.
 * In: loops of the operands.
 * Out: curves split at shared points, with all points that are one welded.
 */

import { Groups } from '../region/groups.js';
import { type Along, sortHits } from './along.js';
import type { Curves } from './gather.js';
import { findMeetings, type Hits, shareRoots } from './meetings.js';
import { boxesOf } from './pairs.js';
import { isNear, type Points } from './points.js';
import type { RunIndex } from './runs.js';
import { shareWithTwins, twinsOf } from './twins.js';

/** Pieces of curves between vertices, none of which meets another but at its ends. */
export interface Noding {
  readonly curves: Curves;
  /** Finds pieces by place, where all of them are as they were and they are many; null otherwise. */
  readonly index: RunIndex | null;
  /** Sub-edges: how many, the vertices they lead from and to, and the piece that they are of; the lists may be longer. */
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly piece: Int32Array;
}

/**
 * Finds every place where pieces meet, welds what is closer than the tolerance, and cuts the pieces there.
 * All later steps go by the numbers of vertices; distances are not looked at again.
 */
export function node(curves: Curves): Noding {
  const boxes = boxesOf(curves.rows, curves.count);
  const hits: Hits = { piece: [], point: [] };
  const welds: number[] = [];
  const twins = twinsOf(curves);
  const meetings = findMeetings(curves, boxes, hits, welds, twins);
  shareRoots(curves, boxes, meetings, hits, welds);
  if (twins !== null) shareWithTwins(curves, twins, hits, welds);
  const along = sortHits(curves, hits);
  const groups = new Groups(curves.points.x.length, preferGiven(curves.points));
  for (let k = 0; k < welds.length; k += 2) groups.join(welds[k] as number, welds[k + 1] as number);
  weldNeighbours(curves, along, groups);
  const isAsGiven = hits.point.length === 0 && welds.length === 0;
  return { curves, index: isAsGiven ? meetings.index : null, ...cut(curves, along, groups) };
}

function preferGiven(points: Points): (a: number, b: number) => boolean {
  return (a, b) => {
    const givenA = points.given[a] !== null;
    const givenB = points.given[b] !== null;
    return givenA === givenB ? a < b : givenA;
  };
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

function cut(curves: Curves, along: Along, groups: Groups): Omit<Noding, 'curves' | 'index'> {
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
  return { count: n, from, to, piece };
}
