/** What an outside value can be. Every row of the table is one of these, and says so. */
export const KINDS = {
  'printed value': 'a number that the source prints',
  'worked example': 'a problem that the source works out with numbers',
  standard: 'a number or rule of a standard',
  'second copy': 'figures of a sheet, typed a second time from it and not from the table that is checked',
  library: 'a general-purpose library works out the same by other means',
  'independent computation':
    'worked out a second time by other means, in the tests: sampling, drawn errors, a simulated machine',
  'closed form of our own':
    'only the formula is from outside, if anything is; its numbers were put in here, so it is the weakest of all',
} as const;

/** What an outside value is. */
export type Kind = keyof typeof KINDS;

/** One value of an outside reference, and what edgebite makes of the same. */
export interface Pair {
  readonly got: number;
  readonly wanted: number;
  /** How far the outside value itself may be off: half a unit of its last printed digit, or its rounding. */
  readonly within: number;
}

/** An outside reference, and how far edgebite is from it. */
export interface Reference {
  /** The quantity that is checked, as a report calls it. */
  readonly quantity: string;
  /** Its letters in docs/maths.md, if it has any. */
  readonly letters?: string;
  readonly source: string;
  readonly kind: Kind;
  readonly checks: string;
  /** Whether values are answers that agree or not, and no sizes. */
  readonly agrees?: boolean;
  readonly pairs: () => readonly Pair[] | Promise<readonly Pair[]>;
}

/** A quantity that has no outside value, and why. */
export interface Gap {
  readonly quantity: string;
  readonly why: string;
}

/** A value printed with so many digits after the point, and met to half of the last one. */
export function printed(got: number, wanted: number, digits: number): Pair {
  return { got, wanted, within: 0.5 * 10 ** -digits };
}

/** A value whose source rounds on the way, so that its last digit is amiss. */
export function loosely(got: number, wanted: number, within: number): Pair {
  return { got, wanted, within };
}

/** A value known to all digits, as a share of itself if it is over 1: only rounding on the way may be amiss. */
export function exact(got: number, wanted: number): Pair {
  const scale = Math.max(1, Math.abs(wanted));
  return { got: got / scale, wanted: wanted / scale, within: 1e-11 };
}

/** A value that an approximation gives to a share of itself. */
export function toShare(got: number, wanted: number, share: number): Pair {
  return { got: got / wanted, wanted: 1, within: share };
}

/** An answer that is the same, or is not. */
export function same(isSame: boolean): Pair {
  return { got: isSame ? 1 : 0, wanted: 1, within: 0.5 };
}

/** Largest deviation, largest share of what is allowed, and between what values it is allowed. */
export function worstOf(pairs: readonly Pair[]): {
  readonly deviation: number;
  readonly ofAllowed: number;
  readonly allowed: readonly [number, number];
} {
  const deviations = pairs.map(({ got, wanted }) => Math.abs(got - wanted));
  const allowed = pairs.map(({ within }) => within);
  return {
    deviation: Math.max(...deviations),
    ofAllowed: Math.max(...allowed.map((within, k) => (deviations[k] as number) / within)),
    allowed: [Math.min(...allowed), Math.max(...allowed)],
  };
}
