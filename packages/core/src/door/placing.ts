/* The centre of a partial hole, the passes to it, and the metal round it. Each checks its arguments; its own comment is at its definition. */

import { flag, type Kinds, limit, num, point, vector } from '../kinds/kinds.js';
import { fromEdge } from '../kinds/more-kinds.js';
import { edge, region } from '../kinds/region-kind.js';
import { line, loosePoint } from '../kinds/shared-kinds.js';
import { watch } from '../kinds/watch-kind.js';
import * as rawKnifeEdges from '../left/knife-edges.js';
import * as rawWebs from '../left/webs.js';
import * as rawWedges from '../left/wedges.js';
import * as rawPasses from '../passes/passes.js';
import * as rawPlaceDistances from '../placing/place-distances.js';
import * as rawPlaceFace from '../placing/place-face.js';
import * as rawPlaceOutline from '../placing/place-outline.js';
import * as rawPlacePoints from '../placing/place-points.js';
import * as rawPlaceTangent from '../placing/place-tangent.js';
import { guarded } from './guarded.js';

/** @function */
export const placeByDistances: typeof rawPlaceDistances.placeByDistances = /* @__PURE__ */ guarded(
  rawPlaceDistances.placeByDistances,
  'placeByDistances',
  { outline: region, radius: num, first: fromEdge, second: fromEdge },
);
/** @function */
export const placeByDepth: typeof rawPlaceFace.placeByDepth = /* @__PURE__ */ guarded(
  rawPlaceFace.placeByDepth,
  'placeByDepth',
  { task: { has: { face: line, along: num, radius: num, depth: num } } },
);
/** @function */
export const placeByOpening: typeof rawPlaceFace.placeByOpening = /* @__PURE__ */ guarded(
  rawPlaceFace.placeByOpening,
  'placeByOpening',
  { task: { has: { face: line, along: num, radius: num, opening: num } } },
);
/** @function */
export const placementOn: typeof rawPlaceFace.placementOn = /* @__PURE__ */ guarded(
  rawPlaceFace.placementOn,
  'placementOn',
  { face: line, center: point, radius: num },
);
/** @function */
export const bitesIn: typeof rawPlaceOutline.bitesIn = /* @__PURE__ */ guarded(
  rawPlaceOutline.bitesIn,
  'bitesIn',
  { outline: region, center: point, radius: num },
);
/** @function */
export const placeThrough: typeof rawPlacePoints.placeThrough = /* @__PURE__ */ guarded(
  rawPlacePoints.placeThrough,
  'placeThrough',
  { a: loosePoint, m: loosePoint, b: loosePoint },
);
/** @function */
export const placeTangent: typeof rawPlaceTangent.placeTangent = /* @__PURE__ */ guarded(
  rawPlaceTangent.placeTangent,
  'placeTangent',
  { radius: num, first: edge, second: edge },
);
/** What passes of either kind are asked with. */
const passes: Kinds = {
  metal: region,
  center: point,
  radius: num,
  bite: num,
  finish: { maybe: num },
  spring: { maybe: flag },
  depth: { maybe: num },
  feed: { maybe: { has: { perTurn: num, rpm: num } } },
};
/** @function */
export const stepIn: typeof rawPasses.stepIn = /* @__PURE__ */ guarded(rawPasses.stepIn, 'stepIn', {
  options: {
    has: {
      ...passes,
      approach: { maybe: vector },
      clear: { maybe: { has: { gap: num, avoid: { maybe: { listOf: region } } } } },
    },
  },
});
/** @function */
export const openOut: typeof rawPasses.openOut = /* @__PURE__ */ guarded(rawPasses.openOut, 'openOut', {
  options: {
    has: { ...passes, smallest: { maybe: num } },
  },
});
/** @function */
export const knifeEdgesOf: typeof rawKnifeEdges.knifeEdgesOf = /* @__PURE__ */ guarded(
  rawKnifeEdges.knifeEdgesOf,
  'knifeEdgesOf',
  { section: region, limit, webLimit: limit },
);
/** @function */
export const websOf: typeof rawWebs.websOf = /* @__PURE__ */ guarded(rawWebs.websOf, 'websOf', {
  section: region,
  limit,
  watch,
});
/** @function */
export const interiorAngles: typeof rawWedges.interiorAngles = /* @__PURE__ */ guarded(
  rawWedges.interiorAngles,
  'interiorAngles',
  { section: region },
);
