import { parseArgs } from 'node:util';
import { parseJob } from '@edgebite/core';
import fc from 'fast-check';
import { drawnCases, looseCases, type RangeCase } from './range-jobs.js';
import { checkRange } from './range-scan.js';

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
let [events, scanned, share, touching, slipping, welds, rangeMs, scanMs] = [0, 0, 0, 0, 0, 0, 0, 0];
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
    try {
      const check = checkRange(parseJob(document), query, steps);
      events += check.events;
      scanned += check.scanned;
      share = Math.max(share, check.share);
      touching += check.touching;
      slipping += check.slipping;
      welds = Math.max(welds, check.welds);
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
  `${events} events, ${scanned} changes scanned; ${scanned - touching - slipping} off by at most ${share.toExponential(1)} of the range, ` +
    `${touching} where touching blurs the report by at most ${welds.toFixed(1)} weld tolerances, ${slipping} where a web slips off an end; ` +
    `${(scanMs / rangeMs).toFixed(0)} times as fast as the scan, ${least.toFixed(0)} at least`,
);
console.log(`${differing} differed`);
if (differing > 0) process.exitCode = 1;
