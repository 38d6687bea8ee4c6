import { EdgebiteError } from '../geometry/edgebite-error.js';
import type { Kinds } from '../kinds/kinds.js';
import { guarded } from './guarded.js';

/**
 * A function that reads a report, as it is given to others. Its lists are looked at, not every row in them; where a row is not as
 * its schema says, that is told, and not what became of it inside.
 */
export function reading<F extends (...given: never[]) => unknown>(run: F, name: string, kinds: Kinds): F {
  const [first = ''] = Object.keys(kinds);
  const call = (...given: readonly unknown[]): unknown => {
    try {
      return (run as unknown as (...args: readonly unknown[]) => unknown)(...given);
    } catch (error) {
      if (!(error instanceof TypeError)) throw error;
      const place = `${name}: ${first}`;
      const remedy = 'look at it with the schema of reports, or make it anew by examine';
      const message = `${place} has a row that is not as its schema says; ${remedy}`;
      throw new EdgebiteError(message, { code: 'argument', place, remedy, cause: error });
    }
  };
  return guarded(call as unknown as F, name, kinds);
}
