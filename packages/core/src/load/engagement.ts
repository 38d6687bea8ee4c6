import { checkOverZero, checkPlace } from '../geometry/checks.js';
import type { Point, Vector } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import type { ArcEnd } from './bite.js';
import { clockwiseEnd, counterClockwiseEnd, type Rim, rimNear, runsOf } from './rim.js';

/** An arc of a tool's circle that runs through metal. */
export interface EngagedArc {
  /** Angle of its clockwise end, radians from the x axis. */
  readonly start: number;
  /** How far it goes counter-clockwise from there, radians; 2 pi for the whole circle. */
  readonly sweep: number;
  readonly length: number;
  /** Where a tooth of a clockwise spindle comes into the metal, and where it leaves; null for the whole circle. */
  readonly entry: ArcEnd | null;
  readonly exit: ArcEnd | null;
}

/**
 * One-sidedness of a cut: the mean of the directions in which teeth move while they cut. The tool pushes the part
 * that way, and is itself pushed back the opposite way.
 */
export interface SideLoad {
  /** From 0, where all directions balance, to 1, where all are the same. */
  readonly size: number;
  /** Unit vector; null where the size is 0. */
  readonly direction: Vector | null;
}

/** The part of a tool's circle that is in metal. Angles in radians, lengths in the unit of the input. */
export interface Engagement {
  /** Counter-clockwise; those that touch are one. */
  readonly arcs: readonly EngagedArc[];
  /** Sum of the arcs. */
  readonly angle: number;
  /** Of the whole circle, from 0 to 1. */
  readonly share: number;
  /** How often a tooth strikes metal in a turn; 0 if it never leaves metal or never meets any. */
  readonly entries: number;
  /** Whether a tooth is in metal for part of the turn only. */
  readonly interrupted: boolean;
  readonly sideLoad: SideLoad;
}

/** A side load smaller than this is the rounding of directions that balance. */
const BALANCED = 1e-12;

/**
 * The arcs of a tool's circle that lie in metal, with their share and entries, for a spindle that turns clockwise
 * seen from above (a standard right-hand cutter). An arc counts where there is metal on both sides of it: a wall that
 * the circle only runs along is not cut.
 *
 * Source: share 1 - acos(e / r) / pi for a centre a distance e inside a straight face, from the engagement angle
 * cos(phi) = 1 - ae / r (Fundamentals of Machining Processes, p. 174).
 * @param metal the metal before the cut, at the depth in question
 * @throws RangeError if the radius is not a finite number over 0 or a coordinate is not finite.
 */
export function engagementOf(metal: Region, center: Point, radius: number): Engagement {
  checkPlace('engagementOf', 'center', center);
  checkOverZero('engagementOf', 'radius', radius);
  return engagementAt(rimNear(metal, center, radius), radius);
}

/** As `engagementOf`, of a circle that has been laid over the metal already. */
export function engagementAt(rim: Rim, radius: number): Engagement {
  const arcs = runsOf(rim, ({ inner, outer }) => inner && outer).map((run): EngagedArc => {
    const { start, sweep, full } = run;
    const entry = full ? null : counterClockwiseEnd(rim, run);
    const exit = full ? null : clockwiseEnd(rim, run);
    return { start, sweep, length: radius * sweep, entry, exit };
  });
  const angle = arcs.reduce((sum, { sweep }) => sum + sweep, 0);
  const isFull = arcs.length === 1 && (arcs[0] as EngagedArc).entry === null;
  return {
    arcs,
    angle,
    share: angle / (2 * Math.PI),
    entries: isFull ? 0 : arcs.length,
    interrupted: arcs.length > 0 && !isFull,
    sideLoad: sideLoadOf(arcs),
  };
}

/**
 * The mean of the unit cutting directions over some arcs, for a spindle that turns clockwise seen from above. At
 * angle a of the circle a tooth moves along (sin a, -cos a); the integral over an arc of sweep s with its middle
 * at m is 2 sin(s / 2) (sin m, -cos m), and the mean is the sum of these over the sum of the sweeps. So half a
 * circle gives 2 / pi, a full one 0.
 *
 * Source: integral of the definition; for one arc the ratio of chord to arc, Machinery's Handbook, 31st ed., p. 83.
 * @param arcs angle of the clockwise end and sweep of each, radians
 */
export function sideLoadOf(arcs: readonly Pick<EngagedArc, 'start' | 'sweep'>[]): SideLoad {
  let x = 0;
  let y = 0;
  let total = 0;
  for (const { start, sweep } of arcs) {
    const chord = 2 * Math.sin(sweep / 2);
    x += chord * Math.sin(start + sweep / 2);
    y -= chord * Math.cos(start + sweep / 2);
    total += sweep;
  }
  const sum = Math.hypot(x, y);
  if (sum <= BALANCED * total) return { size: 0, direction: null };
  return { size: sum / total, direction: { dx: x / sum, dy: y / sum } };
}
