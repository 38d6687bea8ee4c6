import type { JobDocument } from '../sim/job.js';
import { jobNumber } from './generate.js';
import { diceOf } from './random.js';
import { zeroByTouching } from './zero.js';

/** What a cut of such a job follows. */
export interface Following {
  readonly id: string;
  readonly diameter: number;
  readonly allowance: number;
  readonly milling: 'climb' | 'conventional';
}

/** A job with the part of a made one, whose cuts go round outside of its outline: from above, then from below. */
export function alongJob(seed: number): { job: JobDocument; following: Following[] } {
  const dice = diceOf(seed * 40503 + 5);
  const { part } = jobNumber(seed);
  const following = ['above', 'below'].map(
    (id): Following => ({
      id,
      diameter: dice.whole(4, 9),
      allowance: dice.pick([0, 0, 0.5]),
      milling: dice.pick(['climb', 'conventional'] as const),
    }),
  );
  const cuts = following.map(({ id, diameter, allowance, milling }, k) => ({
    id,
    kind: 'swept',
    diameter,
    depth: 2,
    ...(k === 1 ? { from: 'bottom' } : {}),
    path: {
      along: {
        loop: 'outline',
        side: 'outside',
        milling,
        ...(allowance > 0 ? { allowance } : {}),
        lead: dice.pick(['none', 'largest', 2]),
      },
    },
  }));
  const setups = following.map(({ id }, k) => ({
    id: `lie-${id}`,
    ...(k === 1 ? { flip: dice.pick(['x', 'y'] as const) } : {}),
    turn: dice.pick([0, 90, 180, -90, 33]),
    zero: zeroByTouching(),
    cuts: [id],
  }));
  const limits = { web: 1.5, knifeEdge: 30 };
  return {
    job: { edgebite: 1, units: 'mm', part, limits, setups, cuts } as unknown as JobDocument,
    following,
  };
}
