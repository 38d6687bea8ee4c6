/** One value of an outside reference, and what edgebite makes of the same. */
export interface Pair {
  readonly got: number;
  readonly wanted: number;
  /** How far the outside value itself may be off: half a unit of its last printed digit, or its rounding. */
  readonly within: number;
}

/** An outside reference, and how far edgebite is from it. */
export interface Reference {
  /** Its letters in docs/maths.md, if it has any. */
  readonly letters?: string;
  readonly source: string;
  /** Standard, handbook, worked example, or library. */
  readonly kind: 'standard' | 'handbook' | 'worked example' | 'published values' | 'library';
  readonly checks: string;
  readonly pairs: () => readonly Pair[] | Promise<readonly Pair[]>;
}

/** A value printed with so many digits after the point. */
export function printed(got: number, wanted: number, digits: number): Pair {
  return { got, wanted, within: 0.5 * 10 ** -digits };
}

/** A value known to all digits, as a share of itself if it is over 1: only rounding on the way may be amiss. */
export function exact(got: number, wanted: number): Pair {
  const scale = Math.max(1, Math.abs(wanted));
  return { got: got / scale, wanted: wanted / scale, within: 1e-11 };
}

/** Largest deviation over what the reference allows, and largest deviation. */
export function worstOf(pairs: readonly Pair[]): { readonly deviation: number; readonly ofAllowed: number } {
  const deviations = pairs.map(({ got, wanted }) => Math.abs(got - wanted));
  return {
    deviation: Math.max(...deviations),
    ofAllowed: Math.max(...pairs.map(({ within }, k) => (deviations[k] as number) / within)),
  };
}
