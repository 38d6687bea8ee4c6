import { intersect } from '../combine/boolean.js';
import type { Point } from '../geometry/point.js';
import { type Segment, segmentTurned } from '../geometry/segment.js';
import type { ArcEnd } from '../load/bite.js';
import { engagementOf } from '../load/engagement.js';
import { area } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';

/** One arc of a circle through the metal of an outline, with all its dimensions. */
export interface OutlineBite extends Segment {
  /** Null where the circle is a full hole. */
  readonly entry: ArcEnd | null;
  readonly exit: ArcEnd | null;
  /** Angle of its clockwise end, radians from the x axis. */
  readonly start: number;
}

/** A circle in an outline. */
export interface OutlinePlacement {
  readonly center: Point;
  readonly radius: number;
  /** One for each arc in metal, counter-clockwise: several where it crosses more than one face or a slot. */
  readonly bites: readonly OutlineBite[];
  /** Area of the metal that the circle takes; where the face is straight, that of the one segment. */
  readonly removedArea: number;
}

/**
 * All dimensions of a circle that cuts an outline of any shape. Depth, opening and area of a bite are measured from
 * the straight line between its ends. Lengths in the unit of the outline, angles in radians.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83; the ends by the overlay of outline and circle.
 * @throws RangeError if the radius is not a finite number over 0 or a coordinate is not finite.
 */
export function bitesIn(outline: Region, center: Point, radius: number): OutlinePlacement {
  const { arcs } = engagementOf(outline, center, radius);
  return {
    center,
    radius,
    bites: arcs.map(({ start, sweep, entry, exit }) => {
      const segment = segmentTurned(radius, sweep);
      return { ...segment, opening: entry === null ? 0 : segment.opening, start, entry, exit };
    }),
    removedArea: area(intersect([outline, disc(center, radius)])),
  };
}
