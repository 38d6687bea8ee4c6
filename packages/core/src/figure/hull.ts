import { withinTurn } from '../geometry/angle.js';
import { extentOf } from '../geometry/bounds.js';
import type { Edge, Source } from '../geometry/edge.js';
import { lineLike } from '../geometry/parts.js';
import { distance, type Point, samePoint } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { type Bulge, type Stretch, supportOf } from './support.js';

/**
 * The convex hull of a region: the smallest convex region that has all of it. Of lines and arcs, exact; arcs and lines of
 * the region keep their names, lines across a hollow have none. Empty for an empty region.
 */
export function convexHull(region: Region): Region {
  const box = boundsOf(region);
  if (box === null) return [];
  const weld = weldTolerance(extentOf(box), Math.max(...Object.values(box).map(Math.abs)));
  const ends = endsOf(region);
  const stops = withoutReturns(
    whole(supportOf(region)).map((one) => stop(one, ends, weld)),
    weld,
  );
  const names = namesOf(region);
  const outer: Edge[] = [];
  const kept = stops.filter((one, k) => {
    const before = stops[(k + stops.length - 1) % stops.length] as Stop;
    const after = stops[(k + 1) % stops.length] as Stop;
    // A corner at the end of an arc is the end of the arc.
    const isEnd = (p: Point, other: Stop) => other.arc !== null && distance(p, one.a) <= weld;
    return one.arc !== null || !(isEnd(before.b, before) || isEnd(after.a, after));
  });
  kept.forEach((one, k) => {
    const next = kept[(k + 1) % kept.length] as Stop;
    const b = distance(one.b, next.a) <= weld ? next.a : one.b;
    if (one.arc !== null && !samePoint(one.a, b)) {
      const { center, radius, source } = one.arc;
      const arc = { kind: 'arc', a: one.a, b, center, radius, ccw: true } as const;
      outer.push(...inTwo(source === null ? arc : { ...arc, source }, one.turn));
    }
    if (samePoint(b, next.a)) return;
    const source = names.get(key(b, next.a));
    outer.push(lineLike({ source }, b, next.a));
  });
  return [{ outer, holes: [] }];
}

/** Where the hull comes to something, and where it leaves it. */
interface Stop {
  readonly a: Point;
  readonly b: Point;
  /** null for a corner. */
  readonly arc: Bulge | null;
  readonly turn: number;
  /** How near another place is the same. */
  readonly near: number;
}

/**
 * Directions told apart by less, radians, are one: where a line is tangent to two arcs both reach equally far to second order, so
 * that the direction in which the one overtakes the other is known to the root of the rounding only.
 */
const ALIKE = 1e-7;

/** How near two places on an arc are one. */
const nearOn = ({ radius }: Bulge, weld: number): number => Math.max(weld, ALIKE * radius);

/**
 * The same without places that are gone to only to come back: along a common tangent of two arcs rounding may tell the one and
 * the other by turns.
 */
function withoutReturns(stops: readonly Stop[], weld: number): Stop[] {
  const kept: Stop[] = [];
  // From the longest arc on, which nothing else overtakes for a moment.
  const longest = stops.reduce((best, { turn }, k) => (turn > (stops[best]?.turn ?? 0) ? k : best), 0);
  for (const one of [...stops.slice(longest), ...stops.slice(0, longest)]) {
    const [before, last] = kept.slice(-2);
    const isReturn =
      before !== undefined &&
      last?.arc === null &&
      distance(before.b, one.a) <= Math.max(before.near, one.near) &&
      distance(last.a, one.a) > weld;
    if (!isReturn) kept.push(one);
    else {
      kept.pop();
      // An arc goes on from where it was come back to; a mere place is there already.
      if (one.arc !== null) kept.push(one);
    }
  }
  return kept;
}

/** The first and the last stretch are one where the same thing goes on. */
function whole(stretches: readonly Stretch[]): Stretch[] {
  const [first, ...others] = stretches;
  const last = others.at(-1);
  if (first === undefined || last === undefined || last.bulge !== first.bulge) return [...stretches];
  return [...others.slice(0, -1), { ...last, to: last.to + first.to }];
}

function stop(
  { from, to, bulge }: Stretch,
  ends: ReadonlyMap<Bulge['center'], readonly Point[]>,
  weld: number,
): Stop {
  const { center, radius } = bulge;
  const near = nearOn(bulge, weld);
  const isArc = radius > 0 && radius * (to - from) > near;
  if (radius === 0) return { a: center, b: center, arc: null, turn: 0, near };
  const at = (angle: number): Point => {
    const p = { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
    return ends.get(center)?.find((end) => distance(end, p) <= near) ?? p;
  };
  const a = at(withinTurn(from));
  return isArc
    ? { a, b: at(withinTurn(to)), arc: bulge, turn: to - from, near }
    : { a, b: a, arc: null, turn: 0, near };
}

/** The ends of the arcs round each centre: the hull takes them as they are. */
function endsOf(region: Region): Map<Point, Point[]> {
  const ends = new Map<Point, Point[]>();
  for (const edge of region.flatMap(({ outer }) => outer)) {
    if (edge.kind === 'line') continue;
    const known = ends.get(edge.center) ?? [];
    known.push(edge.a, edge.b);
    ends.set(edge.center, known);
  }
  return ends;
}

function namesOf(region: Region): Map<string, Source> {
  const names = new Map<string, Source>();
  for (const edge of region.flatMap(({ outer }) => outer))
    if (edge.kind === 'line' && edge.source !== undefined) names.set(key(edge.a, edge.b), edge.source);
  return names;
}

const key = (a: Point, b: Point): string => `${a.x} ${a.y} ${b.x} ${b.y}`;

/** An arc all round comes back to its start: it is two. */
function inTwo(arc: Extract<Edge, { kind: 'arc' }>, turn: number): Edge[] {
  if (turn < 2 * Math.PI - 1e-9) return [arc];
  const middle = { x: 2 * arc.center.x - arc.a.x, y: 2 * arc.center.y - arc.a.y };
  return [
    { ...arc, b: middle },
    { ...arc, a: middle },
  ];
}
