import type { Report, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { placeText, type Shown, shownIn } from './readout.js';

/** Most places that a line lists. */
const MOST = 4;

/** Where the burrs of a step are; no line where it leaves none. */
export function burrLines(report: Report, { burrs, setup }: ReportStep): string[] {
  if (burrs === null || (burrs.leaves.length === 0 && burrs.under === 0)) return [];
  const shown = shownIn(report, setup);
  // From the left, so that a drawing that is turned tells them in the same order.
  const inOrder = burrs.leaves
    .map(({ readout }) => ({ readout, text: placeText(readout, shown) }))
    .sort((a, b) => (a.text === b.text ? 0 : before(a.readout, b.readout, shown)));
  const places = [...new Set(inOrder.map(({ text }) => text))];
  const more = places.length > MOST ? ` and ${places.length - MOST} more` : '';
  const sideways =
    places.length === 0 ? [] : [`where teeth leave, at ${places.slice(0, MOST).join('; ')}${more}`];
  const below = burrs.under === 0 ? [] : [`below, along ${lengthText(burrs.under, report.units)} of rim`];
  return [`Burrs: ${[...sideways, ...below].join('; and ')}.`];
}

/** Which of two places comes first, by what the readout shows of them. */
function before(a: readonly [number, number], b: readonly [number, number], shown: Shown): number {
  const [x, y] = [0, 1].map(
    (k) =>
      Number((a[k] as number).toFixed(shown.decimals)) - Number((b[k] as number).toFixed(shown.decimals)),
  );
  return (x as number) || (y as number);
}
