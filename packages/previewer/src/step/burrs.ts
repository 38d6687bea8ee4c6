import type { Report, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { placeText, shownIn } from './readout.js';

/** Most places that a line lists. */
const MOST = 4;

/** Where the burrs of a step are; no line where it leaves none. */
export function burrLines(report: Report, { burrs, setup }: ReportStep): string[] {
  if (burrs === null || (burrs.leaves.length === 0 && burrs.under === 0)) return [];
  const shown = shownIn(report, setup);
  const places = [...new Set(burrs.leaves.map(({ readout }) => placeText(readout, shown)))];
  const more = places.length > MOST ? ` and ${places.length - MOST} more` : '';
  const sideways =
    places.length === 0 ? [] : [`where teeth leave, at ${places.slice(0, MOST).join('; ')}${more}`];
  const below = burrs.under === 0 ? [] : [`below, along ${lengthText(burrs.under, report.units)} of rim`];
  return [`Burrs: ${[...sideways, ...below].join('; and ')}.`];
}
