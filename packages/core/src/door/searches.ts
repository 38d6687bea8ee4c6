/* Ways from an aim to jobs, jobs compared, safe intervals. Each checks its arguments; its own comment is at its definition. */

import * as rawReadAim from '../aim/read-aim.js';
import { aim, job, map, query, ranked } from '../kinds/job-kinds.js';
import { anything, notNegative } from '../kinds/kinds.js';
import { rangeWatch, watch } from '../kinds/watch-kind.js';
import * as rawCompare from '../propose/compare.js';
import * as rawPropose from '../propose/propose.js';
import * as rawRow from '../propose/row.js';
import * as rawRange from '../range/range.js';
import { guarded } from './guarded.js';

/** @function */
export const propose: typeof rawPropose.propose = /* @__PURE__ */ guarded(rawPropose.propose, 'propose', {
  aim,
  watch,
});
/** @function */
export const parseAim: typeof rawReadAim.parseAim = /* @__PURE__ */ guarded(rawReadAim.parseAim, 'parseAim', {
  json: anything,
});
/** @function */
export const compareJobs: typeof rawCompare.compareJobs = /* @__PURE__ */ guarded(
  rawCompare.compareJobs,
  'compareJobs',
  { first: job, second: job },
);
/** @function */
export const wayRowOf: typeof rawRow.wayRowOf = /* @__PURE__ */ guarded(rawRow.wayRowOf, 'wayRowOf', {
  report: ranked,
  options: {
    has: {
      toolChange: notNegative,
      turning: notNegative,
      tolerances: map,
    },
  },
});
/** @function */
export const rangeOf: typeof rawRange.rangeOf = /* @__PURE__ */ guarded(rawRange.rangeOf, 'rangeOf', {
  job,
  query,
  watch: rangeWatch,
});
