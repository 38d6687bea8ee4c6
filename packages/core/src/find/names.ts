import type { Job } from '../job/job.js';
import type { LoadNames } from '../load/load-words.js';
import { lengthWords } from '../report/words.js';

/** How sentences name lengths and what is in the way, in a job. */
export function namesIn({ units, keepOuts }: Job): Pick<LoadNames, 'length' | 'thing'> {
  const kindOf = new Map(keepOuts.map(({ id, kind }) => [id, kind]));
  return {
    length: (value) => lengthWords(value, units),
    thing: (id) => `${kindOf.get(id) ?? 'keep-out'} ${id}`,
  };
}
