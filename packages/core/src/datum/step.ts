/**
 * Digits to which a multiple of a step is cleaned: doubles keep any number of 15 digits, so 3 steps of 0.1 are 0.3
 * and not 0.30000000000000004. Source: IEEE 754 binary64, 15 decimal digits survive a round trip.
 */
const DIGITS = 15;

/** Shares of a step that rounding may have cost a number that lies halfway between two. */
const HALFWAY = 1e-9;

/** The multiple of a step nearest to a number; halfway between two the one further from 0. */
export function toStep(value: number, step: number): number {
  const steps = Math.floor(Math.abs(value) / step + 0.5 + HALFWAY);
  return Number((Math.sign(value) * steps * step).toPrecision(DIGITS)) + 0;
}
