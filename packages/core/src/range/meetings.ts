import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { circlesMeet, lineCircle } from '../left/discs.js';
import { SAME_DIRECTION } from '../left/walls.js';
import { type Curve, carried, heightOver, isOn, type Round, type Straight } from './curves.js';
import type { Motion } from './number.js';

/** A value of the free number, counted from where the scene was drawn, at which something can happen. */
export interface Time {
  readonly s: number;
  /** Whether it only just happens, or goes on for a while: then the report of touching spreads round it. */
  readonly isLong: boolean;
  /** How far round it the report may be that of touching, where that is farther than by welding alone. */
  readonly blur?: number;
  /** How much nearer two boundaries come per unit of the free number, where they touch and that is known. */
  readonly pace?: number;
}

/** A time, and the places where it happens. */
export interface Moment extends Time {
  /** Where it happens; none where it happens all along. */
  readonly at: readonly Point[];
}

/** The ways in which two circles can come to lie at a distance from each other: apart, or one within the other. */
export type Way = 'apart' | 'around' | 'within';

/** How two curves face each other, one of which moves. */
export type Facing = Way | 1 | -1;

/**
 * Two directions of which the sine of the angle is under this are one: what is parallel but for rounding never
 * comes to meet.
 */
const PARALLEL = 1e-9;

/** All ways in which a moving curve can face a fixed one; none for straight ones that are not parallel. */
export function facingsOf(m: Curve, f: Curve): readonly Facing[] {
  if (m.shape === 'straight' && f.shape === 'straight') {
    return Math.abs(cross(m.along, f.along)) > PARALLEL ? [] : [1, -1];
  }
  return m.shape === 'round' && f.shape === 'round' ? ['apart', 'around', 'within'] : [1, -1];
}

/** When a moving curve is at a distance from a fixed one as it faces it, their stretches left aside. */
export function timesAtGap(
  m: Curve,
  f: Curve,
  facing: Facing,
  gap: number,
  motion: Motion,
  slack: number,
): Time[] {
  if (m.shape === 'round' && f.shape === 'round') {
    const { growth } = motion;
    if (facing === 'apart') return timesApart(m, f.center, m.radius + f.radius + gap, growth, motion, slack);
    return facing === 'around'
      ? timesApart(m, f.center, m.radius - f.radius - gap, growth, motion, slack)
      : timesApart(m, f.center, f.radius - m.radius - gap, -growth, motion, slack);
  }
  const side = facing as 1 | -1;
  if (m.shape === 'round') {
    const line = f as Straight;
    return when(
      heightOver(line, m.center) - side * (m.radius + gap),
      dot(motion.velocity, line.normal) - side * motion.growth,
    );
  }
  const radius = f.shape === 'round' ? f.radius : 0;
  const place = f.shape === 'round' ? f.center : f.edge.a;
  return when(heightOver(m, place) - side * (radius + gap), -dot(motion.velocity, m.normal));
}

/** The distance between a moving curve, as it stands, and a fixed one that it faces; below 0 past each other. */
export function gapBetween(m: Curve, f: Curve, facing: Facing): number {
  if (m.shape === 'round' && f.shape === 'round') {
    const d = distance(m.center, f.center);
    if (facing === 'apart') return d - m.radius - f.radius;
    return facing === 'around' ? m.radius - f.radius - d : f.radius - m.radius - d;
  }
  const side = facing as 1 | -1;
  if (m.shape === 'round') return side * heightOver(f as Straight, m.center) - m.radius;
  if (f.shape === 'round') return side * heightOver(m, f.center) - f.radius;
  return side * heightOver(m, f.edge.a);
}

