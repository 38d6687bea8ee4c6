import { type Bounds, extentOf, middleOf } from '../geometry/bounds.js';
import { CHAIN_TURN, ROW, writeRow } from '../geometry/curves.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { edgeBounds, onArcSide } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';

/** Edges of a loop that nothing comes near: an overlay takes the whole run of them for one edge. */
export interface Chain {
  readonly kind: 'chain';
  readonly a: Point;
  readonly b: Point;
  readonly edges: readonly Edge[];
  /** A run has no name of its own. */
  readonly source?: undefined;
}

/** A closed chain of edges, some runs of which may be put away. */
export type Strands = readonly (Edge | Chain)[];

/** What one operand of an overlay brings: closed loops, run so that their inside is to the left. */
export type Operand = readonly Strands[];

/**
 * The edges of all operands as rows of numbers, in coordinates moved to the middle of the input, with arcs cut
 * at their lowest and highest points: a piece then runs up or down all the way and turns by half a turn at most.
 */
export interface Curves {
  readonly count: number;
  /** See `writeRow`; coordinates less the origin. */
  readonly rows: Float64Array;
  /** Where each piece starts and ends: a number of `points`, shared by neighbours. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly operand: Int32Array;
  /** The edge that a piece is of, in the order given, and that edge. */
  readonly input: Int32Array;
  readonly edges: readonly (Edge | Chain)[];
  readonly points: Points;
  readonly originX: number;
  readonly originY: number;
  readonly tolerance: number;
}

/** Places under discussion: coordinates less the origin, and as given where they were given. */
export interface Points {
  readonly x: number[];
  readonly y: number[];
  readonly given: (Point | null)[];
  /** Whether it only parts two arcs of one circle, which go on there as if it were not. */
  readonly isSeam: boolean[];
}

/** Adds a place and returns its number. */
export function addPoint(points: Points, x: number, y: number, given: Point | null, isSeam = false): number {
  points.x.push(x);
  points.y.push(y);
  points.given.push(given);
  points.isSeam.push(isSeam);
  return points.x.length - 1;
}

/**
 * Lays out the operands for an overlay.
 * @param frame box that says how large the work is; that of all operands unless given. What is cut out of a part
 *   may be far larger than the part.
 */
export function gather(operands: readonly Operand[], frame?: Bounds): Curves {
  const all = boxOf(operands);
  const box = frame ?? all;
  const { x: originX, y: originY } = middleOf(box);
  const tolerance = weldTolerance(extentOf(box), magnitudeOf(all, originX, originY));

  const edges: (Edge | Chain)[] = [];
  const operandOf: number[] = [];
  for (let o = 0; o < operands.length; o++) {
    for (const loop of operands[o] as Operand) {
      for (const edge of loop) {
        edges.push(edge);
        operandOf.push(o);
      }
    }
  }
  // An arc is cut into three pieces at most.
  const most = edges.length * 3;
  const rows = new Float64Array(most * ROW);
  const from = new Int32Array(most);
  const to = new Int32Array(most);
  const operand = new Int32Array(most);
  const input = new Int32Array(most);
  const points: Points = { x: [], y: [], given: [], isSeam: [] };
  let count = 0;
  let number = 0;
  const add = (piece: Edge | Chain, a: number, b: number) => {
    if (piece.kind === 'chain') rows[count * ROW + 7] = CHAIN_TURN;
    else writeRow(rows, count, piece, originX, originY);
    from[count] = a;
    to[count] = b;
    operand[count] = operandOf[number] as number;
    input[count] = number;
    count++;
  };
  for (const loops of operands) {
    for (const loop of loops) {
      const first = points.x.length;
      for (let i = 0; i < loop.length; i++) {
        const edge = loop[i] as Edge | Chain;
        const before = loop[(i + loop.length - 1) % loop.length] as Edge | Chain;
        addPoint(points, edge.a.x - originX, edge.a.y - originY, edge.a, goesOn(before, edge, tolerance));
      }
      for (let i = 0; i < loop.length; i++, number++) {
        const edge = loop[i] as Edge | Chain;
        const a = first + i;
        const b = i + 1 < loop.length ? a + 1 : first;
        if (edge.kind !== 'arc' || runsOneWay(edge)) {
          add(edge, a, b);
          continue;
        }
        let at = a;
        const parts = monotone(edge, tolerance);
        for (let k = 0; k < parts.length; k++) {
          const part = parts[k] as Edge;
          const last = k === parts.length - 1;
          const next = last ? b : addPoint(points, part.b.x - originX, part.b.y - originY, null, true);
          add(part, at, next);
          at = next;
        }
      }
    }
  }
  return {
    count,
    rows: rows.subarray(0, count * ROW),
    from: from.subarray(0, count),
    to: to.subarray(0, count),
    operand: operand.subarray(0, count),
    input: input.subarray(0, count),
    edges,
    points,
    originX,
    originY,
    tolerance,
  };
}

