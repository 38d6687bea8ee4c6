import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { fuzzJobs } from './job-fuzzer.js';
import { dice, garbled, mutated } from './mutate.js';

/** The long run, npm run fuzz:jobs, takes as many as it is told. */
const COUNT = runs(250);

describe('mutated jobs', () => {
  it('end in a report, drawing, sheet and range with finite numbers, the same ones twice, or in a JobError', () => {
    const { faults, reports, refused, sayings } = fuzzJobs({ count: COUNT, seed: 3, every: 5 });
    expect(faults).toEqual([]);
    expect(reports + refused).toBe(COUNT);
    // Enough of both, and of different refusals, that the mutations reach the rules.
    expect(reports).toBeGreaterThan(COUNT / 10);
    expect(refused).toBeGreaterThan(COUNT / 4);
    expect(sayings).toBeGreaterThan(50);
  });

  it('are the same for the same seed', () => {
    const draw = (): unknown[] => {
      const roll = dice(9);
      return Array.from({ length: 50 }, () => garbled(JSON.stringify({ a: [1, 2, { b: 'c' }] }), roll));
    };
    expect(draw()).toEqual(draw());
    expect(new Set(draw()).size).toBeGreaterThan(30);
  });

  it('leave the job that they are made of as it is', () => {
    const job = { a: [1, 2, { b: 'c' }], d: 5 };
    const before = structuredClone(job);
    const roll = dice(2);
    const changed = Array.from({ length: 200 }, () => mutated(job, roll));
    expect(job).toEqual(before);
    expect(changed.filter((one) => isDeepStrictEqual(one, job)).length).toBeLessThan(60);
  });
});
