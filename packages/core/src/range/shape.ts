import type { Job } from '../job/job.js';
import { withoutPlans } from '../job/plan.js';
import type { Report } from '../report/report-schema.js';
import { examine } from '../write/examine.js';

/** The report on what is left of a part: without setups, clamps, tools and passes, which leave nothing but cost time. */
export function shapeOf(job: Job): Report {
  return examine({
    ...job,
    cuts: withoutPlans(job.cuts),
    material: null,
    setups: [],
    keepOuts: [],
    tools: [],
    machine: {},
  });
}

/** The codes of findings on what is left, and on whether a cut bites. */
const CODES: ReadonlySet<string> = new Set([
  'nothing-left',
  'held-place-cut-away',
  'loose-slug',
  'loose-offcut',
  'held-slug',
  'cut-misses',
  'cut-grazes',
  'cut-in-air',
  'no-metal-under-centre',
  'reach-too-short',
  'thin-web',
  'knife-edge',
  'thin-floor',
]);

/** Whether a finding is on what is left, or on whether a cut bites; others hang on how the part is set up and cut. */
export function isOnShape({ code }: { readonly code: string }): boolean {
  return CODES.has(code);
}
