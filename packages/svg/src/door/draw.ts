/*
 * Room: the public functions, each with a check of its arguments.
 * In: whatever a caller hands over.
 * Out: the drawing, or an error that names argument and remedy.
 */

/* The drawings. Each checks its arguments; its own comment is at its definition. */

import { count, reading } from '@edgebite/core/door';
import * as rawDrawings from '../draw/drawings.js';
import {
  checkOptions,
  drawOptions,
  range,
  rangeOptions,
  report,
  stepOptions,
  viewOptions,
  zeroOptions,
} from './kinds.js';

/** @function */
export const draw: typeof rawDrawings.draw = /* @__PURE__ */ reading(rawDrawings.draw, 'draw', {
  report,
  options: drawOptions,
});
/** @function */
export const drawSheets: typeof rawDrawings.drawSheets = /* @__PURE__ */ reading(
  rawDrawings.drawSheets,
  'drawSheets',
  { report, options: drawOptions },
);
/** @function */
export const drawRange: typeof rawDrawings.drawRange = /* @__PURE__ */ reading(
  rawDrawings.drawRange,
  'drawRange',
  { answer: range, options: rangeOptions },
);
/** @function */
export const drawZero: typeof rawDrawings.drawZero = /* @__PURE__ */ reading(
  rawDrawings.drawZero,
  'drawZero',
  { report, options: zeroOptions },
);
/** @function */
export const drawView: typeof rawDrawings.drawView = /* @__PURE__ */ reading(
  rawDrawings.drawView,
  'drawView',
  { report, options: viewOptions },
);
/** @function */
export const drawStep: typeof rawDrawings.drawStep = /* @__PURE__ */ reading(
  rawDrawings.drawStep,
  'drawStep',
  { report, index: count, options: stepOptions },
);
/** @function */
export const drawCheck: typeof rawDrawings.drawCheck = /* @__PURE__ */ reading(
  rawDrawings.drawCheck,
  'drawCheck',
  { report, index: count, options: checkOptions },
);
