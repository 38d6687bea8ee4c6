import type { Point } from './point.js';

/** Digits of a number in a sentence: finer than any drawing, without the tail of binary rounding. */
const DIGITS = 10;

/** A number for a sentence. */
export function shownNumber(value: number): string {
  return String(Number(value.toPrecision(DIGITS)) + 0);
}

/** A number to so many digits after the point, 0 and not -0. */
export function roundedTo(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}

/** A place for a sentence. */
export function shownPoint(p: Point): string {
  return `(${shownNumber(p.x)}, ${shownNumber(p.y)})`;
}
