import type { Report, ReportBody, ReportStep } from '@edgebite/core';
import { figureText, volumeText } from '../text/figures.js';

/** A step within a sentence: `step 3 (cut rest, pass 1 of 4)`. Steps are counted from 1, through all setups. */
export function stepName(report: Report, index: number): string {
  const { cut, pass, passes } = report.steps[index] as ReportStep;
  return `step ${index + 1} (cut ${cut}${pass === null ? '' : `, pass ${pass} of ${passes}`})`;
}

/** How much a body is: its mass where that is known, else its volume. */
export function sizeText(
  { units, massUnit }: Pick<Report, 'units' | 'massUnit'>,
  { mass, volume }: Pick<ReportBody, 'mass' | 'volume'>,
): string {
  return mass === null || massUnit === null
    ? volumeText(volume, units)
    : `about ${figureText(mass)} ${massUnit}`;
}

/** A direction at the machine, in words and degrees: `away from you (90°)`. */
export function directionText({ words, degrees }: NonNullable<ReportStep['backOff']['machine']>): string {
  return `${words} (${Number(degrees.toFixed(1))}°)`;
}
