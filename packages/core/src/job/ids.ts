import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import { looksOf, UNSEEN } from './look-alike.js';

/** White space at an end: such names look alike. */
const EDGED = /^\s|\s$/;

/**
 * What is wrong with the ids of cuts, as far as they are texts; or with those of other things.
 * @param path JSON Pointer to their list
 * @param what one of them is called
 */
export function idIssues(cuts: readonly unknown[], path = '/cuts', what = 'cut'): JobIssue[] {
  const first = new Map<string, number>();
  const looks = new Map<string, number>();
  return cuts.flatMap((cut, i): JobIssue[] => {
    const id = idOf(cut);
    if (id === null || id === '') return [];
    const say = (message: string): JobIssue[] => [{ path: `${path}/${i}/id`, message }];
    const earlier = first.get(id);
    if (earlier !== undefined) {
      return say(`is ${described(id)} like that of ${what} ${earlier}; give every ${what} an id of its own`);
    }
    first.set(id, i);
    if (EDGED.test(id) || UNSEEN.test(id)) {
      return say(`is ${shown(id)}; it must not start or end with a space, nor hold signs that nobody sees`);
    }
    const alike = looks.get(looksOf(id));
    looks.set(looksOf(id), alike ?? i);
    if (alike === undefined) return [];
    return say(
      `is ${shown(id)}, which looks like ${shown(idOf(cuts[alike]) ?? '')} of ${what} ${alike}; give it a name that nobody takes for the other`,
    );
  });
}

/** An id in quotes, with the numbers of signs that are not plain, so that two that look alike are told apart. */
function shown(id: string): string {
  const odd = [...id].filter((sign) => sign < ' ' || sign > '~').slice(0, MOST_ODD);
  const codes = odd.map(
    (sign) => `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
  );
  return `${described(id)}${codes.length === 0 ? '' : ` (with ${codes.join(', ')})`}`;
}

/** So many signs are named by number. */
const MOST_ODD = 3;

function idOf(cut: unknown): string | null {
  if (typeof cut !== 'object' || cut === null || !('id' in cut)) return null;
  return typeof cut.id === 'string' ? cut.id : null;
}
