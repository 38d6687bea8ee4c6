import { arcEdge, type Edge, type Source } from '../geometry/edge.js';
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
  const low = { x: center.x, y: center.y - radius };
  const high = { x: center.x, y: center.y + radius };
  // The radius as given, not as it comes back from the rounded ends.
  return [
    { ...arcEdge(low, high, center, ccw, source), center, radius },
    { ...arcEdge(high, low, center, ccw, source), center, radius },
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
