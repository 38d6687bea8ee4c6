import { described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';

/** Control characters, or white space at an end: such names look alike, or break a table. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const UNFIT = /^\s|\s$|[\u0000-\u001f\u007f]/;

/**
 * What is wrong with the ids of cuts, as far as they are texts; or with those of other things.
 * @param path JSON Pointer to their list
 * @param what one of them is called
 */
export function idIssues(cuts: readonly unknown[], path = '/cuts', what = 'cut'): JobIssue[] {
  const first = new Map<string, number>();
  return cuts.flatMap((cut, i): JobIssue[] => {
    const id = idOf(cut);
    if (id === null || id === '') return [];
    const say = (message: string): JobIssue[] => [{ path: `${path}/${i}/id`, message }];
    const earlier = first.get(id);
    if (earlier !== undefined) {
      return say(`is ${described(id)} like that of ${what} ${earlier}; give every ${what} an id of its own`);
    }
    first.set(id, i);
    if (!UNFIT.test(id)) return [];
    return say(`is ${described(id)}; it must not start or end with a space, nor hold control characters`);
  });
}

function idOf(cut: unknown): string | null {
  if (typeof cut !== 'object' || cut === null || !('id' in cut)) return null;
  return typeof cut.id === 'string' ? cut.id : null;
}
