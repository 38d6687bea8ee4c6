import fc from 'fast-check';
import { longRun, runs } from './runs.js';

/** fast-check's own number of cases where a test names none. */
const USUAL_RUNS = 100;

/** Any fixed number: with it a red fast suite means that the code changed, not that the dice did. */
const FAST_SUITE_SEED = 20240229;

fc.configureGlobal({
  numRuns: runs(USUAL_RUNS),
  ...(longRun() ? {} : { seed: FAST_SUITE_SEED }),
});
