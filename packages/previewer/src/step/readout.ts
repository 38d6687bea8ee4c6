import type { Report } from '@edgebite/core';
import { lostZeros, NO_TARGET } from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';

/** What a readout shows: its unit, and how many decimals. */
export interface Shown {
  readonly units: Report['units'];
  readonly decimals: number;
  /** Whether its zero cannot be found as it is written, so that no number of it is printed. */
  readonly isLost?: boolean;
}

/** The readout of a setup; that of the drawing's numbers for what is in none. */
export function shownIn(report: Report, setup: string): Shown {
  const readout = report.setups.find(({ id }) => id === setup)?.readout ?? report;
  const isLost = lostZeros(report).has(setup);
  return { units: readout.units, decimals: decimalsOf(readout.resolution), isLost };
}

/** What the readout shows on one axis: all its decimals, of a zero too; a dash where its zero is lost. */
export function shownText(value: number, { decimals, isLost = false }: Shown): string {
  if (isLost) return NO_TARGET;
  return (value + 0).toFixed(decimals);
}

/** What the readout shows on both axes: `X 12.000 Y -3.500`. */
export function placeText([x, y]: readonly [number, number], shown: Shown): string {
  return `X ${shownText(x, shown)} Y ${shownText(y, shown)}`;
}
