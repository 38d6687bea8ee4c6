import type { Report } from '@edgebite/core';
import { getWindow, registerWindow, type Svg } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import { type DrawOptions, sheetOf } from './draw/draw.js';
import { type ViewOptions, viewOf } from './draw/view-draw.js';
import { svgTreeOf } from './pen/svg-tree.js';

/**
 * The same drawing as `draw` gives, as a tree of svg.js to go on with: on Node in the window that
 * svg.js works in, one of svgdom unless another was registered; in a browser in that of the page, where it is not in the page yet and `drawTree(report).addTo(element)` puts it there.
 * @throws RangeError as `draw` does.
 */
export function drawTree(report: Report, options: DrawOptions = {}): Svg {
  return svgTreeOf(sheetOf(report, options), windowForTrees());
}

/**
 * The same view as `drawView` gives, as a tree of svg.js.
 * @throws RangeError as `drawView` does.
 */
export function drawViewTree(report: Report, options: ViewOptions = {}): Svg {
  return svgTreeOf(viewOf(report, options), windowForTrees());
}

/**
 * The window that svg.js works in, so that a tree can be gone on with. Where it has none it gets one of svgdom.
 */
function windowForTrees(): Window {
  if (getWindow() === null) {
    const made = createSVGWindow();
    registerWindow(made, made.document);
  }
  return getWindow() as Window;
}
