import { contactFamilies } from './families-contact.js';
import { looseFamilies } from './families-loose.js';
import { repeatFamilies } from './families-repeat.js';
import type { Family } from './family.js';

/** All families of cut cases, generic and degenerate. */
export const families: readonly Family[] = [...looseFamilies, ...contactFamilies, ...repeatFamilies];

/**
 * The family of a name.
 * @throws RangeError if there is none of that name.
 */
export function familyNamed(name: string): Family {
  const found = families.find((family) => family.name === name);
  if (found) return found;
  throw new RangeError(
    `familyNamed: no family "${name}"; there are ${families.map((f) => f.name).join(', ')}`,
  );
}
