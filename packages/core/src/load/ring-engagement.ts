import { intersect } from '../combine/boolean.js';
import { extentOf } from '../geometry/bounds.js';
import { checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import { type Region, ring } from '../region/region.js';
import type { SideLoad } from './engagement.js';
import { metalNear } from './near-tool.js';
import { integralsOf } from './ring-integrals.js';
import { type Stretch, stretchesOf } from './shadow.js';

/**
 * How the teeth of a hollow cutter are in metal: each tooth is as wide as the ring, and cuts wherever there is metal on
 * its radius. Angles in radians, lengths in the unit of the input.
 */
export interface RingEngagement {
  /**
   * The angles at which a tooth is in metal, counter-clockwise; those that touch are one. A tooth of a clockwise
   * spindle enters at the high end and leaves at the low one.
   */
  readonly stretches: readonly Stretch[];
  /** Sum of the stretches. */
  readonly angle: number;
  /** Of a turn, from 0 to 1. */
  readonly share: number;
  /** How often a tooth strikes metal in a turn; 0 if it never leaves it, and if it never meets any. */
  readonly strikes: number;
  readonly interrupted: boolean;
  /** Length of metal on the radius of a tooth, on average over the angles at which it is in metal; 0 for none. */
  readonly meanWidth: number;
  readonly sideLoad: SideLoad;
}

/** A side load smaller than this is the rounding of directions that balance. */
const BALANCED = 1e-12;

/**
 * How the teeth of a hollow cutter are in metal, for a spindle that turns clockwise seen from above (a standard
 * right-hand cutter). With w(a) the length of metal on the radius of angle a between the inner and the outer circle,
 * a tooth is in metal where w > 0, and the side load is the mean of its directions (sin a, -cos a) weighted by w. A
 * wall that a circle only runs along, or a corner that it touches, is not cut.
 *
 * Source: definition; the integrals are those of `integralsOf`. Half a ring has side load 2 / pi, a whole one 0.
 * @param metal the metal before the cut, at the height in question
 * @throws RangeError if a radius is not a finite number over 0, the inner one is not under the outer one, or a
 *   coordinate is not finite.
 */
export function ringEngagementOf(metal: Region, center: Point, outer: number, inner: number): RingEngagement {
  checkPlace('ringEngagementOf', 'center', center);
  checkOverZero('ringEngagementOf', 'outer', outer);
  checkOverZero('ringEngagementOf', 'inner', inner);
  const near = metalNear(metal, center, outer);
  const teeth = ring(center, outer, inner);
  return engagementIn(intersect([near, teeth]), center, slackOf(near, outer) / inner);
}

/** How far an overlay may move a place. */
function slackOf(metal: Region, outer: number): number {
  const box = boundsOf(metal);
  return weldTolerance(box === null ? outer : Math.max(outer, extentOf(box)));
}

/** As `ringEngagementOf`, of metal that lies within the ring. */
function engagementIn(metal: Region, center: Point, slack: number): RingEngagement {
  const stretches = stretchesOf(metal, center, slack);
  const angle = stretches.reduce((sum, { sweep }) => sum + sweep, 0);
  const isWhole = stretches.length === 1 && (stretches[0] as Stretch).low === null;
  let [width, x, y] = [0, 0, 0];
  for (const edge of loopsOf(metal).flat()) {
    const part = integralsOf(edge, center);
    width += part.reach;
    x += part.x;
    y += part.y;
  }
  return {
    stretches,
    angle,
    share: Math.min(1, angle / (2 * Math.PI)),
    strikes: isWhole ? 0 : stretches.length,
    interrupted: stretches.length > 0 && !isWhole,
    meanWidth: angle === 0 ? 0 : width / angle,
    sideLoad: sideLoadFrom(x, y, width),
  };
}

/** From the integrals of w, and of w (cos a, sin a): a tooth of a clockwise spindle moves along (sin a, -cos a). */
function sideLoadFrom(x: number, y: number, width: number): SideLoad {
  const sum = Math.hypot(x, y);
  if (!(sum > BALANCED * width)) return { size: 0, direction: null };
  return { size: Math.min(1, sum / width), direction: { dx: y / sum + 0, dy: -x / sum + 0 } };
}
