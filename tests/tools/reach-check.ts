import {
  area,
  directionAtEnd,
  directionAtStart,
  type Edge,
  intersect,
  nearestOnEdge,
  offset,
  type Point,
  perimeter,
  pointAlong,
  type Region,
  samePoint,
  type Unreached,
  unreached,
} from '@edgebite/core';
import { boxOf, edgesOf } from '@edgebite/core/testing';
import { type PathCase, sizeOf } from './path-cases.js';

/** What the check has found. */
export interface ReachMeasures {
  /** Largest difference between a limit and the one found by bisection at its place, as a share of the size; not of
   * parts far from the origin. */
  readonly limitOff: number;
  readonly limits: number;
  readonly corners: number;
  readonly tips: number;
}

/** Places along each untouched stretch at which the largest disc is looked for. */
const SHARES = [0, 0.07, 0.21, 0.35, 0.5, 0.66, 0.8, 0.94, 1];

/** A limit may be off by this share of the size. */
const OFF = 1e-9;

/**
 * Far from the origin it may be off by so many last digits of the coordinates: where a disc is stopped by something
 * that hardly rises above the wall, its radius is lost by as many digits as the height is.
 */
const LAST_DIGITS = 1e7;

/** Coordinates of this many sizes are far. */
const FAR = 100;

/**
 * Puts the limits of unreached places to the test, with bisection on distances to the given edges and nothing else:
 * no disc that touches a place of an untouched stretch is stopped at a smaller radius, and at the place that sets
 * the limit the largest one has just that radius. A tool of a little less reaches all of the place.
 * @throws Error that says what is wrong.
 */
export function checkReach(one: PathCase): ReachMeasures {
  const out = one.side === 'outside' ? 1 : -1;
  const kept = one.allowance > 0 ? offset(one.region, out * one.allowance) : one.region;
  const edges = edgesOf(kept);
  const size = sizeOf(one);
  const box = boxOf(edges);
  const far = Math.max(...[box.minX, box.minY, box.maxX, box.maxY].map(Math.abs));
  const slack = OFF * size + (far > FAR * size ? LAST_DIGITS * Number.EPSILON * far : 0);
  const found = unreached(one.region, one.radius, one);
  let limitOff = 0;
  for (const place of found) {
    const { radius, by, at } = place.limit;
    if (by === 'corner') checkCorner(kept, one, place);
    // A gap as narrow as that is part of the wall to the bisection.
    const walls = by === 'corner' || radius < OWN * size ? [] : place.along;
    for (const edge of walls) {
      for (const share of SHARES) {
        const p = pointAlong(edge, share);
        const most = largestAt(edges, p, edge, one.radius, size);
        if (most < radius - slack) {
          throw new Error(`${by} ${radius}, but (${p.x}, ${p.y}) is touched by none over ${most}`);
        }
      }
    }
    if (walls.length > 0 && (by === 'arc' || by === 'gap')) {
      const own = walls.filter((edge) => nearestOnEdge(edge, at).distance < 1e-8 * size);
      const most = Math.min(...own.map((edge) => largestAt(edges, at, edge, one.radius, size)));
      const off = Math.abs(Math.min(most, one.radius) - Math.min(radius, one.radius));
      if (off > slack) throw new Error(`${by} ${radius} at (${at.x}, ${at.y}), but ${most} by bisection`);
      if (far <= FAR * size) limitOff = Math.max(limitOff, off / size);
    }
    if (by !== 'corner') checkSmaller(one, place, size);
    if (place.narrowest !== null) checkNarrow(edges, place.narrowest, slack);
  }
  return {
    limitOff,
    limits: found.length,
    corners: found.filter(({ limit }) => limit.by === 'corner').length,
    tips: found.filter(({ limit }) => limit.by === 'tips').length,
  };
}

/** Digits that a distance between two places has lost, in units of the last one of their coordinates. */
const LOST = 16;

/** Edges nearer than this share of the size are the wall itself and its neighbours at a joint. */
const OWN = 1e-5;

