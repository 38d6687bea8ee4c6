import { basename, join, parse } from 'node:path';
import { examine, type Report } from '@edgebite/core';
import { clean, countText, type DrawOptions, drawCheck, drawSheets, drawZero } from '@edgebite/svg';
import { EXIT, STANDARD_OUTPUT } from './exit.js';
import { Failure } from './failure.js';
import type { Io } from './io.js';
import { loadJob, STANDARD_INPUT, type Which } from './load.js';
import { saveWhole } from './save.js';
import { outputFile } from './target.js';

/**
 * Draws a job, how the zero of a setup is found, or how to measure what a cut leaves, and says where the drawing is; returns
 * the exit code.
 * @throws Failure if the job cannot be used, has no such setup or cut, both are asked for, or the drawing cannot be written.
 */
export async function drawJob(
  name: string,
  output: string | undefined,
  { twin = false, drawer, zero, measure, ...options }: DrawOptions & Which & Instead,
  io: Io,
): Promise<number> {
  const report = examine(await loadJob(name, io, { twin, drawer }));
  const [svg = '', ...lists] = svgsOf(report, { zero, measure }, options);
  if (output === STANDARD_OUTPUT) {
    io.out(`${svg}\n`);
    await io.written?.();
    if (lists.length > 0)
      io.err(`${countText(lists.length, 'sheet')} of lists left out: name a file with -o to have all\n`);
    return EXIT.clean;
  }
  const shown =
    output ??
    `${name === STANDARD_INPUT ? 'job' : basename(name).replace(/\.json$/i, '')}${twin ? '-twin' : ''}${zero === undefined ? '' : '-zero'}${measure === undefined ? '' : '-measure'}.svg`;
  const file = outputFile(shown, name, '-o', io);
  await saveWhole(file, shown, `${svg}\n`);
  const further = lists.map((_, i) => numbered(shown, i + 2));
  for (const [i, list] of lists.entries()) {
    const own = further[i] as string;
    await saveWhole(outputFile(own, name, '-o', io), own, `${list}\n`);
  }
  const also = further.length === 0 ? '' : `, its lists to ${further.map(clean).join(', ')}`;
  io.out(`Drawing written to ${clean(shown)}${also}\n`);
  return EXIT.clean;
}

/** The name of a file with the number of a sheet before its ending. */
function numbered(name: string, sheet: number): string {
  const { dir, name: stem, ext } = parse(name);
  return join(dir, `${stem}-${sheet}${ext}`);
}

/** What is drawn in place of the job: the zero of a setup, or how to measure what a cut leaves. */
export interface Instead {
  readonly zero?: string | undefined;
  readonly measure?: string | undefined;
}

function svgsOf(report: Report, { zero, measure }: Instead, options: DrawOptions): readonly string[] {
  if (zero !== undefined && measure !== undefined)
    throw new Failure(['--zero and --measure draw two things; ask for one of them']);
  if (zero !== undefined) return [zeroOf(report, zero, options)];
  return measure === undefined ? drawSheets(report, options) : [measureOf(report, measure, options)];
}

function measureOf(report: Report, cut: string, { theme = 'light' }: DrawOptions): string {
  const index = report.checks.findIndex((check) => check.cut === cut);
  if (index >= 0) return drawCheck(report, index, { theme });
  const known = [...new Set(report.checks.map((check) => check.cut))].join(', ');
  throw new Failure([
    known === ''
      ? '--measure: no cut of the job leaves an arc that has to be measured as a partial one'
      : `--measure: cut ${clean(cut)} leaves no arc to measure; these do: ${clean(known)}`,
  ]);
}

function zeroOf(report: Report, setup: string, { theme = 'light' }: DrawOptions): string {
  try {
    return drawZero(report, { setup, theme });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new Failure([`--zero: ${error.message.replace(/^drawZero: /, '')}`]);
  }
}
