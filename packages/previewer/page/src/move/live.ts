import type { Place } from '../worker/sketch.js';
import { type Disc, isInside, nearestOn, type Obstacle, wayTo } from './obstacles.js';
import { between, cross, dot, lengthOf, unitOf } from './vector.js';

/** A length from place to place, and to what it leads. */
export interface Span {
  readonly from: Place;
  readonly to: Place;
  readonly size: number;
  readonly source: string;
}

/** How a round cut opens a face. */
export interface Opened {
  /** From the face to the deepest place of the circle. */
  readonly depth: Span;
  /** Across the face, from horn to horn. */
  readonly opening: Span;
}

/** What a hand that moves a round cut wants to know of its place. */
export interface Live {
  /** Of the cut. */
  readonly radius: number;
  /** From the centre to the two nearest edges that do not run the same way. */
  readonly edges: readonly Span[];
  /** The thinnest metal between the cut and what is next to it, on its rim; null where there is none. */
  readonly web: Span | null;
  /** Null where it opens no face. */
  readonly opened: Opened | null;
}

/** Less than this share of a length is rounding. */
const SLACK = 1e-6;

/** So many of the nearest are looked at for a web: what is farther off lies behind them. */
const NEXT = 12;

/** Two edges run another way if the sine of the angle between them is at least this. */
const ASKEW = 0.2;

/** The dimensions of a round cut as it stands between the edges of its part and other cuts. */
export function liveOf(cut: Disc, edges: readonly Obstacle[], others: readonly Obstacle[]): Live {
  return {
    radius: cut.radius,
    edges: edgesOf(cut, edges),
    web: webOf(cut, edges, others),
    opened: openedOf(cut, edges),
  };
}

function edgesOf({ at }: Disc, edges: readonly Obstacle[]): readonly Span[] {
  const spans = edges
    .flatMap((one): Span[] => {
      if (one.edge?.kind !== 'line') return [];
      const to = nearestOn(one.edge, at);
      const size = lengthOf(between(at, to));
      // Only where it is met square: past its end there is no distance that a drawing would give.
      const [along, off] = [unitOf(between(one.edge.a, one.edge.b)), between(to, at)];
      const isSquare = Math.abs(dot(off, along)) <= SLACK * (size + 1);
      return isSquare && size > 0 ? [{ from: at, to, size, source: one.source }] : [];
    })
    .sort((a, b) => a.size - b.size);
  const [first] = spans;
  if (first === undefined) return [];
  const way = unitOf(between(first.from, first.to));
  const second = spans.find(({ from, to }) => Math.abs(cross(way, unitOf(between(from, to)))) >= ASKEW);
  return second === undefined ? [first] : [first, second];
}

// A web is a neck: the disc between the two rims has no other rim in it, and lies in metal.
function webOf({ at, radius }: Disc, edges: readonly Obstacle[], others: readonly Obstacle[]): Span | null {
  const all = [...edges, ...others];
  const next = all
    .map((one) => ({ one, ...wayTo(one, at) }))
    .filter(({ far }) => far > radius * (1 - SLACK))
    .sort((a, b) => a.far - b.far)
    .slice(0, NEXT);
  const found = next.find(({ one, far, on }) => {
    const half = Math.max(far - radius, 0) / 2;
    const [x, y] = unitOf(between(at, on));
    const middle: Place = [at[0] + (radius + half) * x, at[1] + (radius + half) * y];
    const isFree = all.every((rim) => wayTo(rim, middle).far >= half - SLACK * radius);
    return isFree && (one.edge !== null && one.reach === 0 ? isInside(one.edge, at) : isMetal(middle, edges));
  });
  if (found === undefined) return null;
  const [x, y] = unitOf(between(at, found.on));
  const from: Place = [at[0] + radius * x, at[1] + radius * y];
  return { from, to: found.on, size: Math.max(found.far - radius, 0), source: found.one.source };
}

// The nearest edge has its metal on that side.
function isMetal(place: Place, edges: readonly Obstacle[]): boolean {
  let nearest: Obstacle | null = null;
  let least = Infinity;
  for (const one of edges) {
    const { far } = wayTo(one, place);
    if (far >= least) continue;
    least = far;
    nearest = one;
  }
  return nearest?.edge == null || isInside(nearest.edge, place);
}

function openedOf({ at, radius }: Disc, edges: readonly Obstacle[]): Opened | null {
  const found = edges.flatMap((one): Opened[] => {
    if (one.edge?.kind !== 'line') return [];
    const { a, b } = one.edge;
    const along = unitOf(between(a, b));
    const foot = dot(between(a, at), along);
    // Over 0 where the centre lies in the metal.
    const inward = cross(along, between(a, at));
    if (Math.abs(inward) >= radius) return [];
    const half = Math.sqrt(radius ** 2 - inward ** 2);
    const long = lengthOf(between(a, b));
    if (foot < 0 || foot > long) return [];
    // Past the ends of the face there is none of it to be opened.
    const [start, end] = [Math.max(foot - half, 0), Math.min(foot + half, long)];
    const on = (far: number): Place => [a[0] + far * along[0], a[1] + far * along[1]];
    const middle = on(foot);
    const depth = inward + radius;
    const deepest: Place = [middle[0] - depth * along[1], middle[1] + depth * along[0]];
    return [
      {
        depth: { from: middle, to: deepest, size: depth, source: one.source },
        opening: { from: on(start), to: on(end), size: end - start, source: one.source },
      },
    ];
  });
  return found.length === 1 ? (found[0] ?? null) : null;
}
