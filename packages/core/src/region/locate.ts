import { ROW } from '../geometry/curves.js';
import type { Graph } from './merge.js';
import { endOf, lastFrom, startOf } from './rotate.js';

/**
 * For each half-edge that leaves the lowest vertex of its component: a half-edge of another component that has
 * the face round this component to its left, or -1 where that is the unbounded face.
 *
 * One ray each, to the left and a hair below the vertex, so that it meets nothing of its own component. An edge
 * counts where the height lies in the half-open range from its lower to its upper end, so that a ray through a
 * vertex is counted once. Heights are compared as they stand; every edge runs up or down all the way.
 */
export function facesToTheLeft(graph: Graph, halves: Int32Array): Int32Array {
  const found = new Int32Array(halves.length).fill(-1);
  if (halves.length < 2) return found;
  const { x, y } = graph.curves.points;
  const rays = new Rays(graph);
  for (let k = 0; k < halves.length; k++) {
    const v = startOf(graph, halves[k] as number);
    found[k] = rays.firstToTheLeft(x[v] as number, y[v] as number);
  }
  return found;
}

/** Crossings of one ray closer than this many tolerances may come out in the wrong order by rounding. */
const LIKE_PLACE = 1e3;

/** Edges sorted by height into strips, for rays along x. */
export class Rays {
  private readonly strips: number[][];
  private readonly low: number;
  private readonly height: number;

  constructor(private readonly graph: Graph) {
    const { y } = graph.curves.points;
    let low = Infinity;
    let high = -Infinity;
    for (let e = 0; e < graph.count; e++) {
      for (const v of [graph.from[e] as number, graph.to[e] as number]) {
        low = Math.min(low, y[v] as number);
        high = Math.max(high, y[v] as number);
      }
    }
    const count = Math.max(1, Math.floor(Math.sqrt(graph.count)));
    this.low = low;
    this.height = high > low ? (high - low) / count : 1;
    this.strips = Array.from({ length: count }, () => []);
    for (let e = 0; e < graph.count; e++) {
      const a = this.stripOf(y[graph.from[e] as number] as number);
      const b = this.stripOf(y[graph.to[e] as number] as number);
      for (let s = Math.min(a, b); s <= Math.max(a, b); s++) (this.strips[s] as number[]).push(e);
    }
  }

  private stripOf(y: number): number {
    return Math.min(this.strips.length - 1, Math.max(0, Math.floor((y - this.low) / this.height)));
  }

  /** The half-edge whose left face a ray to the left, a hair below a place, comes to first; -1 if there is none. */
  firstToTheLeft(limit: number, height: number): number {
    const { graph } = this;
    const { y } = graph.curves.points;
    const alike = LIKE_PLACE * graph.curves.tolerance;
    let best = -1;
    let nearest = -Infinity;
    for (const e of this.strips[this.stripOf(height)] as number[]) {
      const a = graph.from[e] as number;
      const b = graph.to[e] as number;
      const up = (y[a] as number) < (y[b] as number);
      const low = up ? a : b;
      const high = up ? b : a;
      if (!((y[low] as number) < height && height <= (y[high] as number))) continue;
      const at = crossingAt(graph, e, low, high, height);
      if (at > limit) continue;
      const descending = 2 * e + (up ? 1 : 0);
      const ahead = at - nearest;
      if (best < 0 || ahead > alike) {
        best = descending;
        nearest = at;
      } else if (ahead >= -alike) {
        best = this.rightmost(best, descending, ahead);
        nearest = Math.max(nearest, at);
      }
    }
    return best;
  }

  /** Of two falling half-edges that a ray meets in one place but for rounding, the one further right. */
  private rightmost(one: number, other: number, ahead: number): number {
    const { graph } = this;
    if (startOf(graph, one) === startOf(graph, other)) return lastFrom(graph, [one, other], Math.PI / 2);
    if (endOf(graph, one) === endOf(graph, other)) {
      const left = lastFrom(graph, [one ^ 1, other ^ 1], -Math.PI / 2) ^ 1;
      return left === one ? other : one;
    }
    return ahead > 0 ? other : one;
  }
}

/** Where an edge, which runs up all the way, is at a height between its ends. */
function crossingAt(graph: Graph, e: number, low: number, high: number, height: number): number {
  const { rows, points } = graph.curves;
  const { x, y } = points;
  if (height === y[high]) return x[high] as number;
  const o = (graph.member[graph.start[e] as number] as number) * ROW;
  const turn = rows[o + 7] as number;
  const lowX = x[low] as number;
  const highX = x[high] as number;
  if (turn === 0) {
    const share = (height - (y[low] as number)) / ((y[high] as number) - (y[low] as number));
    return lowX + share * (highX - lowX);
  }
  const r = rows[o + 6] as number;
  const dy = height - (rows[o + 5] as number);
  const half = Math.sqrt(Math.max(0, (r - dy) * (r + dy)));
  // Running up counter-clockwise is the right half of the circle.
  const rightHalf = turn > 0 === (graph.from[e] === low);
  return (rows[o + 4] as number) + (rightHalf ? half : -half);
}
