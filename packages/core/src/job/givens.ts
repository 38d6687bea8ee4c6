import type { Job } from './job.js';

/** What a job gives besides its cuts, what is written of them, and its setups: what a single cut is worked out from. */
export function givensOf(job: Job): readonly unknown[] {
  const { cuts: _cuts, document: _document, plain: _plain, setups: _setups, batch: _batch, ...rest } = job;
  return Object.values(rest);
}
