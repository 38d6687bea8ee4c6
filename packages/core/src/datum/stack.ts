/** How far a sum may be off to either side: at worst, and as root of the sum of the squares. */
export interface Stack {
  readonly worst: number;
  readonly rss: number;
}

/**
 * Tolerances stacked up, each to either side. The second holds for errors that do not depend on each other: it is to
 * the sum what each tolerance is to its own error, be that its standard deviation times 2, 3 or the root of 3.
 *
 * Source: worst case T = sum |t|, statistical T = sqrt(sum t²); worked example at
 * https://ficientdesign.com/tolerance-stack-up-analysis.
 */
export function stackOf(tolerances: readonly number[]): Stack {
  const worst = tolerances.reduce((sum, t) => sum + Math.abs(t), 0);
  // No more than the sum, though the last digit of a root may be rounded up.
  return { worst, rss: Math.min(worst, Math.hypot(...tolerances)) };
}

/** The same of causes, each with its limit and by how much less than that it counts in a root of squares. */
export function stackOfCauses(causes: readonly { readonly by: number; readonly share: number }[]): Stack {
  const worst = causes.reduce((sum, { by }) => sum + Math.abs(by), 0);
  return { worst, rss: Math.min(worst, Math.hypot(...causes.map(({ by, share }) => by * share))) };
}
