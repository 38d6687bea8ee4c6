import { type ReportEdge, sourceText } from '@edgebite/core';
import { snapped } from '../board/snap.js';
import { isList, isObject, type JsonObject } from '../document/json.js';
import type { Place } from '../worker/sketch.js';
import type { Worked } from '../worker/worked.js';
import { bounded, type Change, downTo, type Free, type Moves, plainFree, setting } from './free.js';
import { between, cross, dot, leftward, lengthOf, turned, unitOf } from './vector.js';

/** All places at one distance: a circle, or a line that leads some way. */
type Locus =
  | { readonly center: Place; readonly radius: number }
  | { readonly through: Place; readonly way: Place };

/** What is free of a centre that two distances give: both of them. */
export function distanceMoves(center: JsonObject, { edges, center: at, names }: Worked): Moves | null {
  const dimensions = isList(center.distances) ? center.distances.filter(isObject) : [];
  if (dimensions.length !== 2 || at === null) return null;
  const frees = dimensions.flatMap((dimension, k) => freeOf(dimension, k, { edges, names }, at) ?? []);
  if (frees.length !== 2) return null;
  return {
    frees,
    at,
    why: null,
    mended: (cut, place, step) => answerNear(cut, { place, step, before: at }, edges),
  };
}

function edgeOf({ edge, along, corner }: JsonObject, edges: readonly ReportEdge[]): ReportEdge | undefined {
  return edges.find(({ source }) => source === (edge ?? along ?? corner));
}

function freeOf(
  dimension: JsonObject,
  k: number,
  { edges, names }: Pick<Worked, 'edges' | 'names'>,
  at: Place,
): Free | null {
  const edge = edgeOf(dimension, edges);
  const { distance } = dimension;
  if (edge === undefined || typeof distance !== 'number') return null;
  const path = ['center', 'distances', k, 'distance'];
  const name = sourceText(edge.source ?? '', names);
  if ('along' in dimension) {
    const way = unitOf(between(edge.a, edge.b));
    const [from, grows] = dimension.end === 'end' ? [edge.b, turned(way)] : [edge.a, way];
    return plainFree(`along ${name}`, path, distance, grows, (place) => dot(between(from, place), grows));
  }
  if ('corner' in dimension) {
    const corner = dimension.end === 'end' ? edge.b : edge.a;
    const grows = unitOf(between(corner, at));
    const reach = (place: Place) => lengthOf(between(corner, place));
    return plainFree(`from the ${dimension.end} of ${name}`, path, distance, grows, reach, () => [
      0,
      Infinity,
    ]);
  }
  return sideFree(dimension, k, { distance, name }, edge, at);
}

// Counted over 0 inside and under 0 outside, so that it grows all the way; on the other side the job says so.
function sideFree(
  dimension: JsonObject,
  k: number,
  { distance, name }: { readonly distance: number; readonly name: string },
  edge: ReportEdge,
  at: Place,
): Free {
  const outside = dimension.side === 'outside';
  const most = (step: number) => (edge.kind === 'arc' ? downTo(edge.radius, step) : Infinity);
  return {
    name: `${outside ? 'outside of' : 'from'} ${name}`,
    value: outside ? -distance : distance,
    shows: distance,
    grows: inwards(edge, at),
    at: (place) => depthIn(edge, place),
    put: (value, step) => {
      const [least, largest] =
        edge.kind === 'line'
          ? [-Infinity, Infinity]
          : edge.ccw
            ? [-Infinity, most(step)]
            : [-most(step), Infinity];
      const signed = bounded(snapped(value, step), [least, largest]);
      const turns = signed !== 0 && signed < 0 !== outside;
      const side: Change = [['center', 'distances', k, 'side'], signed < 0 ? 'outside' : 'inside'];
      return setting([[['center', 'distances', k, 'distance'], Math.abs(signed)], ...(turns ? [side] : [])]);
    },
  };
}

/** How far on the metal's side of an edge a place lies: to the left as the edge runs. */
function depthIn(edge: ReportEdge, place: Place): number {
  if (edge.kind === 'line') return dot(between(edge.a, place), leftward(unitOf(between(edge.a, edge.b))));
  const away = lengthOf(between(edge.center, place));
  return edge.ccw ? edge.radius - away : away - edge.radius;
}

function inwards(edge: ReportEdge, at: Place): Place {
  if (edge.kind === 'line') return leftward(unitOf(between(edge.a, edge.b)));
  const out = unitOf(between(edge.center, at));
  return edge.ccw ? turned(out) : out;
}

/**
 * Which of two answers is meant once the distances have changed: as before, or where the place lies on the other hand
 * of what they are measured from, the one near it. Null where no place is that far from both.
 */
function answerNear(
  cut: JsonObject,
  { place, step, before }: { readonly place: Place; readonly step: number; readonly before: Place },
  edges: readonly ReportEdge[],
): readonly Change[] | null {
  const center = isObject(cut.center) ? cut.center : {};
  const dimensions = isList(center.distances) ? center.distances.filter(isObject) : [];
  const [p, q] = dimensions.map((dimension) => locusOf(dimension, edges));
  if (p == null || q == null) return null;
  if (!('radius' in p) && !('radius' in q)) return [];
  if (!meet(p, q)) return null;
  const sameHand = handOf(p, q, place) * handOf(p, q, before) > 0;
  const named = center.pick !== undefined || center.near !== undefined;
  if (sameHand && named && center.near === undefined) return [];
  return [
    [['center', 'pick'], undefined],
    [['center', 'near'], place.map((value) => snapped(value, step))],
  ];
}

function locusOf(dimension: JsonObject, edges: readonly ReportEdge[]): Locus | null {
  const edge = edgeOf(dimension, edges);
  const { distance } = dimension;
  if (edge === undefined || typeof distance !== 'number') return null;
  const ends = dimension.end === 'end' ? edge.b : edge.a;
  if ('corner' in dimension) return { center: ends, radius: distance };
  const way = unitOf(between(edge.a, edge.b));
  const shifted = (from: Place, along: Place, by: number): Place => [
    from[0] + along[0] * by,
    from[1] + along[1] * by,
  ];
  if ('along' in dimension) {
    const by = dimension.end === 'end' ? -distance : distance;
    return { through: shifted(ends, way, by), way: leftward(way) };
  }
  const inside = dimension.side === 'outside' ? -distance : distance;
  if (edge.kind === 'line') return { through: shifted(edge.a, leftward(way), inside), way };
  return { center: edge.center, radius: edge.ccw ? edge.radius - inside : edge.radius + inside };
}

function meet(p: Locus, q: Locus): boolean {
  if ('radius' in p && 'radius' in q) {
    const apart = lengthOf(between(p.center, q.center));
    return apart < p.radius + q.radius && apart > Math.abs(p.radius - q.radius);
  }
  const [circle, line] = 'radius' in p ? [p, q] : [q, p];
  if (!('radius' in circle) || 'radius' in line) return true;
  return Math.abs(cross(line.way, between(line.through, circle.center))) < circle.radius;
}

// Two answers mirror each other on the line through both middles, or square to a line through the middle.
function handOf(p: Locus, q: Locus, place: Place): number {
  if ('radius' in p && 'radius' in q) return cross(between(p.center, q.center), between(p.center, place));
  const [circle, line] = 'radius' in p ? [p, q] : [q, p];
  if (!('radius' in circle) || 'radius' in line) return 0;
  return dot(line.way, between(circle.center, place));
}