/** The two places nearest to each other of a moving curve, as it stands, and a fixed one; null where all are. */
export function nearestPlaces(
  m: Curve,
  f: Curve,
  facing: Facing,
): { onMoving: Point; onFixed: Point } | null {
  if (m.shape === 'round' && f.shape === 'round') {
    const d = distance(m.center, f.center);
    if (d === 0) return null;
    const u = { dx: (m.center.x - f.center.x) / d, dy: (m.center.y - f.center.y) / d };
    return {
      onMoving: moved(m.center, u, facing === 'within' ? m.radius : -m.radius),
      onFixed: moved(f.center, u, facing === 'around' ? -f.radius : f.radius),
    };
  }
  const side = facing as 1 | -1;
  if (m.shape === 'round') {
    const line = f as Straight;
    return {
      onMoving: moved(m.center, line.normal, -side * m.radius),
      onFixed: moved(m.center, line.normal, -heightOver(line, m.center)),
    };
  }
  const place = f.shape === 'round' ? f.center : sharedMiddle(m, f);
  const height = heightOver(m, place);
  return {
    onMoving: moved(place, m.normal, -height),
    onFixed: f.shape === 'round' ? moved(place, m.normal, -side * f.radius) : place,
  };
}

/** The middle of the stretch of a fixed straight curve that a parallel moving one lies beside. */
function sharedMiddle(m: Straight, f: Straight): Point {
  const along = (p: Point) => (p.x - f.edge.a.x) * f.along.dx + (p.y - f.edge.a.y) * f.along.dy;
  const [low, high] = [along(m.edge.a), along(m.edge.b)].sort((a, b) => a - b) as [number, number];
  const from = Math.max(0, low);
  const to = Math.min(along(f.edge.b), high);
  return moved(f.edge.a, f.along, (from + to) / 2);
}

/** When a moving curve touches a fixed one, or comes to lie at a distance from it. */
export function contacts(
  m: Curve,
  f: Curve,
  gap: number,
  motion: Motion,
  slack: number,
): (Moment & { readonly facing: Facing })[] {
  return facingsOf(m, f).flatMap((facing) =>
    timesAtGap(m, f, facing, gap, motion, slack).flatMap((time) => {
      const there = carried(m, motion, time.s);
      const places = nearestPlaces(there, f, facing);
      if (places === null) return [{ ...time, facing, at: [] }];
      const { onMoving, onFixed } = places;
      if (!isOn(there, onMoving, slack) || !isOn(f, onFixed, slack)) return [];
      return [
        { ...time, facing, at: [{ x: (onMoving.x + onFixed.x) / 2, y: (onMoving.y + onFixed.y) / 2 }] },
      ];
    }),
  );
}

/**
 * When a moving curve crosses a fixed one at an angle or at its supplement: at the height r cos(a) of the centre
 * over a line; with d² = r² + q² ± 2 r q cos(a) between the centres of circles, by the law of cosines.
 */
export function crossingsAt(m: Curve, f: Curve, angle: number, motion: Motion, slack: number): Moment[] {
  return timesCrossing(m, f, Math.cos(angle), motion, slack).flatMap((time) => {
    const there = carried(m, motion, time.s);
    const at = meetingPlaces(there, f).filter((p) => isOn(there, p, slack) && isOn(f, p, slack));
    return at.length === 0 ? [] : [{ ...time, at }];
  });
}

function timesCrossing(m: Curve, f: Curve, cos: number, motion: Motion, slack: number): Time[] {
  if (m.shape === 'straight') {
    if (f.shape === 'straight') return [];
    return [cos, -cos].flatMap((c) =>
      when(heightOver(m, f.center) - c * f.radius, -dot(motion.velocity, m.normal)),
    );
  }
  if (f.shape === 'straight') {
    return [cos, -cos].flatMap((c) =>
      when(heightOver(f, m.center) - c * m.radius, dot(motion.velocity, f.normal) - c * motion.growth),
    );
  }
  const { radius: r } = m;
  const { radius: q } = f;
  if (q === 0) return [];
  if (motion.growth === 0) {
    return [cos, -cos].flatMap((c) =>
      timesApart(m, f.center, Math.sqrt(r * r + q * q - 2 * r * q * c), 0, motion, slack),
    );
  }
  const d = distance(m.center, f.center);
  const under = (d - q) * (d + q) + q * q * cos * cos;
  if (under < 0) return [];
  return [cos, -cos].flatMap((c) =>
    [1, -1].map((sign) => ({ s: (q * c + sign * Math.sqrt(under) - r) / motion.growth, isLong: false })),
  );
}

