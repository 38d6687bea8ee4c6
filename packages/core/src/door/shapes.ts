/* Loops and regions, their measures, and operations on them. Each checks its arguments; its own comment is at its definition. */

import * as rawBoolean from '../combine/boolean.js';
import * as rawOffset from '../combine/offset.js';
import * as rawSubtract from '../combine/subtract.js';
import * as rawFootprint from '../cut/footprint.js';
import * as rawSwept from '../cut/swept.js';
import { flag, notNegative, num, overZero, point, text } from '../kinds/kinds.js';
import { part } from '../kinds/more-kinds.js';
import { edges, loop, path, region } from '../kinds/region-kind.js';
import { annularCut, cut, drawn, regions } from '../kinds/shared-kinds.js';
import * as rawShapes from '../outline/shapes.js';
import * as rawValidate from '../outline/validate.js';
import * as rawContains from '../region/contains.js';
import * as rawMeasure from '../region/measure.js';
import * as rawRegion from '../region/region.js';
import { guarded } from './guarded.js';

/** @function */
export const circleLoop: typeof rawRegion.circleLoop = /* @__PURE__ */ guarded(
  rawRegion.circleLoop,
  'circleLoop',
  { center: point, radius: num, ccw: { maybe: flag }, source: { maybe: text } },
);
/** @function */
export const disc: typeof rawRegion.disc = /* @__PURE__ */ guarded(
  rawRegion.disc,
  'disc',
  { center: point, radius: num, source: { maybe: text } },
  'regions',
);
/** @function */
export const ring: typeof rawRegion.ring = /* @__PURE__ */ guarded(
  rawRegion.ring,
  'ring',
  { center: point, outer: num, inner: num, source: { maybe: text } },
  'regions',
);
/** @function */
export const rectangle: typeof rawShapes.rectangle = /* @__PURE__ */ guarded(
  rawShapes.rectangle,
  'rectangle',
  {
    width: num,
    height: num,
    options: { maybe: { only: { at: { maybe: point }, owner: { maybe: text }, corner: { maybe: num } } } },
  },
);
/** @function */
export const circle: typeof rawShapes.circle = /* @__PURE__ */ guarded(rawShapes.circle, 'circle', {
  diameter: num,
  options: { maybe: { only: { at: { maybe: point }, owner: { maybe: text } } } },
});
/** @function */
export const slot: typeof rawShapes.slot = /* @__PURE__ */ guarded(rawShapes.slot, 'slot', {
  length: num,
  width: num,
  options: { maybe: { only: { at: { maybe: point }, owner: { maybe: text }, angle: { maybe: num } } } },
});
/** @function */
export const checkOutline: typeof rawValidate.checkOutline = /* @__PURE__ */ guarded(
  rawValidate.checkOutline,
  'checkOutline',
  { outer: drawn, holes: { maybe: { listOf: drawn } } },
);
/** @function */
export const outlineRegion: typeof rawValidate.outlineRegion = /* @__PURE__ */ guarded(
  rawValidate.outlineRegion,
  'outlineRegion',
  { outer: drawn, holes: { maybe: { listOf: drawn } } },
  'regions',
);
/** @function */
export const area: typeof rawMeasure.area = /* @__PURE__ */ guarded(rawMeasure.area, 'area', { region });
/** @function */
export const perimeter: typeof rawMeasure.perimeter = /* @__PURE__ */ guarded(
  rawMeasure.perimeter,
  'perimeter',
  { region },
);
/** @function */
export const centroid: typeof rawMeasure.centroid = /* @__PURE__ */ guarded(rawMeasure.centroid, 'centroid', {
  region,
});
/** @function */
export const boundsOf: typeof rawMeasure.boundsOf = /* @__PURE__ */ guarded(rawMeasure.boundsOf, 'boundsOf', {
  region,
});
/** @function */
export const loopsOf: typeof rawMeasure.loopsOf = /* @__PURE__ */ guarded(rawMeasure.loopsOf, 'loopsOf', {
  region,
});
/** @function */
export const partArea: typeof rawMeasure.partArea = /* @__PURE__ */ guarded(rawMeasure.partArea, 'partArea', {
  part,
});
/** @function */
export const loopArea: typeof rawMeasure.loopArea = /* @__PURE__ */ guarded(rawMeasure.loopArea, 'loopArea', {
  loop,
});
/** @function */
export const loopBounds: typeof rawMeasure.loopBounds = /* @__PURE__ */ guarded(
  rawMeasure.loopBounds,
  'loopBounds',
  { loop: path },
);
/** @function */
export const loopLength: typeof rawMeasure.loopLength = /* @__PURE__ */ guarded(
  rawMeasure.loopLength,
  'loopLength',
  { loop: path },
);
/** @function */
export const contains: typeof rawContains.contains = /* @__PURE__ */ guarded(
  rawContains.contains,
  'contains',
  { region, p: point, tolerance: { maybe: notNegative } },
);
/** @function */
export const union: typeof rawBoolean.union = /* @__PURE__ */ guarded(
  rawBoolean.union,
  'union',
  { regions },
  'regions',
);
/** @function */
export const intersect: typeof rawBoolean.intersect = /* @__PURE__ */ guarded(
  rawBoolean.intersect,
  'intersect',
  { regions },
  'regions',
);
/** @function */
export const xor: typeof rawBoolean.xor = /* @__PURE__ */ guarded(
  rawBoolean.xor,
  'xor',
  { regions },
  'regions',
);
/** @function */
export const normalize: typeof rawBoolean.normalize = /* @__PURE__ */ guarded(
  rawBoolean.normalize,
  'normalize',
  { loops: { listOf: loop }, rule: ['nonzero', 'evenodd'] },
  'regions',
);
/** @function */
export const subtract: typeof rawSubtract.subtract = /* @__PURE__ */ guarded(
  rawSubtract.subtract,
  'subtract',
  { from: region, cuts: regions },
  'regions',
);
/** @function */
export const offset: typeof rawOffset.offset = /* @__PURE__ */ guarded(
  rawOffset.offset,
  'offset',
  { region, distance: num },
  'regions',
);
/** @function */
export const offsetPath: typeof rawOffset.offsetPath = /* @__PURE__ */ guarded(
  rawOffset.offsetPath,
  'offsetPath',
  { path: edges, distance: num },
  'regions',
);
/** @function */
export const footprint: typeof rawFootprint.footprint = /* @__PURE__ */ guarded(
  rawFootprint.footprint,
  'footprint',
  { cut },
  'regions',
);
/** @function */
export const coreOf: typeof rawFootprint.coreOf = /* @__PURE__ */ guarded(
  rawFootprint.coreOf,
  'coreOf',
  { cut: annularCut },
  'regions',
);
/** @function */
export const sweptRegion: typeof rawSwept.sweptRegion = /* @__PURE__ */ guarded(
  rawSwept.sweptRegion,
  'sweptRegion',
  { path, radius: overZero, source: { maybe: text } },
  'regions',
);
