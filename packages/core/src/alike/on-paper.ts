/** A number times a whole one. */
export type Term = readonly [times: number, value: number];

interface Decimal {
  readonly digits: bigint;
  /** Digits after the point; under 0 for zeros before it. */
  readonly places: number;
}

/**
 * A sum worked out in the decimal digits that its numbers are written in, as a person does on paper, and then the nearest
 * double: 12.7 and three times 25.4 are 88.9, where doubles come to 88.89999999999999.
 * @param terms each a whole number times a finite one
 */
export function onPaper(...terms: readonly Term[]): number {
  const decimals = terms.map(([times, value]) => {
    const { digits, places } = decimalOf(value);
    return { digits: BigInt(times) * digits, places };
  });
  const places = decimals.reduce((most, one) => Math.max(most, one.places), 0);
  const total = decimals.reduce((sum, one) => sum + one.digits * 10n ** BigInt(places - one.places), 0n);
  return Number(`${total}e-${places}`);
}

/** The shortest digits that mean this double and no other (ECMA-262, Number::toString). */
function decimalOf(value: number): Decimal {
  const [mantissa = '', exponent = '0'] = String(value).split('e');
  const [whole = '', fraction = ''] = mantissa.split('.');
  return { digits: BigInt(whole + fraction), places: fraction.length - Number(exponent) };
}
