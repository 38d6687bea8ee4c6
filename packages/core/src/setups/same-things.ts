import type { Link } from '../datum/chain.js';
import { inUnit } from '../datum/length-unit.js';
import type { Setup } from '../datum/setup.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';

/** A setup that was read, and its number in the job. */
export interface NumberedSetup {
  readonly setup: Setup;
  readonly number: number;
}

/**
 * Links of one name that are not of one kind, length and tolerance, and stops of one id on which another side of the part
 * bears: one thing cannot have two.
 */
export function sameThingIssues(setups: readonly NumberedSetup[]): JobIssue[] {
  return [...stopIssues(setups), ...linkIssues(setups)];
}

function linkIssues(setups: readonly NumberedSetup[]): JobIssue[] {
  const first = new Map<string, { readonly link: Link; readonly path: string }>();
  return setups.flatMap(({ setup, number }) =>
    (['x', 'y'] as const).flatMap((axis) =>
      setup.zero[axis].links.flatMap((link): JobIssue[] => {
        if (link.name === null) return [];
        const path = `/setups/${number}/zero/${axis}/${link.action}`;
        const known = first.get(link.name);
        if (known === undefined) first.set(link.name, { link, path });
        if (known === undefined || isSame(known.link, link)) return [];
        const stop = stopOf(link);
        const message =
          stop === null
            ? `is ${described(link.name)} like that of ${known.path}, which has another kind, length or tolerance; one name is one thing`
            : `is missing: stop ${stop} is touched with another tip or tolerance than in ${known.path}, and without a name both touches count as one, off by the same; give each a name of its own if the stop is touched anew`;
        return [{ path: `${path}/name`, message }];
      }),
    ),
  );
}

/** The stop that a touch goes by, where the job gives it no name. */
function stopOf({ name, of }: Link): string | null {
  return name !== null && name === of ? name.slice('stop:'.length) : null;
}

function isSame(a: Link, b: Link): boolean {
  const [p, q] = [a, b].map(({ length, tolerance, units }) =>
    [length, tolerance].map((v) => (v === null ? null : inUnit(v, units, 'mm'))),
  ) as [(number | null)[], (number | null)[]];
  return a.kind === b.kind && p.every((v, k) => v === q[k]);
}

function stopIssues(setups: readonly NumberedSetup[]): JobIssue[] {
  const first = new Map<string, { readonly face: string; readonly setup: string }>();
  return setups.flatMap(({ setup, number }) =>
    setup.stops.flatMap(({ id, face }, k): JobIssue[] => {
      const known = first.get(id);
      if (known === undefined) first.set(id, { face, setup: setup.id });
      if (known === undefined || known.face === face) return [];
      const message = `is ${described(face)}, but the ${known.face} bears on stop ${id} in setup ${known.setup}: one stop looks one way. Give this one an id of its own`;
      return [{ path: `/setups/${number}/stops/${k}/face`, message }];
    }),
  );
}
