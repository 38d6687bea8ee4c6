/** A least and a most, both meant: cutting numbers are never one figure. */
export type Range = readonly [least: number, most: number];

/** Both ends of a range times a factor over 0. */
export function scaled([least, most]: Range, factor: number): Range {
  return [least * factor, most * factor];
}

/** What two ranges have in common; null if nothing. */
export function common(a: Range, b: Range): Range | null {
  const least = Math.max(a[0], b[0]);
  const most = Math.min(a[1], b[1]);
  return least <= most ? [least, most] : null;
}
