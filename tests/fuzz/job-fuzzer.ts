import { readdirSync, readFileSync } from 'node:fs';
import { examine, JobError, parseJob } from '@edgebite/core';
import { jobDocuments, jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { type Dice, dice, garbled, mutated } from './mutate.js';

/** Longer than this is a hang, milliseconds. */
const HANG = 2000;

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
  readonly slowest: number;
  readonly faults: readonly FuzzFault[];
}

/** Puts mutated jobs through `parseJob` and `examine`; the same seed gives the same jobs. */
export function fuzzJobs({ count, seed }: { count: number; seed: number }): Fuzzed {
  const seeds = validJobs(seed);
  const roll = dice(seed);
  const sayings = new Set<string>();
  const faults: FuzzFault[] = [];
  let [reports, refused, slowest] = [0, 0, 0];
  for (let index = 0; index < count; index++) {
    const job = another(seeds, roll);
    const started = performance.now();
    const what = outcome(job, sayings);
    const took = performance.now() - started;
    slowest = Math.max(slowest, took);
    if (what === 'report') reports++;
    else if (what === 'refused') refused++;
    else faults.push({ index, what, job });
    if (took > HANG) faults.push({ index, what: `took ${took.toFixed(0)} ms`, job });
  }
  return { reports, refused, sayings: sayings.size, slowest, faults };
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

function outcome(job: unknown, sayings: Set<string>): string {
  try {
    const report = examine(parseJob(job));
    return infinite(report, '') ?? pollution() ?? 'report';
  } catch (error) {
    if (!(error instanceof JobError))
      return error instanceof Error ? (error.stack ?? error.message) : String(error);
    if (error.issues.length === 0) return 'a JobError without an issue';
    for (const { message } of error.issues) sayings.add(message.replace(/[-\d.e+]+|"[^"]*"/g, ''));
    return pollution() ?? 'refused';
  }
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
