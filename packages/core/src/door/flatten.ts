/* Regions in and out of the flatten-js library, with checked arguments. They have their own entry, since nothing else needs that library. */

import * as rawFlatten from '../format/flatten.js';
import { type Check, must } from '../kinds/kinds.js';
import { region } from '../kinds/region-kind.js';
import { guarded } from './guarded.js';

/** A polygon of the flatten-js library, by what is asked of it. */
const flatPolygon: Check = (value) => {
  const faces =
    typeof value === 'object' && value !== null ? (value as { faces?: unknown }).faces : undefined;
  const isOne = typeof faces === 'object' && faces !== null && Symbol.iterator in faces;
  return isOne ? null : must(value, 'be a Polygon of flatten-js');
};

/** @function */
export const toFlatten: typeof rawFlatten.toFlatten = /* @__PURE__ */ guarded(
  rawFlatten.toFlatten,
  'toFlatten',
  { region },
);
/** @function */
export const fromFlatten: typeof rawFlatten.fromFlatten = /* @__PURE__ */ guarded(
  rawFlatten.fromFlatten,
  'fromFlatten',
  { polygon: flatPolygon },
  'regions',
);
