import type { Report, ReportCut, ReportEdge, ReportPiece, ReportRegion } from '@edgebite/core';

/** A place of the part. */
export type Place = readonly [number, number];

/** `[min x, min y, max x, max y]` in the unit of the job. */
export type Box = readonly [number, number, number, number];

/** A piece of metal as path data, y up, in the part's own coordinates. */
export interface SketchPiece {
  readonly id: string;
  readonly label: string;
  readonly role: ReportPiece['role'];
  /** Its plan view. */
  readonly plan: string;
  /** What of it reaches the top face; the plan view itself where all of it does. */
  readonly top: string;
  /** A place in it for its name. */
  readonly at: Place;
}

/** A cut as circles, or as path data if its tool moves. */
export interface SketchCut {
  readonly id: string;
  readonly center: Place | null;
  readonly diameter: number;
  readonly wall: number | null;
  readonly path: string | null;
  readonly footprint: string | null;
  readonly through: boolean;
}

/** The shapes of a report, ready to be put on the screen: strings are quick to hand over and to draw. */
export interface Sketch {
  readonly outline: string;
  readonly box: Box;
  readonly pieces: readonly SketchPiece[];
  readonly cuts: readonly SketchCut[];
}

/** The longest turn that one arc of path data is given; beyond it, renderers lose where the centre is. */
const LONGEST_TURN = (2 / 3) * Math.PI;

/** Significant digits of path data: far below what a screen shows, on parts of any size. */
const DIGITS = 9;

/** Path data of loops that were written before. Reports of a job that changes share the loops that stay the same. */
export type Written = WeakMap<readonly ReportEdge[], string>;

/** The shapes of a report. What `written` holds is not written again, and what is new goes into it. */
export function sketchOf(report: Report, written: Written = new WeakMap()): Sketch {
  return {
    outline: regionPath(report.outline, written),
    box: boxOf(report.outline),
    pieces: report.pieces.map((piece) => sketchPiece(piece, report.thickness, written)),
    cuts: report.cuts.map((cut) => sketchCut(cut, written)),
  };
}

function sketchPiece(piece: ReportPiece, thickness: number, written: Written): SketchPiece {
  const plan = regionPath(piece.view, written);
  const single = piece.sections.length === 1;
  const top = piece.sections.find(({ to }) => to === thickness);
  return {
    id: piece.id,
    label: piece.label,
    role: piece.role,
    plan,
    top: single ? plan : regionPath(top?.region ?? [], written),
    at: [(piece.bounds[0] + piece.bounds[2]) / 2, (piece.bounds[1] + piece.bounds[3]) / 2],
  };
}

function sketchCut(cut: ReportCut, written: Written): SketchCut {
  const { id, center, diameter, wall, through } = cut;
  const moves = cut.path !== null;
  return {
    id,
    center,
    diameter,
    wall,
    through,
    path: moves ? chainPath(cut.path) : null,
    footprint: moves ? regionPath(cut.footprint, written) : null,
  };
}

function boxOf(region: ReportRegion): Box {
  const ends = region.flatMap(({ outer }) => outer.flatMap(extremes));
  return ends.reduce<Box>(
    (box, [x, y]) => [Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)],
    [Infinity, Infinity, -Infinity, -Infinity],
  );
}

// The ends of an edge, and those of an arc's four outermost places that lie on it.
function extremes(edge: ReportEdge): readonly Place[] {
  if (edge.kind === 'line') return [edge.a];
  const turn = turnOf(edge);
  const start = Math.atan2(edge.a[1] - edge.center[1], edge.a[0] - edge.center[0]);
  const on = [0, 1, 2, 3].flatMap((quarter): Place[] => {
    const angle = (quarter * Math.PI) / 2;
    const along = around(edge.ccw ? angle - start : start - angle);
    return along <= turn
      ? [[edge.center[0] + edge.radius * Math.cos(angle), edge.center[1] + edge.radius * Math.sin(angle)]]
      : [];
  });
  return [edge.a, ...on];
}

function regionPath(region: ReportRegion, written: Written): string {
  return region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((loop) => loopPath(loop, written))
    .join('');
}

function loopPath(loop: readonly ReportEdge[], written: Written): string {
  const known = written.get(loop);
  if (known !== undefined) return known;
  const path = `${chainPath(loop)}Z`;
  written.set(loop, path);
  return path;
}

function chainPath(edges: readonly ReportEdge[]): string {
  const [first] = edges;
  return first === undefined ? '' : `M${pair(first.a)}${edges.map(edgePath).join('')}`;
}

function edgePath(edge: ReportEdge): string {
  if (edge.kind === 'line') return `L${pair(edge.b)}`;
  const turn = turnOf(edge);
  const parts = Math.ceil(turn / LONGEST_TURN);
  const start = Math.atan2(edge.a[1] - edge.center[1], edge.a[0] - edge.center[0]);
  const step = ((edge.ccw ? 1 : -1) * turn) / parts;
  let path = '';
  for (let k = 1; k <= parts; k++) {
    const angle = start + k * step;
    const end: Place =
      k === parts
        ? edge.b
        : [edge.center[0] + edge.radius * Math.cos(angle), edge.center[1] + edge.radius * Math.sin(angle)];
    path += `A${short(edge.radius)} ${short(edge.radius)} 0 0 ${edge.ccw ? 1 : 0} ${pair(end)}`;
  }
  return path;
}

function turnOf(edge: ReportEdge & { kind: 'arc' }): number {
  const from = Math.atan2(edge.a[1] - edge.center[1], edge.a[0] - edge.center[0]);
  const to = Math.atan2(edge.b[1] - edge.center[1], edge.b[0] - edge.center[0]);
  return around(edge.ccw ? to - from : from - to);
}

// An angle from 0 up to a full turn.
function around(angle: number): number {
  const turn = angle % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

function pair([x, y]: Place): string {
  return `${short(x)} ${short(y)}`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}
