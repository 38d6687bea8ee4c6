import type { Link } from '../datum/chain.js';
import type { LengthUnit } from '../datum/length-unit.js';
import { bad, good, type Read } from '../job/read-edges.js';

/** How far the actions of an axis have come. */
export interface Done {
  readonly links: readonly Link[];
  /** What the readout was last set to. */
  readonly set: number;
  /** The number of a move that no set has followed yet; null if there is none. */
  readonly moved: number | null;
}

/**
 * Takes actions one after another, each from what the last has come to, null for the first.
 * @param what is moved: the spindle, or the tool
 */
export function inTurn<Action, Doing extends Done>(
  list: readonly Action[],
  path: string,
  what: 'spindle' | 'tool',
  next: (action: Action, k: number, doing: Doing | null) => Read<Doing>,
): Read<Doing> {
  let doing: Doing | null = null;
  for (const [k, action] of list.entries()) {
    const read: Read<Doing> = next(action, k, doing);
    if (!read.ok) return read;
    doing = read.value;
  }
  if (doing === null) return bad(path, 'has no action');
  if (doing.moved === null) return good(doing);
  return bad(`${path}/${doing.moved}`, `moves the ${what}, but nothing is set after it; add { "set": 0 }`);
}

/** The readout is set where the spindle stands, over what has that name. */
export function withSet<Doing extends Done>(
  doing: Doing,
  k: number,
  to: number,
  of: string,
  units: LengthUnit,
): Doing {
  const link: Link = {
    kind: 'set',
    action: k,
    name: null,
    of,
    side: null,
    length: to + 0,
    by: to - doing.set,
    units,
    way: 1,
    tolerance: null,
  };
  return { ...doing, links: [...doing.links, link], set: to, moved: null };
}

/** The spindle goes on by a length: what was reached lies as much less beyond it. */
export function withMove<Doing extends Done>(
  doing: Doing,
  k: number,
  by: number,
  { name, tolerance, units }: Pick<Link, 'name' | 'tolerance' | 'units'>,
): Doing {
  const link: Link = {
    kind: 'move',
    action: k,
    name,
    of: null,
    side: null,
    length: by + 0,
    by: 0 - by,
    units,
    way: by > 0 ? -1 : 1,
    tolerance,
  };
  return { ...doing, links: [...doing.links, link], moved: k };
}
