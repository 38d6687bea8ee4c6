import { parseArgs } from 'node:util';
import { countBest, countParts } from './counting.js';

/*
 * npm run count:propose -- --parts 2000 --best 300 --seed 1 --from 0
 * A count of 0 leaves that part out; --from goes on where another run has stopped.
 * Parts of which it is forgotten how they were made, and every way that is proposed for them, examined; best ways against
 * all tools in all orders. Exit code 1 if one of them is off.
 */

const { values } = parseArgs({
  options: {
    parts: { type: 'string', default: '2000' },
    best: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
  },
});

const whole = (name: keyof typeof values): number => {
  const value = Number(values[name]);
  if (Number.isInteger(value) && value >= 0) return value;
  throw new RangeError(`--${name}: is ${values[name]}; give a whole number from 0 on`);
};

/** Jobs that are examined for one part to find its best way. */
const MOST_JOBS = 1500;

const told = ({ faults, ...figures }: { readonly faults: readonly string[] }) => {
  console.log(`${faults.length === 0 ? 'held' : 'FAILED'}: ${JSON.stringify(figures)}`);
  for (const fault of faults) console.log(`  ${fault}`);
  if (faults.length > 0) process.exitCode = 1;
};

if (whole('parts') > 0) told(countParts(whole('parts'), whole('seed'), 6, whole('from')));
if (whole('best') > 0) told(countBest(whole('best'), whole('seed'), MOST_JOBS));
