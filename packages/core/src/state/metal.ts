import type { Slab } from '../left/cells.js';
import { collect } from '../overlay/stitch.js';
import type { Region } from '../region/region.js';
import { NEVER, type Timeline } from './timeline.js';

/** The section of the metal in a slab before a step; after the last one, of what is left. */
export function metalBefore(timeline: Timeline, step: number, slab: number): Region {
  const n = timeline.cells.slabs.length;
  const faces: number[] = [];
  for (let face = 1; face < timeline.cells.subdivision.faceCount; face++) {
    const by = timeline.stepOf[face * n + slab] as number;
    if (by === NEVER || by >= step) faces.push(face);
  }
  return regionOfFaces(
    timeline,
    faces,
    (cut, pass) => isDone(timeline, cut, pass, step) && reaches(timeline, cut, slab),
  );
}

/** Cells of one slab as a region, as they stand before a step. */
export function regionOfCells(
  timeline: Timeline,
  cells: readonly number[],
  step: number,
  slab: number,
): Region {
  const n = timeline.cells.slabs.length;
  const faces = cells.filter((cell) => cell % n === slab).map((cell) => Math.floor(cell / n));
  return regionOfFaces(
    timeline,
    faces,
    (cut, pass) => isDone(timeline, cut, pass, step) && reaches(timeline, cut, slab),
  );
}

/** The plan view of some cells. */
export function planOfCells(timeline: Timeline, cells: readonly number[]): Region {
  const n = timeline.cells.slabs.length;
  return regionOfFaces(
    timeline,
    cells.map((cell) => Math.floor(cell / n)),
    () => true,
  );
}

/** Faces as a region; walls are named after the outline and after cuts that may name them. */
export function regionOfFaces(
  { cells }: Timeline,
  faces: Iterable<number>,
  mayName: (cut: number, pass: number | null) => boolean,
): Region {
  const kept = new Uint8Array(cells.subdivision.faceCount);
  for (const face of faces) kept[face] = 1;
  const parts = collect(cells.subdivision, kept, (operand) => {
    const cut = cells.cutOf[operand] as number;
    if (cut === -1) return true;
    if (cut >= 0) return mayName(cut, null);
    const pass = cells.passOf.get(operand);
    return pass !== undefined && mayName(pass.cut, pass.pass);
  });
  return parts.map(({ outer, holes }) => ({ outer, holes }));
}

/** Whether a pass of a cut, or all of it, is made before a step. */
function isDone({ stepsOf }: Timeline, cut: number, pass: number | null, step: number): boolean {
  const steps = stepsOf[cut] as readonly number[];
  const at = steps[pass ?? steps.length - 1];
  return at !== undefined && at < step;
}

function reaches({ cells }: Timeline, cut: number, slab: number): boolean {
  const { low, high } = cells.removals[cut] as (typeof cells.removals)[number];
  const { from, to } = cells.slabs[slab] as Slab;
  return low < (from + to) / 2 && (from + to) / 2 < high;
}
