import { TURN } from '../geometry/angle.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { onArcSide } from '../geometry/measure.js';
import { partOfEdge } from '../geometry/parts.js';
import { distance, type Point } from '../geometry/point.js';
import type { Loop, Region } from '../region/region.js';
import { turnSeen } from './ring-integrals.js';

/** One end of a stretch of angles: the outermost place that is seen there. */
export interface StretchEnd {
  /** Radians from the x axis, from -pi to pi. */
  readonly angle: number;
  readonly at: Point;
}

/** Angle of a clockwise end, radians from the x axis, and how far it goes counter-clockwise from there. */
export interface Turned {
  readonly start: number;
  readonly sweep: number;
}

/** Angles at which something is seen. */
export interface Stretch extends Turned {
  /** Null for a whole turn. */
  readonly low: StretchEnd | null;
  readonly high: StretchEnd | null;
}

/**
 * The angles at which a place sees some region, counter-clockwise; those that overlap or touch are one. Their ends are
 * at corners, or where a tangent from the place touches an arc.
 *
 * Source: what is seen of a connected piece is connected; its ends are those of its outer loop, which it sees going
 * forth and back, unless the loop goes all the way round.
 * @param from not in the region, nor on its edge
 * @param slack angle, radians, up to which a gap between stretches is rounding
 */
export function stretchesOf(region: Region, from: Point, slack: number): Stretch[] {
  return joined(
    region.map(({ outer }) => stretchOf(outer, from)),
    slack,
  );
}

/** The widest gap between stretches in order: its middle and width, radians; null where there are no stretches. */
export function widestGap(stretches: readonly Turned[]): { middle: number; width: number } | null {
  let widest: { middle: number; width: number } | null = null;
  stretches.forEach(({ start, sweep }, k) => {
    const next = stretches[(k + 1) % stretches.length] as Turned;
    const raw = (next.start - start - sweep) % TURN;
    const width = stretches.length === 1 ? TURN - sweep : raw < 0 ? raw + TURN : raw;
    if (widest === null || width > widest.width) widest = { middle: start + sweep + width / 2, width };
  });
  return widest;
}

const WHOLE: Stretch = { start: -Math.PI, sweep: TURN, low: null, high: null };

/** The angles at which a loop is seen, counted on past a whole turn where it winds like a spiral. */
function stretchOf(loop: Loop, from: Point): Stretch {
  let [turn, least, most] = [0, 0, 0];
  const { a: first } = loop[0] as Edge;
  let [low, high] = [first, first];
  for (const edge of loop) {
    for (const step of steps(edge, from)) {
      turn += turnSeen(step, from);
      if (turn < least) [least, low] = [turn, step.b];
      if (turn > most) [most, high] = [turn, step.b];
    }
  }
  // A loop that goes round comes back a whole turn on.
  if (Math.abs(turn) > Math.PI || most - least >= TURN) return WHOLE;
  const [lowEnd, highEnd] = [endAt(low, from), endAt(high, from)];
  return {
    start: lowEnd.angle,
    sweep: spanned(lowEnd.angle, highEnd.angle, most - least),
    low: lowEnd,
    high: highEnd,
  };
}

function endAt(at: Point, from: Point): StretchEnd {
  return { angle: Math.atan2(at.y - from.y, at.x - from.x), at };
}

/** The angle from one direction to another; which of the two ways round, a sum that has been rounded tells. */
function spanned(low: number, high: number, about: number): number {
  const raw = high - low;
  return raw + TURN * Math.round((about - raw) / TURN);
}

/** An edge, cut where tangents from a place touch it, so that each step is seen turning one way. */
function steps(edge: Edge, from: Point): Edge[] {
  if (edge.kind === 'line') return [edge];
  const away = distance(edge.center, from);
  if (away <= edge.radius) return [edge];
  const places = tangentPlaces(edge, from, away).filter((p) => onArcSide(edge, p));
  const cuts =
    places.length === 2 && comesFirst(edge, places[1] as Point, places[0] as Point)
      ? places.reverse()
      : places;
  let a = edge.a;
  return [...cuts, edge.b].map((b): Edge => {
    const step = partOfEdge(edge, a, b);
    a = b;
    return step;
  });
}

/** Source: the tangent, the radius to it and the line to the centre make a right-angled triangle. */
function tangentPlaces({ center, radius }: ArcEdge, from: Point, away: number): Point[] {
  const [ux, uy] = [(from.x - center.x) / away, (from.y - center.y) / away];
  const along = (radius * radius) / away;
  const across = (radius * Math.sqrt((away - radius) * (away + radius))) / away;
  return [1, -1].map((side) => ({
    x: center.x + along * ux - side * across * uy,
    y: center.y + along * uy + side * across * ux,
  }));
}

function comesFirst(arc: ArcEdge, p: Point, q: Point): boolean {
  return onArcSide({ ...arc, b: q }, p);
}

/** Stretches in order, those that overlap or touch made one. */
function joined(stretches: readonly Stretch[], slack: number): Stretch[] {
  const sorted = [...stretches].sort((s, t) => s.start - t.start);
  const made: Stretch[] = [];
  for (const next of sorted) {
    const last = made[made.length - 1];
    if (last === undefined || next.start - (last.start + last.sweep) > slack) made.push(next);
    else made[made.length - 1] = both(last, next);
  }
  // The last may reach round to the first ones.
  while (made.length > 1) {
    const first = made[0] as Stretch;
    const last = made[made.length - 1] as Stretch;
    if (first.start + TURN - (last.start + last.sweep) > slack) break;
    made.shift();
    made[made.length - 1] = both(last, { ...first, start: first.start + TURN });
  }
  const [only] = made;
  return made.length === 1 && only !== undefined && only.sweep >= TURN - slack ? [WHOLE] : made;
}

/** Two stretches that meet, the first of which starts no later. */
function both(one: Stretch, other: Stretch): Stretch {
  const [end, otherEnd] = [one.start + one.sweep, other.start + other.sweep];
  if (otherEnd <= end) return one;
  return { ...one, sweep: otherEnd - one.start, high: other.high };
}
