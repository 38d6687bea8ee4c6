import { DEGREE } from '../geometry/angle.js';
import type { Point } from '../geometry/point.js';
import { onPaper } from './on-paper.js';

/** How a copy lies against what it is a copy of. */
export type Motion =
  | { readonly kind: 'shift'; readonly step: Point; readonly times: number }
  | { readonly kind: 'turn'; readonly center: Point; readonly degrees: number }
  /** About a line square to an axis; `twice` is twice its place on it. */
  | { readonly kind: 'mirror'; readonly axis: 'x' | 'y'; readonly twice: number }
  | { readonly kind: 'mirror in line'; readonly through: readonly [Point, Point] };

/** Where a place comes to. Shifts, quarter turns and mirrors along the axes are exact in decimal digits. */
export function movedBy(motions: readonly Motion[], p: Point): Point {
  return motions.reduce(oneMoved, p);
}

function oneMoved(p: Point, motion: Motion): Point {
  switch (motion.kind) {
    case 'shift':
      return {
        x: onPaper([1, p.x], [motion.times, motion.step.x]),
        y: onPaper([1, p.y], [motion.times, motion.step.y]),
      };
    case 'turn':
      return turnedAbout(p, motion.center, motion.degrees);
    case 'mirror':
      return { ...p, [motion.axis]: onPaper([1, motion.twice], [-1, p[motion.axis]]) };
    case 'mirror in line':
      return mirroredIn(p, motion.through);
  }
}

/** Source: turning a plane, x' = x cos t - y sin t, y' = x sin t + y cos t. */
function turnedAbout(p: Point, c: Point, degrees: number): Point {
  const { cos, sin } = cosSin(degrees);
  if (Number.isInteger(cos) && Number.isInteger(sin)) {
    return {
      x: onPaper([1, c.x], [cos, p.x], [-cos, c.x], [-sin, p.y], [sin, c.y]),
      y: onPaper([1, c.y], [sin, p.x], [-sin, c.x], [cos, p.y], [-cos, c.y]),
    };
  }
  const [dx, dy] = [p.x - c.x, p.y - c.y];
  return { x: c.x + dx * cos - dy * sin, y: c.y + dx * sin + dy * cos };
}

/** The place as far beyond its foot on the line. */
function mirroredIn(p: Point, [a, b]: readonly [Point, Point]): Point {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const t = ((p.x - a.x) * ux + (p.y - a.y) * uy) / (ux * ux + uy * uy);
  return { x: 2 * (a.x + t * ux) - p.x, y: 2 * (a.y + t * uy) - p.y };
}

/** Cosine and sine of degrees: exact for quarter turns, and halves where they are halves. */
function cosSin(degrees: number): { readonly cos: number; readonly sin: number } {
  const turn = ((degrees % 360) + 360) % 360;
  return { cos: sineOf((turn + 90) % 360), sin: sineOf(turn) };
}

function sineOf(turn: number): number {
  if (turn >= 180) return 0 - sineOf(turn - 180);
  const near = turn > 90 ? 180 - turn : turn;
  if (near === 30) return 0.5;
  return near > 45 ? Math.cos((90 - near) * DEGREE) : Math.sin(near * DEGREE);
}

/** Whether left and right change places. */
export function isMirrored(motions: readonly Motion[]): boolean {
  return motions.filter(({ kind }) => kind !== 'shift' && kind !== 'turn').length % 2 === 1;
}

/** The direction that an angle comes to; degrees counter-clockwise from the x axis, from -360 to 360. */
export function angleMovedBy(motions: readonly Motion[], degrees: number): number {
  return motions.reduce(angleMoved, degrees);
}

function angleMoved(angle: number, motion: Motion): number {
  switch (motion.kind) {
    case 'shift':
      return angle;
    case 'turn':
      return onPaper([1, angle], [1, motion.degrees]) % 360;
    case 'mirror':
      return motion.axis === 'x' ? onPaper([1, 180], [-1, angle]) % 360 : 0 - angle;
    case 'mirror in line': {
      const [a, b] = motion.through;
      return ((2 * Math.atan2(b.y - a.y, b.x - a.x)) / DEGREE - angle) % 360;
    }
  }
}
