import type { Report } from '@edgebite/core';
import { reading } from '@edgebite/core/door';
import { getWindow, registerWindow, type Svg } from '@svgdotjs/svg.js';
import { createSVGWindow } from 'svgdom';
import { drawOptions, report, viewOptions } from './door/kinds.js';
import { type DrawOptions, sheetOf } from './draw/draw.js';
import { type ViewOptions, viewOf } from './draw/view-draw.js';
import { svgTreeOf } from './pen/svg-tree.js';

/**
 * The same drawing as `draw` gives, as a tree of svg.js to go on with: on Node in the window that svg.js works in, one of svgdom
 * unless another was registered; in a browser in that of the page, where `drawTree(report).addTo(element)` puts it into the page.
 * @throws EdgebiteError as `draw` does.
 * @function
 */
export const drawTree: (report: Report, options?: DrawOptions) => Svg = /* @__PURE__ */ reading(
  (given: Report, options: DrawOptions = {}) =>
    svgTreeOf(sheetOf(given, options, 'drawTree'), windowForTrees()),
  'drawTree',
  { report, options: drawOptions },
);

/**
 * The same view as `drawView` gives, as a tree of svg.js.
 * @throws EdgebiteError as `drawView` does.
 * @function
 */
export const drawViewTree: (report: Report, options?: ViewOptions) => Svg = /* @__PURE__ */ reading(
  (given: Report, options: ViewOptions = {}) => svgTreeOf(viewOf(given, options), windowForTrees()),
  'drawViewTree',
  { report, options: viewOptions },
);

/** The window that svg.js works in, so that a tree can be gone on with. Where it has none it gets one of svgdom. */
function windowForTrees(): Window {
  if (getWindow() === null) {
    const made = createSVGWindow();
    registerWindow(made, made.document);
  }
  return getWindow() as Window;
}
