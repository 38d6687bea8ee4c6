import Flatbush from 'flatbush';
import type { Edge } from '../geometry/edge.js';
import { pointAlong } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { shownPoint } from '../geometry/shown.js';
import { contains } from '../region/contains.js';
import { loopBounds } from '../region/measure.js';
import type { Loop } from '../region/region.js';
import { loopName, type OutlineFault } from './fault.js';

/**
 * Holes that lie outside the outer loop or inside another hole. The loops do not meet each other, so that one
 * point tells for a whole loop.
 * @param loops loops that run counter-clockwise, the outer one first
 */
export function nestingFaults(loops: readonly Loop[]): OutlineFault[] {
  const [outer, ...holes] = loops;
  if (outer === undefined || holes.length === 0) return [];
  const probes = holes.map((loop) => pointAlong(loop[0] as Edge, 0.5));
  const outside = probes.flatMap((at, hole) =>
    encloses(outer, at) ? [] : [fault(hole, at, `lies outside the outline at ${shownPoint(at)}`)],
  );
  return [...outside, ...nested(holes, probes)];
}

function nested(holes: readonly Loop[], probes: readonly Point[]): OutlineFault[] {
  const index = new Flatbush(holes.length);
  for (const { minX, minY, maxX, maxY } of holes.map(loopBounds)) index.add(minX, minY, maxX, maxY);
  index.finish();
  return probes.flatMap((at, hole) => {
    const around = index
      .search(at.x, at.y, at.x, at.y)
      .find((other) => other !== hole && encloses(holes[other] as Loop, at));
    return around === undefined
      ? []
      : [fault(hole, at, `lies inside ${loopName(around)} at ${shownPoint(at)}`)];
  });
}

function encloses(loop: Loop, p: Point): boolean {
  return contains([{ outer: loop, holes: [] }], p) === 'inside';
}

function fault(hole: number, at: Point, what: string): OutlineFault {
  return { hole, edge: null, at, message: `${loopName(hole)} ${what}` };
}
