import { twinDocument } from '../alike/twin.js';
import type { Job } from '../job/job.js';
import { parseJob } from './parse.js';

/**
 * The job of the other one of a left and a right part: the whole job mirrored, in the unit of the job. Its readout grows to
 * the right and to the back as ever, so its targets are those of the job with the other sign along the swapped axis.
 * Its cuts are written out one by one. Null if the job has no `twin`.
 *
 * Source: with a mirror M and a part that lies by L, its twin lies by M L M, which is turned the other way.
 * @throws JobError if the mirrored job cannot be read, as where it lies too far out.
 */
export function twinOf(job: Job): Job | null {
  const { twin } = job.document;
  return twin === undefined ? null : parseJob(twinDocument(job, twin));
}
