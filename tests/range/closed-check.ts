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
  /** Distance of the change of the report from the root. */
  readonly blur: number;
}

/** A report may be that of touching this many weld tolerances round it: ends move by up to two, discs are entered by four. */
export const TOUCHING = 16;

/**
 * A report may be that of a web that has not yet slipped off an end, or has done so, while the centre of what slips is
 * this far from square to the end, in radians: directions are told apart to 1e-7, and each of the two edges may lean
 * by that, the place of the corner by it, and a corner by twice that.
 */
const SLIPPING = 4e-7;

/**
 * A scan of closed forms for a query, which is made when it is first asked. It looks for the root that an event is at to
 * `right`, and that a change of the report is near, as near as reports tell; null if there is none.
 * @param weld a weld tolerance of the part
 */
export function closedCheck(
  job: Job,
  query: RangeQuery,
  count: number,
  weld: number,
  right: number,
): (event: number, change: number) => Confirmed | null {
  const steps: Steps = { from: query.from, step: (query.to - query.from) / count, count };
  const scene = closedScene(job, query, weld);
  const touches = lazy(() => touchRoots(scene, steps));
  const slips = lazy(() => slipRoots(scene, job.limits.web, steps));
  return (event, change) => {
    const atEvent = <R extends { readonly at: number }>(roots: readonly R[]) =>
      roots
        .filter(({ at }) => Math.abs(at - event) <= right)
        .sort((a, b) => Math.abs(a.at - event) - Math.abs(b.at - event));
    const told = (at: number, kind: ClosedKind): Confirmed => ({
      kind,
      off: Math.abs(at - event),
      blur: Math.abs(at - change),
    });
    const isNear = ({ at }: { readonly at: number }) => Math.abs(at - change) <= TOUCHING * weld;
    const [touch] = atEvent(touches()).filter(isNear);
    if (touch !== undefined) return told(touch.at, touch.kind);
    const [web] = atEvent(webRoots(scene, job.limits.web, event, steps)).filter(isNear);
    if (web !== undefined) return told(web.at, 'web');
    const [slip] = atEvent(slips()).filter((one) => isNear(one) || one.angleAt(change) <= SLIPPING);
    return slip === undefined ? null : told(slip.at, 'slip');
  };
}

function lazy<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
