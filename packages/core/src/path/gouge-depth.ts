import { offset } from '../combine/offset.js';
import type { Edge } from '../geometry/edge.js';
import { NearEdges } from '../geometry/edge-gap.js';
import { edgeLength, pointAlong } from '../geometry/measure.js';
import { meet } from '../geometry/meet.js';
import { partOfEdge } from '../geometry/parts.js';
import { distance, type Point } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { loopsOf } from '../region/measure.js';
import type { Region, RegionPart } from '../region/region.js';
import type { ToolSide } from './path-curve.js';
import { SLACK_IN_WELDS } from './path-slack.js';
import type { Tagged } from './path-tags.js';

/** What is checked, and how exactly that can be done. */
export interface Work {
  readonly path: readonly Edge[];
  readonly radius: number;
  readonly region: Region;
  readonly side: ToolSide;
  readonly tags: Tagged;
  readonly outline: NearEdges;
  readonly slack: number;
}

/** How far the centre of a tool goes under the surface, and where. */
export interface CenterDepth {
  readonly depth: number;
  readonly center: Point;
  /** The place of the outline nearest to it. */
  readonly at: Point;
  readonly edge: number;
}

/** Halvings after which a bracket holds no further number, whatever its size was. */
const MOST_HALVINGS = 64;

/** A piece of the path, and the number of the edge that it is of. */
interface Piece {
  readonly edge: number;
  readonly piece: Edge;
}

/**
 * How deep the centre goes under the surface within one gouge; null if it does not. A piece of the path comes deeper
 * than some depth just if it meets what must stay, shrunk by that depth; that is bisected.
 */
export function centerDepth(work: Work, part: RegionPart): CenterDepth | null {
  const pieces = work.path.flatMap((edge, k) =>
    cutAt(edge, work)
      .filter((piece) => contains([part], pointAlong(piece, 0.5), work.slack) === 'inside')
      .map((piece): Piece => ({ edge: k, piece })),
  );
  if (pieces.length === 0) return null;
  let found = deepestEnd(work, pieces);
  let low = found.depth;
  let high = found.depth + Math.max(...pieces.map(({ piece }) => edgeLength(piece))) / 2;
  for (let k = 0; k < MOST_HALVINGS && high - low > weldOf(work); k++) {
    const middle = (low + high) / 2;
    const deeper = pieceIn(work, pieces, middle);
    if (deeper === null) high = middle;
    else {
      found = deeper;
      low = Math.max(middle, deeper.depth);
    }
  }
  return found;
}

/** What an overlay takes for one place. */
function weldOf({ slack }: Work): number {
  return slack / SLACK_IN_WELDS;
}

/** The pieces of an edge of the path between the places where it meets the outline. */
function cutAt(edge: Edge, work: Work): Edge[] {
  const { outline, slack } = work;
  const places = outline.edges.flatMap((wall) => {
    const met = meet(edge, wall, weldOf(work));
    if (met.kind === 'apart') return [];
    return met.kind === 'points' ? met.points.map(({ at }) => at) : met.ends.flat();
  });
  const along = (p: Point): number => edgeLength(partOfEdge(edge, edge.a, p));
  const inside = places.filter((p) => Math.min(distance(p, edge.a), distance(p, edge.b)) > slack);
  const sorted = inside.map((at) => ({ at, along: along(at) })).sort((p, q) => p.along - q.along);
  const pieces: Edge[] = [];
  let a = edge.a;
  for (const { at } of sorted) {
    if (distance(a, at) <= slack) continue;
    pieces.push(partOfEdge(edge, a, at));
    a = at;
  }
  pieces.push(partOfEdge(edge, a, edge.b));
  return pieces;
}

/** The deepest of the ends and middles of some pieces: a first guess. */
function deepestEnd({ outline }: Work, pieces: readonly Piece[]): CenterDepth {
  const guesses = pieces.flatMap(({ edge, piece }) =>
    [0, 0.5, 1].map((share) => ({ edge, center: pointAlong(piece, share) })),
  );
  return guesses
    .map(({ edge, center }) => under(outline, center, edge))
    .reduce((best, one) => (one.depth > best.depth ? one : best));
}

function under(outline: NearEdges, center: Point, edge: number): CenterDepth {
  const nearest = outline.nearestPlace(center);
  return { depth: nearest?.distance ?? 0, center, at: nearest?.at ?? center, edge };
}

/** A place of the path that is deeper under the surface than some depth; null if there is none. */
function pieceIn(work: Work, pieces: readonly Piece[], depth: number): CenterDepth | null {
  const { region, side, outline, slack } = work;
  const deep = offset(region, side === 'outside' ? -depth : depth);
  const border = new NearEdges(loopsOf(deep).flat());
  const wanted = side === 'outside' ? 'inside' : 'outside';
  for (const { edge, piece } of pieces) {
    for (const end of [piece.a, piece.b])
      if (contains(deep, end) === wanted) return under(outline, end, edge);
    const gap = border.nearestTo(piece, slack, weldOf(work));
    if (gap?.distance === 0) return under(outline, gap.onFirst, edge);
  }
  return null;
}
