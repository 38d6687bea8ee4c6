import type { Point, Vector } from '../geometry/point.js';
import { driftBetween, type Placed } from './drift.js';
import { alongDrift, type Interval, within } from './reach.js';
import type { SetPart } from './setup.js';

/** Between what the depth of a bite and its opening in a straight face can lie. */
export interface BiteInterval {
  readonly depth: Interval;
  readonly opening: Interval;
}

/**
 * Between what depth and opening of a circle in a straight face can lie. A depth below 0 says how far it misses.
 *
 * Source: circular segment, Machinery's Handbook, 31st ed., p. 83: depth r + h, chord 2 sqrt(r² - h²), with the
 * centre h inside the face.
 * @param inward unit normal of the face, into the metal
 * @param h how far the centre lies inside the face
 */
export function biteInterval(
  h: number,
  radius: number,
  inward: Vector,
  face: Placed,
  cut: Placed,
  part: SetPart,
): BiteInterval {
  const by = alongDrift(driftBetween(face, cut, part), inward);
  const depth = ([low, high]: readonly [number, number]) => [radius + h + low, radius + h + high] as const;
  const opening = ([low, high]: readonly [number, number]) => {
    const ends = [chord(radius, h + low), chord(radius, h + high)];
    const widest = h + low < 0 && h + high > 0 ? 2 * radius : Math.max(...ends);
    return [Math.min(...ends), widest] as const;
  };
  return {
    depth: { worst: depth(by.worst), rss: depth(by.rss) },
    opening: within({ worst: opening(by.worst), rss: opening(by.rss) }),
  };
}

/** Width of a circle at a distance from its centre; 0 beyond it. */
export function chord(radius: number, h: number): number {
  return 2 * Math.sqrt(Math.max(0, (radius - h) * (radius + h)));
}

/** How far a centre lies inside a face that runs along a direction with the metal at its left. */
export function insideFace(center: Point, at: Point, inward: Vector): number {
  return (center.x - at.x) * inward.dx + (center.y - at.y) * inward.dy;
}
