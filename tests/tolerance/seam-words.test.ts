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
    expect(text).toContain('SEAMS of what is cut from both sides');
    expect(text).toMatch(/a\s+b\s+4\.000\s+1\.000\s+0\.064\s+0\.029/);
  });

  it('is told without one where no setup says how far it may be off', () => {
    expect(seams(reportOn(halves, null), 1)).toEqual(['Meets cut a from the other side.']);
  });
});

describe('where two halves of a slot meet', () => {
  const slot = (id: string, path: string, over: object) => ({
    id,
    kind: 'swept',
    diameter: 8,
    path: { svgPath: path },
    ...over,
  });
  const from = { top: { depth: 6 }, below: { depth: 5, from: 'bottom' } };
  const lies = (over: Record<string, unknown> = {}) => [
    setup(['a'], over),
    setup(['b'], { id: 'o', flip: 'x', ...over }),
  ];
  const seamOf = (cuts: object[], over: Record<string, unknown> = {}) =>
    reportOn(cuts as Record<string, unknown>[], lies(over)).seams[0];

  it('it may be off by what a bore may be and by the rounding of its path, whichever way that runs', () => {
    // 0.045 along each axis as above, and half a step of 0.005 for each path: 0.05. By squares sqrt(2 (0.02² + 2 · 0.0025²)) at most.
    const bores = seamOf(halves);
    for (const back of ['M20 20 H60', 'M60 20 H20']) {
      const seam = seamOf([slot('a', 'M20 20 H60', from.top), slot('b', back, from.below)]);
      expect(seam?.cuts).toEqual(['a', 'b']);
      expect(seam?.step?.worst).toBeCloseTo(Math.hypot(0.05, 0.05), 12);
      expect(seam?.step?.rss).toBeGreaterThan(bores?.step?.rss ?? 1);
      expect(seam?.step?.rss).toBeLessThanOrEqual(Math.sqrt(2 * (0.02 ** 2 + 2 * 0.0025 ** 2)) + 1e-12);
    }
  });

  it('it is told where along it that is most, if a lay is turned by hand', () => {
    const angle = { angleTolerance: 0.2 };
    const boreAt = (x: number) =>
      seamOf([bore('a', [x, 20], 8, from.top), bore('b', [x, 20], 8, from.below)], angle)?.step?.worst ?? 0;
    const seam = seamOf([slot('a', 'M20 20 H60', from.top), slot('b', 'M60 20 H20', from.below)], angle);
    const most = Math.max(boreAt(20), boreAt(60));
    expect(seam?.step?.worst).toBeGreaterThanOrEqual(most);
    expect(seam?.step?.worst).toBeLessThanOrEqual(most + Math.hypot(0.005, 0.005) + 1e-12);
    expect(boreAt(60)).not.toBeCloseTo(boreAt(20), 3);
    // An arc reaches no further than the corners of the box round it.
    const arc = 'M20 20 A20 20 0 0 1 60 20';
    const round = seamOf([slot('a', arc, from.top), slot('b', arc, from.below)], angle)?.step?.worst ?? 0;
    expect(round).toBeGreaterThanOrEqual(Math.max(boreAt(20), boreAt(40), boreAt(60)));
  });

  it('is none where the two go along other paths, or do not meet', () => {
    expect(seamOf([slot('a', 'M20 20 H60', from.top), slot('b', 'M20 20 H61', from.below)])).toBeUndefined();
    expect(
      seamOf([slot('a', 'M20 20 H60', { depth: 3 }), slot('b', 'M20 20 H60', from.below)]),
    ).toBeUndefined();
    expect(seamOf([slot('a', 'M20 20 H60', from.top), bore('b', [20, 20], 8, from.below)])).toBeUndefined();
  });
});
