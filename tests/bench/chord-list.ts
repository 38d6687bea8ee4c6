import type { ArcEdge, Edge, Loop } from '@edgebite/core';

/*
 * Loops as chords, as fast as we know how: counts first, one typed array a loop, arcs by turning a vector step by
 * step instead of a sine and a cosine for every point.
 */

/** Numbers for each point: x, y, and a zero where a library wants a third. */
export type Stride = 2 | 3;

/** The first points of all chords of a loop, each at most `sagitta` off its arc. */
export function chordList(loop: Loop, sagitta: number, stride: Stride): Float64Array {
  let count = 0;
  for (const edge of loop) count += edge.kind === 'line' ? 1 : chordsOf(edge, sagitta);
  const list = new Float64Array(count * stride);
  let at = 0;
  for (const edge of loop) {
    list[at] = edge.a.x;
    list[at + 1] = edge.a.y;
    at += stride;
    if (edge.kind === 'arc') at = arcPoints(edge, chordsOf(edge, sagitta), list, at, stride);
  }
  return list;
}

/** The same with the end of the last edge: the points of a path that does not close. */
export function openChordList(path: readonly Edge[], sagitta: number, stride: Stride): Float64Array {
  const list = chordList(path, sagitta, stride);
  const last = path[path.length - 1];
  if (last === undefined) return list;
  const open = new Float64Array(list.length + stride);
  open.set(list);
  open[list.length] = last.b.x;
  open[list.length + 1] = last.b.y;
  return open;
}

function chordsOf(arc: ArcEdge, sagitta: number): number {
  const half = Math.acos(Math.max(0, 1 - sagitta / arc.radius));
  return Math.max(1, Math.ceil(turnOf(arc) / (2 * half)));
}

/** Angle turned along an arc, over 0. */
function turnOf({ a, b, center, ccw }: ArcEdge): number {
  const [ux, uy, vx, vy] = [a.x - center.x, a.y - center.y, b.x - center.x, b.y - center.y];
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * (ccw ? 1 : -1);
  return turn > 0 ? turn : turn + 2 * Math.PI;
}

/** Points inside an arc, between its chords; returns where the next one goes. */
function arcPoints(arc: ArcEdge, count: number, list: Float64Array, from: number, stride: Stride): number {
  const step = ((arc.ccw ? 1 : -1) * turnOf(arc)) / count;
  const cos = Math.cos(step);
  const sin = Math.sin(step);
  const { x, y } = arc.center;
  let ux = arc.a.x - x;
  let uy = arc.a.y - y;
  let at = from;
  for (let k = 1; k < count; k += 1) {
    const turned = ux * cos - uy * sin;
    uy = ux * sin + uy * cos;
    ux = turned;
    list[at] = x + ux;
    list[at + 1] = y + uy;
    at += stride;
  }
  return at;
}

/** Area within the closed polygons whose points are listed; holes, which run clockwise, count against it. */
export function chordArea(lists: readonly Float64Array[], stride: Stride): number {
  let twice = 0;
  for (const list of lists) {
    const n = list.length;
    const [x0, y0] = [list[0] ?? 0, list[1] ?? 0];
    for (let k = 0; k < n; k += stride) {
      const next = (k + stride) % n;
      twice += (list[k]! - x0) * (list[next + 1]! - y0) - (list[next]! - x0) * (list[k + 1]! - y0);
    }
  }
  return twice / 2;
}
