import { describe, expect, it } from 'vitest';
import { count, notNegative, overZero, share } from './kinds.js';

/* What a number must be, as it is told, and the values at each end of that. */
const RULES = [
  ['be a finite number over 0', overZero, [1e-300, 7], [0, -1, Number.NaN, Number.POSITIVE_INFINITY, '1']],
  ['be a finite number, 0 or more', notNegative, [0, 3.5], [-1e-300, Number.POSITIVE_INFINITY, null]],
  ['be a number over 0 and under 1', share, [1e-9, 0.5, 0.999], [0, 1, -0.5, 2]],
  ['be a whole number, 0 or more', count, [0, 1, 12], [-1, 0.5, Number.NaN, 2 ** 53]],
] as const;

describe('what a number given to a function must be', () => {
  it.each(RULES)('must %s', (words, check, good, bad) => {
    for (const value of good) expect(check(value), String(value)).toBeNull();
    for (const value of bad) expect(JSON.stringify(check(value)), String(value)).toContain(`must ${words}`);
  });
});
