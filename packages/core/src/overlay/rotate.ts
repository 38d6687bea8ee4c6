import type { Graph } from './merge.js';
import type { Strands } from './strands.js';

/**
 * Half-edges in order round their vertices. Half-edge 2e runs along edge e, 2e + 1 against it; each has what
 * lies to its left as its face.
 */
export interface Rotation {
  /** The half-edge that comes next counter-clockwise round the same start. */
  readonly ccw: Int32Array;
  /** The half-edge that comes before it, so next clockwise. */
  readonly cw: Int32Array;
  /** Some half-edge that leaves each vertex, -1 where none does: the leftmost of those that go up, if any does. */
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
 * Orders the half-edges round each vertex counter-clockwise: those that go up from right to left, then those that go down
 * from left to right. See `Strands` for how two of them are told apart.
 */
export function rotate(graph: Graph, strands: Strands): Rotation {
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
  const isRightAbove = (one: number, other: number) => strands.isLeftAbove(other >> 1, one >> 1);
  const isLeftBelow = (one: number, other: number) => strands.isLeftBelow(one >> 1, other >> 1);
  const ups: number[] = [];
  const downs: number[] = [];
  const { low } = strands;
  for (let v = 0; v < anyAt.length; v++) {
    const any = anyAt[v] as number;
    if (any < 0) continue;
    ups.length = 0;
    downs.length = 0;
    for (let half = any; half >= 0; half = nextHere[half] as number) {
      if (low[half >> 1] === v) ups.push(half);
      else downs.push(half);
    }
    if (ups.length > 1) sort(ups, isRightAbove);
    if (downs.length > 1) sort(downs, isLeftBelow);
    const last = downs.length > 0 ? (downs[downs.length - 1] as number) : (ups[ups.length - 1] as number);
    let before = last;
    for (const half of ups) {
      ccw[before] = half;
      cw[half] = before;
      before = half;
    }
    for (const half of downs) {
      ccw[before] = half;
      cw[half] = before;
      before = half;
    }
    anyAt[v] = ups.length > 0 ? (ups[ups.length - 1] as number) : last;
  }
  return { ccw, cw, anyAt };
}

/** At most vertices two or three edges go one way; from so many on the native sort is quicker. */
const MANY = 12;

function sort(halves: number[], isBefore: (one: number, other: number) => boolean): void {
  if (halves.length > MANY) {
    halves.sort((one, other) => (isBefore(one, other) ? -1 : 1));
    return;
  }
  for (let k = 1; k < halves.length; k++) {
    const half = halves[k] as number;
    let slot = k;
    while (slot > 0 && isBefore(half, halves[slot - 1] as number)) {
      halves[slot] = halves[slot - 1] as number;
      slot--;
    }
    halves[slot] = half;
  }
}
