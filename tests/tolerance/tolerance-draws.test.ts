import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { seeded } from '../datum/drawn-errors.js';
import { atTheEnds, drawer } from '../datum/draws.js';
import { runs } from '../tools/runs.js';
import { cutterOf } from './placed-part.js';
import { madeOf, sampled, summary } from './sample.js';
import { seamCases, toleranceCases } from './tolerance-jobs.js';

/** 100,000 in a long run. */
const DRAWS = runs(5000);

/** Errors of the estimate that are allowed for. */
const ERRORS = 4;

const cases = toleranceCases();

describe(`tolerances against ${DRAWS} placed parts a job`, () => {
  it('are of 60 jobs, with knife edges and floors', () => {
    expect(cases.length + seamCases().length).toBe(60);
  });

  it.each(cases.map((one, k) => [one.name, one, k] as const))('%s', (_, one, k) => {
    const { report, figure } = madeOf(one);
    const values = sampled(figure, 4000 + k, DRAWS);
    const told = one.told(report);
    const interval = told?.interval;
    if (told === undefined || interval == null) throw new Error('no interval');
    const [low, high] = interval.worst as [number, number];
    const { least, most, mean, deviation, ofMean, ofDeviation } = summary(values);
    // All draws lie within the worst case, and so does what is drawn.
    expect(least).toBeGreaterThanOrEqual(low - 1e-9);
    expect(most).toBeLessThanOrEqual(high + 1e-9);
    expect(told.drawn).toBeGreaterThanOrEqual(low - 1e-9);
    expect(told.drawn).toBeLessThanOrEqual(high + 1e-9);
    // Each cause is spread evenly, with a deviation of its limit over the root of 3: so is the root of their squares.
    const [from, to] = interval.rss as [number, number];
    const half = (to - from) / 2;
    expect(Math.abs(deviation - half / Math.sqrt(3))).toBeLessThan(ERRORS * ofDeviation);
    // What curves the figure moves its mean by the square of errors over its radius: no more than a thousandth of them here.
    expect(Math.abs(mean - (from + to) / 2)).toBeLessThan(ERRORS * ofMean + 2e-3 * half);
    // The worst case is no wider than it need be: with all causes at their ends the figure comes nearly as far, but for what a
    // bound on the squares of a turn leaves over.
    const reached = atTheEnds(figure, 1, 8) - atTheEnds(figure, -1, 8);
    expect(reached).toBeGreaterThan(0.95 * (high - low));
  });

  it.each(seamCases().map((one, k) => [one.name, one, k] as const))('%s', (_, { job, cuts }, k) => {
    const report = examine(parseJob(structuredClone(job)));
    const [row] = report.seams;
    if (row?.step == null) throw new Error('no seam');
    const cutter = cutterOf(job, report);
    const { draw, again } = drawer(seeded(9000 + k));
    const ways = Array.from({ length: 72 }, (_, i) => (2 * Math.PI * i) / 72);
    const steps = ways.map(() => new Float64Array(DRAWS));
    let most = 0;
    for (let n = 0; n < DRAWS; n++) {
      again();
      const [a, b] = cuts.map((id) => cutter(id, draw)) as [
        ReturnType<typeof cutter>,
        ReturnType<typeof cutter>,
      ];
      const [dx, dy] = [b.center[0] - a.center[0], b.center[1] - a.center[1]];
      ways.forEach((way, i) => {
        // How far apart both walls stand, seen from the first centre: exact for the second circle.
        const [along, across] = [
          dx * Math.cos(way) + dy * Math.sin(way),
          dy * Math.cos(way) - dx * Math.sin(way),
        ];
        const step = along + Math.sqrt(b.radius ** 2 - across ** 2) - a.radius;
        (steps[i] as Float64Array)[n] = step;
        most = Math.max(most, Math.abs(step));
      });
    }
    expect(most).toBeLessThanOrEqual(row.step.worst + 1e-9);
    // Round the bore, where mean and deviation come to the most.
    const all = steps.map(summary);
    const come = (one: (typeof all)[number]) => Math.abs(one.mean) + Math.sqrt(3) * one.deviation;
    const top = all.reduce((best, one) => (come(one) > come(best) ? one : best));
    const error = ERRORS * (top.ofMean + Math.sqrt(3) * top.ofDeviation);
    expect(Math.abs(come(top) - row.step.rss)).toBeLessThan(error + 2e-3 * row.step.rss);
  });
});
