/** A tolerance class of ISO 2768-1: fine, medium, coarse, very coarse. */
export type ToleranceClass = 'f' | 'm' | 'c' | 'v';

/** Upper ends of the ranges of length, mm; the first starts at 0.5. */
export const RANGE_ENDS = [3, 6, 30, 120, 400, 1000, 2000, 4000] as const;

/** Shortest length that has a general tolerance, mm. Below it the drawing states the deviation beside the size. */
const SHORTEST = 0.5;

/** Permissible deviations to either side, mm; null where the standard has none. */
const DEVIATIONS: Readonly<Record<ToleranceClass, readonly (number | null)[]>> = {
  f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, null],
  m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2],
  c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4],
  v: [null, 0.5, 1, 1.5, 2.5, 4, 6, 8],
};

/**
 * How far a length without a tolerance of its own may be off to either side, in mm; null where the standard gives
 * nothing for that length.
 *
 * Source: ISO 2768-1:1989, table 1 (linear dimensions except for broken edges), as printed at
 * http://fabriqax.com/standarts/. The older DIN 7168 has other figures for class c up to 6 mm.
 * @param length mm
 */
export function generalTolerance(length: number, grade: ToleranceClass): number | null {
  if (!(length >= SHORTEST)) return null;
  const range = RANGE_ENDS.findIndex((end) => length <= end);
  return DEVIATIONS[grade][range] ?? null;
}
