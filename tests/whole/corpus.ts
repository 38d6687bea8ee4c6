import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examine, type JobDocument, parseJob, type Report } from '@edgebite/core';

/** A job on file, and where that is. */
export interface FiledJob {
  readonly name: string;
  readonly file: string;
  readonly document: JobDocument;
}

function jobsIn(folder: string): FiledJob[] {
  const place = fileURLToPath(new URL(folder, import.meta.url));
  return readdirSync(place)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => ({
      name: name.replace(/\.json$/, ''),
      file: `${place}${name}`,
      document: JSON.parse(readFileSync(`${place}${name}`, 'utf8')) as JobDocument,
    }));
}

/** Jobs that between them use nearly all that a job can say, in both units, with odd numbers in every place. */
export const OWN_JOBS: readonly FiledJob[] = jobsIn('./jobs/');

/** Those, and the examples. */
export const ALL_JOBS: readonly FiledJob[] = [...OWN_JOBS, ...jobsIn('../../examples/')];

/** The report on a job as written. */
export const reportOf = (document: JobDocument): Report =>
  examine(parseJob(JSON.parse(JSON.stringify(document))));
