import { examine, parseJob } from '@edgebite/core';
import { type Draw, seeded } from '../datum/drawn-errors.js';
import { drawer } from '../datum/draws.js';
import { cutterOf, truePart } from './placed-part.js';
import type { ToleranceCase } from './tolerance-jobs.js';

/** Mean, standard deviation and the standard errors of both, least and most of a sample. */
export function summary(values: Float64Array) {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  let [second, fourth] = [0, 0];
  for (const value of values) {
    second += (value - mean) ** 2;
    fourth += (value - mean) ** 4;
  }
  const variance = second / n;
  const deviation = Math.sqrt(variance);
  // Of the standard deviation of a sample, from its fourth moment: J. F. Kenney, E. S. Keeping, Mathematics of Statistics,
  // part 2, 7.14 (from memory), and for a normal one deviation / sqrt(2 n).
  const kurtosis = fourth / n / (variance * variance);
  return {
    mean,
    deviation,
    ofMean: deviation / Math.sqrt(n),
    ofDeviation: deviation * Math.sqrt(Math.max(0, kurtosis - 1) / (4 * n)),
    least: values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY),
    most: values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY),
  };
}

/** The report on a job, and its figure as one draw makes the part. */
export function madeOf(one: ToleranceCase) {
  const report = examine(parseJob(structuredClone(one.job)));
  const cutter = cutterOf(one.job, report);
  const figure = (draw: Draw) => one.figure((id) => cutter(id, draw), truePart(one.job, draw));
  return { report, figure };
}

/** That figure for so many draws, each cause drawn once in each, evenly from -1 to 1. */
export function sampled(figure: (draw: Draw) => number, seed: number, count: number): Float64Array {
  const { draw, again } = drawer(seeded(seed));
  return Float64Array.from({ length: count }, () => {
    again();
    return figure(draw);
  });
}
