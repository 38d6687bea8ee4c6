import { ROW } from '../geometry/curves.js';
import { Fan, LIKE_DIRECTION } from './fan.js';
import type { Graph } from './merge.js';

/**
 * Half-edges in order round their vertices. Half-edge 2e runs along edge e, 2e + 1 against it; each has what
 * lies to its left as its face.
 */
export interface Rotation {
  /** The half-edge that comes next counter-clockwise round the same start. */
  readonly ccw: Int32Array;
  /** The half-edge that comes before it, so next clockwise. */
  readonly cw: Int32Array;
  /** Some half-edge that leaves each vertex, -1 where none does. */
  readonly anyAt: Int32Array;
}

/** The vertex that a half-edge leaves. */
export function startOf(graph: Graph, half: number): number {
  return (half & 1 ? graph.to : graph.from)[half >> 1] as number;
}

/** The vertex that a half-edge arrives at. */
export function endOf(graph: Graph, half: number): number {
  return (half & 1 ? graph.from : graph.to)[half >> 1] as number;
}

/**
 * Orders the half-edges round each vertex counter-clockwise. Edges that leave in like directions are compared
 * where they have gone as far as the shorter one goes: edges do not cross between vertices, so their order is
 * the same there, and their distance is the largest that can be had. Tangent edges come out by curvature.
 */
export function rotate(graph: Graph): Rotation {
  const halves = graph.count * 2;
  const ccw = new Int32Array(halves);
  const cw = new Int32Array(halves);
  const anyAt = new Int32Array(graph.curves.points.x.length).fill(-1);
  const nextHere = new Int32Array(halves);
  for (let e = 0; e < graph.count; e++) {
    const v = graph.from[e] as number;
    nextHere[2 * e] = anyAt[v] as number;
    anyAt[v] = 2 * e;
    const w = graph.to[e] as number;
    nextHere[2 * e + 1] = anyAt[w] as number;
    anyAt[w] = 2 * e + 1;
  }
  const fan = new Fan();
  for (let v = 0; v < anyAt.length; v++) {
    const first = anyAt[v] as number;
    if (first < 0) continue;
    const second = nextHere[first] as number;
    if (second < 0 || (nextHere[second] as number) < 0) {
      const other = second < 0 ? first : second;
      ccw[first] = other;
      cw[first] = other;
      ccw[other] = first;
      cw[other] = first;
      continue;
    }
    fan.count = 0;
    for (let half = first; half >= 0; half = nextHere[half] as number) fan.add(graph, half);
    if (fan.isClear()) {
      let before = fan.at(fan.count - 1);
      for (let k = 0; k < fan.count; k++) {
        const half = fan.at(k);
        ccw[before] = half;
        cw[half] = before;
        before = half;
      }
      continue;
    }
    const leaving: Leaving[] = [];
    for (let half = first; half >= 0; half = nextHere[half] as number) leaving.push(leavingOf(graph, half));
    const ordered = inOrder(leaving);
    let { half: before } = ordered[ordered.length - 1] as Leaving;
    for (const { half } of ordered) {
      ccw[before] = half;
      cw[half] = before;
      before = half;
    }
  }
  return { ccw, cw, anyAt };
}

/** How a half-edge leaves its vertex. */
interface Leaving {
  readonly half: number;
  readonly end: number;
  /** Direction at the vertex, radians. */
  readonly angle: number;
  /** Length of the chord, and the angle turned through along the edge, to the left over 0. */
  readonly chord: number;
  readonly turned: number;
}

/** Which way a half-edge turns: +1 to the left, -1 to the right, 0 for a line. */
function turnOf(graph: Graph, half: number): number {
  // The first member gives the shape, and it runs along the edge.
  const o = (graph.member[graph.start[half >> 1] as number] as number) * ROW;
  return (graph.curves.rows[o + 7] as number) * (half & 1 ? -1 : 1);
}

