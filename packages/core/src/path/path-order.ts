import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import { edgeLength, pointAlong } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';

/**
 * In which order loops are gone round: holes before what holds them, so that the part is not cut free first
 * (common practice, no source); the other way; or always on to the nearest one.
 */
export type LoopOrder = 'inner first' | 'outer first' | 'nearest';

/** So many starts of a loop are tried at most before it is said that no lead fits. */
const MOST_STARTS = 24;

/**
 * The same closed loop begun at other places: nearest to a point, if one is given; else in the middle of an edge,
 * the longest straight one first, since a mark that the tool may leave there shows least and measures worst in a
 * corner.
 * @param slack a start nearer than this to a joint is the joint
 */
export function begun(loop: readonly Edge[], start: Point | undefined, slack: number): (readonly Edge[])[] {
  if (start !== undefined) return [begunNear(loop, start, slack)];
  const order = loop
    .map((edge, k) => ({ k, straight: edge.kind === 'line', length: edgeLength(edge) }))
    .sort((p, q) => Number(q.straight) - Number(p.straight) || q.length - p.length || p.k - q.k);
  return order
    .slice(0, MOST_STARTS)
    .map(({ k }) => begunAt(loop, k, pointAlong(loop[k] as Edge, 0.5), slack));
}

function begunNear(loop: readonly Edge[], start: Point, slack: number): readonly Edge[] {
  let best = { k: 0, at: (loop[0] as Edge).a, distance: Infinity };
  loop.forEach((edge, k) => {
    const nearest = nearestOnEdge(edge, start);
    if (nearest.distance < best.distance) best = { k, ...nearest };
  });
  return begunAt(loop, best.k, best.at, slack);
}

function begunAt(loop: readonly Edge[], k: number, at: Point, slack: number): readonly Edge[] {
  const edge = loop[k] as Edge;
  if (distance(at, edge.a) <= slack) return rotated(loop, k);
  if (distance(at, edge.b) <= slack) return rotated(loop, (k + 1) % loop.length);
  const [first, ...rest] = rotated(loop, k) as [Edge, ...Edge[]];
  return [{ ...first, a: at }, ...rest, { ...first, b: at }];
}

function rotated<T>(list: readonly T[], by: number): T[] {
  return [...list.slice(by), ...list.slice(0, by)];
}

/** What has a place in an order: where it begins and ends, and whether it runs along an outer loop. */
export interface Ordered {
  readonly outer: boolean;
  readonly from: Point;
  readonly to: Point;
}

/**
 * Puts loops in order.
 * @param start where the tool comes from, for the order by nearness; the first loop given unless known
 */
export function inOrder<T extends Ordered>(
  loops: readonly T[],
  order: LoopOrder,
  start: Point | undefined,
): T[] {
  if (order === 'nearest') return byNearness(loops, start);
  const [inner, outer] = [loops.filter((loop) => !loop.outer), loops.filter((loop) => loop.outer)];
  return order === 'inner first' ? [...inner, ...outer] : [...outer, ...inner];
}

function byNearness<T extends Ordered>(loops: readonly T[], start: Point | undefined): T[] {
  const waiting = [...loops];
  const sorted: T[] = [];
  let at = start ?? loops[0]?.from;
  while (waiting.length > 0 && at !== undefined) {
    const here = at;
    const next = waiting.reduce((best, one) =>
      distance(here, one.from) < distance(here, best.from) ? one : best,
    );
    waiting.splice(waiting.indexOf(next), 1);
    sorted.push(next);
    at = next.to;
  }
  return sorted;
}
