import type { Region } from '../region/region.js';
import type { Body } from './bodies.js';
import { regionOfCells } from './metal.js';
import { NEVER, type Timeline } from './timeline.js';

/** The section in a slab of what is joined to the kept body before a step: all that stands and has not come loose. */
export function keptBefore(timeline: Timeline, bodies: readonly Body[], step: number, slab: number): Region {
  const { cells, stepOf } = timeline;
  const n = cells.slabs.length;
  const loose = new Set<number>();
  for (const { frees } of bodies)
    if (frees !== null && frees.step < step) for (const cell of frees.cells) loose.add(cell);
  const own: number[] = [];
  for (let cell = n + slab; cell < stepOf.length; cell += n) {
    const by = stepOf[cell] as number;
    if ((by === NEVER || by >= step) && !loose.has(cell)) own.push(cell);
  }
  return regionOfCells(timeline, own, step, slab);
}
