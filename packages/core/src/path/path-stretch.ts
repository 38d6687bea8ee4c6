import { checkPlace } from '../geometry/checks.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge, Source } from '../geometry/edge.js';
import { pointAlong } from '../geometry/measure.js';
import { partOfEdge } from '../geometry/parts.js';
import { type Point, samePoint } from '../geometry/point.js';
import { shownNumber } from '../geometry/shown.js';
import type { Region } from '../region/region.js';
import { type CenterLoop, pivots } from './path-curve.js';
import { shareAt } from './path-share.js';
import { type OutlineEdge, outlineEdgeOf, type Tagged, tagged } from './path-tags.js';

/** A place on an outline. */
export interface OutlinePlace {
  readonly part: number;
  /** Which hole of the part; null for its outer loop. */
  readonly hole: number | null;
  /** Which edge of that loop. */
  readonly edge: number;
  /** Where on the edge: 0 is its start, 1 its end, in between shares of its length. */
  readonly share: number;
}

/** Part of one loop of an outline, from one place on to another in the direction in which the loop runs. */
export interface OutlineStretch {
  readonly from: OutlinePlace;
  readonly to: OutlinePlace;
}

/**
 * The place of an outline that is nearest to a point.
 * @throws RangeError if the region is empty or a coordinate is not finite.
 */
export function placeNear(region: Region, p: Point): OutlinePlace {
  checkPlace('placeNear', 'point', p);
  let best: { at: OutlineEdge; on: Point; distance: number } | null = null;
  for (const at of tagged(region).edges) {
    const nearest = nearestOnEdge(at.edge, p);
    if (best === null || nearest.distance < best.distance)
      best = { at, on: nearest.at, distance: nearest.distance };
  }
  if (best === null) throw new RangeError('placeNear: the region is empty; it has no outline');
  const { edge, part, hole, index } = best.at;
  return { part, hole, edge: index, share: shareAt(edge, best.on) };
}

/**
 * The start or the end of what an outline has of one source, such as `outline:2`.
 * @throws RangeError if no edge has that source.
 */
export function placeOfSource(region: Region, source: Source, end: 'start' | 'end'): OutlinePlace {
  const own = tagged(region).edges.filter(({ edge }) => edge.source === source);
  const first = own.find((one) => !own.some((before) => follows(before, one))) ?? own[0];
  const last = own.findLast((one) => !own.some((after) => follows(one, after))) ?? own[own.length - 1];
  const found = end === 'start' ? first : last;
  if (found === undefined)
    throw new RangeError(`placeOfSource: no edge of the outline has the source ${source}`);
  return { part: found.part, hole: found.hole, edge: found.index, share: end === 'start' ? 0 : 1 };
}

function follows(before: OutlineEdge, after: OutlineEdge): boolean {
  return sameLoop(before, after) && samePoint(before.edge.b, after.edge.a);
}

function sameLoop(
  p: { part: number; hole: number | null },
  q: { part: number; hole: number | null },
): boolean {
  return p.part === q.part && p.hole === q.hole;
}

/**
 * Whether the place of an outline that is nearest to a point belongs to a stretch of it.
 * @throws RangeError if the stretch is not one of the outline, or a coordinate is not finite.
 */
export function isOnStretch(region: Region, stretch: OutlineStretch, p: Point): boolean {
  const place = placeNear(region, p);
  const tags = tagged(region);
  const edge = tags.edges.find((one) => sameLoop(one, place) && one.index === place.edge) as OutlineEdge;
  return intervalsOf(tags, stretch)(edge).some(([low, high]) => low <= place.share && place.share <= high);
}

/** Shares of an edge, from one to another. */
type Interval = readonly [number, number];

/**
 * For each edge of an outline the shares of it that belong to a stretch.
 * @throws RangeError if the stretch names no place of the outline, changes loops, or has no length.
 */
function intervalsOf(tags: Tagged, { from, to }: OutlineStretch): (edge: OutlineEdge) => readonly Interval[] {
  const start = checkedPlace(tags, 'from', from);
  const end = checkedPlace(tags, 'to', to);
  if (!sameLoop(start, end)) {
    throw new RangeError(
      'centerPathAlong: from and to lie on different loops; a stretch is part of one loop',
    );
  }
  if (start.index === end.index && from.share === to.share) {
    throw new RangeError(
      'centerPathAlong: from and to are one place; use centerPath to go all the way round',
    );
  }
  const wraps = start.index > end.index || (start.index === end.index && from.share > to.share);
  return (edge) => {
    if (!sameLoop(edge, start)) return [];
    const { index } = edge;
    if (start.index === end.index && index === start.index) {
      return wraps
        ? [
            [0, to.share],
            [from.share, 1],
          ]
        : [[from.share, to.share]];
    }
    if (index === start.index) return [[from.share, 1]];
    if (index === end.index) return [[0, to.share]];
    const between = wraps
      ? index > start.index || index < end.index
      : index > start.index && index < end.index;
    return between ? [[0, 1]] : [];
  };
}

