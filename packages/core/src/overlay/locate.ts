import { ROW } from '../geometry/curves.js';
import { indexOf, type RunIndex } from '../noding/runs.js';
import type { Graph } from './merge.js';
import { endOf, startOf } from './rotate.js';
import type { Strands } from './strands.js';

/**
 * For each half-edge that leaves the lowest vertex of its component with the face outside of it to the left: a
 * half-edge of another component that has the same face to its left, or -1 where that is the unbounded face.
 *
 * One ray each, to the left and a hair below the vertex, so that it meets nothing of its own component. An edge
 * counts where the height lies in the half-open range from its lower to its upper end, so that a ray through a
 * vertex is counted once. Heights are compared as they stand; every edge runs up or down all the way.
 *
 * Holes in a row have their lowest points at one height. A ray that gets as far as the next one has found the face
 * that lies outside of that one, and stops.
 */
export function facesToTheLeft(graph: Graph, strands: Strands, halves: Int32Array): Int32Array {
  const found = new Int32Array(halves.length).fill(-1);
  if (halves.length < 2) return found;
  const { x, y } = graph.curves.points;
  const rays = new Rays(graph, strands);
  const rows = new Map<number, number[]>();
  for (let k = 0; k < halves.length; k++) {
    const height = y[startOf(graph, halves[k] as number)] as number;
    const row = rows.get(height);
    if (row === undefined) rows.set(height, [k]);
    else row.push(k);
  }
  const left = (k: number) => x[startOf(graph, halves[k] as number)] as number;
  for (const [height, row] of rows) {
    row.sort((one, other) => left(one) - left(other));
    let before = -1;
    let stop = -Infinity;
    for (const k of row) {
      const at = left(k);
      const hit = rays.firstToTheLeft(at, height, stop);
      found[k] = hit < 0 && before >= 0 ? (halves[before] as number) : hit;
      before = k;
      stop = at;
    }
  }
  return found;
}

/** Crossings of one ray closer than this many tolerances may come out in the wrong order by rounding. */
const LIKE_PLACE = 1e3;

/** Looks from places to the left along edges of a graph. */
export class Rays {
  private readonly index: RunIndex;

  constructor(
    private readonly graph: Graph,
    private readonly strands: Strands,
  ) {
    this.index = graph.index ?? indexOf(edgeBoxes(graph), graph.count, graph.from, graph.to);
  }

  /**
   * The half-edge whose left face a ray to the left, a hair below a place, comes to first; -1 if there is none.
   * @param stop how far to look
   */
  firstToTheLeft(limit: number, height: number, stop = -Infinity): number {
    const alike = LIKE_PLACE * this.graph.curves.tolerance;
    const { runs, tree } = this.index;
    const { start } = runs;
    let best = -1;
    let nearest = stop;
    tree.toTheLeft(limit, height, stop, (run) => {
      for (let e = start[run] as number; e < (start[run + 1] as number); e++) {
        const at = this.crossing(e, height);
        if (!(at <= limit && at >= stop)) continue;
        const descending = 2 * e + (this.isRising(e) ? 1 : 0);
        const ahead = at - nearest;
        if (best < 0 || ahead > alike) {
          best = descending;
          nearest = at;
        } else if (ahead >= -alike && descending !== best) {
          best = this.rightmost(best, descending, ahead);
          nearest = Math.max(nearest, at);
        }
      }
      return Math.max(stop, nearest - alike);
    });
    return best;
  }

  private isRising(e: number): boolean {
    const { y } = this.graph.curves.points;
    return (y[this.graph.from[e] as number] as number) < (y[this.graph.to[e] as number] as number);
  }

  /** Where an edge passes a height, if it does; NaN otherwise. */
  private crossing(e: number, height: number): number {
    const { graph } = this;
    const { y } = graph.curves.points;
    const up = this.isRising(e);
    const low = (up ? graph.from : graph.to)[e] as number;
    const high = (up ? graph.to : graph.from)[e] as number;
    if (!((y[low] as number) < height && height <= (y[high] as number))) return Number.NaN;
    return crossingAt(graph, e, low, high, height);
  }

  /** Of two falling half-edges that a ray meets in one place but for rounding, the one further right. */
  private rightmost(one: number, other: number, ahead: number): number {
    const { graph } = this;
    if (startOf(graph, one) === startOf(graph, other)) {
      return this.strands.isLeftBelow(one >> 1, other >> 1) ? other : one;
    }
    if (endOf(graph, one) === endOf(graph, other)) {
      return this.strands.isLeftAbove(one >> 1, other >> 1) ? other : one;
    }
    return ahead > 0 ? other : one;
  }
}

/** minX, minY, maxX, maxY of each edge. */
function edgeBoxes(graph: Graph): Float64Array {
  const { count, from, to } = graph;
  const { x, y } = graph.curves.points;
  const boxes = new Float64Array(4 * count);
  for (let e = 0; e < count; e++) {
    const v = from[e] as number;
    const w = to[e] as number;
    const bulge = bulgeX(graph, e) ?? (x[v] as number);
    boxes[4 * e] = Math.min(x[v] as number, x[w] as number, bulge);
    boxes[4 * e + 1] = Math.min(y[v] as number, y[w] as number);
    boxes[4 * e + 2] = Math.max(x[v] as number, x[w] as number, bulge);
    boxes[4 * e + 3] = Math.max(y[v] as number, y[w] as number);
  }
  return boxes;
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

/** The x of an arc's leftmost or rightmost point where it may pass it; null where there is none. */
function bulgeX(graph: Graph, e: number): number | null {
  const { rows } = graph.curves;
  const o = (graph.member[graph.start[e] as number] as number) * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return null;
  const { y } = graph.curves.points;
  const up = (y[graph.from[e] as number] as number) < (y[graph.to[e] as number] as number);
  const a = y[graph.from[e] as number] as number;
  const b = y[graph.to[e] as number] as number;
  const cy = rows[o + 5] as number;
  // Out of the middle height an arc that runs one way is widest at an end.
  if ((cy < a && cy < b) || (cy > a && cy > b)) return null;
  const r = rows[o + 6] as number;
  return (rows[o + 4] as number) + (turn > 0 === up ? r : -r);
}
