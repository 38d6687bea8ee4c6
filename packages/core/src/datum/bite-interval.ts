import { distance, type Point, type Vector } from '../geometry/point.js';
import { asDrawn, driftBetween, type Placed } from './drift.js';
import type { Growth } from './growth.js';
import { alongDrift, type Effects, type Interval, lengthUnder, spanned, spread, within } from './reach.js';
import type { SetPart } from './setup.js';

/** A circle of a cut, and how far it may be off. */
export interface PlacedCircle {
  readonly placed: Placed;
  readonly center: Point;
  readonly radius: number;
}

const rimOf = (_: Growth, { rim }: Growth) => rim;

/** By how much the place of a circle may change along a unit vector beside a place of the part, as its size does by `grown`. */
function effectsOn(
  circle: PlacedCircle,
  at: Point,
  n: Vector,
  part: SetPart,
  grown: (one: Growth, other: Growth) => number,
): Effects {
  const drift = driftBetween({ placed: asDrawn(at), at }, { placed: circle.placed, at: circle.center }, part);
  return alongDrift(drift, n, grown);
}

function added(at: number, off: Effects): Interval {
  const { worst, rss } = spread(off);
  return { worst: [at + worst[0], at + worst[1]], rss: [at + rss[0], at + rss[1]] };
}

/**
 * Between what the depth of a circle in a straight face can lie, to its deepest place. Below 0 it says how far it misses.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83: depth r + h, with the centre h inside the face.
 * @param at a place of the face
 * @param inward unit normal of the face, into the metal
 */
export function depthInterval(circle: PlacedCircle, at: Point, inward: Vector, part: SetPart): Interval {
  const { center, radius } = circle;
  const h = insideFace(center, at, inward);
  // The face is measured where it is nearest to the centre: further along it, it is as far.
  const foot = { x: center.x - inward.dx * h, y: center.y - inward.dy * h };
  return added(radius + h, effectsOn(circle, foot, inward, part, rimOf));
}

/**
 * The same in a round face, along the line through both middles: from outside of a boss, or out of a hole.
 *
 * Source: distance of the centres less or plus the radii.
 * @param isBoss whether the metal lies inside of the face
 */
export function roundDepthInterval(
  circle: PlacedCircle,
  face: { readonly center: Point; readonly radius: number; readonly at: Point },
  isBoss: boolean,
  part: SetPart,
): Interval {
  const { center, radius, placed } = circle;
  const drift = driftBetween({ placed: asDrawn(face.at), at: face.at }, { placed, at: center }, part);
  const d = { dx: center.x - face.center.x, dy: center.y - face.center.y };
  const own = isBoss ? face.radius + radius : radius - face.radius;
  const off = lengthUnder(d, drift, isBoss ? -1 : 1, rimOf);
  const plus = ([low, high]: readonly [number, number]) => [own + low, own + high] as const;
  return { worst: plus(off.worst), rss: plus(off.rss) };
}

/**
 * Between what the opening of a circle in a straight face can lie, where both its ends are on the face. By squares it is what
 * it is with both errors at the one root of squares at which they change it most.
 *
 * Source: chord 2 sqrt(r² - h²), Machinery's Handbook, 31st ed., p. 83.
 */
export function openingInterval(circle: PlacedCircle, at: Point, inward: Vector, part: SetPart): Interval {
  const { center, radius } = circle;
  const h = insideFace(center, at, inward);
  const foot = { x: center.x - inward.dx * h, y: center.y - inward.dy * h };
  const place = added(
    h,
    effectsOn(circle, foot, inward, part, () => 0),
  );
  const size = added(radius, effectsOn(circle, foot, { dx: 0, dy: 0 }, part, rimOf));
  return within({
    worst: chords(place.worst, size.worst),
    rss: chordsBySquares(place.rss, size.rss),
  });
}

type Ends = readonly [number, number];

/** The widest chord is in the middle. */
function chords([low, high]: Ends, [least, most]: Ends): Ends {
  const widest = low < 0 && high > 0 ? 2 * most : Math.max(chord(most, low), chord(most, high));
  return [Math.min(chord(least, low), chord(least, high)), widest];
}

function chordsBySquares(h: Ends, r: Ends): Ends {
  const [place, size] = [(h[0] + h[1]) / 2, (r[0] + r[1]) / 2];
  const [byPlace, bySize] = [(h[1] - h[0]) / 2, (r[1] - r[0]) / 2];
  if (bySize === 0) return chords(h, r);
  // Slopes of half the chord, times itself: -h and r.
  const most = Math.hypot(byPlace * place, bySize * size);
  const at = (sign: 1 | -1) =>
    chord(size + (sign * bySize * bySize * size) / most, place - (sign * byPlace * byPlace * place) / most);
  return [at(-1), at(1)];
}

/** Width of a circle at a distance from its centre; 0 beyond it. */
export function chord(radius: number, h: number): number {
  return 2 * Math.sqrt(Math.max(0, (radius - h) * (radius + h)));
}

/** Where a circle crosses a straight edge: a place of that edge, its direction, and what the crossing is measured from. */
export interface Crossing {
  readonly at: Point;
  /** Unit vector along the edge. */
  readonly along: Vector;
  /** Unit vector square to it. */
  readonly square: Vector;
  /** A place of the part on the edge. */
  readonly from: Point;
}

