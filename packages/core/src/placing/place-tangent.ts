import { checkOverZero } from '../geometry/checks.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { ArcEdge, Edge, Source } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { segmentTurned } from '../geometry/segment.js';
import { shownNumber } from '../geometry/shown.js';
import type { ArcEnd, FaceSide, PlacedBite } from '../load/bite.js';
import { type Hand, type Locus, leftOf, meetLoci } from './loci.js';
import { frameOf } from './place-face.js';

/** Where a circle touches an edge. */
export interface Touch {
  readonly at: Point;
  /** On which side of the edge the centre lies. */
  readonly side: FaceSide;
  /** Whether the place lies on the edge as drawn, or where it would run on beyond its end. */
  readonly onEdge: boolean;
  readonly source: Source | null;
}

/**
 * A circle that touches two edges. The dimensions are those of the shorter arc between the two places, and the
 * opening is the straight line between them. The angle at an end is 0 where the circle touches from the metal's
 * side, which leaves a tip as thin as metal can be, and pi where it touches from outside.
 */
export interface TangentPlacement extends PlacedBite {
  readonly touches: readonly [Touch, Touch];
  /** Tells two answers on the same sides apart. */
  readonly hand: Hand;
}

const SIDES: readonly FaceSide[] = ['inside', 'outside'];

/** A touching place may lie this share of the radius beyond the end of an edge: rounding. */
const END_SHARE = 1e-9;

/** Nearer than this share of the radius to an arc's centre, a circle of its radius is that arc's circle: rounding. */
const SAME_CIRCLE = 1e-12;

/**
 * Places a circle of a given radius so that it touches two edges, lines or arcs: all answers, each named by the
 * sides of the edges on which its centre lies, and by its hand where two have the same sides. Those that touch
 * both edges between their ends come first. Lengths in the unit of the edges, angles in radians.
 *
 * Source: the centre is as far from each edge as the radius, so it lies where the two parallel curves meet;
 * Machinery's Handbook, 31st ed., geometrical constructions.
 * @throws RangeError if the radius is not a finite number over 0, no such circle touches both edges (and which
 *   radius would), or every place along them will do.
 */
export function placeTangent(radius: number, first: Edge, second: Edge): readonly TangentPlacement[] {
  checkOverZero('placeTangent', 'radius', radius);
  const found = tangents(radius, first, second);
  if (found === 'everywhere') {
    throw new RangeError(
      `placeTangent: a circle of radius ${shownNumber(radius)} touches both edges wherever it stands along them; ` +
        'give its centre by distances instead',
    );
  }
  if (found.length === 0) throw new RangeError(`placeTangent: ${whyNone(radius, first, second)}`);
  const onBoth = (one: TangentPlacement): number => (one.touches.every(({ onEdge }) => onEdge) ? 0 : 1);
  return found
    .map((one, k) => ({ one, k }))
    .sort((p, q) => onBoth(p.one) - onBoth(q.one) || p.k - q.k)
    .map(({ one }) => one);
}

function tangents(radius: number, first: Edge, second: Edge): TangentPlacement[] | 'everywhere' {
  const answers: TangentPlacement[] = [];
  for (const one of SIDES) {
    for (const other of SIDES) {
      const p = centersBeside(first, radius, one);
      const q = centersBeside(second, radius, other);
      if (p === null || q === null) continue;
      const met = meetLoci(p, q);
      if (met === 'same') return 'everywhere';
      for (const { at, hand } of met) {
        answers.push(
          placed(radius, at, hand, touch(first, radius, one, at), touch(second, radius, other, at)),
        );
      }
    }
  }
  return answers;
}

/** Where the centre lies whose circle touches an edge; null where it would be the edge's own circle. */
function centersBeside(edge: Edge, radius: number, side: FaceSide): Locus | null {
  if (edge.kind === 'arc') {
    const reach = Math.abs(reachOf(edge, radius, side));
    return reach <= SAME_CIRCLE * radius ? null : { kind: 'circle', center: edge.center, radius: reach };
  }
  const { along, normal } = frameOf(edge);
  const by = side === 'inside' ? radius : -radius;
  return {
    kind: 'line',
    at: { x: edge.a.x + by * normal.dx, y: edge.a.y + by * normal.dy },
    along,
  };
}

