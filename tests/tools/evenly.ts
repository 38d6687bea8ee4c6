import fc from 'fast-check';

/** Steps between the two ends: far finer than what any test tells apart. */
const STEPS = 2 ** 30;

/**
 * Numbers spread evenly between two ends, and now and then those that fast-check likes best. Its own doubles crowd at 0, since
 * every power of two comes as often as any other: of a range over 0 nearly all would lie next to that.
 */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const even = fc.integer({ min: 0, max: STEPS }).map((k) => min + (max - min) * (k / STEPS));
  return fc.oneof(
    { weight: 7, arbitrary: even },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );
}
