/*
 * Mutated valid jobs, without end if asked: npm run fuzz:jobs -- --count 200000 --seed 1
 * Each must end in a report with finite numbers only, or in a JobError; nothing may take over two seconds, and
 * nothing may be left behind on a prototype.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fuzzJobs } from './job-fuzzer.js';

const option = (name: string, otherwise: number): number => {
  const at = argv.indexOf(`--${name}`);
  const value = at < 0 ? otherwise : Number(argv[at + 1]);
  if (!Number.isInteger(value) || value < 0) throw new RangeError(`--${name}: give a whole number`);
  return value;
};

const count = option('count', 20_000);
const seed = option('seed', 1);
const started = performance.now();
const found = fuzzJobs({ count, seed });
const took = (performance.now() - started) / 1000;
console.log(
  `${count} mutated jobs from seed ${seed} in ${took.toFixed(0)} s: ${found.reports} reports, ${found.refused} refused ` +
    `with ${found.sayings} different sentences, slowest ${found.slowest.toFixed(0)} ms, ${found.faults.length} faults`,
);
for (const { what, index } of found.faults.slice(0, 20)) console.log(`job ${index}: ${what}`);
if (found.faults.length > 0) {
  mkdirSync('out', { recursive: true });
  writeFileSync('out/fuzz-jobs.json', JSON.stringify(found.faults, null, 2));
  console.log('The jobs are in out/fuzz-jobs.json.');
  process.exitCode = 1;
}
