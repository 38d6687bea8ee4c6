import type { Job } from '../job/job.js';
import type { Removal } from '../left/cells.js';
import type { Left } from '../left/left.js';
import { contains } from '../region/contains.js';
import { beforeStep, type MetalFinder, type RoundCut } from './near-metal.js';

/** What the findings need and no row of the report says. */
export interface Facts {
  /** Whether the point that was to be kept is metal still; null if none was named. */
  readonly keepStands: boolean | null;
  /** By cut: whether its centre has metal to bear on when its turn comes; true for all but annular cuts. */
  readonly bears: readonly boolean[];
}

/**
 * Looks up what the findings need of what is left.
 * @param stepOf by cut: number of the step that makes it
 */
export function factsOf(job: Job, left: Left, metalNear: MetalFinder, stepOf: readonly number[]): Facts {
  const { removals } = left.cells;
  return {
    keepStands: left.pieces.keepStands,
    bears: job.cuts.map(
      (cut, k) =>
        cut.kind !== 'annular' || bears(cut, removals[k] as Removal, metalNear, stepOf[k] as number),
    ),
  };
}

/** Whether metal stands all round the centre of a cut, at some height of its own: half a pin over an edge does not bear. */
function bears(cut: RoundCut, { low, high }: Removal, metalNear: MetalFinder, step: number): boolean {
  const { layers } = metalNear({
    moment: beforeStep(step),
    center: cut.center,
    reach: cut.diameter / 2,
    low,
    high,
    from: cut.from,
  });
  return layers.some(
    ({ metal, plain }) => plain === 'metal' || (plain === null && contains(metal, cut.center) === 'inside'),
  );
}
