import { type ArcEdge, edgeLength, type Loop, loopsOf } from '@edgebite/core';
import paper from 'paper/dist/paper-core';
import type { Library } from './library.js';

/**
 * Paper.js, its core build, which needs no canvas and no page. Arcs become cubic Bézier curves of a quarter turn at
 * most; with handles of 4/3 tan(t/4) radii such a curve leaves the circle by up to 2.73e-4 of the radius.
 */
export function paperLibrary(): Library<paper.PathItem, Float64Array[]> {
  paper.setup(new paper.Size(1, 1));
  return {
    name: 'paper.js',
    take: (regions) =>
      new paper.CompoundPath({
        children: regions.flatMap(loopsOf).map(pathOf),
        fillRule: 'nonzero',
        insert: false,
      }),
    subtract: (from, cuts) => from.subtract(cuts, { insert: false }),
    grow: null,
    give: (result) => pathsOf(result).map(numbersOf),
    areaOf: (given) => Math.abs(given.reduce((sum, list) => sum + curvedArea(list), 0)),
    free: () => {},
    takesOverlaps: true,
    error: (radius) => 2.8e-4 * radius,
  };
}

/** One cubic curve: its start, and the handles at its start and end, seen from there. */
interface Piece {
  readonly start: readonly [number, number];
  readonly out: readonly [number, number];
  readonly in: readonly [number, number];
}

const NONE = [0, 0] as const;

function pathOf(loop: Loop): paper.Path {
  const pieces = loop.flatMap((edge): Piece[] =>
    edge.kind === 'line' ? [{ start: [edge.a.x, edge.a.y], out: NONE, in: NONE }] : piecesOf(edge),
  );
  const segments = pieces.map(({ start, out }, k) => {
    const before = pieces[k === 0 ? pieces.length - 1 : k - 1] as Piece;
    return new paper.Segment([...start], [...before.in], [...out]);
  });
  return new paper.Path({ segments, closed: true, insert: false });
}

function piecesOf(arc: ArcEdge): Piece[] {
  const turn = ((arc.ccw ? 1 : -1) * edgeLength(arc)) / arc.radius;
  const count = Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9);
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  const { x, y } = arc.center;
  const first = Math.atan2(arc.a.y - y, arc.a.x - x);
  return Array.from({ length: count }, (_, k): Piece => {
    const [ux, uy] = [arc.radius * Math.cos(first + k * step), arc.radius * Math.sin(first + k * step)];
    const [vx, vy] = [
      arc.radius * Math.cos(first + (k + 1) * step),
      arc.radius * Math.sin(first + (k + 1) * step),
    ];
    const start = k === 0 ? ([arc.a.x, arc.a.y] as const) : ([x + ux, y + uy] as const);
    return { start, out: [-uy * handle, ux * handle], in: [vy * handle, -vx * handle] };
  });
}

function pathsOf(item: paper.PathItem): paper.Path[] {
  return item instanceof paper.CompoundPath ? (item.children as paper.Path[]) : [item as paper.Path];
}

/** Numbers for each segment of a path: its place, and the handles before and after it, seen from there. */
const STRIDE = 6;

function numbersOf(path: paper.Path): Float64Array {
  const list = new Float64Array(STRIDE * path.segments.length);
  path.segments.forEach(({ point, handleIn, handleOut }, k) => {
    list.set([point.x, point.y, handleIn.x, handleIn.y, handleOut.x, handleOut.y], k * STRIDE);
  });
  return list;
}

/** Signed area within a closed path of cubic curves, by Green's theorem. */
function curvedArea(list: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < list.length; k += STRIDE) {
    const n = (k + STRIDE) % list.length;
    const [x0, y0, x3, y3] = [list[k]!, list[k + 1]!, list[n]!, list[n + 1]!];
    const [x1, y1] = [x0 + list[k + 4]!, y0 + list[k + 5]!];
    const [x2, y2] = [x3 + list[n + 2]!, y3 + list[n + 3]!];
    const cross = (ax: number, ay: number, bx: number, by: number): number => ax * by - ay * bx;
    sum +=
      6 * cross(x0, y0, x1, y1) +
      3 * cross(x0, y0, x2, y2) +
      cross(x0, y0, x3, y3) +
      3 * cross(x1, y1, x2, y2) +
      3 * cross(x1, y1, x3, y3) +
      6 * cross(x2, y2, x3, y3);
  }
  return sum / 20;
}
