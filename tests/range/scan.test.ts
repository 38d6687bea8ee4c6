import { parseJob } from '@edgebite/core';
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { longRun, runs } from '../tools/runs.js';
import { drawnCases, looseCases } from './range-jobs.js';
import { checkRange } from './range-scan.js';

/** Steps of the scan that the answers are compared with. */
const STEPS = longRun() ? 10_000 : 60;

describe('a range of one number of a cut has the events of a dense scan and no others', () => {
  it.each([
    ['numbers that have nothing to do with each other', looseCases],
    ['numbers as on a drawing, that touch and line up', drawnCases],
  ])('%s', (_, cases) => {
    fc.assert(
      fc.property(cases, ({ document, query }) => {
        checkRange(parseJob(document), query, STEPS);
      }),
      { numRuns: runs(1) },
    );
  });
});
