import type { Point, Vector } from '../geometry/point.js';
import { driftBetween, giveWay, type Placed, type Wall } from './drift.js';
import type { Growth } from './growth.js';
import { type Effects, type Interval, lengthUnder, spread, within } from './reach.js';
import type { SetPart } from './setup.js';

/** A boundary that ends at the tip of a knife edge; a circle has what it goes round at its left if `ccw`. */
export type TipCurve = { readonly placed: Placed; readonly wall: Wall } & (
  | { readonly kind: 'line'; readonly at: Point; readonly normal: Vector }
  | { readonly kind: 'circle'; readonly center: Point; readonly radius: number; readonly ccw: boolean }
);

type Line = TipCurve & { readonly kind: 'line' };
type Circle = TipCurve & { readonly kind: 'circle' };

/** A number that an angle depends on: as drawn, with what is known of its errors, between what it can lie, and by cause. */
interface Measured {
  readonly at: number;
  readonly middle: number;
  readonly worst: readonly [number, number];
  readonly causes: Effects['causes'];
}

function measured(at: number, off: Effects): Measured {
  const { worst } = spread(off);
  return { at, middle: at + off.known, worst: [at + worst[0], at + worst[1]], causes: off.causes };
}

/**
 * Between what the angle of a knife edge can lie, radians. A shift turns no straight boundary, so between two of those only a
 * lay that may be turned does; a circle meets a line at an angle that its size and its distance from the line change, and
 * another circle at one that both sizes and the distance of the centres change. Where they no longer meet it counts as 0 or a
 * half turn, which they go through on the way. Null where the two do not meet at that angle as drawn.
 *
 * Source: cosine of the angle between circle and line, h / r; law of cosines for two circles; root of squares of an angle by
 * its first derivatives, JCGM 100:2008 (GUM), 5.1.2.
 * @param tip where the two meet as drawn
 */
export function angleInterval(
  angle: number,
  one: TipCurve,
  other: TipCurve,
  tip: Point,
  part: SetPart,
): Interval | null {
  if (one.kind === 'line') {
    return other.kind === 'line'
      ? lineToLine(angle, one, other, tip, part)
      : lineToCircle(angle, one, other, tip, part);
  }
  return other.kind === 'line'
    ? lineToCircle(angle, other, one, tip, part)
    : circleToCircle(angle, one, other, part);
}

function lineToLine(angle: number, one: Line, other: Line, tip: Point, part: SetPart): Interval {
  const { causes } = driftBetween({ placed: one.placed, at: tip }, { placed: other.placed, at: tip }, part);
  const turns = causes.map(({ one: a, other: b, share }) => ({ by: b.turn - a.turn, share }));
  const off = spread({ known: 0, causes: turns, slack: 0 });
  const kept = ([low, high]: readonly [number, number]) =>
    [Math.max(0, angle + low), Math.min(Math.PI, angle + high)] as const;
  return { worst: kept(off.worst), rss: kept(off.rss) };
}

function lineToCircle(angle: number, line: Line, circle: Circle, tip: Point, part: SetPart): Interval | null {
  const { at, normal } = line;
  const drift = driftBetween(
    { placed: line.placed, at: tip },
    { placed: circle.placed, at: circle.center },
    part,
  );
  const along = ({ dx, dy }: Vector) => dx * normal.dx + dy * normal.dy;
  // A straight wall of a cut has the cut at its left, where its normal points: as it grows, the wall goes the other way.
  const distance = measured(along({ dx: circle.center.x - at.x, dy: circle.center.y - at.y }), {
    known: along(drift.shift) + giveWay(drift.one, line.wall),
    causes: drift.causes.map(({ by, one, share }) => ({ by: along(by) + giveWay(one, line.wall), share })),
    slack: drift.slack,
  });
  const radius = radiusOf(circle, drift.other, drift.causes);
  const turns = drift.causes.map(({ one, share }) => ({ by: one.turn, share }));
  return turned(angle, [distance, radius], ([h, r]) => (h as number) / (r as number), {
    known: 0,
    causes: turns,
    slack: 0,
  });
}

function circleToCircle(angle: number, one: Circle, other: Circle, part: SetPart): Interval | null {
  const drift = driftBetween(
    { placed: one.placed, at: one.center },
    { placed: other.placed, at: other.center },
    part,
  );
  const d = { dx: other.center.x - one.center.x, dy: other.center.y - one.center.y };
  const shifted = { dx: d.dx + drift.shift.dx, dy: d.dy + drift.shift.dy };
  const middle = Math.hypot(shifted.dx, shifted.dy);
  if (middle === 0) return null;
  const distance: Measured = {
    at: Math.hypot(d.dx, d.dy),
    middle,
    worst: lengthUnder(d, drift, 1, () => 0).worst,
    causes: drift.causes.map(({ by, share }) => ({
      by: (by.dx * shifted.dx + by.dy * shifted.dy) / middle,
      share,
    })),
  };
  const sizes = [
    radiusOf(
      one,
      drift.one,
      drift.causes.map(({ one: own, share }) => ({ other: own, share })),
    ),
    radiusOf(other, drift.other, drift.causes),
  ];
  return turned(
    angle,
    [distance, ...sizes],
    (values) => {
      const [gap, r, s] = values as [number, number, number];
      return (r * r + s * s - gap * gap) / (2 * r * s);
    },
    NO_TURN,
  );
}

