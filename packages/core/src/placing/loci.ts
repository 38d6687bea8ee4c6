import { distance, type Point, type Vector } from '../geometry/point.js';

/** All places that a condition allows for a centre: a straight line without ends, or a circle. */
export type Locus =
  | { readonly kind: 'line'; readonly at: Point; readonly along: Vector }
  | { readonly kind: 'circle'; readonly center: Point; readonly radius: number };

/**
 * Which of two places is meant: the one to the left or to the right, as one looks from the first circle's centre
 * towards the second's, or from the line to its own left. A line beside a face has the metal to its left; one that
 * is square to an edge, where a distance is measured along it, runs into the metal. Null where there is one place
 * only.
 */
export type Hand = 'left' | 'right' | null;

/** A place where two loci meet. */
export interface LocusMeeting {
  readonly at: Point;
  readonly hand: Hand;
}

/** Loci closer than this share of their sizes touch, where the limit itself was asked for: rounding. */
const TOUCH_SHARE = 1e-12;

/** Rounding of coordinates, for loci far from the origin. */
const ROUNDING_SHARE = 4e-16;

/** Directions closer than this (radians) are one: lines that run side by side in the drawing. */
const PARALLEL = 1e-12;

/** Where two loci meet; `same` where they are one and the same. */
export function meetLoci(p: Locus, q: Locus): readonly LocusMeeting[] | 'same' {
  if (p.kind === 'line') return q.kind === 'line' ? lineLine(p, q) : lineCircle(p, q);
  return q.kind === 'line' ? lineCircle(q, p) : circleCircle(p, q);
}

/** Distance of a place from a line, over 0 to the left. */
export function leftOf(line: Locus & { readonly kind: 'line' }, p: Point): number {
  return line.along.dx * (p.y - line.at.y) - line.along.dy * (p.x - line.at.x);
}

function slackOf(size: number, ...places: readonly Point[]): number {
  const magnitude = Math.max(...places.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  return TOUCH_SHARE * size + ROUNDING_SHARE * magnitude;
}

type Line = Locus & { readonly kind: 'line' };
type Circle = Locus & { readonly kind: 'circle' };

function lineLine(p: Line, q: Line): readonly LocusMeeting[] | 'same' {
  const cross = p.along.dx * q.along.dy - p.along.dy * q.along.dx;
  if (Math.abs(cross) <= PARALLEL) {
    const slack = slackOf(distance(p.at, q.at), p.at, q.at);
    return Math.abs(leftOf(q, p.at)) <= slack ? 'same' : [];
  }
  // From p's own point: how far along it the left distance from q comes to 0.
  const t = leftOf(q, p.at) / cross;
  return [{ at: { x: p.at.x + t * p.along.dx, y: p.at.y + t * p.along.dy }, hand: null }];
}

function lineCircle(line: Line, { center, radius }: Circle): readonly LocusMeeting[] {
  const off = leftOf(line, center);
  const foot = { x: center.x + off * line.along.dy, y: center.y - off * line.along.dx };
  const away = Math.abs(off);
  const slack = slackOf(away + radius, line.at, center);
  if (away > radius + slack) return [];
  if (away >= radius - slack) return [{ at: foot, hand: null }];
  const half = Math.sqrt((radius - away) * (radius + away));
  const at = (by: number): Point => ({ x: foot.x + by * line.along.dx, y: foot.y + by * line.along.dy });
  return [
    { at: at(-half), hand: 'left' },
    { at: at(half), hand: 'right' },
  ];
}

/** Source: two circles, D. Assencio / MathWorld "Circle-Circle Intersection", the radical line. */
function circleCircle(p: Circle, q: Circle): readonly LocusMeeting[] | 'same' {
  const d = distance(p.center, q.center);
  const slack = slackOf(d + p.radius + q.radius, p.center, q.center);
  const outside = d - (p.radius + q.radius);
  const inside = Math.abs(p.radius - q.radius) - d;
  if (d <= slack) return Math.abs(p.radius - q.radius) <= slack ? 'same' : [];
  if (outside > slack || inside > slack) return [];
  const ux = (q.center.x - p.center.x) / d;
  const uy = (q.center.y - p.center.y) / d;
  const along = (d + ((p.radius - q.radius) * (p.radius + q.radius)) / d) / 2;
  const foot = { x: p.center.x + along * ux, y: p.center.y + along * uy };
  if (outside >= -slack || inside >= -slack) return [{ at: foot, hand: null }];
  const four = (d + p.radius + q.radius) * -outside * -inside * (d + Math.abs(p.radius - q.radius));
  const half = Math.sqrt(four) / (2 * d);
  return [
    { at: { x: foot.x - half * uy, y: foot.y + half * ux }, hand: 'left' },
    { at: { x: foot.x + half * uy, y: foot.y - half * ux }, hand: 'right' },
  ];
}
