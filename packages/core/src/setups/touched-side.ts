import type { Link } from '../datum/chain.js';
import type { JobIssue } from '../document/errors.js';

/** Which way the face of the part that a chain ends at looks along its axis: +1, -1, or null where that is not known. */
export type Outward = 1 | -1 | null;

/**
 * Links that would put a tip inside of what it touches, or a block into the stop. A tip touches a face from outside: one
 * of the part from where it looks to, one of a stop from where the part is, as the two bear on each other.
 * @param links from the zero to the part
 * @param pathOf JSON Pointer to the link of a number
 * @param isTurned whether the job writes the chain from the part to the zero
 */
export function sideIssues(
  links: readonly Link[],
  outward: Outward,
  pathOf: (link: number) => string,
  isTurned: boolean,
): JobIssue[] {
  const [touch, ...rest] = links;
  if (outward === null || (touch?.kind !== 'edge finder' && touch?.kind !== 'tool')) return [];
  if (!rest.every(({ kind }) => kind === 'stop' || kind === 'block')) return [];
  const bears = rest.some(({ kind }) => kind === 'stop');
  if (rest.length > 0 && !bears) return [];
  const away = bears ? -outward : outward;
  const what = bears
    ? "the stop's face looks the other way, as the part bears on it"
    : 'the face looks away from the part';
  return links.flatMap(({ kind, way }, k): JobIssue[] => {
    const wanted = k === 0 ? -away : away;
    if (kind === 'stop' || way === wanted) return [];
    const written = (sign: number) => (sign > 0 !== isTurned ? '+' : '-');
    const inside =
      k === 0 ? 'the tip would stand inside of what it touches' : 'the block would lie inside of the stop';
    const message = `is "${written(way)}", but then ${inside}: ${what}; it is "${written(wanted)}"`;
    return [{ path: `${pathOf(k)}/way`, message }];
  });
}
