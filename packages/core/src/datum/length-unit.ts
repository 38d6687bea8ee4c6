/** A unit of length. */
export type LengthUnit = 'mm' | 'inch';

/** Millimetres in an inch, exactly. Source: the international inch of 1959 (NIST Special Publication 811, appendix B). */
const MM_PER_INCH = 25.4;

/** A length in another unit; the same number, to the last bit, where the units are the same. */
export function inUnit(value: number, from: LengthUnit, to: LengthUnit): number {
  if (from === to) return value;
  return from === 'inch' ? value * MM_PER_INCH : value / MM_PER_INCH;
}
