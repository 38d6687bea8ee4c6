import { expect, test } from 'vitest';
import { longRun } from '../tools/runs.js';
import { countBest, countParts } from './counting.js';

/* The count of `npm run count:propose`, small. */

test('ways leave the part, in an order that none betters, with what the tools can; the rest is refused with its reason', () => {
  const { faults, swept, blind, tried, codes } = countParts(longRun() ? 400 : 30, 5, longRun() ? 6 : 3);
  expect(faults).toEqual([]);
  expect(Math.min(swept, blind, tried, Object.keys(codes).length)).toBeGreaterThan(0);
});

test('the best way is the best of all tools and orders', () => {
  const { faults, jobs, refused } = countBest(longRun() ? 200 : 12, 5, longRun() ? 1500 : 60);
  expect(faults).toEqual([]);
  expect(Math.min(jobs, refused)).toBeGreaterThan(0);
});
