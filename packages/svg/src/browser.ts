import type { RangeReport, Report } from '@edgebite/core';
import type { Svg } from '@svgdotjs/svg.js';
import { type CheckDrawOptions, drawCheckIn } from './checks/check-draw.js';
import { type DrawOptions, drawIn, treeIn } from './draw/draw.js';
import { type ViewOptions, viewIn, viewTreeIn } from './draw/view-draw.js';
import { drawRangeIn, type RangeDrawOptions } from './range/range-strip.js';
import { type StepViewOptions, stepViewIn } from './steps/step-view.js';
import { drawZeroIn, type ZeroDrawOptions } from './zero/zero-draw.js';

/**
 * The same `draw` as on Node, in the DOM of the page that it runs in.
 * @throws RangeError if `idPrefix` cannot begin an id, the theme is none, or the range is not one of the report.
 */
export function draw(report: Report, options: DrawOptions = {}): string {
  return drawIn(window, report, options);
}

/**
 * The same `drawRange` as on Node, in the DOM of the page that it runs in.
 * @throws RangeError if `idPrefix` cannot begin an id, or the width is not from 120 to 1,000 mm.
 */
export function drawRange(answer: RangeReport, options: RangeDrawOptions = {}): string {
  return drawRangeIn(window, answer, options);
}

/**
 * The same `drawZero` as on Node, in the DOM of the page that it runs in.
 * @throws RangeError if `idPrefix` cannot begin an id, the theme is none, the width is not from 100 to 1,000 mm, or the report
 * has no such setup.
 */
export function drawZero(report: Report, options: ZeroDrawOptions = {}): string {
  return drawZeroIn(window, report, options);
}

/**
 * The same `drawCheck` as on Node, in the DOM of the page that it runs in.
 * @param index of the arc in `report.checks`, from 0
 * @throws RangeError if `idPrefix` cannot begin an id, the theme is none, the width is not from 100 to 1,000 mm, or there is no
 * such arc or way.
 */
export function drawCheck(report: Report, index: number, options: CheckDrawOptions = {}): string {
  return drawCheckIn(window, report, index, options);
}

/**
 * The same drawing as a tree of svg.js, which is not in the page yet: `drawTree(report).addTo(element)` puts it there.
 * @throws RangeError as `draw` does.
 */
export function drawTree(report: Report, options: DrawOptions = {}): Svg {
  return treeIn(window, report, options);
}

/**
 * The same `drawView` as on Node, in the DOM of the page that it runs in. Everything
 * that can be pointed at has `data-about` with its name in the report: `piece:ID`, `cut:ID`, `web:N`, `knifeEdge:N`,
 * `finding:N`, `keepOut:ID`. The same report gives the same text.
 * @throws RangeError if `idPrefix` cannot begin an id, the theme is none, or a side of `size` is not from 40 to 2,000.
 */
export function drawView(report: Report, options: ViewOptions = {}): string {
  return viewIn(window, report, options);
}

/**
 * The same view as a tree of svg.js, which is not in the page yet.
 * @throws RangeError as `drawView` does.
 */
export function drawViewTree(report: Report, options: ViewOptions = {}): Svg {
  return viewTreeIn(window, report, options);
}

/**
 * The same `drawStep` as on Node, in the DOM of the page that it runs in.
 * @throws RangeError if there is no such step, the job is too large for its steps to be drawn, `idPrefix` cannot begin an id,
 * the theme is none, or a side of `size` is not from 40 to 2,000.
 */
export function drawStep(report: Report, index: number, options: StepViewOptions = {}): string {
  return stepViewIn(window, report, index, options);
}

export * from './shared.js';
