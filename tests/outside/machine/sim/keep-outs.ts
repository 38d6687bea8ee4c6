import type { JobDocument, KeepOutDocument } from './job.js';
import type { Step } from './steps.js';

/** What is in the way in a setup. */
export function keepOutsOf(job: JobDocument, setup: string): KeepOutDocument[] {
  return (job.keepOut ?? []).filter((one) => one.setup === undefined || one.setup === setup);
}

/** Heights that differ by less are not told apart. */
const SAME = 1e-6;

/**
 * Whether a keep-out stands higher than the lowest place that a tool comes to, over the face that the part lies on.
 * What lies right under a tool that goes through is in its way; what only touches one that does not is not.
 */
export function reachesUp(
  job: JobDocument,
  step: Step,
  below: number,
  keepOut: KeepOutDocument,
): 'sure' | 'none' | 'open' {
  const { thickness } = job.part;
  const isThrough = step.depth > thickness - SAME;
  const lowest = isThrough ? -below : thickness - step.depth;
  const over = keepOut.to - lowest;
  if (over > SAME) return 'sure';
  if (over < -SAME) return 'none';
  return isThrough ? 'sure' : 'none';
}
