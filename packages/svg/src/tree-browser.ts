import type { Report } from '@edgebite/core';
import type { Svg } from '@svgdotjs/svg.js';
import { type DrawOptions, sheetOf } from './draw/draw.js';
import { type ViewOptions, viewOf } from './draw/view-draw.js';
import { svgTreeOf } from './pen/svg-tree.js';

/**
 * The same `drawTree` as on Node, in the window of the page: it is not in the page yet; `drawTree(report).addTo(element)` puts
 * it there.
 * @throws RangeError as `draw` does.
 */
export function drawTree(report: Report, options: DrawOptions = {}): Svg {
  return svgTreeOf(sheetOf(report, options), window);
}

/**
 * The same `drawViewTree` as on Node, in the window of the page.
 * @throws RangeError as `drawView` does.
 */
export function drawViewTree(report: Report, options: ViewOptions = {}): Svg {
  return svgTreeOf(viewOf(report, options), window);
}
