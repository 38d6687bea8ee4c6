/* Paths of a tool's centre. Each checks its arguments; its own comment is at its definition. */

import { flag, type Kinds, num, point, text } from '../kinds/kinds.js';
import { lead } from '../kinds/more-kinds.js';
import { edges, region } from '../kinds/region-kind.js';
import { loosePoint, pass, SIDES, stretch, UNITS } from '../kinds/shared-kinds.js';
import * as rawGouge from '../path/gouge.js';
import * as rawIsoWords from '../path/iso-words.js';
import * as rawPath from '../path/path.js';
import * as rawPathStretch from '../path/path-stretch.js';
import * as rawReach from '../path/reach.js';
import { guarded } from './guarded.js';

/** What a path along an outline is asked with, all round it or on a stretch. */
const following: Kinds = {
  side: SIDES,
  radius: num,
  allowance: { maybe: num },
  milling: { maybe: ['climb', 'conventional'] },
  lead: { maybe: lead },
};
/** @function */
export const centerPath: typeof rawPath.centerPath = /* @__PURE__ */ guarded(
  rawPath.centerPath,
  'centerPath',
  {
    region,
    options: {
      has: {
        ...following,
        start: { maybe: point },
        order: { maybe: ['inner first', 'outer first', 'nearest'] },
      },
    },
  },
);
/** @function */
export const centerPathAlong: typeof rawPath.centerPathAlong = /* @__PURE__ */ guarded(
  rawPath.centerPathAlong,
  'centerPathAlong',
  {
    region,
    stretch,
    options: {
      has: {
        ...following,
      },
    },
  },
);
/** @function */
export const edgesOfPass: typeof rawPath.edgesOfPass = /* @__PURE__ */ guarded(
  rawPath.edgesOfPass,
  'edgesOfPass',
  { pass },
);
/** @function */
export const isOnStretch: typeof rawPathStretch.isOnStretch = /* @__PURE__ */ guarded(
  rawPathStretch.isOnStretch,
  'isOnStretch',
  { region, stretch, p: point },
);
/** @function */
export const placeNear: typeof rawPathStretch.placeNear = /* @__PURE__ */ guarded(
  rawPathStretch.placeNear,
  'placeNear',
  { region, p: loosePoint },
);
/** @function */
export const placeOfSource: typeof rawPathStretch.placeOfSource = /* @__PURE__ */ guarded(
  rawPathStretch.placeOfSource,
  'placeOfSource',
  { region, source: text, end: ['start', 'end'] },
);
/** @function */
export const gouges: typeof rawGouge.gouges = /* @__PURE__ */ guarded(rawGouge.gouges, 'gouges', {
  path: edges,
  radius: num,
  region,
  options: { maybe: { has: { side: { maybe: SIDES }, tolerance: { maybe: num } } } },
});
/** @function */
export const unreached: typeof rawReach.unreached = /* @__PURE__ */ guarded(rawReach.unreached, 'unreached', {
  region,
  radius: num,
  options: {
    maybe: { has: { side: { maybe: SIDES }, allowance: { maybe: num }, tolerance: { maybe: num } } },
  },
});
/** @function */
export const isoWords: typeof rawIsoWords.isoWords = /* @__PURE__ */ guarded(
  rawIsoWords.isoWords,
  'isoWords',
  {
    paths: { listOf: edges },
    options: {
      only: {
        units: UNITS,
        unitWords: { maybe: ['G20/G21', 'G70/G71'] },
        coordinates: { maybe: ['absolute', 'incremental'] },
        decimals: { maybe: num },
        alwaysPoint: { maybe: flag },
        splitOverHalfTurn: { maybe: flag },
        tolerance: { maybe: num },
        feed: { maybe: num },
        heights: { maybe: { has: { clear: num, cut: num } } },
      },
    },
  },
);
