import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { families } from '@edgebite/core/testing';
import fc from 'fast-check';
import { type CheckName, checkAgain, type KeptFailure, loadedChecks } from './checks.js';
import { jobCases } from './job-cases.js';
import { secondCuts } from './second-cuts.js';

/*
 * npm run fuzz -- --minutes 10 --seed 7
 * Cases and jobs without end, each through its check. A failure is shrunk and kept as a file of tests/regressions/,
 * which tests/regressions.test.ts runs for ever after. Ends with exit code 1 if there was any.
 */

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '5' },
    seed: { type: 'string', default: String(Date.now() % 1_000_000) },
    only: { type: 'string' },
    out: { type: 'string', default: 'tests/regressions' },
  },
});

/** Cases of one target before the next one has its turn: long enough to be worth the change, short enough to mix. */
const BATCH = 8;

/** Failures that say the same are kept only so often; more of them are only counted. */
const KEPT_OF_A_KIND = 2;

/** So much of a message says of what kind a failure is; what follows are rows of figures. */
const KIND_LENGTH = 64;

/** Shrinking a failure ends after this many milliseconds: a smaller case is a help, not the finding. */
const SHRINKING = 60_000;

interface Target {
  readonly name: string;
  readonly check: CheckName;
  readonly cases: fc.Arbitrary<unknown>;
}

const minutes = numberOf('minutes', values.minutes);
const seed = numberOf('seed', values.seed);
const checks = await loadedChecks();
const kinds = new Map<string, number>();
const counts = new Map<string, { cases: number; failures: number }>();
const targets = targetList().filter(({ name }) => values.only === undefined || name.startsWith(values.only));
if (targets.length === 0) throw new RangeError(`--only ${values.only}: no target begins so`);

console.log(`fuzz: seed ${seed}, ${minutes} minutes, ${targets.length} targets`);
const end = performance.now() + minutes * 60_000;
let reported = performance.now();
for (let round = 0; performance.now() < end; round += 1) {
  for (const [k, target] of targets.entries()) {
    if (performance.now() >= end) break;
    runBatch(target, batchSeed(round, k), round % 2 === 1);
    if (performance.now() - reported > 60_000) {
      console.log(summary());
      reported = performance.now();
    }
  }
}
for (const [name, { cases, failures }] of counts) console.log(`${name}: ${cases} cases, ${failures} failed`);
for (const [kind, count] of kinds) console.log(`kind of failure, ${count} times: ${kind}`);
console.log(summary());
if (kinds.size > 0) process.exitCode = 1;

/** Laws and peer for every family and for cuts in results; as many jobs as all of those together. */
function targetList(): Target[] {
  const cutting = [...families, { name: 'second-cuts', cases: secondCuts }].flatMap(
    ({ name, cases }): Target[] => [
      { name: `laws ${name}`, check: 'laws', cases },
      { name: `job ${name}`, check: 'job', cases: jobCases },
      { name: `peer ${name}`, check: 'peer', cases },
      { name: `laws second-cuts ${name}`, check: 'laws', cases: secondCuts },
    ],
  );
  return cutting;
}

/** @param even whether all values are as likely; else small ones and the ends of ranges come more often */
function runBatch({ name, check, cases }: Target, own: number, even: boolean): void {
  const label = name.startsWith('job') ? 'job' : name.includes('second-cuts') ? `${check} second-cuts` : name;
  const count = counts.get(label) ?? { cases: 0, failures: 0 };
  counts.set(label, count);
  let first: string | null = null;
  const property = fc.property(cases, (one) => {
    if (first === null) count.cases += 1;
    try {
      checkAgain(checks, { check, message: '', seed: own, case: one as KeptFailure['case'] });
    } catch (error) {
      const kind = kindOf(check, error);
      const known = kinds.get(kind) ?? 0;
      // Shrinking must not run off to another fault.
      if (first !== null && kind !== first) return;
      if (first === null) {
        count.failures += 1;
        kinds.set(kind, known + 1);
        if (known >= KEPT_OF_A_KIND) return;
        first = kind;
      }
      throw error;
    }
  });
  const details = fc.check(property, {
    seed: own,
    numRuns: BATCH,
    unbiased: even,
    interruptAfterTimeLimit: SHRINKING,
    markInterruptAsFailure: false,
  });
  if (details.failed && details.counterexample !== null && first !== null) {
    keep(check, first, messageOf(details.errorInstance), own, details.counterexample[0]);
  }
}

function keep(check: CheckName, kind: string, message: string, own: number, failing: unknown): void {
  const kept: KeptFailure = { check, message, seed: own, case: failing as KeptFailure['case'] };
  const words = kind.replace(/[^a-z0-9]+/gi, '-').slice(0, 60);
  const path = `${values.out}/${words}-${own >>> 0}.json`;
  mkdirSync(values.out, { recursive: true });
  writeFileSync(path, `${JSON.stringify(kept, null, 1)}\n`);
  console.log(`FAILED, kept in ${path}: ${message.slice(0, 600)}`);
}

/** What went wrong, without its numbers: failures of one kind are most likely one fault. */
function kindOf(check: CheckName, error: unknown): string {
  const [line] = messageOf(error).split('\n  ').slice(-1);
  return `${check} ${(line ?? '').replace(/[-+]?\d[\d.e+-]*/g, '').replace(/[^a-z ,:]+/gi, ' ')}`.slice(
    0,
    KIND_LENGTH,
  );
}

function messageOf(error: unknown): string {
  return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
}

function batchSeed(round: number, target: number): number {
  return (seed * 1_000_003 + round * 8191 + target * 131) | 0;
}

function summary(): string {
  const all = [...counts.values()];
  const cases = all.reduce((sum, one) => sum + one.cases, 0);
  const failures = all.reduce((sum, one) => sum + one.failures, 0);
  return `fuzz: seed ${seed}, ${cases} cases, ${failures} failed, ${kinds.size} kinds of failure`;
}

function numberOf(option: string, text: string): number {
  const value = Number(text);
  if (!(value >= 0) || !Number.isFinite(value))
    throw new RangeError(`--${option} ${text}: not a number from 0`);
  return value;
}
