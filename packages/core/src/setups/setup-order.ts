import type { JobIssue } from '../document/errors.js';
import type { JobDocument } from '../document/schema.js';

/**
 * Setups that make cuts in another order than the job lists them. States, bodies and loads follow one order, and a
 * person at the machine follows the setups: the two must agree. A cut that is made in several setups is made in the
 * first of them; cuts in no setup have no place in their order.
 */
export function orderIssues({ cuts, setups = [] }: JobDocument): JobIssue[] {
  const made = [...new Set(setups.flatMap((setup) => ordered(setup.cuts, cuts)))];
  const listed = cuts.map(({ id }) => id).filter((id) => made.includes(id));
  const first = made.findIndex((id, k) => id !== listed[k]);
  if (first < 0) return [];
  const message =
    `make the cuts in another order than the job lists them. The setups: ${shown(made, first)}; ` +
    `the job: ${shown(listed, first)}. Bring one of them into the order of the other`;
  return [{ path: '/setups', message }];
}

/** Within a setup, cuts are made in the order of the job. */
function ordered(own: readonly string[], cuts: JobDocument['cuts']): string[] {
  const all = new Set(own);
  return cuts.map(({ id }) => id).filter((id) => all.has(id));
}

/** Ids shown before and after the first that differs. */
const SHOWN = 6;

function shown(ids: readonly string[], first: number): string {
  const from = Math.max(0, first - 1);
  const part = ids.slice(from, from + SHOWN).join(', ');
  return `${from > 0 ? '..., ' : ''}${part}${from + SHOWN < ids.length ? ', ...' : ''}`;
}
