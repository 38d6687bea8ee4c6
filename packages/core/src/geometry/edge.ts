import { distance, type Point, samePoint } from './point.js';

/**
 * Which drawn edge or which cut an edge came from: `outline:2`, `hole:0:1`, `cut:seat`.
 * Operations carry it along, so that every edge of a result can be named.
 */
export type Source = string;

/** A straight edge from `a` to `b`. */
export interface LineEdge {
  readonly kind: 'line';
  readonly a: Point;
  readonly b: Point;
  readonly source?: Source;
}

/**
 * A circular edge from `a` to `b` round `center`, counter-clockwise if `ccw`; less than a full turn.
 * Both ends are stored and never recomputed, so that neighbours share them to the last bit.
 */
export interface ArcEdge {
  readonly kind: 'arc';
  readonly a: Point;
  readonly b: Point;
  readonly center: Point;
  readonly radius: number;
  readonly ccw: boolean;
  readonly source?: Source;
}

/** A line or an arc: all that an outline is made of. */
export type Edge = LineEdge | ArcEdge;

/** An end of an arc may lie this far off its circle, as a share of the radius; drawings round their numbers. */
const RADIUS_SLACK = 1e-3;

/**
 * A straight edge.
 * @throws RangeError if a coordinate is not finite or the ends coincide.
 */
export function lineEdge(a: Point, b: Point, source?: Source): LineEdge {
  checkPoint('lineEdge', 'a', a);
  checkPoint('lineEdge', 'b', b);
  if (samePoint(a, b)) throw new RangeError(`lineEdge: both ends are at (${a.x}, ${a.y})`);
  return source === undefined ? { kind: 'line', a, b } : { kind: 'line', a, b, source };
}

/**
 * An arc from `a` to `b` round `center`. Its radius is the mean of the two distances from the centre.
 * @throws RangeError if a coordinate is not finite, the ends coincide (make a full circle of two arcs),
 *   the radius is zero, or the ends lie at distances from the centre that differ by over a thousandth.
 */
export function arcEdge(a: Point, b: Point, center: Point, ccw: boolean, source?: Source): ArcEdge {
  checkPoint('arcEdge', 'a', a);
  checkPoint('arcEdge', 'b', b);
  checkPoint('arcEdge', 'center', center);
  if (samePoint(a, b)) {
    throw new RangeError(`arcEdge: both ends are at (${a.x}, ${a.y}); make a full circle of two arcs`);
  }
  const ra = distance(center, a);
  const rb = distance(center, b);
  const radius = ra === rb ? ra : ra / 2 + rb / 2;
  if (!(radius > 0) || !Number.isFinite(radius)) throw new RangeError(`arcEdge: radius ${radius}`);
  if (Math.abs(ra - rb) > RADIUS_SLACK * radius) {
    throw new RangeError(`arcEdge: the ends are ${ra} and ${rb} from the centre; they must be equally far`);
  }
  const arc: ArcEdge = { kind: 'arc', a, b, center, radius, ccw };
  return source === undefined ? arc : { ...arc, source };
}

/** The same edge run the other way. */
export function reversed(edge: Edge): Edge {
  return edge.kind === 'line'
    ? { ...edge, a: edge.b, b: edge.a }
    : { ...edge, a: edge.b, b: edge.a, ccw: !edge.ccw };
}

function checkPoint(where: string, name: string, p: Point): void {
  if (!Number.isFinite(p.x) || !Number.isFinite(p.y)) {
    throw new RangeError(`${where}: ${name} is (${p.x}, ${p.y}); coordinates must be finite numbers`);
  }
}
