import { examine } from '@edgebite/core';
import { EXIT } from './exit.js';
import type { Io } from './io.js';
import { jsonText } from './json-text.js';
import { loadJob, type Which } from './load.js';
import { isAtLeast, type Level } from './text/findings.js';
import { textReport } from './text/report.js';

/** How `check` prints, and from which level on findings make it fail. */
export interface CheckOptions extends Which {
  readonly json: boolean;
  readonly all: boolean;
  readonly failOn: Level;
}

/**
 * Prints the report on a job; returns the exit code.
 * @throws Failure if the job cannot be used.
 */
export async function check(name: string, options: CheckOptions, io: Io): Promise<number> {
  const report = examine(await loadJob(name, io, options));
  io.out(options.json ? jsonText(report) : textReport(report, options));
  return report.findings.some((finding) => isAtLeast(finding, options.failOn)) ? EXIT.found : EXIT.clean;
}
