import { ROW } from '../geometry/curves.js';
import { sineExcess } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Subdivision } from './label.js';
import { Rays } from './locate.js';
import { startOf } from './rotate.js';

/** The half-edges round each face: those of face f are `half` from `start[f]` up to `start[f + 1]`. */
export interface FaceBorders {
  readonly start: Int32Array;
  readonly half: Int32Array;
}

/** Lists the half-edges round each face. */
export function faceBorders({ faceOf, faceCount }: Subdivision): FaceBorders {
  const start = new Int32Array(faceCount + 1);
  for (const face of faceOf) start[face + 1] = (start[face + 1] as number) + 1;
  for (let f = 0; f < faceCount; f++) start[f + 1] = (start[f + 1] as number) + (start[f] as number);
  const fill = start.slice();
  const half = new Int32Array(faceOf.length);
  for (let h = 0; h < faceOf.length; h++) {
    const slot = fill[faceOf[h] as number] as number;
    fill[faceOf[h] as number] = slot + 1;
    half[slot] = h;
  }
  return { start, half };
}

/** Area of each face; 0 for the unbounded one. */
export function faceAreas(subdivision: Subdivision, borders: FaceBorders): Float64Array {
  const { graph, faceCount } = subdivision;
  const { x, y } = graph.curves.points;
  const areas = new Float64Array(faceCount);
  for (let f = 1; f < faceCount; f++) {
    const first = startOf(graph, borders.half[borders.start[f] as number] as number);
    const ox = x[first] as number;
    const oy = y[first] as number;
    let sum = 0;
    for (let k = borders.start[f] as number; k < (borders.start[f + 1] as number); k++) {
      const half = borders.half[k] as number;
      const edge = half >> 1;
      const a = (half & 1 ? graph.to : graph.from)[edge] as number;
      const b = (half & 1 ? graph.from : graph.to)[edge] as number;
      const ax = (x[a] as number) - ox;
      const ay = (y[a] as number) - oy;
      const bx = (x[b] as number) - ox;
      const by = (y[b] as number) - oy;
      sum += (ax * by - ay * bx) / 2 + (half & 1 ? -1 : 1) * segmentUnder(subdivision, edge);
    }
    areas[f] = sum;
  }
  return areas;
}

/** Length of an edge of the subdivision. */
export function lengthOf(subdivision: Subdivision, edge: number): number {
  const { graph } = subdivision;
  const { x, y } = graph.curves.points;
  const o = shapeRow(subdivision, edge);
  const turn = graph.curves.rows[o + 7] as number;
  if (turn !== 0) return (graph.curves.rows[o + 6] as number) * sweepOf(subdivision, edge);
  const a = graph.from[edge] as number;
  const b = graph.to[edge] as number;
  return Math.hypot((x[b] as number) - (x[a] as number), (y[b] as number) - (y[a] as number));
}

/** The face that a place lies in; one of its neighbours if it lies on an edge. */
export function faceAt(subdivision: Subdivision, p: Point): number {
  const { curves } = subdivision.graph;
  const half = new Rays(subdivision.graph, subdivision.strands).firstToTheLeft(
    p.x - curves.originX,
    p.y - curves.originY,
  );
  return half < 0 ? 0 : (subdivision.faceOf[half] as number);
}

function shapeRow({ graph }: Subdivision, edge: number): number {
  return (graph.member[graph.start[edge] as number] as number) * ROW;
}

/** Angle turned through along an edge, over 0; up to half a turn. */
function sweepOf(subdivision: Subdivision, edge: number): number {
  const { graph } = subdivision;
  const { rows, points } = graph.curves;
  const o = shapeRow(subdivision, edge);
  const cx = rows[o + 4] as number;
  const cy = rows[o + 5] as number;
  const a = graph.from[edge] as number;
  const b = graph.to[edge] as number;
  const ux = (points.x[a] as number) - cx;
  const uy = (points.y[a] as number) - cy;
  const vx = (points.x[b] as number) - cx;
  const vy = (points.y[b] as number) - cy;
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}

/** Signed area between an edge and its chord, over 0 where it bulges to the right. */
function segmentUnder(subdivision: Subdivision, edge: number): number {
  const { rows } = subdivision.graph.curves;
  const o = shapeRow(subdivision, edge);
  const turn = rows[o + 7] as number;
  if (turn === 0) return 0;
  const radius = rows[o + 6] as number;
  return (turn * radius * radius * sineExcess(sweepOf(subdivision, edge))) / 2;
}
