// A project's own property tests: the laws of edgebite put to the booleans of a general-purpose library. Prints each
// law that does not hold, with the smallest case found. In a project of your own, fail the build if there is any.

import { fromFlatten, toFlatten } from '@edgebite/core/flatten';
import { booleansOf, checkLaws, familyNamed, type LawFault } from '@edgebite/core/testing';
import Flatten from '@flatten-js/core';

/** The library's functions, as the laws want them. Put yours here. */
export const flatten = booleansOf<Flatten.Polygon>({
  to: toFlatten,
  from: fromFlatten,
  unite: (a, b) => Flatten.BooleanOperations.unify(a, b),
  intersect: (a, b) => Flatten.BooleanOperations.intersect(a, b),
  subtract: (a, b) => Flatten.BooleanOperations.subtract(a, b),
});

/** What is found with discs that lie anywhere; a millionth of the area may be amiss. */
export const faults: readonly LawFault[] = checkLaws(flatten, {
  laws: ['conservesArea', 'countsOnce'],
  families: [familyNamed('generic-discs')],
  runs: 25,
  area: 1e-6,
});

/** A fault in a few lines: the law, what is wrong, and the case as JSON. */
export function told({ law, family, message, smallest }: LawFault): string {
  return [`${law} does not hold (${family}):`, `  ${message}`, `  ${JSON.stringify(smallest)}`].join('\n');
}

for (const fault of faults) console.log(told(fault));
