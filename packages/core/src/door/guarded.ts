/*
 * Room: the public functions, each with a check of its arguments.
 * In: whatever a caller hands over.
 * Out: the answer of the function behind, or an `EdgebiteError` that names function, argument and remedy.
 */

import { EdgebiteError } from '../geometry/edgebite-error.js';
import { type Fault, faultIn, type Kind, type Kinds } from '../kinds/kinds.js';
import { vouchFor } from '../kinds/region-kind.js';

/** What a guarded function makes that needs no look when it comes back. */
export type Makes = 'regions';

/**
 * A function as it is given to others: its arguments are looked at first, and what it says of them is an EdgebiteError.
 * Inside the library the function itself is called.
 * @param kinds what each argument must be, by name and in order
 */
export function guarded<F extends (...given: never[]) => unknown>(
  run: F,
  name: string,
  kinds: Kinds,
  makes?: Makes,
): F {
  const names = Object.keys(kinds);
  const all = names.map((one) => kinds[one] as Kind);
  const call = (...given: readonly unknown[]): unknown => {
    for (let k = 0; k < all.length; k++) {
      const fault = faultIn(all[k] as Kind, given[k]);
      if (fault !== null) throw refusal(name, names[k] as string, fault);
    }
    try {
      const made = (run as unknown as (...args: readonly unknown[]) => unknown)(...given);
      return makes === undefined ? made : vouched(made);
    } catch (error) {
      throw told(name, error);
    }
  };
  return call as unknown as F;
}

function refusal(
  name: string,
  argument: string,
  { at, what, remedy, code = 'argument' }: Fault,
): EdgebiteError {
  const place = `${name}: ${argument}${at}`;
  return new EdgebiteError(`${place} ${what}`, { code, place, remedy });
}

/** Frozen, so that it stays what it was found to be; its parts are shared with others, and read only. */
function vouched(made: unknown): unknown {
  if (!Array.isArray(made)) return made;
  return Object.freeze(vouchFor(made));
}

/** What is said of a value inside the library, as an EdgebiteError: `where: what; what to do`. */
export function told(name: string, error: unknown): unknown {
  if (!(error instanceof RangeError) || error instanceof EdgebiteError) return error;
  const { message } = error;
  const colon = message.indexOf(': ');
  // Said by the machine: out of stack, or of memory.
  if (colon < 0) return error;
  const remedy = message.slice(message.lastIndexOf('; ') + 1).trim();
  return new EdgebiteError(message, {
    code: 'argument',
    place: `${name}: ${message.slice(0, colon)}`,
    remedy,
    cause: error,
  });
}
