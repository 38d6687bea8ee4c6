import type { JobDocument, KeepOutDocument } from './job.js';
import type { Step } from './steps.js';

/** What is in the way in a setup. */
export function keepOutsOf(job: JobDocument, setup: string): KeepOutDocument[] {
  return (job.keepOut ?? []).filter((one) => one.setup === undefined || one.setup === setup);
}

/**
 * How far a tool that goes through comes out below: a bore by the point of a drill of 118 degrees (common practice, no
 * source), an annular cutter by what its reach leaves, a mill by nothing.
 */
export function belowOf({ part: { thickness } }: JobDocument, { cut, tool, depth }: Step): number {
  if (depth < thickness - SAME) return 0;
  // A pass has the diameter that its own tool cuts.
  if (cut.kind === 'bore') return tool.radius / Math.tan((59 * Math.PI) / 180);
  return cut.kind === 'annular' ? Math.max(0, (cut.reach ?? thickness) - thickness) : 0;
}

/** Heights that differ by less are not told apart. */
const SAME = 1e-6;

/**
 * Whether a keep-out stands higher than the lowest place that a tool comes to, over the face that the part lies on.
 * What lies right under a tool that goes through is in its way; what only touches one that does not is not.
 */
export function reachesUp(job: JobDocument, step: Step, keepOut: KeepOutDocument): 'sure' | 'none' | 'open' {
  const { thickness } = job.part;
  const isThrough = step.depth > thickness - SAME;
  const lowest = isThrough ? -belowOf(job, step) : thickness - step.depth;
  const over = keepOut.to - lowest;
  if (over > SAME) return 'sure';
  if (over < -SAME) return 'none';
  return isThrough ? 'sure' : 'none';
}
