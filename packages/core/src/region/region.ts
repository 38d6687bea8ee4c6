/*
 * Room: areas of lines and arcs: loops, regions, their measures, point location.
 * In: edges.
 * Out: a `Region`: parts, each with an outer loop and its holes.
 */

import type { Edge, Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';

/** A closed chain of edges: each ends exactly where the next one starts. */
export type Loop = readonly Edge[];

/** One connected piece of plane: an outer loop run counter-clockwise, its holes clockwise. */
export interface RegionPart {
  readonly outer: Loop;
  readonly holes: readonly Loop[];
}

/**
 * A set of points in the plane, as parts that overlap nowhere. Regularised: nothing in it has zero width,
 * and its loops meet each other in single points at most.
 */
export type Region = readonly RegionPart[];

/**
 * A full circle as two arcs, which join at its lowest and highest point.
 * @throws RangeError if the radius is not positive or a number is not finite.
 */
export function circleLoop(center: Point, radius: number, ccw = true, source?: Source): Loop {
  if (!(radius > 0) || !Number.isFinite(radius)) {
    throw new RangeError(`circleLoop: radius is ${radius}; it must be a finite number over 0`);
  }
  if (!Number.isFinite(center.x) || !Number.isFinite(center.y)) {
    throw new RangeError(`circleLoop: the centre is (${center.x}, ${center.y}); it must be finite numbers`);
  }
  const a = { x: center.x, y: center.y - radius };
  const b = { x: center.x, y: center.y + radius };
  if (source === undefined) {
    return [
      { kind: 'arc', a, b, center, radius, ccw },
      { kind: 'arc', a: b, b: a, center, radius, ccw },
    ];
  }
  return [
    { kind: 'arc', a, b, center, radius, ccw, source },
    { kind: 'arc', a: b, b: a, center, radius, ccw, source },
  ];
}

/**
 * A full disc.
 * @throws RangeError if the radius is not positive or a number is not finite.
 */
export function disc(center: Point, radius: number, source?: Source): Region {
  return [{ outer: circleLoop(center, radius, true, source), holes: [] }];
}

/**
 * The ring between two concentric circles.
 * @throws RangeError if the inner radius is not positive or not under the outer one.
 */
export function ring(center: Point, outer: number, inner: number, source?: Source): Region {
  if (!(inner < outer)) {
    throw new RangeError(`ring: the inner radius ${inner} must be under the outer radius ${outer}`);
  }
  return [
    { outer: circleLoop(center, outer, true, source), holes: [circleLoop(center, inner, false, source)] },
  ];
}
