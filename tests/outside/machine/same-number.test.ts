import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { longRun } from '../../tools/runs.js';
import { compareMarks, compareRange } from './compare/marks.js';
import { Verdict } from './compare/verdict.js';
import { jobNumber } from './made/generate.js';

/* The same mark has the same number wherever it is told of: in the text, in the drawing, on the sheet and in a range. */

const JOBS = longRun() ? 500 : 5;

/** Ranges take longer than all else: they are asked of every so many jobs. */
const RANGES = longRun() ? 5 : 4;

describe('the marks of a job', () => {
  const all = Array.from({ length: JOBS }, (_, k) => k);

  it.each(all)('are the same in text, drawing and sheet: job %i', (k) => {
    const verdict = new Verdict();
    compareMarks(verdict, examine(parseJob(jobNumber(k))));
    expect(verdict.faults).toEqual([]);
    expect(verdict.checked.size).toBeGreaterThan(0);
  });

  const asked = all.filter((k) => k % RANGES === 0);
  it.each(asked)('are those of a range at the value that the job has: job %i', (k) => {
    const verdict = new Verdict();
    compareRange(verdict, jobNumber(k));
    expect(verdict.faults).toEqual([]);
  });
});
