import { describe, expect, it } from 'vitest';
import { contest, edgebite } from './library.js';
import { ownCases } from './own-cases.js';
import { cutProblems, offsetProblems } from './problems.js';
import { platesToGrow, shapeCuts, sweptProblems, xorProblems } from './shape-problems.js';

/*
 * The benchmark's cases have right answers: areas in closed form (circles in a plate; a rounded polygon that grows,
 * see grownArea) or by the slab reference of tests/tools/slabs.ts.
 */

const problems = [
  ...cutProblems(),
  ...shapeCuts(),
  ...offsetProblems(),
  ...platesToGrow(),
  ...xorProblems(),
  ...sweptProblems(),
];

describe('the cases of the benchmark', () => {
  it.each(problems.map((problem) => [problem.name, problem] as const))('%s', (_, problem) => {
    const wanted = problem.expected();
    const got = contest(problem, edgebite)?.answer() ?? Number.NaN;
    expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-9 * wanted);
  });

  it.each(ownCases().map((one) => [one.name, one] as const))('%s', (_, one) => {
    expect(one.isRight()).toBe(true);
  });
});
