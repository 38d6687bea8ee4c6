import type { Bounds } from '../geometry/bounds.js';
import { isWithinTurn, ROW, writeRow } from '../geometry/curves.js';
import type { Edge } from '../geometry/edge.js';
import { circleOf } from '../region/circle.js';
import { turnsOf } from '../region/monotone.js';
import type { Loop } from '../region/region.js';

/** Loops as rows of numbers, so that each edge is read once: where it is, and the box round it. */
export interface ShapeRows {
  readonly loops: readonly Loop[];
  readonly edges: readonly Edge[];
  /** The first edge of each loop, and the number of all edges. */
  readonly first: Int32Array;
  /** See `writeRow`. */
  readonly rows: Float64Array;
  /** minX, minY, maxX, maxY of each edge. */
  readonly boxes: Float64Array;
}

/** Reads the edges of loops. */
export function shapeRows(loops: readonly Loop[]): ShapeRows {
  const first = new Int32Array(loops.length + 1);
  for (let l = 0; l < loops.length; l++) first[l + 1] = (first[l] as number) + (loops[l] as Loop).length;
  const count = first[loops.length] as number;
  const edges: Edge[] = [];
  const rows = new Float64Array(count * ROW);
  const boxes = new Float64Array(count * 4);
  for (const loop of loops) {
    for (const edge of loop) {
      const e = edges.length;
      edges.push(edge);
      writeRow(rows, e, edge, 0, 0);
      enclose(rows, e * ROW, boxes, e * 4);
    }
  }
  return { loops, edges, first, rows, boxes };
}

/** Some loops and others after them. */
export function withRows(one: ShapeRows, other: ShapeRows): ShapeRows {
  const edges = one.edges.length;
  const loops = one.loops.length;
  const first = new Int32Array(loops + other.loops.length + 1);
  first.set(one.first);
  for (let l = 0; l <= other.loops.length; l++) first[loops + l] = edges + (other.first[l] as number);
  const rows = new Float64Array(one.rows.length + other.rows.length);
  rows.set(one.rows);
  rows.set(other.rows, one.rows.length);
  const boxes = new Float64Array(one.boxes.length + other.boxes.length);
  boxes.set(one.boxes);
  boxes.set(other.boxes, one.boxes.length);
  return {
    loops: [...one.loops, ...other.loops],
    edges: [...one.edges, ...other.edges],
    first,
    rows,
    boxes,
  };
}

/** The box round all of them. */
export function boxRoundRows({ boxes, edges }: ShapeRows): Bounds {
  const all = new Float64Array(4);
  unite(boxes, 0, edges.length, all, 0);
  return {
    minX: all[0] as number,
    minY: all[1] as number,
    maxX: all[2] as number,
    maxY: all[3] as number,
  };
}

/** Puts the box round some boxes into a list. */
export function unite(from: Float64Array, first: number, end: number, into: Float64Array, at: number): void {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let o = 4 * first; o < 4 * end; o += 4) {
    if ((from[o] as number) < minX) minX = from[o] as number;
    if ((from[o + 1] as number) < minY) minY = from[o + 1] as number;
    if ((from[o + 2] as number) > maxX) maxX = from[o + 2] as number;
    if ((from[o + 3] as number) > maxY) maxY = from[o + 3] as number;
  }
  into[at] = minX;
  into[at + 1] = minY;
  into[at + 2] = maxX;
  into[at + 3] = maxY;
}

/** Puts the box round the edge of a row into a list. */
function enclose(rows: Float64Array, o: number, boxes: Float64Array, at: number): void {
  const ax = rows[o] as number;
  const ay = rows[o + 1] as number;
  const bx = rows[o + 2] as number;
  const by = rows[o + 3] as number;
  let minX = Math.min(ax, bx);
  let minY = Math.min(ay, by);
  let maxX = Math.max(ax, bx);
  let maxY = Math.max(ay, by);
  const turn = rows[o + 7] as number;
  if (turn !== 0) {
    const cx = rows[o + 4] as number;
    const cy = rows[o + 5] as number;
    const r = rows[o + 6] as number;
    if (cx - r < minX && isWithinTurn(ax, ay, bx, by, cx, cy, turn, cx - r, cy)) minX = cx - r;
    if (cx + r > maxX && isWithinTurn(ax, ay, bx, by, cx, cy, turn, cx + r, cy)) maxX = cx + r;
    if (cy - r < minY && isWithinTurn(ax, ay, bx, by, cx, cy, turn, cx, cy - r)) minY = cy - r;
    if (cy + r > maxY && isWithinTurn(ax, ay, bx, by, cx, cy, turn, cx, cy + r)) maxY = cy + r;
  }
  boxes[at] = minX;
  boxes[at + 1] = minY;
  boxes[at + 2] = maxX;
  boxes[at + 3] = maxY;
}

