import { intersect } from '../combine/boolean.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { edgeLength, onArcSide } from '../geometry/measure.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { disc, type Loop, type Region } from '../region/region.js';

/** What a circle does to one face of an outline that it opens. */
export interface OpenedFace {
  /** The edge of the outline. */
  readonly face: Edge;
  /** Where depths are measured from: a place of a straight face, the place of a round one that is nearest to the circle. */
  readonly from: Point;
  /** Unit vector square into the metal there. */
  readonly inward: Vector;
  /** From there to the deepest place of the metal that is taken. */
  readonly depth: number;
  /** What is taken of the face, straight across between its ends. */
  readonly opening: number;
  /** Those ends along the face, and whether the circle crosses it there; else the face ends there itself. */
  readonly ends: readonly [Point, Point];
  readonly crossed: readonly [boolean, boolean];
  /** Length of the circle's arcs round the metal that is taken there. */
  readonly arcLength: number;
  readonly deepest: Point;
  /** Whether that is the place of the circle that is furthest in. */
  readonly atBottom: boolean;
  /** Where that is not so, the edge that the circle crosses at the deepest place; null where it crosses none there. */
  readonly deepEdge: Edge | null;
  /** The way to look for what is left behind the deepest place: inward, a hair off an edge; null where the metal ends there. */
  readonly beyond: Vector | null;
}

/** Share of the radius within which two places, or two depths, are one. */
const SAME = 1e-9;

/** Name of the circle's own edges in an overlay: no edge of an outline has it. */
const CIRCLE = 'circle';

/**
 * The faces of an outline that a circle opens, each with how deep it goes from there: all that its arcs end on, and
 * straight ones that it takes whole. A circle over a corner opens two. In the order of what is taken.
 *
 * Source: the depth is the largest distance from the face in what circle and outline have in common (definition); for
 * one straight face that is the circular segment of Machinery's Handbook, 31st ed., p. 83.
 * @param outline right within the circle; further out it may be more or less
 * @throws RangeError if the radius is not a finite number over 0 or a coordinate is not finite.
 */
export function openedFaces(outline: Region, center: Point, radius: number): OpenedFace[] {
  const edges = outline.flatMap(({ outer, holes }) => [outer, ...holes].flat());
  const known = new Map(edges.map((edge) => [edge.source ?? '', edge]));
  return intersect([outline, disc(center, radius, CIRCLE)]).flatMap(({ outer, holes }) => {
    const taken = [outer, ...holes];
    const all = taken.flat();
    const arcs = all.filter((edge): edge is ArcEdge => edge.source === CIRCLE && edge.kind === 'arc');
    return [...new Set(all.map(({ source = '' }) => source))].flatMap((source) => {
      const face = known.get(source);
      return (face && openedFace(face, taken, arcs, center, radius)) ?? [];
    });
  });
}

function openedFace(
  face: Edge,
  taken: readonly Loop[],
  arcs: readonly ArcEdge[],
  center: Point,
  radius: number,
): OpenedFace | null {
  const near = SAME * radius;
  const all = taken.flat();
  const ends = endsOf(all.filter(({ source }) => source === face.source));
  const frame = frameAt(face, center);
  if (ends === null || frame === null) return null;
  const isEnd = (p: Point) => arcs.some((arc) => distance(arc.a, p) <= near || distance(arc.b, p) <= near);
  const crossed = [isEnd(ends[0]), isEnd(ends[1])] as const;
  if (face.kind === 'arc' && !crossed[0] && !crossed[1]) return null;
  const { from, inward } = frame;
  const depthAt = (p: Point) => (p.x - from.x) * inward.dx + (p.y - from.y) * inward.dy;
  const low = moved(center, inward, radius);
  const bottom = arcs.some((arc) => onArcSide(arc, low)) ? low : null;
  const deepest = all
    .map(({ a }) => a)
    .reduce<Point | null>(
      (best, p) => (best === null || depthAt(p) > depthAt(best) + near ? p : best),
      bottom,
    ) as Point;
  const depth = depthAt(deepest);
  if (depth <= near) return null;
  const atBottom = deepest === bottom;
  const deepEdge = atBottom ? null : crossedAt(taken, deepest, near);
  return {
    ...{ face, from, inward, depth, ends, crossed, deepest, atBottom, deepEdge },
    opening: distance(...ends),
    arcLength: arcs.reduce((sum, arc) => sum + edgeLength(arc), 0),
    beyond: atBottom ? inward : deepEdge && beyondOf(deepEdge, deepest, inward),
  };
}

/** The ends of a run of edges of one face: those that only one of them has; null of none. */
function endsOf(own: readonly Edge[]): readonly [Point, Point] | null {
  const [first] = own;
  const last = own.at(-1);
  if (first === undefined || last === undefined) return null;
  const isShared = (p: Point, side: 'a' | 'b') =>
    own.some((one) => one[side].x === p.x && one[side].y === p.y);
  return [
    own.find(({ a }) => !isShared(a, 'b'))?.a ?? first.a,
    own.findLast(({ b }) => !isShared(b, 'a'))?.b ?? last.b,
  ];
}

/** Where depths behind a face are measured from, and which way; null for a circle about the middle of a round face. */
function frameAt(face: Edge, center: Point): { readonly from: Point; readonly inward: Vector } | null {
  if (face.kind === 'line') return { from: face.a, inward: inwardAt(face, face.a) };
  const length = distance(center, face.center);
  if (length === 0) return null;
  const inward = inwardAt(face, center);
  return { from: moved(face.center, inward, face.ccw ? -face.radius : face.radius), inward };
}

/** Unit vector square into a face, the metal at its left; of a round one as seen from a place. */
function inwardAt(face: Edge, p: Point): Vector {
  if (face.kind === 'line') {
    const length = distance(face.a, face.b);
    return { dx: -(face.b.y - face.a.y) / length, dy: (face.b.x - face.a.x) / length };
  }
  const by = (face.ccw ? -1 : 1) / distance(p, face.center);
  return { dx: by * (p.x - face.center.x), dy: by * (p.y - face.center.y) };
}

/** The edge of the outline that the circle crosses at a place; null where it crosses none. */
function crossedAt(taken: readonly Loop[], p: Point, near: number): Edge | null {
  for (const loop of taken) {
    for (const [k, edge] of loop.entries()) {
      const next = loop[(k + 1) % loop.length] as Edge;
      const isCrossing = (edge.source === CIRCLE) !== (next.source === CIRCLE);
      if (isCrossing && distance(edge.b, p) <= near) return edge.source === CIRCLE ? next : edge;
    }
  }
  return null;
}

/** Behind an edge that the circle crosses the metal goes on if that edge does not turn its back. */
function beyondOf(edge: Edge, p: Point, inward: Vector): Vector | null {
  const n = inwardAt(edge, p);
  if (n.dx * inward.dx + n.dy * inward.dy < -SAME) return null;
  return { dx: inward.dx + HAIR * n.dx, dy: inward.dy + HAIR * n.dy };
}

/** Slope of a look along an edge, so that it goes beside it in the metal. */
const HAIR = 1e-9;
