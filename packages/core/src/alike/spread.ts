import { described } from '../document/described.js';
import type { JobDocument } from '../document/schema.js';
import type { Faults } from '../job/faults.js';
import type { Copy } from './copies.js';

/** Something that names cuts: a setup or a tool. */
interface Naming {
  readonly cuts: readonly string[];
}

/** Setups or tools that name each copy by itself. */
export interface Spread {
  readonly members: readonly Naming[];
  /** By member and by name: the number of the entry that it is written in; none for a member with faults. */
  readonly from: readonly (readonly number[])[];
}

/**
 * The setups or the tools of a job with the names of all copies where they name a cut that is repeated. What names a copy
 * twice is taken down.
 */
export function namesSpread(
  document: JobDocument,
  list: 'setups' | 'tools',
  copies: readonly Copy[],
  faults: Faults,
): Spread | null {
  const members: readonly Naming[] | undefined = document[list];
  if (members === undefined || !faults.holds(`/${list}`)) return null;
  const idsOf = new Map<string, string[]>();
  for (const { id, cut } of copies) {
    const written = document.cuts[cut]?.id ?? '';
    const known = idsOf.get(written);
    if (known === undefined) idsOf.set(written, [id]);
    else known.push(id);
  }
  const spread = members.map((member, k) => {
    const path = `/${list}/${k}/cuts`;
    return faults.sound(path) ? spreadOne(member, path, idsOf, faults) : { member, from: [] };
  });
  return { members: spread.map(({ member }) => member), from: spread.map(({ from }) => from) };
}

function spreadOne(
  member: Naming,
  path: string,
  idsOf: ReadonlyMap<string, readonly string[]>,
  faults: Faults,
): { readonly member: Naming; readonly from: readonly number[] } {
  const entryOf = new Map<string, number>();
  member.cuts.forEach((name, i) => {
    for (const id of idsOf.get(name) ?? [name]) {
      const before = entryOf.get(id);
      if (before === undefined) entryOf.set(id, i);
      else if (faults.sound(`${path}/${i}`)) {
        const message = `is ${described(name)}, and entry ${before}, ${described(member.cuts[before])}, names ${described(id)} already; name every cut once`;
        faults.add([{ path: `${path}/${i}`, message }]);
      }
    }
  });
  return { member: { ...member, cuts: [...entryOf.keys()] }, from: [...entryOf.values()] };
}
