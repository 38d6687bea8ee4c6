import { normalize } from '../combine/boolean.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { fittedArc } from '../outline/fit.js';
import { joinEdges } from '../outline/join.js';
import type { Loop, Region } from '../region/region.js';

/** An edge as jobs and reports have it: points are pairs. */
export type EdgeJson =
  | {
      readonly kind: 'line';
      readonly a: readonly [number, number];
      readonly b: readonly [number, number];
      readonly source?: string | undefined;
    }
  | {
      readonly kind: 'arc';
      readonly a: readonly [number, number];
      readonly b: readonly [number, number];
      readonly center: readonly [number, number];
      readonly radius: number;
      readonly ccw: boolean;
      readonly source?: string | undefined;
    };

/** A region as reports have it: parts, each an outer loop and holes, which are lists of edges. */
export type RegionJson = readonly {
  readonly outer: readonly EdgeJson[];
  readonly holes: readonly (readonly EdgeJson[])[];
}[];

/** A region as reports have it: points are pairs, -0 is 0. The loops can stand as `edges` of an outline in a job. */
export function regionToJson(region: Region): RegionJson {
  return region.map(({ outer, holes }) => ({
    outer: outer.map(edgeToJson),
    holes: holes.map((h) => h.map(edgeToJson)),
  }));
}

/** An edge as jobs and reports have it. */
export function edgeToJson(edge: Edge): EdgeJson {
  const ends = { a: pointToJson(edge.a), b: pointToJson(edge.b) };
  const source = edge.source === undefined ? {} : { source: edge.source };
  if (edge.kind === 'line') return { kind: 'line', ...ends, ...source };
  const { center, radius, ccw } = edge;
  return { kind: 'arc', ...ends, center: pointToJson(center), radius, ccw, ...source };
}

/** A place as jobs and reports have it; -0 becomes 0. */
export function pointToJson(p: Point): [number, number] {
  return [p.x + 0, p.y + 0];
}

/**
 * The region that such JSON describes, as a value, not as text. The radius of an arc is that of its centre and ends;
 * the one written is not read. Loops may run in any direction: what lies inside an odd number of them belongs to the
 * region.
 * @throws RangeError with the JSON Pointer of the first value that is missing or wrong, or of a loop that is open.
 */
export function regionFromJson(json: unknown): Region {
  const loops = list(json, '').flatMap((part, i): Loop[] => {
    const { outer, holes } = record(part, `/${i}`);
    const inner = list(holes, `/${i}/holes`).map((hole, k) => loopOf(hole, `/${i}/holes/${k}`));
    return [loopOf(outer, `/${i}/outer`), ...inner];
  });
  return normalize(loops, 'evenodd');
}

function loopOf(json: unknown, path: string): Loop {
  const given = list(json, path).map((edge, i) => edgeFromJson(edge, `${path}/${i}`));
  const { edges, gaps } = joinEdges(given, true);
  const gap = gaps[0];
  if (gap !== undefined)
    throw wrong(`${path}/${gap.edge}`, `ends ${gap.size} short of where the next edge starts`);
  return edges;
}

function edgeFromJson(json: unknown, path: string): Edge {
  const { kind, a, b, center, ccw, source } = record(json, path);
  if (kind !== 'line' && kind !== 'arc') throw wrong(`${path}/kind`, 'must be "line" or "arc"');
  const [from, to] = [pointOf(a, `${path}/a`), pointOf(b, `${path}/b`)];
  if (source !== undefined && typeof source !== 'string') throw wrong(`${path}/source`, 'must be a text');
  try {
    if (kind === 'line') return lineEdge(from, to, source);
    if (typeof ccw !== 'boolean') throw new RangeError('ccw must be true or false');
    return fittedArc(from, to, pointOf(center, `${path}/center`), ccw, source);
  } catch (error) {
    if (error instanceof RangeError && !error.message.startsWith(WHERE)) throw wrong(path, error.message);
    throw error;
  }
}

function pointOf(json: unknown, path: string): Point {
  const [x, y, ...more] = list(json, path);
  if (typeof x === 'number' && typeof y === 'number' && more.length === 0) return { x, y };
  throw wrong(path, 'must be two numbers');
}

function list(json: unknown, path: string): readonly unknown[] {
  if (Array.isArray(json)) return json;
  throw wrong(path, 'must be a list');
}

function record(json: unknown, path: string): Readonly<Record<string, unknown>> {
  if (typeof json === 'object' && json !== null && !Array.isArray(json))
    return json as Record<string, unknown>;
  throw wrong(path, 'must be an object');
}

const WHERE = 'regionFromJson: ';

function wrong(path: string, what: string): RangeError {
  return new RangeError(`${WHERE}${path === '' ? 'the region' : path} ${what}`);
}
