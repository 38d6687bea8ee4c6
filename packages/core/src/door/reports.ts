/* Reports: their regions, marks and words. Each checks its arguments; its own comment is at its definition. */

import * as rawCautions from '../find/cautions.js';
import {
  anyList,
  bothSources,
  edged,
  found,
  partNames,
  report,
  reportEdges,
  webbed,
} from '../kinds/job-kinds.js';
import { pair, text } from '../kinds/kinds.js';
import { reportEdge, reportRegion } from '../kinds/more-kinds.js';
import * as rawFromReport from '../report/from-report.js';
import * as rawMarks from '../report/marks.js';
import * as rawPathStands from '../report/path-stands.js';
import * as rawWords from '../report/words.js';
import { guarded } from './guarded.js';

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
