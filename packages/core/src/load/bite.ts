import type { Source } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Segment } from '../geometry/segment.js';

/**
 * One end of an arc in metal. A tooth of a standard right-hand cutter, whose spindle turns clockwise seen from
 * above, enters the metal at the one end and leaves it at the other.
 */
export interface ArcEnd {
  readonly at: Point;
  /**
   * Angle between the arc and the face through the metal that is left, radians from 0 to pi: the angle of the
   * corner that the cut leaves there. Under a right angle where the metal overhangs the opening.
   */
  readonly angle: number;
  /** The edge that the metal ends with there. */
  readonly source: Source | null;
}

/** A partial hole: where it stands, and all its dimensions. */
export interface PlacedBite extends Segment {
  readonly center: Point;
  readonly entry: ArcEnd;
  readonly exit: ArcEnd;
}

/** A side of an edge: `inside` is where the metal lies, to the left of its travel as in every outline. */
export type FaceSide = 'inside' | 'outside';
