import { flag, reading, wholeReport } from '@edgebite/core/door';
import * as rawReport from './text/report.js';

export { EXIT } from './exit.js';
export type { Io } from './io.js';
export { run } from './run.js';
export type { TextOptions } from './text/report.js';

/** @function */
export const textReport: typeof rawReport.textReport = /* @__PURE__ */ reading(
  rawReport.textReport,
  'textReport',
  { report: wholeReport, options: { maybe: { only: { all: { maybe: flag } } } } },
);
