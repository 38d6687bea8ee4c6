import { sweptRegion } from '../cut/swept.js';
import { boxesMeet, grown } from '../geometry/bounds.js';
import { checkOverZero, checkPlace } from '../geometry/checks.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import { gapBetween } from '../geometry/edge-gap.js';
import { edgeBounds } from '../geometry/measure.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { intersect } from '../region/boolean.js';
import { area, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { subtract } from '../region/subtract.js';
import { type Rim, type RimRun, rimOf, runsOf } from './rim.js';
import { discOf, nothingOf } from './tool-circle.js';
import { distanceTo } from './touch.js';

/** How to move a tool off the wall that it has cut, before it is lifted. */
export interface BackOff {
  /** Unit vector; null where the tool stands at no wall and can be lifted as it is. */
  readonly direction: Vector | null;
  readonly distance: number;
  /** Where its centre is then. */
  readonly center: Point;
  /** Smallest distance from the tool to any metal then; null where there is none left. */
  readonly gap: number | null;
}

/** Directions tried to either side of straight back, if something is in the way there. */
const TRIED = 12;

/** A wall that goes round by more than half a turn by less than this (radians) is half a turn: rounding. */
const HALF_TURN_SLACK = 1e-9;

/**
 * The way off the wall at the bottom of a cut: which way and how far the tool has to move so that the wall is at
 * least the clearance away from it all along. Straight back from the middle of the wall, or as near to that as
 * other metal allows. Null where there is no such way: a full hole, a wall that goes round by more than half a
 * turn, other metal on every side. Lengths in the unit of the metal.
 *
 * Source: a circle of radius r, moved s against the direction of a wall point that lies h off it, clears that point
 * by sqrt(r^2 + 2 r s cos(h) + s^2) - r (law of cosines), solved for s at the ends of the wall, where it is least.
 * @param metal what is there at that depth, before or after the cut
 * @param clearance the gap to be had, over 0
 * @throws RangeError if a length is not a finite number over 0 or a coordinate is not finite.
 */
export function backOff(metal: Region, center: Point, radius: number, clearance: number): BackOff | null {
  checkPlace('backOff', 'center', center);
  checkOverZero('backOff', 'radius', radius);
  checkOverZero('backOff', 'clearance', clearance);
  return backOffFrom(rimOf(metal, center, radius), metal, radius, clearance);
}

/** As `backOff`, of a circle that has been laid over the metal already. */
export function backOffFrom(rim: Rim, metal: Region, radius: number, clearance: number): BackOff | null {
  const { center } = rim;
  const walls = runsOf(rim, ({ outer }) => outer);
  const left = subtract(metal, [discOf({ center, radius })]);
  const gapAt = (at: Point): number | null =>
    left.length === 0 ? null : Math.max(0, distanceTo(left, at) - radius);
  if (walls.length === 0) return { direction: null, distance: 0, center, gap: gapAt(center) };
  const open = widestGap(walls);
  if (open === null) return null;
  const half = Math.min(Math.PI / 2, (2 * Math.PI - open.width) / 2);
  const nothing = nothingOf(metal, { center, radius });
  for (let k = 0; k <= 2 * TRIED; k++) {
    const off = (Math.ceil(k / 2) * (Math.PI / 2 - half)) / TRIED;
    const angle = open.middle + (k % 2 === 1 ? off : -off);
    const direction = { dx: Math.cos(angle), dy: Math.sin(angle) };
    const distance = distanceFor(radius, clearance, half + off);
    const to = moved(center, direction, distance);
    const way = lineEdge(center, to);
    const isClear =
      keepsOff(left, way, radius, nothing / (2 * Math.PI * radius)) ||
      area(intersect([left, sweptRegion([way], radius)])) <= nothing;
    if (!isClear) continue;
    return { direction, distance, center: to, gap: gapAt(to) };
  }
  return null;
}

/** Whether no edge of some metal comes nearer to a way than a radius, so that a tool moved along it cuts nothing. */
function keepsOff(metal: Region, way: Edge, radius: number, slack: number): boolean {
  const near = grown(edgeBounds(way), radius);
  return loopsOf(metal).every((loop) =>
    loop.every(
      (edge) => !boxesMeet(edgeBounds(edge), near) || gapBetween(way, edge, slack).distance >= radius - slack,
    ),
  );
}

/** The widest stretch of the circle without a wall; null if it is under half a turn, so that no way leads out. */
function widestGap(walls: readonly RimRun[]): { middle: number; width: number } | null {
  let widest = { middle: 0, width: 0 };
  walls.forEach(({ start, sweep }, k) => {
    const next = walls[(k + 1) % walls.length] as RimRun;
    const from = start + sweep;
    const raw = (next.start - from) % (2 * Math.PI);
    const width = walls.length === 1 ? 2 * Math.PI - sweep : raw < 0 ? raw + 2 * Math.PI : raw;
    if (width > widest.width) widest = { middle: from + width / 2, width };
  });
  return widest.width < Math.PI - HALF_TURN_SLACK ? null : widest;
}

/** How far to move for a clearance at a wall point that lies `off` straight ahead, up to a right angle. */
function distanceFor(radius: number, clearance: number, off: number): number {
  const along = radius * Math.cos(Math.min(off, Math.PI / 2));
  const square = clearance * (2 * radius + clearance);
  return square / (along + Math.sqrt(along * along + square));
}
