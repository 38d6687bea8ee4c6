/**
 * How many cases a property test tries: `base` in the fast suite, that times `EDGEBITE_RUNS` in a long run.
 * Write `fc.assert(property, { numRuns: runs(200) })`.
 * @throws RangeError if `EDGEBITE_RUNS` is set to something that is not a positive number.
 */
export function runs(base: number): number {
  return Math.max(1, Math.round(base * factor()));
}

/** Whether this is a long run, which looks for new cases instead of repeating known ones. */
export function longRun(): boolean {
  return factor() > 1;
}

function factor(): number {
  const text = process.env.EDGEBITE_RUNS ?? '1';
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`EDGEBITE_RUNS is "${text}"; give a positive number, such as 20`);
  }
  return value;
}
