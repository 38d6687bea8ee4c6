import { examine, parseJob } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { textReport } from '../../../packages/previewer/src/text/report.js';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate } from './told.js';

describe('one circle bored to two depths', () => {
  // It leaves 1 to the front edge, over the whole height: one web, whichever cut has left it at which height.
  const upper: CutDocument = { id: 'a', kind: 'bore', center: [40, 11], diameter: 20, depth: 6 };
  const lower: CutDocument = { id: 'b', kind: 'bore', center: [40, 11], diameter: 20 };
  const report = examine(parseJob(plate([upper, lower])));

  it('has one finding and one mark, W1, in the drawing and in the text', () => {
    expect(report.findings.filter(({ code }) => code === 'thin-web')).toHaveLength(1);
    const marks = (text: string) => new Set(text.match(/\bW\d+\b/g));
    expect([...marks(draw(report))]).toEqual(['W1']);
    expect([...marks(textReport(report, { all: true }))].filter((mark) => mark !== 'W1')).toEqual([]);
  });
});
