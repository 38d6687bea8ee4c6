import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { Failure } from './failure.js';
import type { Io } from './io.js';
import { STANDARD_INPUT } from './load.js';

/**
 * The file that an output is written to.
 * @param shown its name as given
 * @param job the name of the job, which must not be written over
 * @param option what names another file
 * @throws Failure if it is the job itself, links followed.
 */
export function outputFile(shown: string, job: string, option: string, io: Io): string {
  if (shown === '') throw new Failure([`${option}: is empty; name a file`]);
  const file = resolve(io.folder, shown);
  if (job !== STANDARD_INPUT && followed(file) === followed(resolve(io.folder, job))) {
    throw new Failure([`${shown}: is the job itself; name another file with ${option}`]);
  }
  return file;
}

/** What a path leads to; the path itself where there is nothing yet, or nothing that can be looked at. */
function followed(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}
