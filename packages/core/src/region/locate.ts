import { ROW } from '../geometry/curves.js';
import type { Graph } from './merge.js';
import { endOf, lastFrom, startOf } from './rotate.js';

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
export function facesToTheLeft(graph: Graph, halves: Int32Array): Int32Array {
  const found = new Int32Array(halves.length).fill(-1);
  if (halves.length < 2) return found;
  const { x, y } = graph.curves.points;
  const rays = new Rays(graph);
  const vertices = halves.map((half) => startOf(graph, half));
  const order = Int32Array.from(halves.keys()).sort((a, b) => {
    const v = vertices[a] as number;
    const w = vertices[b] as number;
    return (y[v] as number) - (y[w] as number) || (x[v] as number) - (x[w] as number);
  });
  for (let k = 0; k < order.length; k++) {
    const one = order[k] as number;
    const v = vertices[one] as number;
    const before = k === 0 ? -1 : (order[k - 1] as number);
    const w = before < 0 ? v : (vertices[before] as number);
    const isInRow = before >= 0 && y[w] === y[v] && (x[w] as number) < (x[v] as number);
    const stop = isInRow ? (x[w] as number) : -Infinity;
    const hit = rays.firstToTheLeft(x[v] as number, y[v] as number, stop);
    found[one] = hit < 0 && isInRow ? (halves[before] as number) : hit;
  }
  return found;
}

/** Crossings of one ray closer than this many tolerances may come out in the wrong order by rounding. */
const LIKE_PLACE = 1e3;

/** Edges sorted into the cells of a grid, for rays to the left. A ray looks at few cells, near its start. */
export class Rays {
  private readonly low: number;
  private readonly left: number;
  private readonly height: number;
  private readonly width: number;
  /** Cells along each side. */
  private readonly side: number;
  /** Edges of cell c are `edge` from `start[c]` up to `start[c + 1]`; cells run row by row, from the lower left. */
  private readonly start: Int32Array;
  private readonly edge: Int32Array;

  constructor(private readonly graph: Graph) {
    const { x, y } = graph.curves.points;
    const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    for (let e = 0; e < graph.count; e++) {
      const v = graph.from[e] as number;
      box.minX = Math.min(box.minX, x[v] as number);
      box.maxX = Math.max(box.maxX, x[v] as number);
      box.minY = Math.min(box.minY, y[v] as number);
      box.maxY = Math.max(box.maxY, y[v] as number);
    }
    this.side = Math.max(1, Math.floor(Math.sqrt(graph.count / 2)));
    this.low = box.minY;
    this.left = box.minX;
    this.height = box.maxY > box.minY ? (box.maxY - box.minY) / this.side : 1;
    this.width = box.maxX > box.minX ? (box.maxX - box.minX) / this.side : 1;
    this.start = new Int32Array(this.side * this.side + 1);
    this.eachCell((cell) => {
      this.start[cell + 1] = (this.start[cell + 1] as number) + 1;
    });
    for (let c = 0; c < this.start.length - 1; c++) {
      this.start[c + 1] = (this.start[c + 1] as number) + (this.start[c] as number);
    }
    const fill = this.start.slice();
    this.edge = new Int32Array(this.start[this.start.length - 1] as number);
    this.eachCell((cell, e) => {
      const slot = fill[cell] as number;
      fill[cell] = slot + 1;
      this.edge[slot] = e;
    });
  }

  /** Calls `visit` for each cell that an edge may pass through. */
  private eachCell(visit: (cell: number, edge: number) => void): void {
    const { graph, side } = this;
    const { x, y } = graph.curves.points;
    for (let e = 0; e < graph.count; e++) {
      const up = (y[graph.from[e] as number] as number) < (y[graph.to[e] as number] as number);
      const low = (up ? graph.from : graph.to)[e] as number;
      const high = (up ? graph.to : graph.from)[e] as number;
      const bottom = this.rowOf(y[low] as number);
      const top = this.rowOf(y[high] as number);
      const bulge = bulgeX(graph, e);
      for (let row = bottom; row <= top; row++) {
        // Where the edge enters and leaves the row; an arc may reach further out between.
        const enter =
          row === bottom ? (x[low] as number) : crossingAt(graph, e, low, high, this.low + row * this.height);
        const leave =
          row === top
            ? (x[high] as number)
            : crossingAt(graph, e, low, high, this.low + (row + 1) * this.height);
        const from = this.columnOf(Math.min(enter, leave, bulge));
        const to = this.columnOf(Math.max(enter, leave, bulge === Infinity ? -Infinity : bulge));
        for (let column = from; column <= to; column++) visit(row * side + column, e);
      }
    }
  }

  private rowOf(y: number): number {
    return Math.min(this.side - 1, Math.max(0, Math.floor((y - this.low) / this.height)));
  }

  private columnOf(x: number): number {
    return Math.min(this.side - 1, Math.max(0, Math.floor((x - this.left) / this.width)));
  }

  /**
   * The half-edge whose left face a ray to the left, a hair below a place, comes to first; -1 if there is none.
   * @param stop how far to look
   */
  firstToTheLeft(limit: number, height: number, stop = -Infinity): number {
    const row = this.rowOf(height) * this.side;
    const alike = LIKE_PLACE * this.graph.curves.tolerance;
    let best = -1;
    let nearest = stop;
    for (let column = this.columnOf(limit); column >= 0; column--) {
      // What is further left than this cell cannot be nearer than what has been found in it.
      if (nearest - alike > this.left + (column + 1) * this.width) break;
      for (let k = this.start[row + column] as number; k < (this.start[row + column + 1] as number); k++) {
        const e = this.edge[k] as number;
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
    }
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

/** The x of an arc's leftmost or rightmost point where it may pass it; Infinity for a line. */
function bulgeX(graph: Graph, e: number): number {
  const { rows } = graph.curves;
  const o = (graph.member[graph.start[e] as number] as number) * ROW;
  const turn = rows[o + 7] as number;
  if (turn === 0) return Infinity;
  const { y } = graph.curves.points;
  const up = (y[graph.from[e] as number] as number) < (y[graph.to[e] as number] as number);
  const a = y[graph.from[e] as number] as number;
  const b = y[graph.to[e] as number] as number;
  const cy = rows[o + 5] as number;
  // Out of the middle height an arc that runs one way is widest at an end.
  if ((cy < a && cy < b) || (cy > a && cy > b)) return Infinity;
  const r = rows[o + 6] as number;
  return (rows[o + 4] as number) + (turn > 0 === up ? r : -r);
}
