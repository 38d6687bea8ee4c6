import { JobError, type JobIssue, parseJob } from '@edgebite/core';

/** All that is wrong with a job; none if it is sound. Errors of any other kind are thrown on. */
export function issuesOf(input: unknown): readonly JobIssue[] {
  try {
    parseJob(input);
  } catch (error) {
    if (error instanceof JobError) return error.issues;
    throw error;
  }
  return [];
}