const turns = new Float64Array(2);

/** How many times a loop goes round a place that is not on it, counter-clockwise. As `windingRound`. */
export function windingOf({ rows, boxes, first }: ShapeRows, loop: number, x: number, y: number): number {
  let winding = 0;
  for (let e = first[loop] as number; e < (first[loop + 1] as number); e++) {
    // Only what passes the height to the left of the place counts.
    const b = 4 * e;
    if (!((boxes[b] as number) < x && (boxes[b + 1] as number) <= y && y <= (boxes[b + 3] as number)))
      continue;
    const o = e * ROW;
    const isStraight = rows[o + 7] === 0;
    const count = isStraight ? 0 : turnsOf(rows, o, 0, turns);
    let from = rows[o + 1] as number;
    for (let k = 0; k <= count; k++) {
      const to = k === count ? (rows[o + 3] as number) : (turns[k] as number);
      const isUp = from < to;
      // Half open, so that a ray through a joint counts once.
      const isPassed = isUp ? from <= y && y < to : to <= y && y < from;
      if (isPassed && xAt(rows, o, isUp, y) < x) winding += isUp ? -1 : 1;
      from = to;
    }
  }
  return winding;
}

/** Where the edge of a row is at a height that it passes, on its way up or down. */
function xAt(rows: Float64Array, o: number, isUp: boolean, y: number): number {
  const turn = rows[o + 7] as number;
  if (turn === 0) {
    const ax = rows[o] as number;
    const ay = rows[o + 1] as number;
    return ax + ((y - ay) / ((rows[o + 3] as number) - ay)) * ((rows[o + 2] as number) - ax);
  }
  const dy = y - (rows[o + 5] as number);
  const r = rows[o + 6] as number;
  const half = Math.sqrt(Math.max(0, (r - dy) * (r + dy)));
  return (rows[o + 4] as number) + (turn > 0 === isUp ? half : -half);
}

/** How far two edges may be from going on as one, as a share of their size, and are still taken for one. */
const SAME = 1e-6;

/** Whether two edges of a loop that follow each other are one that was written down in parts. A circle is two arcs by right. */
export function hasSeam({ loops, edges, first, rows }: ShapeRows, loop: number): boolean {
  const lo = first[loop] as number;
  const hi = first[loop + 1] as number;
  if (hi - lo === 2 && circleOf(loops[loop] as Loop) !== null) return false;
  let before = hi - 1;
  for (let e = lo; e < hi; e++) {
    if (goesOn(rows, before * ROW, e * ROW) && edges[before]?.source === edges[e]?.source) return true;
    before = e;
  }
  return false;
}

function goesOn(rows: Float64Array, p: number, q: number): boolean {
  const isStraight = rows[p + 7] === 0;
  if (isStraight !== (rows[q + 7] === 0)) return false;
  if (!isStraight) {
    const near = SAME * (rows[p + 6] as number);
    return (
      Math.abs((rows[p + 6] as number) - (rows[q + 6] as number)) <= near &&
      Math.abs((rows[p + 4] as number) - (rows[q + 4] as number)) <= near &&
      Math.abs((rows[p + 5] as number) - (rows[q + 5] as number)) <= near
    );
  }
  const ux = (rows[p + 2] as number) - (rows[p] as number);
  const uy = (rows[p + 3] as number) - (rows[p + 1] as number);
  const vx = (rows[q + 2] as number) - (rows[q] as number);
  const vy = (rows[q + 3] as number) - (rows[q + 1] as number);
  const square = (ux * ux + uy * uy) * (vx * vx + vy * vy);
  return ux * vx + uy * vy > 0 && (ux * vy - uy * vx) ** 2 <= SAME * SAME * square;
}
