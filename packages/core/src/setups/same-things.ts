import { inUnit, type LengthUnit } from '../datum/length-unit.js';
import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { LinkDocument, SetupDocument } from '../document/schema.js';

/** Links of one name that are not of one kind, length and tolerance: one thing cannot have two. */
export function sameThingIssues(setups: readonly SetupDocument[], units: LengthUnit): JobIssue[] {
  const first = new Map<string, { readonly link: LinkDocument; readonly path: string }>();
  return setups.flatMap((setup, i) =>
    (['x', 'y'] as const).flatMap((axis) =>
      setup.zero[axis].flatMap((link, k): JobIssue[] => {
        if (link.name === undefined) return [];
        const path = `/setups/${i}/zero/${axis}/${k}`;
        const known = first.get(link.name);
        if (known === undefined) first.set(link.name, { link, path });
        if (known === undefined || isSame(known.link, link, units)) return [];
        const message = `is ${described(link.name)} like that of ${known.path}, which has another kind, length or tolerance; one name is one thing`;
        return [{ path: `${path}/name`, message }];
      }),
    ),
  );
}

function isSame(a: LinkDocument, b: LinkDocument, units: LengthUnit): boolean {
  const [p, q] = [a, b].map((link) => {
    const length = 'length' in link ? link.length : 'diameter' in link ? link.diameter : undefined;
    return [length, link.tolerance].map((v) =>
      v === undefined ? null : inUnit(v, link.units ?? units, 'mm'),
    );
  }) as [(number | null)[], (number | null)[]];
  return a.kind === b.kind && p.every((v, k) => v === q[k]);
}
