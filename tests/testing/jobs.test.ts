import { examine, parseJob } from '@edgebite/core';
import { jobDocuments, jobDocumentsWithSetup } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

describe('generated jobs', () => {
  it('are all valid, and give a report whose metal adds up', () => {
    fc.assert(
      fc.property(jobDocuments, (document) => {
        const job = parseJob(document);
        const report = examine(job);
        const left = report.pieces.reduce((sum, piece) => sum + piece.volume, 0);
        const blank = report.slabs.reduce((sum, { area, from, to }) => sum + area * (to - from), 0);
        expect(left).toBeCloseTo(blank, 6);
        expect(report.cuts).toHaveLength(job.cuts.length);
      }),
      { numRuns: runs(40) },
    );
  });

  it('are all valid with setups too', () => {
    fc.assert(
      fc.property(jobDocumentsWithSetup, (document) => {
        expect(parseJob(JSON.stringify(document)).document.setups).toHaveLength(1);
      }),
      { numRuns: runs(40) },
    );
  });

  it('shrink to a plain part with one plain cut', () => {
    const found = fc.check(
      fc.property(jobDocuments, ({ cuts }) => cuts.every(({ kind }) => kind === 'bore')),
      { numRuns: 500 },
    );
    const [smallest] = found.counterexample ?? [];
    expect(smallest?.cuts).toHaveLength(1);
    expect(smallest?.part).toEqual({ outline: { rectangle: [20, 20] }, thickness: 12 });
    expect(smallest?.units).toBe('mm');
  });
});
