import { describe, expect, it } from 'vitest';
import { toldOf } from '../../packages/previewer/src/step/told.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { bore, reportOn, setup } from '../datum/setup-jobs.js';

/* A bore of 8 in a plate 10 thick, 6 deep from the top and 5 from the bottom; both zeros off by 0.02 and half a step each way. */

const halves = [bore('a', [40, 20], 8, { depth: 6 }), bore('b', [40, 20], 8, { depth: 5, from: 'bottom' })];
const seams = (report: ReturnType<typeof reportOn>, step: number) =>
  toldOf(report, step).lines.filter((line) => line.startsWith('Meets cut'));

describe('where two halves of a bore meet', () => {
  const report = reportOn(halves, [setup(['a']), setup(['b'], { id: 'o', flip: 'x' })]);

  it('is told with the second of them, with the step that may stay', () => {
    expect(seams(report, 0)).toEqual([]);
    // 0.045 along each axis at worst, sqrt(0.045² + 0.045²) = 0.0636; sqrt(2 (0.02² + 0.0025²)) = 0.0285.
    expect(seams(report, 1)).toEqual([
      'Meets cut a from the other side: a step of up to 0.064 mm may stay between them, 0.029 mm by root of squares.',
    ]);
  });

  it('has a table of its own in the whole text', () => {
    const text = textReport(report, { all: true });
    expect(text).toContain('SEAMS of bores that are cut from both sides');
    expect(text).toMatch(/a\s+b\s+4\.000\s+1\.000\s+0\.064\s+0\.029/);
  });

  it('is told without one where no setup says how far it may be off', () => {
    expect(seams(reportOn(halves, null), 1)).toEqual(['Meets cut a from the other side.']);
  });
});
