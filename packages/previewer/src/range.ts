import { type RangeQuery, RangeQueryError, rangeOf } from '@edgebite/core';
import { drawRange } from '@edgebite/svg';
import { EXIT, STANDARD_OUTPUT } from './exit.js';
import { Failure } from './failure.js';
import type { Io } from './io.js';
import { jsonText } from './json-text.js';
import { loadJob, type Which } from './load.js';
import { saveWhole } from './save.js';
import { outputFile } from './target.js';
import { rangeText } from './text/range.js';

/** How `range` prints, and the file that it draws to, if any. */
export interface RangeOptions extends Which {
  readonly json: boolean;
  readonly svg: string | undefined;
  /** After so many seconds of the processor the search stops, with what is known so far. */
  readonly seconds: number;
}

/**
 * Prints what comes of a job as one number of one cut runs through a range, and draws it if asked to; returns the exit
 * code: clean where some of the range is safe, found where none of it is, unfinished where none is known to be and not all
 * of it was looked at.
 * @throws Failure if the job cannot be used, the range is none, or the drawing cannot be written.
 */
export async function range(name: string, query: RangeQuery, options: RangeOptions, io: Io): Promise<number> {
  const { json, svg, seconds } = options;
  const target = svg === undefined ? null : targetOf(name, svg, io);
  const job = await loadJob(name, io, options);
  const start = cpuSeconds();
  const answer = answered(() => rangeOf(job, query, () => cpuSeconds() - start > seconds));
  if (target !== null) {
    await saveWhole(target.file, target.shown, `${drawRange(answer)}\n`, 'name another with --svg');
  }
  io.out(json ? jsonText(answer) : rangeText(answer));
  if (answer.intervals.some(({ safe }) => safe)) return EXIT.clean;
  return answer.knownTo < answer.to ? EXIT.unfinished : EXIT.found;
}

/** Time of the processor: on a busy machine the answer takes longer, and is the same. */
function cpuSeconds(): number {
  return process.cpuUsage().user / 1e6;
}

function targetOf(name: string, shown: string, io: Io): { readonly file: string; readonly shown: string } {
  if (shown === STANDARD_OUTPUT) {
    throw new Failure(['--svg: standard output has the answer already; name a file']);
  }
  return { file: outputFile(shown, name, '--svg', io), shown };
}

function answered<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeQueryError) throw new Failure([`--${error.message}`]);
    throw error;
  }
}
