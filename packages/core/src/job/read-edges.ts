import type { JobIssue } from '../document/errors.js';
import { MAX_EDGES, MAX_LENGTH } from '../document/limits.js';
import type { EdgeDocument } from '../document/schema.js';
import { parseSvgPath } from '../format/svg-path.js';
import { TextError } from '../format/text-error.js';
import { parseWkt, type WktShape } from '../format/wkt.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Chain } from '../outline/chain.js';
import { fittedArc } from '../outline/fit.js';

/** A value read from a job, or what is wrong with it. */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** A value that was read. */
export function good<T>(value: T): Read<T> {
  return { ok: true, value };
}

/** One thing wrong with what was read. */
export function bad<T>(path: string, message: string): Read<T> {
  return { ok: false, issues: [{ path, message }] };
}

/** A point as the library has it. */
export function pointOf([x, y]: readonly [number, number]): Point {
  return { x, y };
}

/** The edges of a list, each checked. */
export function readEdges(list: readonly EdgeDocument[], path: string): Read<readonly Edge[]> {
  const edges: Edge[] = [];
  const issues: JobIssue[] = [];
  for (const [i, edge] of list.entries()) {
    try {
      edges.push(readEdge(edge));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      issues.push({ path: `${path}/${i}`, message: error.message.replace(/^\w+: /, '') });
    }
  }
  return issues.length > 0 ? { ok: false, issues } : good(edges);
}

function readEdge(edge: EdgeDocument): Edge {
  const [a, b] = [pointOf(edge.a), pointOf(edge.b)];
  return edge.kind === 'line' ? lineEdge(a, b) : fittedArc(a, b, pointOf(edge.center), edge.ccw);
}

/** The chains that path data draws: one at least, all within the limits. */
export function readSvgPath(text: string, path: string): Read<readonly Chain[]> {
  return readText(
    path,
    () => parseSvgPath(text),
    (chains) => chains,
  );
}

/** One curve, or one polygon. */
type OneShape = Exclude<WktShape, { readonly kind: 'polygons' }>;

/** The one shape that well-known text describes, within the limits. */
export function readWkt(text: string, path: string): Read<OneShape> {
  return readText(
    path,
    () => oneShape(parseWkt(text)),
    (shape) => (shape.kind === 'curve' ? [shape.chain] : shape.rings),
  );
}

/** A list of one polygon is that polygon. */
function oneShape(shape: WktShape): OneShape {
  if (shape.kind !== 'polygons') return shape;
  const [rings, ...others] = shape.polygons;
  if (rings === undefined) throw new TextError(0, 'the shape is empty');
  if (others.length > 0)
    throw new TextError(0, `these are ${others.length + 1} polygons; write the one that is meant`);
  return { kind: 'polygon', rings };
}

function readText<T>(path: string, parse: () => T, chainsOf: (parsed: T) => readonly Chain[]): Read<T> {
  try {
    const parsed = parse();
    const fault = drawingFault(chainsOf(parsed).flatMap(({ edges }) => edges));
    return fault === null ? good(parsed) : bad(path, fault);
  } catch (error) {
    if (error instanceof TextError) return bad(path, error.message);
    throw error;
  }
}

function drawingFault(edges: readonly Edge[]): string | null {
  if (edges.length === 0) return 'draws nothing';
  if (edges.length > MAX_EDGES) return `draws ${edges.length} edges; at most ${MAX_EDGES} are read`;
  const far = edges
    .flatMap(({ a, b }) => [a, b])
    .find(({ x, y }) => Math.max(Math.abs(x), Math.abs(y)) > MAX_LENGTH);
  return far === undefined ? null : `goes out to (${far.x}, ${far.y}); coordinates go up to ${MAX_LENGTH}`;
}