function leavingOf(graph: Graph, half: number): Leaving {
  const { rows, points } = graph.curves;
  const v = startOf(graph, half);
  const w = endOf(graph, half);
  const edge = half >> 1;
  const o = (graph.member[graph.start[edge] as number] as number) * ROW;
  const turn = turnOf(graph, half);
  const vx = points.x[v] as number;
  const vy = points.y[v] as number;
  const wx = points.x[w] as number;
  const wy = points.y[w] as number;
  const chord = Math.hypot(wx - vx, wy - vy);
  const toEnd = Math.atan2(wy - vy, wx - vx);
  if (turn === 0) return { half, end: w, angle: toEnd, chord, turned: 0 };
  const px = vx - (rows[o + 4] as number);
  const py = vy - (rows[o + 5] as number);
  const qx = wx - (rows[o + 4] as number);
  const qy = wy - (rows[o + 5] as number);
  const turned = turn * Math.abs(Math.atan2(px * qy - py * qx, px * qx + py * qy));
  return { half, end: w, angle: wrapped(toEnd - turned / 2), chord, turned };
}

/** An angle brought to between -pi and pi. */
export function wrapped(angle: number): number {
  if (angle > Math.PI) return angle - 2 * Math.PI;
  return angle <= -Math.PI ? angle + 2 * Math.PI : angle;
}

/**
 * The last of some half-edges with a common start, counter-clockwise from a direction that none of them leaves in.
 */
export function lastFrom(graph: Graph, halves: readonly number[], direction: number): number {
  if (halves.length === 2) {
    const [one, other] = halves as readonly [number, number];
    // Two arcs that part and meet again, as those of a whole circle do: the one that bulges to the right is first.
    if (endOf(graph, one) === endOf(graph, other) && turnOf(graph, one) * turnOf(graph, other) < 0) {
      return turnOf(graph, one) < 0 ? one : other;
    }
  }
  const list = halves.map((half) => leavingOf(graph, half));
  const ahead = (one: Leaving) => (one.angle < direction ? one.angle + 2 * Math.PI : one.angle);
  list.sort((a, b) => ahead(a) - ahead(b) || a.half - b.half);
  settle(list);
  return (list[list.length - 1] as Leaving).half;
}

function inOrder(leaving: Leaving[]): Leaving[] {
  leaving.sort((a, b) => a.angle - b.angle || a.half - b.half);
  const n = leaving.length;
  // Begin after the widest gap, so that no run of like directions lies across the ends of the list.
  let begin = 0;
  let widest = (leaving[0] as Leaving).angle + 2 * Math.PI - (leaving[n - 1] as Leaving).angle;
  for (let k = 1; k < n; k++) {
    const gap = (leaving[k] as Leaving).angle - (leaving[k - 1] as Leaving).angle;
    if (gap > widest) {
      widest = gap;
      begin = k;
    }
  }
  const list = begin === 0 ? leaving : [...leaving.slice(begin), ...leaving.slice(0, begin)];
  settle(list);
  return list;
}

/** Puts neighbours of like direction into their true order. */
function settle(list: Leaving[]): void {
  for (let k = 1; k < list.length; k++) {
    const one = list[k] as Leaving;
    let slot = k;
    while (slot > 0 && comesAfter(list[slot - 1] as Leaving, one)) {
      list[slot] = list[slot - 1] as Leaving;
      slot--;
    }
    list[slot] = one;
  }
}

/** Whether `a` lies counter-clockwise of `b`, for directions that are alike; false where they are not. */
function comesAfter(a: Leaving, b: Leaving): boolean {
  const apart = wrapped(a.angle - b.angle);
  if (Math.abs(apart) > LIKE_DIRECTION) return false;
  if (a.end === b.end) return a.turned < b.turned;
  const reach = Math.min(a.chord, b.chord);
  return apart + veer(a, reach) - veer(b, reach) > 0;
}

/** How far to the left of its first direction an edge has come at a distance from its start, as an angle. */
function veer(one: Leaving, reach: number): number {
  const half = one.turned / 2;
  return reach >= one.chord ? half : Math.asin((reach * Math.sin(half)) / one.chord);
}
