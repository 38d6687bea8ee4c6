import type { Job, RangeQuery } from '@edgebite/core';
import type { Steps } from './closed-roots.js';
import { closedScene } from './closed-scene.js';
import { slipRoots } from './closed-slips.js';
import { touchRoots } from './closed-touch.js';
import { webRoots } from './closed-webs.js';

/** What happens at a root of a closed form: see `touchRoots`, `webRoots` and `slipRoots`. */
export type ClosedKind = 'touch' | 'graze' | 'web' | 'slip';

/** A root of a closed form that says what an event of an answer and a change of a report are. */
export interface Confirmed {
  readonly kind: ClosedKind;
  /** Distance of the event from the root, in the unit of the job. */
  readonly off: number;
  /** How far apart the boundaries that touch at the root are where the report changes. */
  readonly apart: number;
}

/** The closed forms of a query, worked out when they are first asked for. */
export interface ClosedCheck {
  /** The root that an event is at, and where a report may change as it does at another value; null if there is none. */
  readonly confirm: (event: number, change: number) => Confirmed | null;
  /** Values of touching whose reports may reach as far as another value. */
  readonly touchesAt: (value: number) => readonly number[];
}

/**
 * A report may be that of touching while boundaries are so many weld tolerances apart, or have gone past each other: ends
 * move by up to two, discs are entered by four, on both sides.
 */
export const TOUCHING = 16;

/**
 * A report may be that of a web that has not yet slipped off an end, or has done so, while the centre of what slips is
 * this far from square to the end, in radians: directions are told apart to 1e-7, and each of the two edges may lean
 * by that, the place of the corner by it, and a corner by twice that.
 */
const SLIPPING = 4e-7;

/**
 * A scan of closed forms for a query in so many steps.
 * @param weld a weld tolerance of the part
 * @param right how close to a root an event has to be
 */
export function closedCheck(
  job: Job,
  query: RangeQuery,
  count: number,
  weld: number,
  right: number,
): ClosedCheck {
  const steps: Steps = { from: query.from, step: (query.to - query.from) / count, count };
  const scene = closedScene(job, query, weld);
  const touches = lazy(() => touchRoots(scene, steps));
  const slips = lazy(() => slipRoots(scene, job.limits.web, steps));
  const reach = TOUCHING * weld;
  return {
    confirm: (event, change) => {
      const offOf = ({ at }: { readonly at: number }) => Math.abs(at - event);
      const nearest = <R extends { readonly at: number }>(
        roots: readonly R[],
        isGood: (root: R) => boolean,
      ) =>
        roots.filter((root) => offOf(root) <= right && isGood(root)).sort((a, b) => offOf(a) - offOf(b))[0];
      const isClose = ({ apartAt }: { readonly apartAt: (v: number) => number }) => apartAt(change) <= reach;
      const touch = nearest(touches(), isClose);
      if (touch !== undefined) return { kind: touch.kind, off: offOf(touch), apart: touch.apartAt(change) };
      const web = nearest(webRoots(scene, job.limits.web, event, steps), isClose);
      if (web !== undefined) return { kind: 'web', off: offOf(web), apart: web.apartAt(change) };
      const slip = nearest(
        slips(),
        ({ angleAt, at }) => angleAt(change) <= SLIPPING || Math.abs(at - change) <= reach,
      );
      return slip === undefined
        ? null
        : { kind: 'slip', off: offOf(slip), apart: Math.abs(slip.at - change) };
    },
    touchesAt: (value) =>
      touches()
        .filter(({ apartAt }) => apartAt(value) <= reach)
        .map(({ at }) => at),
  };
}

function lazy<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
