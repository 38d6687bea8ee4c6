/*
 * Room: cutting numbers: speeds, feeds, times, densities, strengths.
 * In: material, tool, diameter, what the tool does.
 * Out: ranges, each with its source; breaking forces.
 */

import type { LengthUnit } from '../datum/length-unit.js';
import type { Range } from './range.js';
import { scaled } from './range.js';

/** Unit of a surface speed. */
export type SurfaceSpeedUnit = 'm/min' | 'ft/min';

/** How many of a drawing's unit of length go into the unit that surface speeds are said in. */
const PER_SPEED_UNIT = { mm: 1000, inch: 12 } as const;

/** Metres in a foot: exact (international yard and pound agreement, 1959). */
const METRES_PER_FOOT = 0.3048;

/** The unit that surface speeds are said in where lengths are in mm or in inches. */
export function surfaceSpeedUnit(units: LengthUnit): SurfaceSpeedUnit {
  return units === 'mm' ? 'm/min' : 'ft/min';
}

/** A surface speed in another unit; the foot is 0.3048 m, exactly. */
export function inSpeedUnit(speed: Range, from: SurfaceSpeedUnit, to: SurfaceSpeedUnit): Range {
  if (from === to) return speed;
  return scaled(speed, from === 'ft/min' ? METRES_PER_FOOT : 1 / METRES_PER_FOOT);
}

/**
 * Turns of the spindle in a minute at which the edges of a tool of some diameter run at a surface speed:
 * n = 1000 v / (pi D) with v in m/min and D in mm, n = 12 v / (pi D) with v in ft/min and D in inches
 * (F. D. Jones, Turning and Boring, 1914; Machinery's Handbook).
 * @param diameter over 0, in `units`
 */
export function spindleSpeed(surfaceSpeed: Range, diameter: number, units: LengthUnit): Range {
  return scaled(surfaceSpeed, PER_SPEED_UNIT[units] / (Math.PI * diameter));
}

/** Surface speed, in m/min or ft/min, of a tool of some diameter at so many turns in a minute. */
export function surfaceSpeedOf(spindle: Range, diameter: number, units: LengthUnit): Range {
  return scaled(spindle, (Math.PI * diameter) / PER_SPEED_UNIT[units]);
}

/** Feed for each turn of a tool with so many teeth, from the feed for each tooth: f = z fz. */
export function feedPerTurnOf(feedPerTooth: Range, teeth: number): Range {
  return scaled(feedPerTooth, teeth);
}

/**
 * Feed in a minute, from turns in a minute and feed for each turn: v = n f. The least is that of the slowest speed
 * with the finest feed.
 */
export function feedRate(spindle: Range, feedPerTurn: Range): Range {
  return [spindle[0] * feedPerTurn[0], spindle[1] * feedPerTurn[1]];
}

/** Minutes that a length takes at a feed in the same unit a minute; the least at the fastest feed. */
export function minutesFor(length: number, feed: Range): Range {
  return [length / feed[1], length / feed[0]];
}
