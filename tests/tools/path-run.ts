import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { pathCases } from './path-cases.js';
import { checkPath, type PathMeasures } from './path-check.js';
import { checkReach, type ReachMeasures } from './reach-check.js';

/*
 * node tests/tools/run.mjs tests/tools/path-run.ts --cases 5000 --seed 1
 * Paths on generated outlines. Exit code 1 if any failed; failures are kept as JSON.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '5000' },
    seed: { type: 'string', default: '1' },
    failures: { type: 'string', default: 'prove-failures' },
  },
});
const numRuns = Number(values.cases);
const seed = Number(values.seed);
const worst = { off: 0, leadOff: 0, leftOff: 0, limitOff: 0 };
const sums = { passes: 0, places: 0, limits: 0, corners: 0, tips: 0, nowhere: 0, failed: 0 };
const started = performance.now();
fc.sample(pathCases, { numRuns, seed }).forEach((one, index) => {
  try {
    count(checkPath(one), checkReach(one));
  } catch (error) {
    sums.failed += 1;
    const message = error instanceof Error ? error.message : String(error);
    console.log(`FAILED ${index}: ${message}`);
    mkdirSync(values.failures, { recursive: true });
    writeFileSync(
      `${values.failures}/path-${seed}-${index}.json`,
      JSON.stringify({ seed, message, case: one }, null, 1),
    );
  }
});
const each = ((performance.now() - started) / numRuns).toFixed(1);
console.log(`paths: ${numRuns} cases, seed ${seed}, ${each} ms each`, sums, worst);
if (sums.failed > 0) process.exitCode = 1;

function count(path: PathMeasures | null, reach: ReachMeasures): void {
  worst.limitOff = Math.max(worst.limitOff, reach.limitOff);
  for (const key of ['limits', 'corners', 'tips'] as const) sums[key] += reach[key];
  if (path === null) {
    sums.nowhere += 1;
    return;
  }
  for (const key of ['off', 'leadOff', 'leftOff'] as const) worst[key] = Math.max(worst[key], path[key]);
  for (const key of ['passes', 'places'] as const) sums[key] += path[key];
}
