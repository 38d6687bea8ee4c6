/* Operations and queries on whole regions. Each checks its arguments; its own comment is at its definition. */

import * as rawBetween from '../figure/between.js';
import * as rawChords from '../figure/chords.js';
import * as rawExtremes from '../figure/extremes.js';
import * as rawHull from '../figure/hull.js';
import * as rawMoments from '../figure/moments.js';
import * as rawSplit from '../figure/split.js';
import * as rawTransform from '../figure/transform.js';
import { num, number, point, text, vector } from '../kinds/kinds.js';
import { region } from '../kinds/region-kind.js';
import { guarded } from './guarded.js';

/** @function */
export const movedRegion: typeof rawTransform.movedRegion = /* @__PURE__ */ guarded(
  rawTransform.movedRegion,
  'movedRegion',
  { region, by: vector },
  'regions',
);
/** @function */
export const turnedRegion: typeof rawTransform.turnedRegion = /* @__PURE__ */ guarded(
  rawTransform.turnedRegion,
  'turnedRegion',
  { region, angle: number, about: { maybe: point } },
  'regions',
);
/** @function */
export const mirroredRegion: typeof rawTransform.mirroredRegion = /* @__PURE__ */ guarded(
  rawTransform.mirroredRegion,
  'mirroredRegion',
  { region, a: point, b: point },
  'regions',
);
/** @function */
export const scaledRegion: typeof rawTransform.scaledRegion = /* @__PURE__ */ guarded(
  rawTransform.scaledRegion,
  'scaledRegion',
  { region, factor: num, about: { maybe: point } },
  'regions',
);
/** @function */
export const polygonsOf: typeof rawChords.polygonsOf = /* @__PURE__ */ guarded(
  rawChords.polygonsOf,
  'polygonsOf',
  { region, tolerance: num },
);
/** @function */
export const secondMoments: typeof rawMoments.secondMoments = /* @__PURE__ */ guarded(
  rawMoments.secondMoments,
  'secondMoments',
  { region, about: { maybe: point } },
);
/** @function */
export const nearestOnRegion: typeof rawBetween.nearestOnRegion = /* @__PURE__ */ guarded(
  rawBetween.nearestOnRegion,
  'nearestOnRegion',
  { region, p: point },
);
/** @function */
export const gapBetweenRegions: typeof rawBetween.gapBetweenRegions = /* @__PURE__ */ guarded(
  rawBetween.gapBetweenRegions,
  'gapBetweenRegions',
  { first: region, second: region },
);
/** @function */
export const relationOfRegions: typeof rawBetween.relationOfRegions = /* @__PURE__ */ guarded(
  rawBetween.relationOfRegions,
  'relationOfRegions',
  { first: region, second: region },
);
/** @function */
export const splitByLine: typeof rawSplit.splitByLine = /* @__PURE__ */ guarded(
  rawSplit.splitByLine,
  'splitByLine',
  { region, a: point, b: point, source: { maybe: text } },
);
/** @function */
export const convexHull: typeof rawHull.convexHull = /* @__PURE__ */ guarded(
  rawHull.convexHull,
  'convexHull',
  { region },
  'regions',
);
/** @function */
export const boundingCircle: typeof rawExtremes.boundingCircle = /* @__PURE__ */ guarded(
  rawExtremes.boundingCircle,
  'boundingCircle',
  { region },
);
/** @function */
export const smallestWidth: typeof rawExtremes.smallestWidth = /* @__PURE__ */ guarded(
  rawExtremes.smallestWidth,
  'smallestWidth',
  { region },
);
