import type { Report } from '@edgebite/core';
import { directionText } from './names.js';
import { placeText, shownIn } from './readout.js';

/** How to free each body that is held or hangs in the end: one line for each way, with the step that left it so. */
export function freeLines(report: Report): { readonly step: number; readonly line: string }[] {
  return report.bodies.flatMap(({ id, step, waysOut }) => {
    const shown = shownIn(report, report.steps[step]?.setup ?? '');
    return waysOut.map(({ words, line, leaves }, k) => {
      const along =
        line === null
          ? ''
          : ` From ${placeText(line.readout[0], shown)} to ${placeText(line.readout[1], shown)}, ${directionText(line.machine)}.`;
      return {
        step,
        line: `${id}, way ${k + 1} of ${waysOut.length}: ${words}${along} Leaves: ${uncapital(leaves)}`,
      };
    });
  });
}

function uncapital(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
