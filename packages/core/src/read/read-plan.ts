import type { JobIssue } from '../document/errors.js';
import type { CutDocument, PassesDocument } from '../document/schema.js';
import type { Units } from '../job/job.js';
import { type CutPlan, DEFAULT_CLEARANCE, type PassesPlan } from '../job/plan.js';

/** The passes of a bore as a job asks for them. */
function passesPlan(given: PassesDocument): PassesPlan {
  const { kind, bite, finish = 0, spring = false, feed = null } = given;
  const approach = kind === 'step in' && typeof given.approach === 'number' ? given.approach : null;
  const smallest = kind === 'open out' ? (given.smallest ?? 0) / 2 : 0;
  return { kind, bite, finish, spring, approach, smallest, feed };
}

/** What is wrong with the passes of a bore in themselves; what metal they meet is not known yet. */
export function passesIssues(given: PassesDocument, diameter: number | null, path: string): JobIssue[] {
  const issues: JobIssue[] = [];
  const { finish, bite } = given;
  if (finish !== undefined && finish > bite) {
    issues.push({ path: `${path}/finish`, message: `must be at most the bite, ${bite}; it is ${finish}` });
  }
  if (given.kind === 'open out' && diameter !== null && (given.smallest ?? 0) > diameter) {
    const message = `must be at most the diameter, ${diameter}; it is ${given.smallest}`;
    issues.push({ path: `${path}/smallest`, message });
  }
  return issues;
}

/** What a cut of a job says beyond what it cuts; undefined if nothing. */
export function planOf(
  document: CutDocument,
  units: Units,
  { center = null, along = null }: Partial<Pick<CutPlan, 'center' | 'along'>>,
): CutPlan | undefined {
  const passes = document.kind === 'bore' && document.passes ? passesPlan(document.passes) : null;
  const asked = document.kind === 'swept' ? undefined : document.clearance;
  const stays = document.kind === 'swept' ? (document.stays ?? null) : null;
  if (center === null && along === null && passes === null && asked === undefined && stays === null) return;
  return { center, passes, clearance: asked ?? DEFAULT_CLEARANCE[units], along, stays };
}