/** Whether two edges are arcs of one circle, the second going on where the first ends. */
function goesOn(before: Edge | Chain, edge: Edge | Chain, tolerance: number): boolean {
  return (
    before.kind === 'arc' &&
    edge.kind === 'arc' &&
    before.ccw === edge.ccw &&
    Math.abs(before.radius - edge.radius) <= tolerance &&
    distance(before.center, edge.center) <= tolerance
  );
}

/** The largest coordinate in use, what the coordinates have lost far from the origin included. */
function magnitudeOf(box: Bounds, originX: number, originY: number): number {
  return Math.max(
    Math.abs(box.minX - originX),
    Math.abs(box.maxX - originX),
    Math.abs(box.minY - originY),
    Math.abs(box.maxY - originY),
    Math.abs(originX) / 100,
    Math.abs(originY) / 100,
  );
}

/** Whether an arc stays on the left or the right half of its circle; most do, and this is a quick way to tell. */
function runsOneWay({ a, b, center, ccw }: ArcEdge): boolean {
  const up = a.y < b.y;
  return up === ccw ? a.x >= center.x && b.x >= center.x : a.x <= center.x && b.x <= center.x;
}

/** An arc cut at the lowest and the highest point of its circle, where these lie inside it and not at an end. */
export function monotone(arc: ArcEdge, tolerance: number): readonly ArcEdge[] {
  const { center, radius } = arc;
  const low = { x: center.x, y: center.y - radius };
  const high = { x: center.x, y: center.y + radius };
  const cuts: Point[] = [];
  for (const p of [low, high]) {
    if (!isEnd(arc, p, tolerance) && onArcSide(arc, p)) cuts.push(p);
  }
  if (cuts.length === 0) return [arc];
  // Counter-clockwise from a start on the right half the highest point comes first, on the left half the lowest.
  if (cuts.length === 2 && arc.a.x > center.x === arc.ccw) cuts.reverse();
  const parts: ArcEdge[] = [];
  let a = arc.a;
  for (const b of [...cuts, arc.b]) {
    parts.push({ ...arc, a, b });
    a = b;
  }
  return parts;
}

/** So close to an end, as a share of the radius, the rest of the arc rises by nothing that a number can hold. */
const SAME_HEIGHT = 1e-9;

function isEnd(arc: ArcEdge, p: Point, tolerance: number): boolean {
  return Math.min(distance(p, arc.a), distance(p, arc.b)) <= Math.max(tolerance, SAME_HEIGHT * arc.radius);
}

/** The box round all edges; a point at the origin where there are none. */
export function boxOf(operands: readonly Operand[]): Bounds {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const operand of operands) {
    for (const loop of operand) {
      for (const edge of loop) {
        stretch(box, edge.a.x, edge.a.y);
        if (edge.kind !== 'arc' || isCovered(box, edge)) continue;
        const own = edgeBounds(edge);
        stretch(box, own.minX, own.minY);
        stretch(box, own.maxX, own.maxY);
      }
    }
  }
  return box.minX <= box.maxX ? box : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

/** Whether all of an arc's circle is in a box already. */
function isCovered(box: Bounds, { center, radius }: ArcEdge): boolean {
  return (
    center.x - radius >= box.minX &&
    center.x + radius <= box.maxX &&
    center.y - radius >= box.minY &&
    center.y + radius <= box.maxY
  );
}

function stretch(
  box: { minX: number; minY: number; maxX: number; maxY: number },
  x: number,
  y: number,
): void {
  if (x < box.minX) box.minX = x;
  if (x > box.maxX) box.maxX = x;
  if (y < box.minY) box.minY = y;
  if (y > box.maxY) box.maxY = y;
}
