import type { Point } from '../geometry/point.js';
import type { Job } from '../job/job.js';
import type { Left } from '../left/left.js';
import { faceAt } from '../region/faces.js';

/** What the findings need and no row of the report says. */
export interface Facts {
  /** Whether the point that was to be kept is metal still; null if none was named. */
  readonly keepStands: boolean | null;
  /** By cut: whether its centre has metal to bear on when its turn comes; true for all but annular cuts. */
  readonly bears: readonly boolean[];
}

/** Looks up what the findings need of what is left. */
export function factsOf(job: Job, left: Left): Facts {
  return {
    keepStands: left.pieces.keepStands,
    bears: job.cuts.map((cut, k) => cut.kind !== 'annular' || metalUnder(left, cut.center, k)),
  };
}

/** Whether metal stands at a place, at the height where a cut starts, when its turn comes. */
function metalUnder(left: Left, at: Point, number: number): boolean {
  const { cells } = left;
  const n = cells.slabs.length;
  const face = faceAt(cells.subdivision, at);
  if ((cells.covers[face] as readonly number[])[0] !== 0) return false;
  const { low, high } = cells.removals[number] as (typeof cells.removals)[number];
  return cells.slabs.some(({ from, to }, s) => {
    const middle = (from + to) / 2;
    if (middle < low || middle > high) return false;
    const by = cells.taker[face * n + s] as number;
    return by < 0 || by >= number;
  });
}
