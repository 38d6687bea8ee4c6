import { type Bounds, extentOf, joined, middleOf } from '../geometry/bounds.js';
import { ROW, writeRow } from '../geometry/curves.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { edgeBounds, onArcSide } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import type { Loop } from './region.js';

/** What one operand of an overlay brings: closed loops, run so that their inside is to the left. */
export type Operand = readonly Loop[];

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
  readonly edges: readonly Edge[];
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
}

/** Adds a place and returns its number. */
export function addPoint(points: Points, x: number, y: number, given: Point | null): number {
  points.x.push(x);
  points.y.push(y);
  points.given.push(given);
  return points.x.length - 1;
}

/**
 * Lays out the operands for an overlay.
 * @param frame which operands say how large the work is; all of them unless given. What is cut out of a part
 *   may be far larger than the part.
 */
export function gather(operands: readonly Operand[], frame: readonly Operand[] = operands): Curves {
  const box = boxOf(frame);
  const { x: originX, y: originY } = middleOf(box);
  const all = boxOf(operands);
  const magnitude = Math.max(
    Math.abs(all.minX - originX),
    Math.abs(all.maxX - originX),
    Math.abs(all.minY - originY),
    Math.abs(all.maxY - originY),
    // What the coordinates have lost already, where the part lies far from the origin.
    Math.abs(originX) / 100,
    Math.abs(originY) / 100,
  );
  const tolerance = weldTolerance(extentOf(box), magnitude);

  const points: Points = { x: [], y: [], given: [] };
  const pieces: Edge[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const operand: number[] = [];
  const input: number[] = [];
  const edges: Edge[] = [];
  for (let o = 0; o < operands.length; o++) {
    for (const loop of operands[o] as Operand) {
      const first = points.x.length;
      let at = -1;
      for (let i = 0; i < loop.length; i++) {
        const edge = loop[i] as Edge;
        if (at < 0) at = addPoint(points, edge.a.x - originX, edge.a.y - originY, edge.a);
        edges.push(edge);
        const parts = edge.kind === 'line' ? null : monotone(edge, tolerance);
        const n = parts === null ? 1 : parts.length;
        for (let k = 0; k < n; k++) {
          const part = parts === null ? edge : (parts[k] as Edge);
          const last = i === loop.length - 1 && k === n - 1;
          const given = k === n - 1 ? edge.b : null;
          const next = last ? first : addPoint(points, part.b.x - originX, part.b.y - originY, given);
          pieces.push(part);
          from.push(at);
          to.push(next);
          operand.push(o);
          input.push(edges.length - 1);
          at = next;
        }
      }
    }
  }
  const rows = new Float64Array(pieces.length * ROW);
  for (let i = 0; i < pieces.length; i++) writeRow(rows, i, pieces[i] as Edge, originX, originY);
  return {
    count: pieces.length,
    rows,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    operand: Int32Array.from(operand),
    input: Int32Array.from(input),
    edges,
    points,
    originX,
    originY,
    tolerance,
  };
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
function boxOf(operands: readonly Operand[]): Bounds {
  let box: Bounds | null = null;
  for (const operand of operands) {
    for (const loop of operand) {
      for (const edge of loop) {
        const own = edgeBounds(edge);
        box = box === null ? own : joined(box, own);
      }
    }
  }
  return box ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}
