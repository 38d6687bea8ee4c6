/*
 * Room: whole drawings: `draw` and its like.
 * In: a report and options.
 * Out: SVG text.
 */

import type { RangeReport, Report } from '@edgebite/core';
import { type CheckDrawOptions, checkSheetOf } from '../checks/check-draw.js';
import { type RangeDrawOptions, rangeSheetOf } from '../range/range-strip.js';
import { type StepViewOptions, stepViewOf } from '../steps/step-view.js';
import { type ZeroDrawOptions, zeroSheetOf } from '../zero/zero-draw.js';
import { type DrawOptions, sheetOf, sheetsOf } from './draw.js';
import { type ViewOptions, viewOf } from './view-draw.js';

/**
 * A drawing of a report as the text of an SVG file: the steps, the plan, details of what is thin, a section where cuts
 * stop short, tables, findings, legend. One unit is a millimetre of the sheet; lengths in the text are in the unit of the
 * job. The same report gives the same text. Line types and widths follow ISO 128, dimensions ISO 129, scales ISO 5455,
 * sheets ISO 216 and ISO 5457. No label lies on a line or on another label, and none leaves the sheet. What does not fit is on further
 * sheets: `drawSheets`.
 * @throws EdgebiteError if `idPrefix` cannot begin an id, the theme is none, or the range is not one of the report.
 */
export function draw(report: Report, options: DrawOptions = {}): string {
  return sheetOf(report, options).text();
}

/**
 * A drawing of a report on as many sheets as it needs, each the text of an SVG file: the drawing of `draw`, then lists. They have
 * every finding and caution that is not whole on the drawing, every table with more rows than it has room for there, and the stands
 * of a tool on a path with the centre, radius and sense of its arcs, in readout numbers. At most twelve sheets of lists.
 * @throws EdgebiteError if `idPrefix` cannot begin an id, the theme is none, or the range is not one of the report.
 */
export function drawSheets(report: Report, options: DrawOptions = {}): readonly string[] {
  return sheetsOf(report, options).map((sheet) => sheet.text());
}

/**
 * A drawing of a range as the text of an SVG file: a strip along which the free number grows upwards, safe intervals
 * hatched and the others open, what each comes to at its left, what changes at each event at its right, and the present
 * value marked. One unit is a millimetre of the sheet. As high as its labels need, of which no two overlap. The same
 * range gives the same text.
 * @throws EdgebiteError if `idPrefix` cannot begin an id, or the width is not from 120 to 1,000 mm.
 */
export function drawRange(answer: RangeReport, options: RangeDrawOptions = {}): string {
  return rangeSheetOf(answer, options).text();
}

/**
 * How the zero of a setup is found, as the text of an SVG file: a picture for each action of each axis, the part as it lies and
 * stands then, with stop, blocks, feeler and what touches where they are, and what the readout shows. In Z it is seen from the
 * front. One unit is a millimetre of the sheet; as high as its pictures need. The same report gives the same text.
 * @throws EdgebiteError if `idPrefix` cannot begin an id, the theme is none, the width is not from 100 to 1,000 mm, or the report
 * has no such setup.
 */
export function drawZero(report: Report, options: ZeroDrawOptions = {}): string {
  return zeroSheetOf(report, options).text();
}

/**
 * How to measure an arc that a cut leaves, as the text of an SVG file: a picture for each way, the part as it lies when the arc is
 * cut last, with the arc, pins, and what is read between which places. One unit is a millimetre of the sheet; as high as its
 * pictures need. The same report gives the same text.
 * @param index of the arc in `report.checks`, from 0
 * @throws EdgebiteError if `idPrefix` cannot begin an id, the theme is none, the width is not from 100 to 1,000 mm, or there is no
 * such arc or way.
 */
export function drawCheck(report: Report, index: number, options: CheckDrawOptions = {}): string {
  return checkSheetOf(report, index, options).text();
}

/**
 * The plan of a report for a screen, without a sheet, as the text of an SVG: it grows with its place in the page. Everything
 * that can be pointed at has `data-about` with its name in the report: `piece:ID`, `cut:ID`, `web:N`, `knifeEdge:N`,
 * `finding:N`, `keepOut:ID`. The same report gives the same text.
 * @throws EdgebiteError if `idPrefix` cannot begin an id, the theme is none, or a side of `size` is not from 40 to 2,000.
 */
export function drawView(report: Report, options: ViewOptions = {}): string {
  return viewOf(report, options).text();
}

/**
 * One step of a report for a screen, as the text of an SVG: as the part lies then, what stands, what is taken, the tool with
 * its push and its way off the wall, what lets go. The same report gives the same text.
 * @param index of the step in the report, from 0
 * @throws EdgebiteError if there is no such step, the job is too large for its steps to be drawn, `idPrefix` cannot begin an id,
 * the theme is none, or a side of `size` is not from 40 to 2,000.
 */
export function drawStep(report: Report, index: number, options: StepViewOptions = {}): string {
  return stepViewOf(report, index, options).text();
}
