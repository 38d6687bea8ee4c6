import { thicknessInterval } from '../datum/contact.js';
import { type Interval, within } from '../datum/reach.js';
import { angleInterval } from '../datum/tip.js';
import { DEGREE } from '../geometry/degree.js';
import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import { choicesFor, contactAt, type Moving, tipCurves } from './moving.js';

/** A web as far as its interval goes. */
export interface ThinPlace {
  readonly thickness: number;
  readonly ends: readonly [Point, Point];
  readonly between: readonly [string, string];
}

/** A knife edge as far as its interval goes; degrees. */
export interface SharpPlace {
  readonly angle: number;
  readonly at: Point;
  readonly between: readonly [string, string];
}

/** The smallest interval round some; null of none, and where one is not known. */
export function hull(list: readonly (Interval | null)[]): Interval | null {
  const known = list.filter((one) => one !== null);
  if (known.length === 0 || known.length < list.length) return null;
  const of = (key: 'worst' | 'rss') =>
    [
      Math.min(...known.map((one) => one[key][0])) + 0,
      Math.max(...known.map((one) => one[key][1])) + 0,
    ] as const;
  return within({ worst: of('worst'), rss: of('rss') });
}

/** Between what the thickness of a web can lie; null where none of its boundaries is that of a cut in a setup. */
export function webInterval(
  job: Job,
  moving: Moving,
  { thickness, ends, between }: ThinPlace,
): Interval | null {
  const [p, q] = ends;
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  if (length === 0) return null;
  const n = { dx: (q.x - p.x) / length, dy: (q.y - p.y) / length };
  return hull(
    choicesFor(moving, between).map((choice): Interval | null => {
      const one = contactAt(moving, choice, between[0], p, n);
      const other = contactAt(moving, choice, between[1], q, n);
      return one === null || other === null ? null : thicknessInterval(thickness, n, one, other, job);
    }),
  );
}

/** Between what the angle of a knife edge can lie, degrees; null where neither side is that of a cut in a setup. */
export function knifeInterval(job: Job, moving: Moving, { angle, at, between }: SharpPlace): Interval | null {
  const [a, b] = between;
  const intervals = choicesFor(moving, between).map((choice): Interval | null => {
    if (a === b) return { worst: [angle * DEGREE, angle * DEGREE], rss: [angle * DEGREE, angle * DEGREE] };
    const [one] = tipCurves(moving, choice, a, at);
    const [other] = tipCurves(moving, choice, b, at);
    return one === undefined || other === undefined ? null : angleInterval(angle * DEGREE, one, other, job);
  });
  const degrees = ([low, high]: readonly [number, number]) => [low / DEGREE, high / DEGREE] as const;
  const all = hull(intervals);
  return all && { worst: degrees(all.worst), rss: degrees(all.rss) };
}