/** Where two curves meet, run on past their ends. */
function meetingPlaces(m: Curve, f: Curve): Point[] {
  if (m.shape === 'straight') return f.shape === 'straight' ? [] : onLine(m, f);
  return f.shape === 'straight' ? onLine(f, m) : circlesMeet(m.center, m.radius, f.center, f.radius);
}

function onLine(line: Straight, round: Round): Point[] {
  return lineCircle(line.edge.a, line.along, round.center, round.radius);
}

/**
 * When the centre of another round curve (`other`, which moves by `velocity` as seen from the curve) comes to lie
 * square to the end `end` of a curve: then the place nearest to it leaves the curve there.
 */
export function timesSquareToEnd(curve: Curve, end: Point, other: Point, velocity: Vector): Time[] {
  if (curve.shape === 'straight') {
    const times = when(
      dot({ dx: other.x - end.x, dy: other.y - end.y }, curve.along),
      dot(velocity, curve.along),
    );
    return times.map((time) => turning(time, end, other, velocity));
  }
  const spoke = { dx: end.x - curve.center.x, dy: end.y - curve.center.y };
  const out = { dx: other.x - curve.center.x, dy: other.y - curve.center.y };
  return when(cross(out, spoke), cross(velocity, spoke)).map((time) => turning(time, end, other, velocity));
}

/**
 * Directions at the end of an edge may differ by so many times `SAME_DIRECTION` and still be taken for one: the search
 * for webs lets each of two leans, and the place of a corner, differ by one, and twice that at a corner.
 */
const SAME_TIMES = 4;

/** The blur of a time at which a line turns about an end: until it has turned by more than is told apart. */
function turning(time: Time, end: Point, other: Point, velocity: Vector): Time {
  const there = { dx: other.x + velocity.dx * time.s - end.x, dy: other.y + velocity.dy * time.s - end.y };
  const pace = Math.abs(cross(velocity, there));
  const blur = (SAME_TIMES * SAME_DIRECTION * dot(there, there)) / pace;
  return Number.isFinite(blur) ? { ...time, blur } : time;
}

/** When a place that moves, of radius `reach` growing by `rate`, is that far from a place that does not. */
function timesApart(
  m: Round,
  from: Point,
  reach: number,
  rate: number,
  { velocity, growth }: Motion,
  slack: number,
): Time[] {
  const w = { dx: m.center.x - from.x, dy: m.center.y - from.y };
  if (growth !== 0) return when(Math.hypot(w.dx, w.dy) - reach, -rate);
  if (reach < -slack) return [];
  const middle = -dot(w, velocity);
  const aside = Math.abs(cross(w, velocity));
  if (aside > reach + slack) return [];
  const half = Math.sqrt(Math.max(0, (reach - aside) * (reach + aside)));
  // Where it only just comes near enough, there are two values, one or none as rounding wants; all three are given.
  const isLong = reach - aside < slack;
  if (isLong) return [middle - half, middle, middle + half].map((s) => ({ s, isLong }));
  // It moves along the line, and at a slant to the one between the centres.
  return [middle - half, middle + half].map((s) => ({ s, isLong, pace: half / reach }));
}

/** When a number that is `value` now and grows by `rate` is 0. */
function when(value: number, rate: number): Time[] {
  return Math.abs(rate) < PARALLEL ? [] : [{ s: -value / rate, isLong: false, pace: Math.abs(rate) }];
}

function dot(a: Vector, b: Vector): number {
  return a.dx * b.dx + a.dy * b.dy;
}

function cross(a: Vector, b: Vector): number {
  return a.dx * b.dy - a.dy * b.dx;
}

/**
 * Whether metal can lie between a rim and what faces it so. Metal is around a rim that goes round what it cuts away,
 * within the inner rim of a ring, and to the right of a straight one.
 */
export function facesMetal(rim: Curve, facing: Facing): boolean {
  if (rim.shape === 'straight') return facing === -1;
  // A ring's inner rim is no nearer to a straight wall than to the rest of it: no neck is there.
  return rim.way > 0 ? facing !== 'around' : facing === 'around';
}
