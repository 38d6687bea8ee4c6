import type { Cut } from '../cut/cut.js';
import { footprint } from '../cut/footprint.js';
import { intersect } from '../region/boolean.js';
import { lengthOf } from '../region/faces.js';
import { perimeter } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { subtract } from '../region/subtract.js';
import type { Cells } from './cells.js';

/**
 * Where a cut stands with regard to the part before any cut: it misses (`clear`), touches it from outside within
 * the shop's resolution (`grazes`), leaves the part with some of its rim (`breaks out`), has its whole rim in the
 * part (`inside`), or takes all of the outline in (`swallows`).
 */
export type Relation = 'clear' | 'grazes' | 'breaks out' | 'inside' | 'swallows';

/** The relation of cut number `k` to the outline. */
export function relationOf(cells: Cells, k: number, cut: Cut, outline: Region, resolution: number): Relation {
  const operand = cells.cutOf.indexOf(k);
  const { faceArea, covers } = cells;
  const { tolerance } = cells.subdivision.graph.curves;
  let shared = 0;
  let spared = 0;
  for (let face = 1; face < faceArea.length; face++) {
    const cover = covers[face] as readonly number[];
    if (cover[0] !== 0) continue;
    if (cover.includes(operand)) shared += faceArea[face] as number;
    else spared += faceArea[face] as number;
  }
  const print = (cells.removals[k] as Cells['removals'][number]).footprint;
  const rim = perimeter(print);
  if (shared <= tolerance * rim && !overlaps(outline, cut, 0)) {
    return overlaps(outline, cut, resolution) ? 'grazes' : 'clear';
  }
  if (spared <= tolerance * perimeter(outline) && subtract(outline, [print]).length === 0) return 'swallows';
  if (leaves(cells, k, operand) <= tolerance) return 'inside';
  // No deeper than the resolution, it could as well miss. Only a bite as small as that is worth the closer look.
  return shared <= resolution * rim && !overlaps(outline, cut, -resolution) ? 'grazes' : 'breaks out';
}

/** Whether a cut shares metal with the outline once its rims are moved outward (inward below 0) by an amount. */
function overlaps(outline: Region, cut: Cut, by: number): boolean {
  const moved = grownCut(cut, by);
  return moved !== null && intersect([outline, footprint(moved)]).length > 0;
}

function grownCut(cut: Cut, by: number): Cut | null {
  const diameter = cut.diameter + 2 * by;
  if (!(diameter > 0)) return null;
  if (cut.kind !== 'annular') return { ...cut, diameter };
  const wall = cut.wall + 2 * by;
  // A core that has closed up leaves a plain disc.
  if (wall >= diameter / 2) return { ...cut, kind: 'bore', diameter };
  return wall > 0 ? { ...cut, diameter, wall } : null;
}

/** Length of the rim of a cut that runs outside of the part, or along its edge; the rim of a core is left out. */
function leaves(cells: Cells, k: number, operand: number): number {
  const { subdivision, covers, cores } = cells;
  const { graph, faceOf } = subdivision;
  let length = 0;
  for (let edge = 0; edge < graph.count; edge++) {
    const sides = [faceOf[2 * edge] as number, faceOf[2 * edge + 1] as number] as const;
    const beyond = sides.filter((face) => !(covers[face] as readonly number[]).includes(operand));
    if (beyond.length !== 1) continue;
    const face = beyond[0] as number;
    if ((cores[face] as readonly number[]).includes(k)) continue;
    if ((covers[face] as readonly number[])[0] !== 0) length += lengthOf(subdivision, edge);
  }
  return length;
}
