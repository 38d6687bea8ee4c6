import { normalize, union } from '../combine/boolean.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { type Chain, closedChain, openChain } from '../outline/chain.js';
import { closable, extentOfEdges } from '../outline/join.js';
import type { Region } from '../region/region.js';
import { TextError } from './text-error.js';
import { circleThrough, edgeThrough } from './three-points.js';
import { WktScanner } from './wkt-scan.js';

/**
 * What a text describes: one chain; the rings of a polygon, the outer one first; or so many polygons, none where the
 * text says that it is empty.
 */
export type WktShape =
  | { readonly kind: 'curve'; readonly chain: Chain }
  | { readonly kind: 'polygon'; readonly rings: readonly Chain[] }
  | { readonly kind: 'polygons'; readonly polygons: readonly (readonly Chain[])[] };

const CURVES = ['LINESTRING', 'CIRCULARSTRING', 'COMPOUNDCURVE'] as const;

const POLYGONS = ['POLYGON', 'CURVEPOLYGON', 'MULTIPOLYGON', 'MULTISURFACE'] as const;

/**
 * Reads well-known text: LINESTRING, CIRCULARSTRING, COMPOUNDCURVE, POLYGON, CURVEPOLYGON, MULTIPOLYGON or
 * MULTISURFACE, in two dimensions; of polygons, EMPTY too. A circular string from a point over another back to the first is a full circle, of which the
 * middle point is the opposite one. Points given twice in a row are taken once.
 * Source: ISO/IEC 13249-3 and OGC 06-103r4, well-known text.
 * @throws TextError with the position of what is wrong.
 */
export function parseWkt(text: string): WktShape {
  const scan = new WktScanner(text);
  const at = scan.position;
  const keyword = scan.word();
  const shape = shapeOf(scan, keyword, at);
  if (scan.peek() !== '') throw scan.unexpected('the end of the text');
  return shape;
}

/**
 * The region that well-known text describes: what `toWkt` writes, and any POLYGON, CURVEPOLYGON, MULTIPOLYGON,
 * MULTISURFACE, EMPTY, or curve that closes. Rings may run in any direction; what lies inside an odd number of those of
 * one polygon belongs to it, and polygons that overlap become one.
 * Source: ISO/IEC 13249-3 and OGC 06-103r4, well-known text.
 * @throws TextError with the position of what is wrong, or if a curve does not close.
 */
export function regionFromWkt(text: string): Region {
  const shape = parseWkt(text);
  if (shape.kind === 'curve' && !shape.chain.closed)
    throw new TextError(0, 'the curve does not close, so that it encloses nothing; end it where it starts');
  const polygons =
    shape.kind === 'curve' ? [[shape.chain]] : shape.kind === 'polygon' ? [shape.rings] : shape.polygons;
  const regions = polygons.map((rings) =>
    normalize(
      rings.map(({ edges }) => edges),
      'evenodd',
    ),
  );
  return regions.length === 1 ? (regions[0] as Region) : union(regions);
}

function shapeOf(scan: WktScanner, keyword: string, at: number): WktShape {
  if (CURVES.some((name) => name === keyword))
    return { kind: 'curve', chain: openChain(curve(scan, keyword, at)) };
  if (!POLYGONS.some((name) => name === keyword)) {
    throw new TextError(
      at,
      `${keyword === '' ? 'no shape' : `"${keyword}"`} is named here; these are read: ${[...CURVES, ...POLYGONS].join(', ')}`,
    );
  }
  if (scan.takeIf('EMPTY')) return { kind: 'polygons', polygons: [] };
  if (keyword === 'POLYGON' || keyword === 'CURVEPOLYGON')
    return { kind: 'polygon', rings: ringsOf(scan, keyword, at) };
  return { kind: 'polygons', polygons: members(scan, keyword, at) };
}

/** The polygons of a list: bare rings in a MULTIPOLYGON, and bare or named ones in a MULTISURFACE. */
function members(scan: WktScanner, keyword: string, at: number): (readonly Chain[])[] {
  refuseTags(scan, at);
  const found: (readonly Chain[])[] = [];
  scan.expect('(');
  do {
    const start = scan.position;
    if (scan.takeIf('EMPTY')) continue;
    const name = keyword === 'MULTISURFACE' ? scan.word() || 'POLYGON' : 'POLYGON';
    if (name !== 'POLYGON' && name !== 'CURVEPOLYGON')
      throw new TextError(start, `"${name}" cannot be one of several surfaces; POLYGON and CURVEPOLYGON can`);
    if (!scan.takeIf('EMPTY')) found.push(ringsOf(scan, name, start));
  } while (scan.takeIf(','));
  scan.expect(')');
  return found;
}

