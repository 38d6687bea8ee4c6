import { parseArgs } from 'node:util';
import { closings, coverage, roundTrips } from './counting.js';

/*
 * npm run count:measure -- --trips 10000 --draws 20000 --heads 1000 --seed 1
 * A count of 0 leaves that part out.
 * Bites measured by their points and put back in, draws of readings against what is told of them, and simulated heads.
 * Exit code 1 if one of them is off.
 */

const { values } = parseArgs({
  options: {
    trips: { type: 'string', default: '10000' },
    draws: { type: 'string', default: '20000' },
    heads: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
  },
});

const whole = (name: keyof typeof values): number => {
  const value = Number(values[name]);
  if (Number.isInteger(value) && value >= 0) return value;
  throw new RangeError(`--${name}: is ${values[name]}; give a whole number from 0 on`);
};

const seed = whole('seed');
let failed = 0;
const line = (isGood: boolean, text: string) => {
  console.log(`${isGood ? 'held' : 'FAILED'}: ${text}`);
  if (!isGood) failed += 1;
};

if (whole('trips') > 0) countTrips();
if (whole('draws') > 0) countDraws();
if (whole('heads') > 0) for (const good of [0.01, 1e-4]) countHeads(good);
if (failed > 0) process.exitCode = 1;

function countTrips(): void {
  const trips = roundTrips(whole('trips'), seed);
  line(
    trips.off === 0,
    `${trips.cases} bites, ${trips.readings} readings by sampled contact; radius told in ${trips.radius}, both axes in ` +
      `${trips.bothAxes}; ${trips.off} off by more than the sampling; largest error ${trips.worst[0].toExponential(1)} in ` +
      `radius, ${trips.worst[1].toExponential(1)} in place`,
  );
}

function countDraws(): void {
  const covered = coverage(whole('draws'), seed + 1);
  const share = (100 * covered.byRoot) / covered.told;
  line(
    Math.abs(share - 95) <= 1,
    `${covered.draws} draws, ${covered.told} figures told; ${share.toFixed(2)} % within the root of squares`,
  );
  line(
    covered.byWorst === covered.told && covered.contradicted === 0,
    `${covered.byWorst} of ${covered.told} within the worst case; ${covered.contradicted} draws said to contradict`,
  );
}

function countHeads(good: number): void {
  const heads = closings(whole('heads'), seed + 2, good);
  line(
    heads.onSize === heads.cases && heads.past === 0,
    `${heads.cases} heads, readings to ${good}: ${heads.onSize} on size after two measurings, ${heads.past} past it; at most ` +
      `${heads.short.toFixed(2)} graduations short, the centre ${heads.place.toExponential(1)} off where it is told`,
  );
}
