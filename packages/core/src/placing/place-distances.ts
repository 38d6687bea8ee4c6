import { checkFinite, checkNotNegative, checkOverZero } from '../geometry/checks.js';
import type { ArcEdge, Edge, LineEdge } from '../geometry/edge.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import type { FaceSide } from '../load/bite.js';
import type { Region } from '../region/region.js';
import { type Hand, type Locus, leftOf, meetLoci } from './loci.js';
import { edgeNamed } from './named-edge.js';
import { frameOf } from './place-face.js';
import { bitesIn, type OutlinePlacement } from './place-outline.js';

/**
 * One dimension that a drawing gives for a centre, from an edge of the outline that it names (`outline:2`):
 * - `edge`: square to the edge, on the named side of it; to an arc, along its radius
 * - `along`: along a straight edge from one of its ends, over 0 towards the other
 * - `corner`: straight from one of its ends
 *
 * `start` and `end` are those of the edge as the outline runs, with the metal to its left.
 */
export type FromEdge =
  | { readonly from: 'edge'; readonly edge: string; readonly distance: number; readonly side: FaceSide }
  | {
      readonly from: 'along';
      readonly edge: string;
      readonly end: 'start' | 'end';
      readonly distance: number;
    }
  | {
      readonly from: 'corner';
      readonly edge: string;
      readonly end: 'start' | 'end';
      readonly distance: number;
    };

/** A hole whose centre is given by two distances. */
export interface DistancePlacement extends OutlinePlacement {
  /** Tells two answers apart; null where there is one only. */
  readonly hand: Hand;
}

const WHERE = 'placeByDistances';

/**
 * Places a hole by the distances of its centre from two named edges or ends of an outline: all answers, of which
 * there can be two where an arc or a corner is measured from. Lengths in the unit of the outline, angles in radians.
 *
 * Source: geometrical loci; the meeting of two lines, of line and circle (MathWorld, "Circle-Line Intersection") or
 * of two circles (MathWorld, "Circle-Circle Intersection").
 * @throws RangeError if a number is not finite, a length is under 0 or the radius is 0, the outline has no such
 *   edge or several pieces of it, an arc is to be measured along, or no place is that far from both; it says which
 *   distance would do.
 */
export function placeByDistances(
  outline: Region,
  radius: number,
  first: FromEdge,
  second: FromEdge,
): readonly DistancePlacement[] {
  checkOverZero(WHERE, 'radius', radius);
  const p = locusOf(outline, first);
  const q = locusOf(outline, second);
  const met = meetLoci(p.locus, q.locus);
  if (met === 'same') {
    throw new RangeError(`${WHERE}: ${words(first)} and ${words(second)} say the same; give one across it`);
  }
  if (met.length === 0) {
    throw new RangeError(
      `${WHERE}: no place is ${words(first)} and ${words(second)}; ${limitWords(p, q, first, second)}`,
    );
  }
  return met.map(({ at, hand }) => ({ ...bitesIn(outline, at, radius), hand }));
}

/** The places that one dimension allows, and what the distance would be if they were others. */
interface Allowed {
  readonly locus: Locus;
  /** For a line, by how far to its left it is moved; for a circle, its new radius. */
  readonly distanceAt: (change: number) => number;
}

function locusOf(outline: Region, given: FromEdge): Allowed {
  const edge = edgeNamed(WHERE, outline, given.edge);
  switch (given.from) {
    case 'edge':
      checkNotNegative(WHERE, `the distance from ${given.edge}`, given.distance);
      return edge.kind === 'line' ? besideLine(edge, given.distance, given.side) : besideArc(edge, given);
    case 'along':
      checkFinite(WHERE, `the distance along ${given.edge}`, given.distance);
      return alongLine(edge, given.edge, given.end, given.distance);
    case 'corner':
      checkNotNegative(WHERE, `the distance from the ${given.end} of ${given.edge}`, given.distance);
      return {
        locus: { kind: 'circle', center: endOf(edge, given.edge, given.end), radius: given.distance },
        distanceAt: (reach) => reach,
      };
  }
}

function besideLine(edge: LineEdge, away: number, side: FaceSide): Allowed {
  const { along, normal } = frameOf(edge);
  const by = side === 'inside' ? away : -away;
  const at = { x: edge.a.x + by * normal.dx, y: edge.a.y + by * normal.dy };
  return {
    locus: { kind: 'line', at, along },
    distanceAt: (shift) => (side === 'inside' ? away + shift : away - shift),
  };
}

function besideArc(arc: ArcEdge, given: FromEdge & { readonly from: 'edge' }): Allowed {
  const towards = (given.side === 'inside') === arc.ccw;
  const radius = towards ? arc.radius - given.distance : arc.radius + given.distance;
  if (radius < 0) {
    throw new RangeError(
      `${WHERE}: no place is ${words(given)}; the centre of that arc is ${shownNumber(arc.radius)} away, and ` +
        'nothing on that side is further',
    );
  }
  return {
    locus: { kind: 'circle', center: arc.center, radius },
    distanceAt: (reach) => Math.abs(reach - arc.radius),
  };
}

function alongLine(edge: Edge, name: string, end: 'start' | 'end', along: number): Allowed {
  if (edge.kind === 'arc') {
    throw new RangeError(`${WHERE}: ${name} is an arc; distances are measured along straight edges only`);
  }
  const frame = frameOf(edge);
  const by = end === 'start' ? along : -along;
  const from = end === 'start' ? edge.a : edge.b;
  const at = { x: from.x + by * frame.along.dx, y: from.y + by * frame.along.dy };
  return {
    locus: { kind: 'line', at, along: frame.normal },
    // To the left of the normal lies the start of the edge.
    distanceAt: (shift) => (end === 'start' ? along - shift : along + shift),
  };
}

function endOf(edge: Edge, name: string, end: 'start' | 'end'): Point {
  if (samePoint(edge.a, edge.b)) throw new RangeError(`${WHERE}: ${name} is a full circle, which has no end`);
  return end === 'start' ? edge.a : edge.b;
}

function words(given: FromEdge): string {
  const length = shownNumber(given.distance);
  switch (given.from) {
    case 'edge':
      return `${length} ${given.side} of ${given.edge}`;
    case 'along':
      return `${length} along ${given.edge} from its ${given.end}`;
    case 'corner':
      return `${length} from the ${given.end} of ${given.edge}`;
  }
}

/** What would have to be different: the nearest distance at which the two come together. */
function limitWords(p: Allowed, q: Allowed, first: FromEdge, second: FromEdge): string {
  if (p.locus.kind === 'circle') return limitOf(p, p.locus, q.locus, first);
  if (q.locus.kind === 'circle') return limitOf(q, q.locus, p.locus, second);
  const there = shownNumber(q.distanceAt(leftOf(q.locus, p.locus.at)));
  return `they are measured the same way, and ${words(first)} is always ${there} from ${second.edge}`;
}

function limitOf(
  { distanceAt }: Allowed,
  { center, radius }: Locus & { readonly kind: 'circle' },
  other: Locus,
  given: FromEdge,
): string {
  const limits =
    other.kind === 'line'
      ? [Math.abs(leftOf(other, center))]
      : [
          distance(center, other.center) + other.radius,
          Math.abs(distance(center, other.center) - other.radius),
        ];
  const nearest = limits.sort((a, b) => Math.abs(a - radius) - Math.abs(b - radius))[0] as number;
  return `with the other as it is, the distance from ${given.edge} can come as near as ${shownNumber(distanceAt(nearest))}`;
}
