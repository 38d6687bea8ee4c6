import type { Cut } from '../cut/cut.js';
import { coreOf, footprint } from '../cut/footprint.js';
import type { Removal } from '../left/cells.js';

/** A cut as it acts on a part of a thickness. */
export function removalOf(cut: Cut, thickness: number): Removal {
  const top = cut.from === 'top';
  return {
    id: cut.id,
    footprint: footprint(cut),
    core: cut.kind === 'annular' ? coreOf(cut) : null,
    low: cut.through ? 0 : top ? thickness - cut.depth : 0,
    high: cut.through ? thickness : top ? thickness : cut.depth,
  };
}
