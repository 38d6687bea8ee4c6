import type { Side } from '../cut/cut.js';
import { type Laid, laid } from '../datum/setup.js';
import type { Job } from '../job/job.js';
import { forgetful, type Memory } from '../memory/memory.js';

/**
 * Steps: each approach of one tool, as the part lies then and as it stands. What comes in is a job with its states;
 * what goes out is told in the axes of the machine and in the drawing's frame.
 */

/** A cut in one of the setups that it is made in. */
export interface Approach {
  /** Number of the cut. */
  readonly cut: number;
  readonly lay: Laid;
  /** The face of the drawn part that the tool comes from. */
  readonly from: Side;
  /** Whether the cut is made here first; later it meets what it has taken already. */
  readonly isFirst: boolean;
}

/** Name of the setup of cuts that are in none: the part lies as drawn. */
export const AS_DRAWN = 'as drawn';

/** The same for cuts from the bottom: the part is turned over about the drawing's y axis. */
export const TURNED_OVER = 'as drawn, turned over';

/**
 * The cuts of a job in the order in which they are made: by setup, and within it in the job's order. A cut that is in
 * no setup is made after the one that the job lists before it, with the part as drawn.
 * @param lays the job's setups, worked out
 */
export function approachesOf(job: Job, lays: readonly Laid[], memory: Memory = forgetful): Approach[] {
  const numberOf = new Map(job.cuts.map(({ id }, k) => [id, k]));
  const seen = new Set<number>();
  const inSetups = lays.flatMap((lay) =>
    lay.setup.cuts
      .map((id) => numberOf.get(id) as number)
      .sort((a, b) => a - b)
      .map((cut): Approach => {
        const isFirst = !seen.has(cut);
        seen.add(cut);
        return { cut, lay, from: sideOf(job, cut, lay), isFirst };
      }),
  );
  const drawn = new Map<Side, Laid>();
  const asDrawn = (side: Side) => {
    const known = drawn.get(side) ?? memory.same(`lay from the ${side}`, layAsDrawn(job, side));
    drawn.set(side, known);
    return known;
  };
  const others = job.cuts.flatMap(({ from }, cut): Approach[] =>
    seen.has(cut) ? [] : [{ cut, lay: asDrawn(from), from, isFirst: true }],
  );
  return merged(inSetups, others);
}

/** A cut through the part is made from the face that lies up, a blind one from where it is said to start. */
function sideOf(job: Job, cut: number, { setup }: Laid): Side {
  const { through, from } = job.cuts[cut] as Job['cuts'][number];
  if (!through) return from;
  return setup.lie.flip === null ? 'top' : 'bottom';
}

/** Puts each of some approaches behind the first use of the last cut before it. */
function merged(inSetups: readonly Approach[], others: readonly Approach[]): Approach[] {
  const all: Approach[] = [];
  let next = 0;
  for (const one of inSetups) {
    while (one.isFirst && next < others.length && (others[next] as Approach).cut < one.cut) {
      all.push(others[next++] as Approach);
    }
    all.push(one);
  }
  return [...all, ...others.slice(next)];
}

/** The setup of what is in none: zero is that of the drawing. */
export function layAsDrawn(job: Job, side: Side): Laid {
  const flip = side === 'top' ? null : 'y';
  const contact = { middle: 0, half: 0, lever: 0 };
  const zero = { place: 'the zero of the drawing', at: 0, links: [], contact };
  return laid(
    {
      id: side === 'top' ? AS_DRAWN : TURNED_OVER,
      name: null,
      lie: { flip, turn: 0 },
      angleTolerance: 0,
      readout: { units: job.units, resolution: job.resolution },
      heights: { units: job.units, resolution: job.resolution, on: 'readout', sense: 1 },
      stops: [],
      zero: { x: zero, y: zero, z: null },
      cuts: [],
    },
    job,
  );
}