/** From an arc's centre to that of a circle beside it; under 0 where the circle is the larger and goes round it. */
function reachOf(arc: ArcEdge, radius: number, side: FaceSide): number {
  return (side === 'inside') === arc.ccw ? arc.radius - radius : arc.radius + radius;
}

function touch(edge: Edge, radius: number, side: FaceSide, center: Point): Touch {
  const at = touchingPlace(edge, radius, side, center);
  const onEdge = nearestOnEdge(edge, at).distance <= END_SHARE * radius;
  return { at, side, onEdge, source: edge.source ?? null };
}

function touchingPlace(edge: Edge, radius: number, side: FaceSide, center: Point): Point {
  if (edge.kind === 'arc') {
    const reach = reachOf(edge, radius, side);
    const scale = ((reach < 0 ? -1 : 1) * edge.radius) / distance(edge.center, center);
    return {
      x: edge.center.x + scale * (center.x - edge.center.x),
      y: edge.center.y + scale * (center.y - edge.center.y),
    };
  }
  const { normal } = frameOf(edge);
  const by = side === 'inside' ? -radius : radius;
  return { x: center.x + by * normal.dx, y: center.y + by * normal.dy };
}

function placed(radius: number, center: Point, hand: Hand, first: Touch, second: Touch): TangentPlacement {
  const ux = first.at.x - center.x;
  const uy = first.at.y - center.y;
  const vx = second.at.x - center.x;
  const vy = second.at.y - center.y;
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  const end = ({ at, side, source }: Touch): ArcEnd => ({
    at,
    angle: side === 'inside' ? 0 : Math.PI,
    source,
  });
  // A tooth turns clockwise: it comes first to the end of the shorter arc that lies counter-clockwise.
  const [from, to] = turn > 0 ? [second, first] : [first, second];
  return {
    ...segmentTurned(radius, Math.abs(turn)),
    center,
    entry: end(from),
    exit: end(to),
    touches: [first, second],
    hand,
  };
}

function whyNone(radius: number, first: Edge, second: Edge): string {
  const none = `no circle of radius ${shownNumber(radius)} touches both edges`;
  const limit = nearestRadius(radius, first, second);
  if (limit !== null) return `${none}; the nearest radius that does is ${shownNumber(limit)}`;
  return `${none}; they run along one another and no radius does`;
}

/** The radius nearest to the one asked for at which a circle just touches both edges. */
function nearestRadius(radius: number, first: Edge, second: Edge): number | null {
  const limits = limitsOf(first, second)
    .filter((limit) => limit > 0 && touchesBoth(limit, first, second))
    .sort((a, b) => Math.abs(a - radius) - Math.abs(b - radius));
  return limits[0] ?? null;
}

function touchesBoth(radius: number, first: Edge, second: Edge): boolean {
  const found = tangents(radius, first, second);
  return found === 'everywhere' || found.length > 0;
}

/** Radii at which two parallel curves begin or cease to meet: half of a gap or overlap along the common normal. */
function limitsOf(first: Edge, second: Edge): number[] {
  if (first.kind === 'arc' && second.kind === 'arc') {
    const d = distance(first.center, second.center);
    const [r, s] = [first.radius, second.radius];
    return [d + r + s, d + r - s, d - r + s, d - r - s].map((gap) => Math.abs(gap) / 2);
  }
  const arc = first.kind === 'arc' ? first : second;
  const other = first.kind === 'arc' ? second : first;
  if (other.kind === 'arc') return [];
  const line = { kind: 'line', at: other.a, along: frameOf(other).along } as const;
  if (arc.kind === 'arc') {
    const d = leftOf(line, arc.center);
    return [Math.abs(d + arc.radius) / 2, Math.abs(d - arc.radius) / 2];
  }
  return [Math.abs(leftOf(line, arc.a)) / 2];
}
