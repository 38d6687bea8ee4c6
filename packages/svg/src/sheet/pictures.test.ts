import type { Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block } from '../../fixtures/block.js';
import { picturesIn, picturesOf } from './pictures.js';

type Step = Report['steps'][number];

/** A report with steps of the block, each with its cut, its setup and what is to be told of it. */
function reportOf(steps: readonly Partial<Step>[]): Report {
  const [own] = block.steps;
  if (own === undefined) throw new Error('the fixture has steps');
  return { ...block, steps: steps.map((step) => ({ ...own, frees: [], findings: [], ...step })) };
}

const frees = block.steps[0]?.frees ?? [];

/** The steps of each picture. */
const steps = (pictures: readonly { readonly steps: readonly number[] }[]) =>
  pictures.map((one) => one.steps);

describe('pictures of steps', () => {
  it('are one for each cut in a setup, with all its passes', () => {
    const report = reportOf([{ cut: 'a' }, { cut: 'a' }, { cut: 'b' }, { cut: 'b', setup: 'other' }]);
    expect(steps(picturesOf(report))).toEqual([[0, 1], [2], [3]]);
  });

  it('end where something comes loose, since the work stops there', () => {
    const report = reportOf([{ cut: 'a' }, { cut: 'a', frees }, { cut: 'a' }, { cut: 'a' }]);
    expect(steps(picturesOf(report))).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  it('are none where a section is missing', () => {
    expect(picturesOf(reportOf([{ cut: 'a' }, { cut: 'b', after: null }]))).toEqual([]);
  });
});

describe('pictures for which there is no room', () => {
  it('share one with their neighbour, those that have the least to tell first, and never across setups', () => {
    const report = reportOf([
      { cut: 'a' },
      { cut: 'b', findings: [1] },
      { cut: 'c' },
      { cut: 'd' },
      { cut: 'e', setup: 'other' },
    ]);
    expect(steps(picturesIn(report, 4).shown)).toEqual([[0], [1], [2, 3], [4]]);
    expect(steps(picturesIn(report, 2).shown)).toEqual([[0, 1, 2, 3], [4]]);
    const one = picturesIn(report, 1);
    expect(steps(one.shown)).toEqual([[0, 1, 2, 3]]);
    expect(steps(one.leftOut)).toEqual([[4]]);
  });

  it('are left out before those where a person has to act, which have a picture of their own', () => {
    const report = reportOf([
      { cut: 'a', frees },
      { cut: 'b' },
      { cut: 'c', meets: [{ body: 'slug-1', volume: 1 }] },
      { cut: 'd', findings: [0] },
      { cut: 'e' },
    ]);
    const { shown, leftOut } = picturesIn(report, 3);
    expect(steps(shown)).toEqual([[0], [2], [3]]);
    expect(steps(leftOut)).toEqual([[1], [4]]);
  });
});
