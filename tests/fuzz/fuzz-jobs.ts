/*
 * Mutated valid jobs through check, draw, sheet and range: npm run fuzz:jobs -- --count 50000 --seed 1
 * Each must end in a report with finite numbers only, or in a JobError; nothing may take over two seconds of the
 * processor, the second time must give the same bytes, and nothing may be left behind on a prototype.
 * `--first 417 --count 1` puts one of them through again.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fuzzJobs } from './job-fuzzer.js';
import { WAYS } from './job-through.js';

/** Longer than this is a hang, milliseconds of processor time. */
const HANG = 2000;

const option = (name: string, otherwise: number): number => {
  const at = argv.indexOf(`--${name}`);
  const value = at < 0 ? otherwise : Number(argv[at + 1]);
  if (!Number.isInteger(value) || value < 0) throw new RangeError(`--${name}: give a whole number`);
  return value;
};

const count = option('count', 20_000);
const seed = option('seed', 1);
const first = option('first', 0);
const started = process.cpuUsage().user;
const found = fuzzJobs({ count, seed, first, most: HANG });
const took = (process.cpuUsage().user - started) / 1e6;
const slowest = WAYS.map((way) => `${way} ${found.slowest[way].toFixed(0)}`).join(', ');
console.log(
  `${count} mutated jobs from seed ${seed} in ${took.toFixed(0)} s: ${found.reports} reports, ${found.refused} refused ` +
    `with ${found.sayings} different sentences, ${found.cutShort} ranges cut short, slowest in ms: ${slowest}; ` +
    `${found.faults.length} faults`,
);
for (const { what, index } of found.faults.slice(0, 20)) console.log(`job ${index}: ${what}`);
if (found.faults.length > 0) {
  mkdirSync('out', { recursive: true });
  const file = `out/fuzz-jobs-${seed}.json`;
  // Numbers of a kind that JSON does not have are among the odd values that jobs are mutated with.
  const written = (_: string, value: unknown) => (typeof value === 'bigint' ? `${value}n` : value);
  writeFileSync(file, JSON.stringify(found.faults, written, 2));
  console.log(`The jobs are in ${file}.`);
  process.exitCode = 1;
}
