import type { Report } from '@edgebite/core';

/** The unit of a report's lengths. */
export type Units = Report['units'];

/** Decimals shown of a length: a thousandth of a millimetre, a ten-thousandth of an inch. */
const DECIMALS = { mm: 3, inch: 4 } as const;

/**
 * A length, area or volume with the decimals of its unit: `12.500`, or `0.4921` in inches. A true zero is `0`,
 * so that it is told apart from something too small to show.
 */
export function numberText(value: number, units: Units): string {
  return fixed(value, DECIMALS[units]);
}

/** The same without idle zeros at its end: `12.5`. For dimensions written on a drawing. */
export function dimensionText(value: number, units: Units): string {
  const text = numberText(value, units);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** An angle in degrees, with one decimal; a true zero is `0`. */
export function angleText(degrees: number): string {
  return fixed(degrees, 1);
}

/** The sign after a length: `mm` or `in`. */
export function unitText(units: Units): string {
  return units === 'mm' ? 'mm' : 'in';
}

/** Millimetres in one unit. The inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
export function millimetres(units: Units): number {
  return units === 'mm' ? 1 : 25.4;
}

/** A number with so many decimals, never `-0.000`; a true zero is `0`. */
export function fixed(value: number, decimals: number): string {
  if (value === 0) return '0';
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** A length on the sheet, mm, rounded to a micron: far under any printer's dot, and short to write. */
export function toMicron(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
