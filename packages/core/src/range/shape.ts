import { inOrder } from '../find/findings.js';
import { keepOutFindings } from '../find/keep-out-findings.js';
import type { Job } from '../job/job.js';
import { withoutPlans } from '../job/plan.js';
import type { FindingCode } from '../report/finding-codes.js';
import type { Report } from '../report/report-schema.js';
import { resultOf } from '../step/result.js';
import { examine } from '../write/examine.js';

/**
 * The report on what is left of a part, and on what its cutters run into: without tools, passes and the errors of
 * setups, which cost time and change at values of their own.
 */
export function shapeOf(job: Job): Report {
  const report = examine({
    ...job,
    cuts: withoutPlans(job.cuts),
    material: null,
    setups: [],
    batch: [],
    keepOuts: [],
    tools: [],
    machine: {},
  });
  if (job.keepOuts.length === 0) return report;
  const met = keepOutFindings(resultOf({ ...job, tools: [], cuts: withoutPlans(job.cuts) }));
  return { ...report, findings: [...report.findings, ...inOrder(met)] };
}

/** What of a finding's kind is not asked at every value, in words. */
export const NOT_ASKED = [
  'tools',
  'speeds and feeds',
  'passes',
  'load on the tool',
  'tolerances of webs and edges from the setups',
  'rounding of the readout',
] as const;

/** The codes of findings on what is left, on whether a cut bites, and on what is in the way. */
const CODES: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'nothing-left',
  'held-place-cut-away',
  'loose-slug',
  'loose-offcut',
  'held-slug',
  'hanging-body',
  'loose-in-the-way',
  'cuts-merge',
  'cut-misses',
  'cut-grazes',
  'cut-in-air',
  'no-metal-under-centre',
  'pilot-in-air',
  'reach-too-short',
  'thin-web',
  'knife-edge',
  'thin-floor',
  'hits-jaw',
  'hits-stop',
  'hits-parallel',
  'hits-clamp',
  'may-hit-jaw',
  'may-hit-stop',
  'may-hit-parallel',
  'may-hit-clamp',
  'grip-lost',
  'grip-on-loose',
  'grip-on-both',
  'grip-bears-on-nothing',
  'stop-bears-on-nothing',
  'parallel-bears-on-nothing',
]);

/** Whether a finding is one that is asked at every value. */
export function isOnShape({ code }: { readonly code: FindingCode }): boolean {
  return CODES.has(code);
}
