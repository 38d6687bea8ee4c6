import { examine, type JobDocument, parseJob } from '@edgebite/core';
import { commonExtent } from '@edgebite/core/testing';
import { jobWays, plainDocument } from './job-ways.js';
import { checkReport } from './report-check.js';
import { reportDifference } from './report-compare.js';

/**
 * Puts a job through all that must hold for its report: by itself, again from its text, and written down in other
 * ways. Throws Error with the first rule that is broken: its name, a colon, and numbers.
 */
export function checkJob(document: JobDocument): void {
  const job = parseJob(JSON.stringify(document));
  const before = JSON.stringify(job);
  const report = examine(job);
  if (JSON.stringify(job) !== before) throw new Error('examine changes the job: it must not');
  checkReport(job, report);
  const again = examine(parseJob(job.document));
  if (JSON.stringify(again) !== JSON.stringify(report)) throw new Error('the same job again: another report');
  const plain = plainDocument(job);
  const plainJob = parseJob(plain);
  const plainReport = examine(plainJob);
  const extent = commonExtent(job.outline);
  const joints = plainJob.outline.flatMap(({ outer, holes }) => [outer, ...holes].flat().map(({ a }) => a));
  const others = jobWays(plainJob, extent).map((way) => ({ way, other: examine(parseJob(way.document)) }));
  // Names last: where a foot lies on a joint they are the likeliest to differ, and must not hide what matters more.
  for (const named of [false, true]) {
    for (const { way, other } of others) {
      const fault = reportDifference(plainReport, other, way, extent, joints, named);
      if (fault !== null) throw new Error(`${named ? 'names, ' : ''}${way.name}, ${fault}`);
    }
  }
}
