import { parseArgs } from 'node:util';
import { examine, parseJob } from '@edgebite/core';
import { compare } from '../compare/compare.js';
import type { ToldReport } from '../compare/told.js';
import { Verdict } from '../compare/verdict.js';
import { jobNumber } from '../made/generate.js';

/*
 * npm run made -- --from 0 --to 500
 * Made jobs held against the simulation, one line for each that is in order and one more for each fault.
 * Exit code 1 if there was any.
 */

const { values } = parseArgs({
  options: { from: { type: 'string', default: '0' }, to: { type: 'string', default: '500' } },
});

let [jobs, wrong] = [0, 0];
const all = new Verdict();
for (let k = wholeNumber('from', values.from); k < wholeNumber('to', values.to); k++) {
  jobs++;
  const faults = faultsOf(k);
  if (faults.length > 0) wrong++;
  console.log(`job ${k}: ${faults.length === 0 ? 'in order' : `${faults.length} faults`}`);
  for (const fault of faults) console.log(`  ${fault}`);
}
console.log(all.counts());
console.log(`${jobs} jobs, ${wrong} with faults, ${(100 * all.shareSkipped()).toFixed(2)} % left open`);
if (wrong > 0) process.exitCode = 1;

function faultsOf(k: number): readonly string[] {
  try {
    const job = jobNumber(k);
    const verdict = compare(job, examine(parseJob(job)) as unknown as ToldReport);
    all.add(verdict);
    return verdict.faults;
  } catch (error) {
    return [`threw ${error instanceof Error ? error.stack : error}`];
  }
}

function wholeNumber(name: string, text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 0) throw new RangeError(`--${name} ${text}: give a whole number`);
  return value;
}
