import {
  boundsOf,
  type Edge,
  edgeBounds,
  JobError,
  openSvgPath,
  type Point,
  parseJob,
  parseSvgPath,
  TextError,
  toSvgPath,
} from '@edgebite/core';
import type { JsonObject } from '../document/json.js';

/** `[a, b, c, d, e, f]` as in SVG: x goes to ax + cy + e, y to bx + dy + f. */
export type Matrix = readonly [number, number, number, number, number, number];

/** One shape of a picture: its path data, and where the picture puts it, in the unit of the outline but with y down. */
export interface Shape {
  readonly path: string;
  readonly matrix: Matrix;
}

/** An outline as it is found in a file: shapes of a picture, or path data or well-known text alone. */
export type Found = { readonly shapes: readonly Shape[] } | { readonly text: string };

/** An outline as a job has it, with what one tells it by. */
export interface Drawn {
  readonly outline: JsonObject;
  /** `[min x, min y, max x, max y]` */
  readonly box: readonly [number, number, number, number];
  readonly holes: number;
}

/** What was read, or why it cannot be, in words that go on from "It". */
export type OutlineAnswer =
  | { readonly drawn: Drawn; readonly fault: null }
  | { readonly drawn: null; readonly fault: string };

/** How much two axes of a matrix may differ in length, or be out of square, as a share: digits rounded away in a file. */
const ROUNDED = 1e-6;

/** The outline that was found in a file, checked as that of a part. */
export function outlineOf(found: Found): OutlineAnswer {
  try {
    return drawn('text' in found ? ofText(found.text) : ofPicture(found.shapes));
  } catch (error) {
    if (error instanceof TextError) return refused(`is no outline that can be read: ${error.message}`);
    if (error instanceof Distorted) return refused(error.message);
    throw error;
  }
}

function drawn(outline: JsonObject): OutlineAnswer {
  try {
    const job = parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 1 }, cuts: [] });
    const { minX = 0, minY = 0, maxX = 0, maxY = 0 } = boundsOf(job.outline) ?? {};
    const holes = job.outline.reduce((sum, part) => sum + part.holes.length, 0);
    return { drawn: { outline, box: [minX, minY, maxX, maxY], holes }, fault: null };
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    const message = error.issues[0]?.message ?? error.message;
    return refused(/^at position/.test(message) ? `is no outline that can be read: ${message}` : message);
  }
}

function refused(fault: string): OutlineAnswer {
  return { drawn: null, fault };
}

// A command of path data is one letter, the name of a shape a word.
function ofText(text: string): JsonObject {
  return /^[a-z]{2}/i.test(text) ? { wkt: text } : { svgPath: text };
}

/** The shapes with y up, and the lower left corner of what they draw at zero: a picture has no zero of its own. */
function ofPicture(shapes: readonly Shape[]): JsonObject {
  const chains = shapes.flatMap(({ path, matrix }) => {
    const placed = placer(matrix);
    return parseSvgPath(path).map(({ edges, closed }) => ({ edges: edges.map(placed), closed }));
  });
  const boxes = chains.flatMap(({ edges }) => edges.map((edge) => edgeBounds(edge)));
  if (boxes.length === 0) return { svgPath: '' };
  const [left, low] = boxes.reduce(
    ([x, y], { minX, minY }) => [Math.min(x, minX), Math.min(y, minY)],
    [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  );
  const shift = moved(-left, -low);
  const texts = chains.map(({ edges, closed }) =>
    closed ? toSvgPath(edges.map(shift)) : openSvgPath(edges.map(shift)),
  );
  return { svgPath: texts.join(' ') };
}

class Distorted extends Error {}

/** Puts edges where the matrix has them, with y up. */
function placer([a, b, c, d, e, f]: Matrix): (edge: Edge) => Edge {
  const [across, up] = [Math.hypot(a, b), Math.hypot(c, d)];
  const isEven =
    Math.abs(across - up) <= ROUNDED * across && Math.abs(a * c + b * d) <= ROUNDED * across * up;
  if (!(across > 0) || !isEven) {
    throw new Distorted('is stretched or slanted by a transform, so that its arcs would not be round');
  }
  const isMirrored = a * d - b * c > 0;
  return changed((p) => ({ x: a * p.x + c * p.y + e, y: -(b * p.x + d * p.y + f) }), across, isMirrored);
}

function moved(dx: number, dy: number): (edge: Edge) => Edge {
  return changed((p) => ({ x: p.x + dx, y: p.y + dy }), 1, false);
}

function changed(place: (p: Point) => Point, scale: number, isMirrored: boolean): (edge: Edge) => Edge {
  return (edge) => {
    const ends = { a: place(edge.a), b: place(edge.b) };
    if (edge.kind === 'line') return { ...edge, ...ends };
    const { center, radius, ccw } = edge;
    return { ...edge, ...ends, center: place(center), radius: radius * scale, ccw: ccw !== isMirrored };
  };
}