function checkedPlace(tags: Tagged, name: string, place: OutlinePlace): OutlineEdge {
  const found = tags.edges.find((one) => sameLoop(one, place) && one.index === place.edge);
  if (found === undefined) {
    const loop = place.hole === null ? 'the outer loop' : `hole ${place.hole}`;
    throw new RangeError(`centerPathAlong: ${name}: ${loop} of part ${place.part} has no edge ${place.edge}`);
  }
  if (!(place.share >= 0 && place.share <= 1)) {
    throw new RangeError(
      `centerPathAlong: ${name}: the share is ${shownNumber(place.share)}; it must be from 0 to 1`,
    );
  }
  return found;
}

/**
 * The chains of some centre loops along which the tool touches a stretch of the outline. Round a corner at an end of
 * the stretch it does not go: it stops where it stands square to the end.
 */
export function chainsAlong(
  tags: Tagged,
  loops: readonly CenterLoop[],
  stretch: OutlineStretch,
): CenterLoop[] {
  const intervals = intervalsOf(tags, stretch);
  const alongStretch = alongFrom(tags, stretch.from);
  const nextOf = (edge: OutlineEdge): OutlineEdge =>
    tags.edges.find((one) => sameLoop(one, edge) && samePoint(one.edge.a, edge.edge.b)) as OutlineEdge;
  const chains = loops.flatMap(({ edges, outer }) => {
    const pieces = edges.flatMap((edge): Edge[] => {
      const beside = outlineEdgeOf(tags, edge) as OutlineEdge;
      const own = intervals(beside);
      if (!pivots(edge, beside)) return own.flatMap((interval) => clipped(edge, beside.edge, interval));
      const arrives = own.some(([low, high]) => high === 1 && low < 1);
      return arrives && intervals(nextOf(beside)).some(([low, high]) => low === 0 && high > 0) ? [edge] : [];
    });
    return chained(pieces).map((chain) => ({ edges: chain, outer }));
  });
  const keyed = chains.map((chain) => ({ chain, key: alongStretch(chain.edges[0] as Edge) }));
  return keyed.sort((p, q) => p.key - q.key).map(({ chain }) => chain);
}

/** How far along a loop, counted in edges from a place on, a piece of a centre loop begins. */
function alongFrom(tags: Tagged, from: OutlinePlace): (piece: Edge) => number {
  const count = tags.edges.filter((one) => sameLoop(one, from)).length;
  return (piece) => {
    const { edge, index } = outlineEdgeOf(tags, piece) as OutlineEdge;
    const steps = index - from.edge + shareAt(edge, nearestOnEdge(edge, piece.a).at) - from.share;
    return steps < 0 ? steps + count : steps;
  };
}

/** The part of an edge that runs beside some shares of an outline edge; none or one. */
function clipped(edge: Edge, beside: Edge, [low, high]: Interval): Edge[] {
  const u = shareAt(beside, nearestOnEdge(beside, edge.a).at);
  const v = shareAt(beside, nearestOnEdge(beside, edge.b).at);
  const from = Math.max(low, u);
  const to = Math.min(high, v);
  if (!(from < to)) return [];
  const placeAt = (share: number): Point =>
    share === u ? edge.a : share === v ? edge.b : pointAlong(edge, (share - u) / (v - u));
  const a = placeAt(from);
  const b = placeAt(to);
  return samePoint(a, b) ? [] : [partOfEdge(edge, a, b)];
}

/** Pieces in their order round a loop as chains; the last may go on in the first. */
function chained(pieces: readonly Edge[]): Edge[][] {
  const chains: Edge[][] = [];
  for (const piece of pieces) {
    const chain = chains[chains.length - 1];
    if (chain !== undefined && samePoint((chain[chain.length - 1] as Edge).b, piece.a)) chain.push(piece);
    else chains.push([piece]);
  }
  const first = chains[0];
  const last = chains[chains.length - 1];
  if (first !== undefined && last !== undefined && first !== last) {
    if (samePoint((last[last.length - 1] as Edge).b, (first[0] as Edge).a)) {
      chains.splice(chains.length - 1, 1);
      chains[0] = [...last, ...first];
    }
  }
  return chains;
}
