import type { Slab } from '../left/cells.js';
import { afterCut, beforeStep, type Gone } from '../result/near-metal.js';
import type { Body } from '../state/bodies.js';
import { regionOfCells } from '../state/metal.js';
import type { Timeline } from '../state/timeline.js';
import type { Round } from './taken.js';

/** What is gone after each step: what its tool has taken, and what has come loose and was lifted out. */
export function goneOf(
  timeline: Timeline,
  bodies: readonly Body[],
  rounds: readonly (Round | null)[],
): Gone[] {
  return [...takenBy(timeline, rounds), ...bodies.flatMap((body) => liftedOut(timeline, body))];
}

function takenBy({ cells, takings }: Timeline, rounds: readonly (Round | null)[]): Gone[] {
  return takings.flatMap(({ cut, pass, passes }, step): Gone[] => {
    const removal = cells.removals[cut] as (typeof cells.removals)[number];
    const own = passes > 1 ? removal.passes?.[pass] : undefined;
    const { low, high } = removal;
    return [
      { moment: beforeStep(step), region: own ?? removal.footprint, low, high, round: rounds[step] ?? null },
    ];
  });
}

/** A body that came loose, slab by slab; neighbouring slabs in which it has the same cells are one. */
function liftedOut(timeline: Timeline, { frees }: Body): Gone[] {
  if (frees === null) return [];
  const { slabs } = timeline.cells;
  const n = slabs.length;
  const facesIn = slabs.map((_, s) =>
    frees.cells
      .filter((cell) => cell % n === s)
      .map((cell) => Math.floor(cell / n))
      .sort((a, b) => a - b)
      .join(),
  );
  const gone: Gone[] = [];
  let before = '';
  slabs.forEach(({ from, to }: Slab, s) => {
    const faces = facesIn[s] as string;
    const last = gone[gone.length - 1];
    if (faces !== '' && faces === before && last !== undefined) gone[gone.length - 1] = { ...last, high: to };
    else if (faces !== '') {
      const region = regionOfCells(timeline, frees.cells, frees.step + 1, s);
      if (region.length > 0)
        gone.push({ moment: afterCut(frees.step), region, low: from, high: to, round: null });
    }
    before = faces;
  });
  return gone;
}