function ringsOf(scan: WktScanner, keyword: 'POLYGON' | 'CURVEPOLYGON', at: number): Chain[] {
  return rings(scan, at, keyword === 'POLYGON' ? () => 'LINESTRING' : () => ringKind(scan));
}

function rings(scan: WktScanner, at: number, kind: () => string): Chain[] {
  refuseTags(scan, at);
  const found: Chain[] = [];
  scan.expect('(');
  do {
    const start = scan.position;
    found.push(ring(curve(scan, kind(), start), start));
  } while (scan.takeIf(','));
  scan.expect(')');
  return found;
}

/** The curve that a ring of a curve polygon is made of; without a name it is a line string. */
function ringKind(scan: WktScanner): string {
  const at = scan.position;
  const keyword = scan.word();
  if (keyword === '' || CURVES.some((name) => name === keyword)) return keyword || 'LINESTRING';
  throw new TextError(at, `"${keyword}" cannot be a ring; these can: ${CURVES.join(', ')}`);
}

function ring(edges: readonly Edge[], at: number): Chain {
  const first = edges[0] as Edge;
  const last = edges.at(-1) as Edge;
  const gap = distance(first.a, last.b);
  if (gap > 0 && !closable(last, gap, extentOfEdges(edges))) {
    throw new TextError(at, `the ring does not close: its last point is ${gap} from its first`);
  }
  return closedChain(edges);
}

function curve(scan: WktScanner, keyword: string, at: number): Edge[] {
  refuseTags(scan, at);
  if (keyword === 'COMPOUNDCURVE') return compound(scan);
  const { points, positions } = scan.points();
  return keyword === 'CIRCULARSTRING' ? arcs(points, positions) : lines(points, positions);
}

function refuseTags(scan: WktScanner, at: number): void {
  const here = scan.position;
  const tag = scan.word();
  if (tag === 'EMPTY') throw new TextError(at, 'the shape is empty');
  if (tag !== '') throw new TextError(here, `"${tag}" is not read; only plane shapes in two dimensions are`);
}

function compound(scan: WktScanner): Edge[] {
  const edges: Edge[] = [];
  scan.expect('(');
  do {
    const at = scan.position;
    const keyword = scan.word() || 'LINESTRING';
    if (keyword !== 'LINESTRING' && keyword !== 'CIRCULARSTRING') {
      throw new TextError(at, `"${keyword}" cannot be part of a compound curve`);
    }
    const part = curve(scan, keyword, at);
    const end = edges.at(-1)?.b;
    const start = (part[0] as Edge).a;
    if (end !== undefined && !samePoint(end, start)) {
      throw new TextError(
        at,
        `this part starts at (${start.x}, ${start.y}); the one before ends at (${end.x}, ${end.y})`,
      );
    }
    for (const edge of part) edges.push(edge);
  } while (scan.takeIf(','));
  scan.expect(')');
  return edges;
}

function lines(points: readonly Point[], positions: readonly number[]): Edge[] {
  const edges = points.slice(1).flatMap((b, i) => {
    const a = points[i] as Point;
    return samePoint(a, b) ? [] : [lineEdge(a, b)];
  });
  if (edges.length === 0)
    throw new TextError(positions[0] as number, 'a line string has at least two points');
  return edges;
}

function arcs(points: readonly Point[], positions: readonly number[]): Edge[] {
  if (points.length < 3 || points.length % 2 === 0) {
    throw new TextError(
      positions[0] as number,
      `a circular string has an odd number of points, at least three; this one has ${points.length}`,
    );
  }
  const edges: Edge[] = [];
  for (let i = 0; i + 2 < points.length; i += 2) {
    const [a, m, b] = points.slice(i, i + 3) as [Point, Point, Point];
    edges.push(...arcAt(a, m, b, positions[i + 1] as number));
  }
  return edges;
}

function arcAt(a: Point, m: Point, b: Point, at: number): readonly Edge[] {
  try {
    return samePoint(a, b) ? circleThrough(a, m) : [edgeThrough(a, m, b)];
  } catch (error) {
    if (error instanceof RangeError) throw new TextError(at, error.message);
    throw error;
  }
}
