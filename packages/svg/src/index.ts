import type { Report } from '@edgebite/core';
import { createSVGWindow } from 'svgdom';
import { type DrawOptions, drawIn } from './draw.js';

/**
 * A drawing of a report as the text of an SVG file: plan, section where cuts stop short, tables, legend.
 * One unit is a millimetre of the sheet; lengths in the text are in the unit of the job. The same report gives
 * the same text. Line types and widths follow ISO 128, scales ISO 5455, sheets ISO 216 and ISO 5457.
 * @throws RangeError if `idPrefix` cannot begin an id.
 */
export function draw(report: Report, options: DrawOptions = {}): string {
  return drawIn(createSVGWindow(), report, options);
}

export * from './shared.js';
