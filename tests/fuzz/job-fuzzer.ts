import { readdirSync, readFileSync } from 'node:fs';
import { examine, type Job, JobError, parseJob, type Report } from '@edgebite/core';
import { jobDocuments, jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { unknownNames } from '../jobs/names-in.js';
import { cpu, type Through, through, type Way } from './job-through.js';
import { type Dice, dice, garbled, mutated } from './mutate.js';

/** Generated jobs among the valid ones that are mutated. */
const GENERATED = 60;

/** A job on which something went wrong. */
export interface FuzzFault {
  readonly index: number;
  readonly what: string;
  readonly job: unknown;
}

/** What came of mutated jobs. */
export interface Fuzzed {
  readonly reports: number;
  readonly refused: number;
  /** How many different messages were given, numbers left out: shows that many rules were reached. */
  readonly sayings: number;
  /** How many ranges were cut short. */
  readonly cutShort: number;
  /** The longest that each way took, in milliseconds of processor time. */
  readonly slowest: Readonly<Record<Way, number>>;
  readonly faults: readonly FuzzFault[];
}

/**
 * Puts mutated jobs through everything that the command does with a job, twice; the same seed gives the same jobs.
 * @param count how many
 * @param first the index of the first one that is put through
 * @param most milliseconds of processor time that any way may take; no limit unless given
 * @param every of so many jobs only one goes through more than a report, to save time
 */
export function fuzzJobs({
  count,
  seed,
  first = 0,
  every = 1,
  most = Number.POSITIVE_INFINITY,
}: {
  count: number;
  seed: number;
  first?: number;
  every?: number;
  most?: number;
}): Fuzzed {
  const seeds = validJobs(seed);
  const roll = dice(seed);
  const sayings = new Set<string>();
  const faults: FuzzFault[] = [];
  const slowest: Record<Way, number> = { check: 0, draw: 0, sheet: 0, range: 0 };
  let [reports, refused, cutShort] = [0, 0, 0];
  for (let index = 0; index < first + count; index++) {
    const job = another(seeds, roll);
    if (index < first) continue;
    const { what, passed } = outcome(job, index, index % every === 0, sayings);
    if (what === 'report') reports++;
    else if (what === 'refused') refused++;
    else faults.push({ index, what, job });
    if (passed === null) continue;
    if (passed.cutShort !== null) cutShort++;
    for (const { way, took } of passed.gone) {
      slowest[way] = Math.max(slowest[way], took);
      if (took > most) faults.push({ index, what: `${way} took ${took.toFixed(0)} ms`, job });
    }
  }
  return { reports, refused, cutShort, sayings: sayings.size, slowest, faults };
}

/** The examples and generated jobs, small ones. */
function validJobs(seed: number): readonly unknown[] {
  const folder = new URL('../../examples/', import.meta.url);
  const examples = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as unknown);
  const generated = [jobDocuments, jobDocumentsWithSetup].flatMap((jobs) =>
    fc.sample(jobs as fc.Arbitrary<unknown>, { numRuns: GENERATED, seed }),
  );
  return [...examples, ...generated];
}

/** One job in eight as garbled text, the others as values or as the text of them. */
function another(seeds: readonly unknown[], roll: Dice): unknown {
  const document = seeds[roll(seeds.length)];
  const way = roll(8);
  if (way === 0) return garbled(JSON.stringify(document), roll);
  const changed = mutated(document, roll);
  return way < 3 ? asText(changed) : changed;
}

function asText(value: unknown): unknown {
  try {
    return JSON.stringify(value) ?? '';
  } catch {
    return value;
  }
}

interface Outcome {
  /** `report`, `refused`, or what is wrong. */
  readonly what: string;
  /** What came of it; null if there is none. */
  readonly passed: Through | null;
}

function outcome(given: unknown, index: number, isWhole: boolean, sayings: Set<string>): Outcome {
  const start = cpu();
  let job: Job;
  try {
    job = parseJob(given);
  } catch (error) {
    return { what: refusal(error, sayings) ?? pollution() ?? 'refused', passed: null };
  }
  const parsing = cpu() - start;
  try {
    if (!isWhole) {
      const report = examine(job);
      return { what: infinite(report, '') ?? nameless(report) ?? pollution() ?? 'report', passed: null };
    }
    const passed = through(job, parsing, dice(index), null);
    const again = through(parseJob(given), 0, dice(index), passed.cutShort ?? Number.POSITIVE_INFINITY);
    const what =
      infinite(passed.report, '') ??
      nameless(passed.report) ??
      notANumber(passed, job) ??
      differing(passed, again) ??
      pollution();
    return { what: what ?? 'report', passed };
  } catch (error) {
    return { what: traceOf(error), passed: null };
  }
}

/** What is wrong with an error that a job is refused with; null if nothing is. */
function refusal(error: unknown, sayings: Set<string>): string | null {
  if (!(error instanceof JobError)) return traceOf(error);
  if (error.issues.length === 0) return 'a JobError without an issue';
  for (const { message } of error.issues) sayings.add(message.replace(/[-\d.e+]+|"[^"]*"/g, ''));
  return null;
}

function traceOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

/** What stands where a number should. */
const NOT_A_NUMBER = /(?<![\w"'])-?(?:NaN|Infinity)(?![\w"'])|\[object Object\]/;

function notANumber({ gone }: Through, job: Job): string | null {
  const own = ownWords(job.document);
  for (const { way, text: told } of gone) {
    const text = own.reduce((left, word) => left.replaceAll(word, '_'), told);
    const found = NOT_A_NUMBER.exec(text);
    if (found !== null) return `${way} has ${text.slice(Math.max(0, found.index - 60), found.index + 60)}`;
  }
  return null;
}

/** Texts of a job, as a material or a cut's id, that read as no number: they are told as they are written. */
function ownWords(value: unknown): string[] {
  if (typeof value === 'string') return NOT_A_NUMBER.test(value) ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(ownWords) : [];
}

function nameless(report: Report): string | null {
  const [first] = unknownNames(report);
  return first === undefined ? null : `the report has no such thing: ${first}`;
}

function differing(one: Through, other: Through): string | null {
  for (const [k, { way, text }] of one.gone.entries()) {
    const again = other.gone[k]?.text ?? '';
    if (again === text) continue;
    const at = [...text].findIndex((letter, n) => letter !== again[n]);
    return `${way} differs the second time: ${text.slice(at - 40, at + 40)} and ${again.slice(at - 40, at + 40)}`;
  }
  return null;
}

/** The first number of a report that is not finite, or value that JSON does not have. */
function infinite(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (typeof value !== 'object') {
    return typeof value === 'string' || typeof value === 'boolean' ? null : `${path} is a ${typeof value}`;
  }
  if (value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    const found = infinite(inner, `${path}/${key}`);
    if (found !== null) return found;
  }
  return null;
}

function pollution(): string | null {
  const plain = {} as Record<string, unknown>;
  for (const key in plain) return `Object.prototype has got a ${key}`;
  return plain.polluted === undefined ? null : 'Object.prototype is polluted';
}
