/*
 * Room: the sheet for the machine.
 * In: a report.
 * Out: rows of readout numbers, as text, CSV or HTML.
 */

import type { Report } from '@edgebite/core';
import { blocksOf } from './blocks.js';
import type { Sheet } from './sheet.js';

/** Digits of a length as it was written; further ones are of arithmetic. */
const DIGITS = 12;

/** The sheet of a report: its steps in order, a block for each setup. */
export function sheetOf(report: Report): Sheet {
  const { name, units, thickness, material } = report;
  const unit = units === 'mm' ? 'mm' : 'in';
  return {
    name: name === '' ? 'Job without a name' : name,
    facts: [
      `thickness ${Number(thickness.toPrecision(DIGITS))} ${unit}`,
      ...(material === null ? ['material not given'] : [material]),
      `sizes and depths in ${units === 'mm' ? 'mm' : 'inches'}`,
    ],
    units,
    blocks: blocksOf(report),
    standing: report.cautions.at(-1)?.message ?? '',
  };
}
