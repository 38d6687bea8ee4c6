import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { longRun } from '../../tools/runs.js';
import { compare } from './compare/compare.js';
import type { ToldReport } from './compare/told.js';
import { Verdict } from './compare/verdict.js';
import { jobNumber } from './made/generate.js';

/*
 * The steps of reports on made jobs against the simulation. What the sampling cannot tell is counted, and is little.
 */

const JOBS = longRun() ? 500 : 8;

/** Share of all that is looked at which may be left open. */
const OPEN = 0.03;

describe('the steps of a report', () => {
  const all = new Verdict();

  it.each(Array.from({ length: JOBS }, (_, k) => k))('are those of the simulation: job %i', (k) => {
    const job = jobNumber(k);
    const verdict = compare(job, examine(parseJob(job)) as unknown as ToldReport);
    all.add(verdict);
    expect(verdict.faults).toEqual([]);
  });

  it('were looked at in all they tell, and hardly anything was left open', () => {
    expect(all.shareSkipped(), all.counts()).toBeLessThan(OPEN);
    for (const what of [
      'state before',
      'volume of a step',
      'body let go',
      'depth of letting go',
      'loose metal met',
      'load, push',
      'entry',
      'worst',
      'break-through',
      'backing off',
      'backing off, no way',
      'stands',
      'keep-out',
    ]) {
      expect((all.checked.get(what) ?? 0) + (all.skipped.get(what) ?? 0), what).toBeGreaterThan(0);
    }
  });
});
