import {
  edgeBounds,
  edgeFromReport,
  joined,
  openSvgPath,
  type Report,
  type ReportCut,
  type ReportEdge,
  type ReportPiece,
  type ReportRegion,
  toSvgPath,
} from '@edgebite/core';
import { shownBox } from '../board/view.js';
import { CROWD } from './crowd.js';

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
  /** The middle of its path, edge by edge. */
  readonly way: readonly ReportEdge[] | null;
  readonly footprint: string | null;
  readonly through: boolean;
}

/** The shapes of a report, ready to be put on the screen: strings are quick to hand over and to draw. */
export interface Sketch {
  readonly outline: string;
  readonly box: Box;
  /** The part with what stands out of it, as far as that is shown. */
  readonly around: Box;
  readonly pieces: readonly SketchPiece[];
  /** The cuts, as long as they are no crowd. */
  readonly cuts: readonly SketchCut[];
  /** The rims of all cuts of a crowd as one path; null where there is none. */
  readonly rims: string | null;
}

/** Significant digits of path data: far below what a screen shows, on parts of any size. */
const DIGITS = 9;

/** Path data of loops that were written before. Reports of a job that changes share the loops that stay the same. */
export type Written = WeakMap<readonly ReportEdge[], string>;

/** How path data is written: the digits after the point, and what was written before. */
interface Pen {
  readonly digits: number;
  readonly written: Written;
}

/** The shapes of a report. What `written` holds is not written again, and what is new goes into it. */
export function sketchOf(report: Report, written: Written = new WeakMap()): Sketch {
  const box = boxOf(report.outline);
  const pen: Pen = { digits: digitsFor(box), written };
  const cuts = report.cuts.map((cut) => sketchCut(cut, pen));
  const crowd = cuts.length > CROWD;
  return {
    outline: regionPath(report.outline, pen),
    box,
    pieces: report.pieces.map((piece) => sketchPiece(piece, report.thickness, pen)),
    around: shownBox(box, cuts),
    cuts: crowd ? [] : cuts,
    rims: crowd ? cuts.map((cut) => rimPath(cut, pen)).join('') : null,
  };
}

function rimPath({ center, diameter, wall, footprint }: SketchCut, { digits }: Pen): string {
  if (center === null) return footprint ?? '';
  const at = (value: number): number => Number(value.toFixed(digits));
  return [diameter / 2, ...(wall === null ? [] : [diameter / 2 - wall])]
    .map((r) => {
      const half = `a${at(r)} ${at(r)} 0 0 1 `;
      return `M${at(center[0] - r)} ${at(center[1])}${half}${at(2 * r)} 0${half}${at(-2 * r)} 0Z`;
    })
    .join('');
}

function digitsFor(box: Box): number {
  const largest = Math.max(...box.map(Math.abs));
  return Math.min(Math.max(DIGITS - Math.ceil(Math.log10(largest)), 0), 20);
}

function sketchPiece(piece: ReportPiece, thickness: number, pen: Pen): SketchPiece {
  const plan = regionPath(piece.view, pen);
  const single = piece.sections.length === 1;
  const top = piece.sections.find(({ to }) => to === thickness);
  return {
    id: piece.id,
    label: piece.label,
    role: piece.role,
    plan,
    top: single ? plan : regionPath(top?.region ?? [], pen),
    at: [(piece.bounds[0] + piece.bounds[2]) / 2, (piece.bounds[1] + piece.bounds[3]) / 2],
  };
}

function sketchCut(cut: ReportCut, pen: Pen): SketchCut {
  const { id, center, diameter, wall, path, through } = cut;
  return {
    id,
    center,
    diameter,
    wall,
    through,
    way: path,
    path: path === null ? null : openSvgPath(path.map(edgeFromReport), { digits: pen.digits }),
    footprint: path === null ? null : regionPath(cut.footprint, pen),
  };
}

function boxOf(region: ReportRegion): Box {
  const { minX, minY, maxX, maxY } = region
    .flatMap(({ outer }) => outer.map((edge) => edgeBounds(edgeFromReport(edge))))
    .reduce(joined);
  return [minX, minY, maxX, maxY];
}

function regionPath(region: ReportRegion, pen: Pen): string {
  return region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((loop) => loopPath(loop, pen))
    .join('');
}

function loopPath(loop: readonly ReportEdge[], { digits, written }: Pen): string {
  const known = written.get(loop);
  if (known !== undefined) return known;
  const path = toSvgPath(loop.map(edgeFromReport), { digits });
  written.set(loop, path);
  return path;
}
