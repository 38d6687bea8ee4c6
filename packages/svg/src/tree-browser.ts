import type { Report } from '@edgebite/core';
import { reading } from '@edgebite/core/door';
import type { Svg } from '@svgdotjs/svg.js';
import { drawOptions, report, viewOptions } from './door/kinds.js';
import { type DrawOptions, sheetOf } from './draw/draw.js';
import { type ViewOptions, viewOf } from './draw/view-draw.js';
import { svgTreeOf } from './pen/svg-tree.js';

/**
 * The same `drawTree` as on Node, in the window of the page: `drawTree(report).addTo(element)` puts it into the page.
 * @throws EdgebiteError as `draw` does.
 * @function
 */
export const drawTree: (report: Report, options?: DrawOptions) => Svg = /* @__PURE__ */ reading(
  (given: Report, options: DrawOptions = {}) => svgTreeOf(sheetOf(given, options, 'drawTree'), window),
  'drawTree',
  { report, options: drawOptions },
);

/**
 * The same `drawViewTree` as on Node, in the window of the page.
 * @throws EdgebiteError as `drawView` does.
 * @function
 */
export const drawViewTree: (report: Report, options?: ViewOptions) => Svg = /* @__PURE__ */ reading(
  (given: Report, options: ViewOptions = {}) => svgTreeOf(viewOf(given, options), window),
  'drawViewTree',
  { report, options: viewOptions },
);
