import { EdgebiteError } from '../geometry/edgebite-error.js';

/** One thing wrong with a job. */
export interface JobIssue {
  /** JSON Pointer (RFC 6901) to the value; empty for the job as a whole. */
  readonly path: string;
  /** What is wrong and what to do, as a sentence about that value. */
  readonly message: string;
}

/** A job that cannot be used, with everything that is wrong with it. */
export class JobError extends EdgebiteError {
  override readonly name = 'JobError';

  constructor(readonly issues: readonly JobIssue[]) {
    super(
      [
        issues.length === 1 ? 'The job has a fault:' : `The job has ${issues.length} faults:`,
        ...issues.map(({ path, message }) => `${path === '' ? 'job' : path}: ${message}`),
      ].join('\n'),
      { code: 'job', place: issues[0]?.path, remedy: issues[0]?.message },
    );
  }
}

/** The JSON Pointer (RFC 6901) of a path of keys and indices. */
export function pointer(path: readonly PropertyKey[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
