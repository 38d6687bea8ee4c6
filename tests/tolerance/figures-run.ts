import { parseArgs } from 'node:util';
import { atTheEnds } from '../datum/draws.js';
import { madeOf, sampled, summary } from './sample.js';
import { toleranceCases } from './tolerance-jobs.js';

/*
 * node tests/tools/run.mjs tests/tolerance/figures-run.ts --draws 100000 --seed 4000
 * For each job with tolerances: the figure as drawn, between what it can lie, how far draws of placed parts come into that, how
 * many standard errors their deviation lies from the root of squares, and how far causes at their ends reach. Exit code 1 if a
 * draw lies outside of the worst case, or a deviation over four standard errors off.
 */

const { values } = parseArgs({
  options: { draws: { type: 'string', default: '5000' }, seed: { type: 'string', default: '4000' } },
});

let [outside, off, most] = [0, 0, 0];
toleranceCases().forEach((one, k) => {
  const { report, figure } = madeOf(one);
  const told = one.told(report);
  const interval = told?.interval;
  if (told === undefined || interval == null) throw new Error(`${one.name} has no interval`);
  const [low, high] = interval.worst as [number, number];
  const [from, to] = interval.rss as [number, number];
  const {
    least,
    most: top,
    deviation,
    ofDeviation,
  } = summary(sampled(figure, Number(values.seed) + k, Number(values.draws)));
  const errors = (deviation - (to - from) / 2 / Math.sqrt(3)) / ofDeviation;
  const reached = (atTheEnds(figure, 1, 8) - atTheEnds(figure, -1, 8)) / (high - low);
  outside += Number(least < low - 1e-9 || top > high + 1e-9);
  off += Number(Math.abs(errors) > 4);
  most = Math.max(most, Math.abs(errors));
  const shown = (value: number) => value.toFixed(4);
  console.log(
    `${one.name.padEnd(28)} ${shown(told.drawn)}  worst ${shown(low)} to ${shown(high)}  draws ${shown(least)} to ${shown(top)}  rss ±${shown((to - from) / 2)}  ${errors.toFixed(2)} errors  ends reach ${(100 * reached).toFixed(1)} %`,
  );
});
console.log(
  `${outside} jobs with a draw outside, ${off} off by over four errors, the most ${most.toFixed(2)}`,
);
process.exitCode = outside + off > 0 ? 1 : 0;
