import { type Contact, thicknessInterval } from '../datum/contact.js';
import { endLevel, faceLevel, floorInterval, type Level } from '../datum/height-drift.js';
import { type Interval, within } from '../datum/reach.js';
import type { Laid } from '../datum/setup.js';
import { angleInterval } from '../datum/tip.js';
import { DEGREE } from '../geometry/angle.js';
import type { Point, Vector } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import type { Floor } from '../left/floors.js';
import { goesDown, lowestOf } from '../load/underneath.js';
import { choicesFor, contactAt, type Moving, tipCurves } from './moving.js';

/** A web as far as its interval goes. */
export interface ThinPlace {
  readonly thickness: number;
  readonly ends: readonly [Point, Point];
  readonly between: readonly [string, string];
  /** How far to both sides together it stays as thick. */
  readonly strip: number;
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
  { thickness, ends: [p, q], between, strip }: ThinPlace,
): Interval | null {
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  if (length === 0) return null;
  const n = { dx: (q.x - p.x) / length, dy: (q.y - p.y) / length };
  return hull(
    choicesFor(moving, between).map((choice): Interval | null => {
      const one = contactAt(moving, choice, between[0], p, n);
      const other = contactAt(moving, choice, between[1], q, n);
      if (one === null || other === null) return null;
      return leastAlong(strip, n, [one, other], (a, b) => thicknessInterval(thickness, n, a, b, job));
    }),
  );
}

/** A web that stays as thick between two straight walls is thinnest at one end of that where one of them may be turned. */
function leastAlong(
  strip: number,
  n: Vector,
  [one, other]: readonly [Contact, Contact],
  at: (one: Contact, other: Contact) => Interval,
): Interval {
  const middle = at(one, other);
  if (strip === 0 || one.kind !== 'flat' || other.kind !== 'flat') return middle;
  const lows = [-strip / 2, strip / 2].map((by) => {
    const to = (p: Point) => ({ x: p.x - n.dy * by, y: p.y + n.dx * by });
    return at({ ...one, at: to(one.at) }, { ...other, at: to(other.at) }).worst[0];
  });
  return { ...middle, worst: [Math.min(middle.worst[0], ...lows), middle.worst[1]] };
}

/** Between what the angle of a knife edge can lie, degrees; null where neither side is that of a cut in a setup. */
export function knifeInterval(job: Job, moving: Moving, { angle, at, between }: SharpPlace): Interval | null {
  const [a, b] = between;
  const intervals = choicesFor(moving, between).map((choice): Interval | null => {
    if (a === b) return { worst: [angle * DEGREE, angle * DEGREE], rss: [angle * DEGREE, angle * DEGREE] };
    const [one] = tipCurves(moving, choice, a, at);
    const [other] = tipCurves(moving, choice, b, at);
    return one === undefined || other === undefined
      ? null
      : angleInterval(angle * DEGREE, one, other, at, job);
  });
  const degrees = ([low, high]: readonly [number, number]) => [low / DEGREE, high / DEGREE] as const;
  const all = hull(intervals);
  return all && { worst: degrees(all.worst), rss: degrees(all.rss) };
}

/** Between what the thickness of a floor can lie; null where one of its cuts is in no setup with a zero in Z. */
export function floorSpan(
  job: Job,
  lays: readonly Laid[],
  { thickness, under, beyond }: Pick<Floor, 'thickness' | 'under' | 'beyond'>,
): Interval | null {
  const isFromTop = (job.cuts[under] as JobCut).from === 'top';
  const own = endsOf(job, lays, under);
  const others = beyond.flatMap((cut): (Level | null)[] =>
    cut === null ? [faceLevel(isFromTop ? 'bottom' : 'top')] : endsOf(job, lays, cut),
  );
  if (own.length === 0 || others.length === 0) return null;
  const tolerance = job.thicknessTolerance;
  return hull(
    own.flatMap((one) =>
      others.map((other) => {
        if (one === null || other === null) return null;
        const [lower, upper] = isFromTop ? [other, one] : [one, other];
        return floorInterval(thickness, lower, upper, tolerance);
      }),
    ),
  );
}

/** The level at which a cut ends, for each setup that it is made in. */
function endsOf(job: Job, lays: readonly Laid[], number: number): (Level | null)[] {
  const cut = job.cuts[number] as JobCut;
  const tool = job.tools.find(({ cuts }) => cuts.includes(cut.id));
  const lowest = lowestOf(goesDown(cut, tool?.kind ?? null, cut.diameter), job.thickness);
  const task = { lowest, thickness: job.thickness, tool: tool?.id ?? cut.id, cut: cut.id };
  const own = lays.filter(({ setup }) => setup.cuts.includes(cut.id));
  return own.length === 0 ? [null] : own.map((lay) => endLevel(lay, task));
}
