import { examine, parseJob } from '@edgebite/core';
import { compare } from '../machine/compare/compare.js';
import type { ToldReport } from '../machine/compare/told.js';
import { Verdict } from '../machine/compare/verdict.js';
import { jobNumber } from '../machine/made/generate.js';
import { type Pair, type Reference, same } from '../reference.js';

/** Generated jobs that the table looks at; a test looks at more, a long run at 500. */
const JOBS = 4;

/** What the simulated machine made of them, once. */
let made: Verdict | null = null;

function simulated(): Verdict {
  if (made !== null) return made;
  made = new Verdict();
  for (let k = 0; k < JOBS; k++) {
    const job = jobNumber(k);
    made.add(compare(job, examine(parseJob(job)) as unknown as ToldReport));
  }
  return made;
}

/** Every comparison whose name begins with one of some. */
function compared(...names: readonly string[]): Pair[] {
  const { checked, faults } = simulated();
  const own = [...checked].filter(([what]) => names.some((name) => what.startsWith(name)));
  const count = own.reduce((sum, [, n]) => sum + n, 0);
  const wrong = faults.filter((fault) => own.some(([what]) => fault.includes(`: ${what}: `))).length;
  return Array.from({ length: count }, (_, k) => same(k >= wrong));
}

const row = (quantity: string, checks: string, ...names: readonly string[]): Reference => ({
  quantity,
  source: `a simulated machine that takes metal away on a grid and places parts by matrices (tests/outside/machine), ${JOBS} jobs`,
  kind: 'independent computation',
  checks,
  agrees: true,
  pairs: () => compared(...names),
});

/** What a person does step by step at the machine. */
export const machineReferences: readonly Reference[] = [
  row(
    'targets, stands',
    'readout, rounding and step of every place where the tool stands, centre, radius and sense of arcs, turned and flipped',
    'readout',
    'rounding',
    'step of the readout',
    'stands',
    'centre of an arc',
    'radius of an arc',
    'sense of an arc',
  ),
  row('keep-outs', 'what a tool meets at any of its stands', 'keep-out'),
  row(
    'loads, pushes',
    'share, strikes, side load and push at every height; entry, worst, break-through',
    'load',
    'entry',
    'worst',
    'break-through',
    'starts',
    'height',
  ),
  row('backing off', 'distance, direction and words of a way, and whether it is clear', 'backing off'),
  row(
    'bodies, depth at which they let go',
    'volume and view of each body, the depth of the tool, loose metal that a later step meets',
    'body',
    'depth of letting go',
    'volume of a body',
    'view of a body',
    'loose',
  ),
  row(
    'metal before and after a step',
    'volumes and sections, pieces left in the end',
    'state',
    'volume',
    'piece',
  ),
];