/**
 * Between what a figure can lie that grows by `factor` with the place along a straight edge at which a circle crosses it. At
 * worst the crossing goes as far as place, distance from the edge and size let it together.
 *
 * Source: place c ± sqrt(r² - q²) of a circle on a line at the distance q (Pythagoras); by squares, its derivatives.
 */
export function crossingInterval(
  figure: number,
  factor: number,
  circle: PlacedCircle,
  { at, along, square, from }: Crossing,
  part: SetPart,
): Interval {
  const { center, radius } = circle;
  const drift = driftBetween(
    { placed: asDrawn(from), at: from },
    { placed: circle.placed, at: center },
    part,
  );
  const q = (center.x - at.x) * square.dx + (center.y - at.y) * square.dy;
  const s = (at.x - center.x) * along.dx + (at.y - center.y) * along.dy;
  const place = alongDrift(drift, along, () => 0);
  const off = alongDrift(drift, square, () => 0);
  const size = alongDrift(drift, { dx: 0, dy: 0 }, rimOf);
  const [least, most] = added(radius, { ...size, slack: 0 }).worst;
  const ends = crossingAtWorst({ place, off, q, sign: s < 0 ? -1 : 1, radii: [least, most] });
  const worstEnds = ends.map((end) => figure + factor * (end - s)).sort((a, b) => a - b) as [number, number];
  // How the crossing goes along the edge: with the place, and by q / s and r / s of the others.
  const slope = (parts: { place: number; off: number; size: number }) =>
    factor * (parts.place - (q * parts.off - radius * parts.size) / s);
  const known = slope({ place: place.known, off: off.known, size: size.known });
  const rss = Math.hypot(
    ...place.causes.map(
      ({ by: moved, share }, k) =>
        share * slope({ place: moved, off: off.causes[k]?.by as number, size: size.causes[k]?.by as number }),
    ),
  );
  const middle = figure + known;
  return within({ worst: worstEnds, rss: [middle - rss, middle + rss] });
}

/**
 * The ends of p ± √(r² - q²) at worst, for p and q that the same causes move. It grows with the radius, and bends one way in p
 * and q: so it is at its one end at a corner of all that the causes span, exactly, and at its other goes no further than the
 * plane that touches it in the middle, and than what both could do on their own.
 */
function crossingAtWorst(at: {
  readonly place: Effects;
  readonly off: Effects;
  readonly q: number;
  readonly sign: 1 | -1;
  readonly radii: Ends;
}): Ends {
  const { place, off, q, sign, radii } = at;
  const { slack } = place;
  const middle = { dx: sign * place.known, dy: q + off.known };
  const sides = place.causes.map(({ by }, k) => ({ dx: sign * by, dy: off.causes[k]?.by as number }));
  const half = (r: number, h: number) => chord(r, h) / 2;
  const corners = spanned(middle, sides);
  const far = Math.max(...corners.map(({ dy }) => Math.abs(dy))) + slack;
  const low = Math.min(...corners.map(({ dx, dy }) => dx + half(radii[0], Math.abs(dy) + slack))) - slack;
  const top = half(radii[1], middle.dy);
  const heights = corners.map(({ dy }) => dy);
  const nearestToMiddle = Math.max(0, Math.min(...heights), -Math.max(...heights)) - slack;
  const box = Math.max(...corners.map(({ dx }) => dx)) + half(radii[1], Math.max(0, nearestToMiddle)) + slack;
  const slope = -middle.dy / top;
  const plane =
    middle.dx +
    top +
    sides.reduce((sum, { dx, dy }) => sum + Math.abs(dx + slope * dy), slack * (1 + Math.abs(slope)));
  const high = far < radii[0] ? Math.min(box, plane) : box;
  return sign > 0 ? [low, high] : [-high, -low];
}

/**
 * Between what is left can lie, from the deepest place of a circle straight on to a straight far face.
 * @param far a place of that face, and its unit normal
 */
export function leftInterval(
  left: number,
  circle: PlacedCircle,
  inward: Vector,
  far: { readonly at: Point; readonly normal: Vector },
  part: SetPart,
): Interval {
  const { at, normal } = far;
  const square = normal.dx * inward.dx + normal.dy * inward.dy;
  const toFar = { dx: -normal.dx / square, dy: -normal.dy / square };
  return added(
    left,
    effectsOn(circle, at, toFar, part, (_, { rim }) => -rim),
  );
}

/** How far a centre lies inside a face that runs along a direction with the metal at its left. */
export function insideFace(center: Point, at: Point, inward: Vector): number {
  return (center.x - at.x) * inward.dx + (center.y - at.y) * inward.dy;
}

/** Where two straight lines cross, each through a place in a direction; null where they hardly do. */
export function whereLinesCross(a: Point, along: Vector, b: Point, other: Vector): Point | null {
  const turn = along.dx * other.dy - along.dy * other.dx;
  if (Math.abs(turn) < PARALLEL) return null;
  const t = ((b.x - a.x) * other.dy - (b.y - a.y) * other.dx) / turn;
  return { x: a.x + t * along.dx, y: a.y + t * along.dy };
}

/** Sine of an angle under which two lines count as parallel. */
const PARALLEL = 1e-6;

/** Unit vector along a straight edge. */
export function directionOf(a: Point, b: Point): Vector {
  const length = distance(a, b);
  return { dx: (b.x - a.x) / length, dy: (b.y - a.y) / length };
}