/** Radius of the largest disc to the left of an edge that touches it at a place: 60 halvings. */
function largestAt(edges: readonly Edge[], p: Point, edge: Edge, most: number, size: number): number {
  const n = leftOf(edge, p);
  const rounding = LOST * Number.EPSILON * Math.max(Math.abs(p.x), Math.abs(p.y), most);
  const others = edges.filter((other) => nearestOnEdge(other, p).distance > OWN * size);
  const hollow = edge.kind === 'arc' && edge.ccw ? edge.radius : Infinity;
  const fits = (radius: number): boolean => {
    const x = p.x + radius * n.x;
    const y = p.y + radius * n.y;
    return others.every((other) => nearestOnEdge(other, { x, y }).distance >= radius - rounding);
  };
  let low = 0;
  let high = 1.01 * most;
  if (fits(high)) return Math.min(high, hollow);
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return Math.min(low, hollow);
}

function leftOf(edge: Edge, p: Point): Point {
  if (edge.kind === 'arc') {
    const side = (edge.ccw ? 1 : -1) / edge.radius;
    return { x: (edge.center.x - p.x) * side, y: (edge.center.y - p.y) * side };
  }
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  return { x: (edge.a.y - edge.b.y) / length, y: (edge.b.x - edge.a.x) / length };
}

/** A tool of an eighth of the radius leaves something in the corner too, unless that is next to nothing. */
function checkCorner(kept: Region, one: PathCase, { along, limit: { at } }: Unreached): void {
  const radius = one.radius / 8;
  const arriving = along.filter(({ b }) => samePoint(b, at)).map(directionAtEnd);
  const leaving = along.filter(({ a }) => samePoint(a, at)).map(directionAtStart);
  const wedges = arriving.flatMap((p) =>
    leaving.map((q) => Math.PI - Math.abs(Math.atan2(p.dx * q.dy - p.dy * q.dx, p.dx * q.dx + p.dy * q.dy))),
  );
  if (wedges.length === 0) throw new Error(`no edges meet at the corner (${at.x}, ${at.y})`);
  const size = sizeOf(one);
  if (radius / Math.sin(Math.min(...wedges) / 2) - radius < 1e-6 * size) return;
  const near = unreached(kept, radius, { side: one.side }).some((place) =>
    place.along.some((edge) => nearestOnEdge(edge, at).distance < 1e-8 * size),
  );
  if (!near) throw new Error(`an eighth of the tool leaves nothing at the corner (${at.x}, ${at.y})`);
}

/** Two walls touch a disc of the radius on opposite sides, and none goes into it. */
function checkNarrow(
  edges: readonly Edge[],
  { radius, at }: { radius: number; at: Point },
  slack: number,
): void {
  const contacts = edges
    .map((edge) => nearestOnEdge(edge, at))
    .filter(({ distance }) => distance <= radius + slack);
  // Of an arc round the place all is as near, both ends of a diameter too.
  const isRound = edges.some(
    (edge) => edge.kind === 'arc' && Math.hypot(edge.center.x - at.x, edge.center.y - at.y) < slack,
  );
  const opposite =
    isRound ||
    contacts.some((p) =>
      contacts.some((q) => Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) >= 2 * (radius - slack)),
    );
  const nearest = Math.min(...contacts.map(({ distance }) => distance));
  if (!opposite || nearest < radius - 4 * slack) {
    throw new Error(`no gap of half ${radius} at (${at.x}, ${at.y}): ${contacts.map((c) => c.distance)}`);
  }
}

/** A tool a little smaller than the limit leaves nothing of the place. */
function checkSmaller(one: PathCase, { region, limit }: Unreached, size: number): void {
  const radius = limit.radius - 1e-6 * size;
  if (radius <= 1e-7 * size) return;
  const still = unreached(one.region, radius, one).map((place) => place.region);
  const over = still.map((left) => intersect([region, left])).filter((left) => left.length > 0);
  const thick = over.filter((left) => (2 * area(left)) / perimeter(left) > 1e-7 * size);
  if (thick.length > 0) {
    throw new Error(
      `${limit.by} ${limit.radius}: a tool of ${radius} leaves ${area(thick[0] as Region)} of it`,
    );
  }
}
