import { parseArgs } from 'node:util';
import { parseJob } from '@edgebite/core';
import fc from 'fast-check';
import { drawnCases, looseCases, type RangeCase } from './range-jobs.js';
import { type CheckedChange, checkRange } from './range-scan.js';

/*
 * node tests/tools/run.mjs tests/range/range-run.ts --cases 200 --steps 10000 --seed 7
 * Ranges of one number of a cut against a dense scan. Exit code 1 if anything differed.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '200' },
    steps: { type: 'string', default: '10000' },
    seed: { type: 'string', default: '1' },
    family: { type: 'string' },
    only: { type: 'string' },
  },
});

const steps = Number(values.steps);
let differing = 0;
let [jobs, events, rangeMs, scanMs] = [0, 0, 0, 0];
const changes: CheckedChange[] = [];
let least = Infinity;
const families: readonly (readonly [string, fc.Arbitrary<RangeCase>])[] = [
  ['loose', looseCases],
  ['drawn', drawnCases],
];
for (const [name, cases] of families) {
  if (values.family !== undefined && values.family !== name) continue;
  const numRuns = Math.ceil(Number(values.cases) / families.length);
  fc.sample(cases, { seed: Number(values.seed), numRuns }).forEach(({ document, query }, k) => {
    if (values.only !== undefined && values.only !== String(k)) return;
    jobs += 1;
    try {
      const check = checkRange(parseJob(document), query, steps);
      events += check.events;
      changes.push(...check.changes);
      rangeMs += check.rangeMs;
      scanMs += check.scanMs;
      least = Math.min(least, check.scanMs / check.rangeMs);
    } catch (error) {
      differing += 1;
      console.log(`${name} ${k}: ${JSON.stringify(query)} ${error instanceof Error ? error.message : error}`);
    }
  });
}
console.log(
  `${jobs} jobs, ${events} events, ${changes.filter(({ scanned }) => scanned).length} changes scanned and ` +
    `${changes.filter(({ scanned }) => !scanned).length} of events between steps; ` +
    `${(scanMs / rangeMs).toFixed(0)} times as fast as the scan, ${least.toFixed(0)} at least`,
);
/** How many events and changes were seen to be the same by each means, and how far apart they are at most. */
for (const by of ['report', 'touch', 'graze', 'web', 'slip', 'end'] as const) {
  const some = changes.filter((change) => change.by === by);
  const most = (sizes: readonly number[]) => sizes.reduce((a, b) => Math.max(a, b), 0);
  const share = most(some.map((change) => change.share)).toExponential(1);
  const welds = most(some.map((change) => change.welds)).toFixed(1);
  console.log(
    `${by}: ${some.length} changes; events off by at most ${share} of the range, ` +
      `the report changes while they are ${welds} weld tolerances apart`,
  );
}
console.log(`${differing} differed`);
if (differing > 0) process.exitCode = 1;
