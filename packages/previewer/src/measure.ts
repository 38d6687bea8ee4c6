import {
  type Dial,
  examine,
  FitError,
  type Job,
  measured,
  OverlayError,
  USUAL_READING,
} from '@edgebite/core';
import { EXIT } from './exit.js';
import { Failure } from './failure.js';
import type { Io } from './io.js';
import { jsonText } from './json-text.js';
import { loadJob, type Which } from './load.js';
import { numberIn } from './number-in.js';
import { measuredText, waysText } from './text/measure.js';

/** What `measure` is asked, as typed. */
export interface MeasureArguments extends Which {
  readonly cut: string;
  readonly arc: string;
  readonly reading: readonly string[];
  readonly tolerance?: string;
  readonly dial?: string;
  readonly dialOn: Dial['on'];
  readonly json?: boolean;
}

/**
 * Prints the ways to measure the arcs of a cut; with readings, what they say of the arc and what to correct. Returns the exit
 * code: found where readings contradict each other or the arc is past or over the drawn one.
 * @throws Failure if the job, the cut or a reading cannot be used.
 */
export async function measure(name: string, options: MeasureArguments, io: Io): Promise<number> {
  const job = await loadJob(name, io, options);
  const arc = wholeIn('--arc', options.arc) - 1;
  if (options.reading.length === 0) return ways(job, options, io);
  const given = options.tolerance === undefined ? undefined : numberIn('--tolerance', options.tolerance);
  const readings = options.reading.map((text) => readingIn(text, given ?? USUAL_READING[job.units]));
  const dial = dialOf(job, options);
  const answer = refused(() => measured(job, { cut: options.cut, arc, readings, dial: dial ?? undefined }));
  io.out(options.json === true ? jsonText(answer) : measuredText(answer, readings, job));
  const { fit, correction } = answer;
  const isAmiss =
    fit.contradicted.length > 0 || correction?.state === 'over size' || (correction?.past ?? null) !== null;
  return isAmiss ? EXIT.found : EXIT.clean;
}

function ways(job: Job, { cut, json = false }: MeasureArguments, io: Io): number {
  // A reading that is none brings the faults of the cut and the arc to light.
  const checks = examine(job).checks.filter((check) => check.cut === cut);
  if (checks.length === 0) refused(() => measured(job, { cut, readings: [] }));
  io.out(json ? jsonText(checks) : waysText(checks, job));
  return EXIT.clean;
}

function dialOf(job: Job, { cut, dial, dialOn }: MeasureArguments): Dial | null {
  if (dial === undefined) return job.tools.find(({ cuts }) => cuts.includes(cut))?.dial ?? null;
  const step = numberIn('--dial', dial);
  if (!(step > 0)) throw new Failure([`--dial: is ${dial}; one graduation is over 0, such as 0.02`]);
  return { step, on: dialOn };
}

function wholeIn(option: string, text: string): number {
  const value = numberIn(option, text);
  if (Number.isInteger(value) && value >= 1) return value;
  throw new Failure([`${option}: is ${text}; give a whole number from 1 on`]);
}

/** `2=23.45`, or `2=23.45+-0.01` with how good it is. */
function readingIn(text: string, tolerance: number): { way: number; value: number; tolerance: number } {
  const parts = /^([^=]*)=(.*?)(?:\+-(.*))?$/.exec(text);
  if (parts === null)
    throw new Failure([
      `--reading: is ${JSON.stringify(text)}; give the number of the way and what it read, such as 2=23.45 or 2=23.45+-0.01`,
    ]);
  const [, way = '', value = '', own] = parts;
  return {
    way: wholeIn('--reading', way) - 1,
    value: numberIn('--reading', value),
    tolerance: own === undefined ? tolerance : numberIn('--reading', own),
  };
}

function refused<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof FitError) throw new Failure([`--reading: ${error.message}`]);
    if (error instanceof RangeError && !(error instanceof OverlayError))
      throw new Failure([`--${error.message}`]);
    throw error;
  }
}