const NO_TURN: Effects = { known: 0, causes: [], slack: 0 };

/** The radius of a circle as its cut grows. */
function radiusOf(
  { radius, wall, ccw }: Circle,
  known: Growth,
  causes: readonly { readonly other: Growth; readonly share: number }[],
): Measured {
  const grown = ({ rim, core }: Growth) =>
    wall === 'own' ? 0 : wall === 'core' ? core : ccw ? rim : 0 - rim;
  return measured(radius, {
    known: grown(known),
    causes: causes.map(({ other, share }) => ({ by: grown(other), share })),
    slack: 0,
  });
}

/** Angles this close (radians) are one: near a tangent a rounding of 1e-9 of the radius turns an angle by 5e-5. */
const SAME_ANGLE = 1e-3;

/** Share of a number by which it is changed to see how an angle depends on it. */
const NUDGE = 1e-6;

/** From the intervals of some numbers to that of the angle: it is the arc cosine, or what that leaves of a half turn. */
function turned(
  angle: number,
  numbers: readonly Measured[],
  cosine: (values: readonly number[]) => number,
  turn: Effects,
): Interval | null {
  const drawn = cosine(numbers.map(({ at }) => at));
  const [asIs, rest] = [Math.abs(inner(drawn) - angle), Math.abs(Math.PI - inner(drawn) - angle)];
  if (Math.min(asIs, rest) > SAME_ANGLE) return null;
  const isInner = asIs <= rest;
  const worst = cosinesAtWorst(numbers, cosine);
  const middle = cosine(numbers.map((one) => one.middle));
  const rss = cosineBySquares(numbers, cosine);
  const off = spread(turn);
  const ends = ([low, high]: readonly [number, number]): readonly [number, number] => {
    const angles = [inner(low), inner(high)].map((t) => (isInner ? t : Math.PI - t)) as [number, number];
    return [Math.min(...angles), Math.max(...angles)];
  };
  const [center] = ends([middle, middle]);
  const [low, high] = ends(worst);
  const [least, most] = ends([middle - rss, middle + rss]);
  const kept = (value: number) => Math.min(Math.PI, Math.max(0, value));
  return within({
    worst: [kept(low + off.worst[0]), kept(high + off.worst[1])],
    rss: [
      kept(center - Math.hypot(center - least, off.rss[1])),
      kept(center + Math.hypot(most - center, off.rss[1])),
    ],
  });
}

function inner(cosine: number): number {
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/**
 * The least and the most that a cosine can be: at the ends of its numbers, and, of two circles, where the angle at the other
 * centre is square: there it no longer falls with a radius.
 */
function cosinesAtWorst(
  numbers: readonly Measured[],
  cosine: (values: readonly number[]) => number,
): readonly [number, number] {
  const ends = numbers.map(({ worst }) => worst);
  const corners = ends.reduce<number[][]>(
    (all, [low, high]) =>
      all.flatMap((so) => [
        [...so, low],
        [...so, high],
      ]),
    [[]],
  );
  const squares = corners.flatMap(([gap, r, s]): number[][] => {
    if (gap === undefined || r === undefined || s === undefined) return [];
    const turning = ([low, high]: readonly [number, number], square: number) =>
      square > low * low && square < high * high ? [Math.sqrt(square)] : [];
    return [
      ...turning(ends[1] as readonly [number, number], s * s - gap * gap).map((own) => [gap, own, s]),
      ...turning(ends[2] as readonly [number, number], r * r - gap * gap).map((own) => [gap, r, own]),
    ];
  });
  const values = [...corners, ...squares].map(cosine);
  return [Math.min(...values), Math.max(...values)];
}

/** How far a cosine may be off by squares, from its derivatives at the middle. */
function cosineBySquares(
  numbers: readonly Measured[],
  cosine: (values: readonly number[]) => number,
): number {
  const middle = numbers.map((one) => one.middle);
  const scale = Math.max(...middle.map(Math.abs)) * NUDGE;
  const slopes = middle.map((value, k) => {
    const [up, down] = [middle.with(k, value + scale), middle.with(k, value - scale)];
    return (cosine(up) - cosine(down)) / (2 * scale);
  });
  const count = numbers[0]?.causes.length ?? 0;
  const effects = Array.from({ length: count }, (_, cause) =>
    numbers.reduce((sum, { causes }, k) => {
      const own = causes[cause];
      return own === undefined ? sum : sum + (slopes[k] as number) * own.by * own.share;
    }, 0),
  );
  return Math.hypot(...effects);
}
