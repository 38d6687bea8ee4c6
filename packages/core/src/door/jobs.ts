/* Jobs: read, examined, measured. Each checks its arguments; its own comment is at its definition. */

import { job } from '../kinds/job-kinds.js';
import { anything, count, text } from '../kinds/kinds.js';
import { dial } from '../kinds/shared-kinds.js';
import { watch } from '../kinds/watch-kind.js';
import * as rawExaminer from '../live/examiner.js';
import * as rawParse from '../read/parse.js';
import * as rawSharedDrawer from '../read/shared-drawer.js';
import * as rawTwin from '../read/twin.js';
import * as rawExamine from '../write/examine.js';
import * as rawMeasure from '../write/measure.js';
import { guarded } from './guarded.js';

/** @function */
export const parseJob: typeof rawParse.parseJob = /* @__PURE__ */ guarded(rawParse.parseJob, 'parseJob', {
  json: anything,
});
/** @function */
export const parseDrawer: typeof rawSharedDrawer.parseDrawer = /* @__PURE__ */ guarded(
  rawSharedDrawer.parseDrawer,
  'parseDrawer',
  { json: anything },
);
/** @function */
export const twinOf: typeof rawTwin.twinOf = /* @__PURE__ */ guarded(rawTwin.twinOf, 'twinOf', { job });
/** @function */
export const examine: typeof rawExamine.examine = /* @__PURE__ */ guarded(rawExamine.examine, 'examine', {
  job,
  watch,
});
/** @function */
export const measured: typeof rawMeasure.measured = /* @__PURE__ */ guarded(rawMeasure.measured, 'measured', {
  job,
  measuring: {
    has: {
      cut: text,
      arc: { maybe: count },
      readings: { listOf: { has: { way: count, value: anything, tolerance: anything } } },
      dial: { maybe: dial },
    },
  },
});
/** @function */
export const examiner: typeof rawExaminer.examiner = /* @__PURE__ */ guarded(
  rawExaminer.examiner,
  'examiner',
  { job },
);
