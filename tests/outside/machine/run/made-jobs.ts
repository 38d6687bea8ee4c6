import { parseArgs } from 'node:util';
import { examine, parseJob, type Report } from '@edgebite/core';
import { atTheMachine, sheetAtTheMachine } from '../compare/at-the-machine.js';
import { compare } from '../compare/compare.js';
import { compareMarks, compareRange } from '../compare/marks.js';
import type { ToldReport } from '../compare/told.js';
import { Verdict } from '../compare/verdict.js';
import { jobNumber } from '../made/generate.js';
import { turnedOn, writtenOut } from '../made/turn.js';
import { firstDifference } from './difference.js';

/*
 * npm run made -- --what steps --from 0 --to 500
 * Made jobs, one line for each and one more for each fault. `steps` holds reports against the simulation, `turned` against
 * those of a drawing turned by a quarter with its setups turned back, `marks` text, drawing and sheet against each other,
 * `ranges` marks against those of a range. Exit code 1 if there was any fault.
 */

const CHECKS: Readonly<Record<string, (k: number) => Verdict>> = {
  steps: (k) => {
    const job = jobNumber(k);
    return compare(job, examine(parseJob(job)) as unknown as ToldReport);
  },
  turned: (k) => {
    const job = writtenOut(jobNumber(k));
    const [one, other] = [job, turnedOn(job)].map((each) => examine(parseJob(each))) as [Report, Report];
    const verdict = new Verdict();
    for (const [what, seen] of [
      ['steps', atTheMachine],
      ['sheet', sheetAtTheMachine],
    ] as const) {
      const difference = firstDifference(seen(one), seen(other));
      verdict.check(what, difference === null, () => difference ?? '');
    }
    return verdict;
  },
  marks: (k) => {
    const verdict = new Verdict();
    compareMarks(verdict, examine(parseJob(jobNumber(k))));
    return verdict;
  },
  ranges: (k) => {
    const verdict = new Verdict();
    compareRange(verdict, jobNumber(k));
    return verdict;
  },
};

const { values } = parseArgs({
  options: {
    what: { type: 'string', default: 'steps' },
    from: { type: 'string', default: '0' },
    to: { type: 'string', default: '500' },
  },
});

const check = CHECKS[values.what];
if (check === undefined)
  throw new RangeError(`--what ${values.what}: give one of ${Object.keys(CHECKS).join(', ')}`);

let [jobs, wrong] = [0, 0];
const all = new Verdict();
for (let k = wholeNumber('from', values.from); k < wholeNumber('to', values.to); k++) {
  jobs++;
  const faults = faultsOf(check, k);
  if (faults.length > 0) wrong++;
  console.log(`job ${k}: ${faults.length === 0 ? 'in order' : `${faults.length} faults`}`);
  for (const fault of faults) console.log(`  ${fault}`);
}
console.log(all.counts());
console.log(`${jobs} jobs, ${wrong} with faults, ${(100 * all.shareSkipped()).toFixed(2)} % left open`);
if (wrong > 0) process.exitCode = 1;

function faultsOf(of: (k: number) => Verdict, k: number): readonly string[] {
  try {
    const verdict = of(k);
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
