/* Jobs and reports. Each checks its arguments; its own comment is at its definition. */

import * as rawReadAim from '../aim/read-aim.js';
import * as rawCautions from '../find/cautions.js';
import {
  aim,
  anyList,
  bothSources,
  edged,
  found,
  job,
  map,
  partNames,
  query,
  ranked,
  report,
  reportEdges,
  webbed,
} from '../kinds/job-kinds.js';
import { anything, count, notNegative, pair, text } from '../kinds/kinds.js';
import { reportEdge, reportRegion } from '../kinds/more-kinds.js';
import { dial } from '../kinds/shared-kinds.js';
import { rangeWatch, watch } from '../kinds/watch-kind.js';
import * as rawExaminer from '../live/examiner.js';
import * as rawCompare from '../propose/compare.js';
import * as rawPropose from '../propose/propose.js';
import * as rawRow from '../propose/row.js';
import * as rawRange from '../range/range.js';
import * as rawParse from '../read/parse.js';
import * as rawSharedDrawer from '../read/shared-drawer.js';
import * as rawTwin from '../read/twin.js';
import * as rawFromReport from '../report/from-report.js';
import * as rawMarks from '../report/marks.js';
import * as rawPathStands from '../report/path-stands.js';
import * as rawWords from '../report/words.js';
import * as rawExamine from '../write/examine.js';
import * as rawMeasure from '../write/measure.js';
import { guarded } from './guarded.js';

/** @function */
export const compareJobs: typeof rawCompare.compareJobs = /* @__PURE__ */ guarded(
  rawCompare.compareJobs,
  'compareJobs',
  { first: job, second: job },
);
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
export const parseDrawer: typeof rawSharedDrawer.parseDrawer = /* @__PURE__ */ guarded(
  rawSharedDrawer.parseDrawer,
  'parseDrawer',
  { json: anything },
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
export const twinOf: typeof rawTwin.twinOf = /* @__PURE__ */ guarded(rawTwin.twinOf, 'twinOf', { job });
/** @function */
export const parseJob: typeof rawParse.parseJob = /* @__PURE__ */ guarded(rawParse.parseJob, 'parseJob', {
  json: anything,
});
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
/** @function */
export const rangeOf: typeof rawRange.rangeOf = /* @__PURE__ */ guarded(rawRange.rangeOf, 'rangeOf', {
  job,
  query,
  watch: rangeWatch,
});
/** @function */
export const cautionsOf: typeof rawCautions.cautionsOf = /* @__PURE__ */ guarded(
  rawCautions.cautionsOf,
  'cautionsOf',
  { report: found },
);
/** @function */
export const sourceText: typeof rawWords.sourceText = /* @__PURE__ */ guarded(
  rawWords.sourceText,
  'sourceText',
  { source: text, names: partNames },
);
/** @function */
export const betweenText: typeof rawWords.betweenText = /* @__PURE__ */ guarded(
  rawWords.betweenText,
  'betweenText',
  { between: bothSources, names: partNames },
);
/** @function */
export const fromReport: typeof rawFromReport.fromReport = /* @__PURE__ */ guarded(
  rawFromReport.fromReport,
  'fromReport',
  { report },
);
/** @function */
export const edgeFromReport: typeof rawFromReport.edgeFromReport = /* @__PURE__ */ guarded(
  rawFromReport.edgeFromReport,
  'edgeFromReport',
  { edge: reportEdge },
);
/** @function */
export const pointFromReport: typeof rawFromReport.pointFromReport = /* @__PURE__ */ guarded(
  rawFromReport.pointFromReport,
  'pointFromReport',
  { place: pair },
);
/** @function */
export const regionFromReport: typeof rawFromReport.regionFromReport = /* @__PURE__ */ guarded(
  rawFromReport.regionFromReport,
  'regionFromReport',
  { region: reportRegion },
);
/** @function */
export const webMarks: typeof rawMarks.webMarks = /* @__PURE__ */ guarded(rawMarks.webMarks, 'webMarks', {
  report: webbed,
});
/** @function */
export const knifeMarks: typeof rawMarks.knifeMarks = /* @__PURE__ */ guarded(
  rawMarks.knifeMarks,
  'knifeMarks',
  { report: edged },
);
/** @function */
export const pathStands: typeof rawPathStands.pathStands = /* @__PURE__ */ guarded(
  rawPathStands.pathStands,
  'pathStands',
  { cut: { has: { path: { orNull: reportEdges }, toolPath: { orNull: { has: { passes: anyList } } } } } },
);
