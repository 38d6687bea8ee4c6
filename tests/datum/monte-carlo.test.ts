import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';
import { type Draw, machineOf, seeded } from './drawn-errors.js';
import { atTheEnds, drawer } from './draws.js';
import { type ErrorCase, errorCases } from './error-jobs.js';

/** 100,000 in a long run. */
const DRAWS = runs(5000);

/** What leaves room for the squares of errors, which a linear sum leaves out: an error of 0.1 on 10 gives 0.0005. */
const SECOND_ORDER = 2e-3;

function intervalOf(report: Report, { what, between }: ErrorCase) {
  if (what === 'bite') {
    const [bite] = report.cuts[0]?.bites ?? [];
    expect(bite?.face).toBe(between[1]);
    return bite && { figure: bite.depth, interval: bite.depthInterval };
  }
  const names = [...between].sort();
  const is = (row: { readonly between: readonly string[] }) =>
    [...row.between].sort().every((name, k) => name.startsWith(names[k] as string));
  if (what === 'web') {
    const web = report.webs.find(is);
    return web && { figure: web.thickness, interval: web.interval };
  }
  const edge = report.knifeEdges.find(is);
  return edge && { figure: edge.angle, interval: edge.interval };
}

function sampled(figure: (draw: Draw) => number, seed: number, count: number) {
  const { draw, again } = drawer(seeded(seed));
  let [sum, squares, least, most] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const middle = figure(() => 0);
  for (let k = 0; k < count; k++) {
    again();
    const value = figure(draw);
    sum += value - middle;
    squares += (value - middle) ** 2;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  const mean = sum / count;
  return { mean: middle + mean, deviation: Math.sqrt(squares / count - mean * mean), least, most };
}

const cases = errorCases();

describe(`intervals against ${DRAWS} drawn errors a job`, () => {
  it('are of 20 jobs or more, with webs of every kind', () => {
    expect(cases.length).toBeGreaterThanOrEqual(20);
    expect(cases.filter(({ what }) => what === 'web').length).toBeGreaterThanOrEqual(20);
  });

  it.each(cases.map((one, k) => [one.name, one, k] as const))('%s', (_, one, k) => {
    const report = examine(parseJob(JSON.parse(JSON.stringify(one.job))));
    const found = intervalOf(report, one);
    const interval = found?.interval;
    if (interval == null) throw new Error('no interval');
    const machine = machineOf(one.job, report);
    const figure = (draw: Draw) => one.figure(machine, draw);
    const [low, high] = interval.worst;
    // As drawn lies in between: the known rounding is under half a step.
    expect(low).toBeLessThanOrEqual(found?.figure as number);
    expect(high).toBeGreaterThanOrEqual(found?.figure as number);

    const drawn = sampled(figure, 1000 + k, DRAWS);
    expect(drawn.least).toBeGreaterThanOrEqual(low - 1e-9);
    expect(drawn.most).toBeLessThanOrEqual(high + 1e-9);

    if (one.what !== 'knife edge') {
      // An even spread to either side has a standard deviation of its half width over the root of 3. That of a sample
      // has a standard error of at most itself over the root of 2 n where the tails are no longer than the normal ones.
      const half = (interval.rss[1] - interval.rss[0]) / 2;
      const error = (half / Math.sqrt(3)) * (4 / Math.sqrt(2 * DRAWS) + SECOND_ORDER);
      expect(Math.abs(drawn.deviation - half / Math.sqrt(3))).toBeLessThan(error);
      const middle = (interval.rss[0] + interval.rss[1]) / 2;
      const span = half / Math.sqrt(3);
      expect(Math.abs(drawn.mean - middle)).toBeLessThan(span * (4 / Math.sqrt(DRAWS) + 10 * SECOND_ORDER));
    }

    // The worst case is no wider than it need be. Causes at their ends reach one end of it; the other too, but for
    // what a square root of squares bends.
    const [fromLow, fromHigh] = [atTheEnds(figure, -1) - low, high - atTheEnds(figure, 1)];
    expect(Math.min(fromLow, fromHigh)).toBeLessThan(1e-9);
    expect(Math.max(fromLow, fromHigh)).toBeLessThan((high - low) * 0.02);
  });
});
