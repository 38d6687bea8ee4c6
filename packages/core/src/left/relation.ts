import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { Cut } from '../cut/cut.js';
import { footprint } from '../cut/footprint.js';
import { lengthOf } from '../overlay/faces.js';
import { perimeter } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { Cells } from './cells.js';

/**
 * Where a cut stands with regard to the part before any cut: it misses (`clear`), touches it from outside within
 * the shop's resolution (`grazes`), leaves the part with some of its rim (`breaks out`), has its whole rim in the
 * part (`inside`), or takes all of the outline in (`swallows`).
 */
export type Relation = 'clear' | 'grazes' | 'breaks out' | 'inside' | 'swallows';

/** How the cuts lie over the outline, worked out for all of them at once. */
export interface CoverSums {
  readonly cells: Cells;
  /** By cut: area of the outline under it; by the same, length of its rim outside of the part or along its edge. */
  readonly shared: Float64Array;
  readonly beyond: Float64Array;
  /** Area of the outline. */
  readonly whole: number;
}

/** Measures how the cuts lie over the outline. */
export function standingOf(cells: Cells): CoverSums {
  const { faceArea, covers, cutOf, removals } = cells;
  const shared = new Float64Array(removals.length);
  let whole = 0;
  for (let face = 1; face < faceArea.length; face++) {
    const cover = covers[face] as readonly number[];
    if (cover[0] !== 0) continue;
    whole += faceArea[face] as number;
    for (const operand of cover) {
      const k = cutOf[operand] as number;
      if (k >= 0) shared[k] = (shared[k] as number) + (faceArea[face] as number);
    }
  }
  return { cells, shared, beyond: beyondOf(cells), whole };
}

/** The relation of cut number `k` to the outline. */
export function relationOf(
  { cells, shared: areas, beyond, whole }: CoverSums,
  k: number,
  cut: Cut,
  outline: Region,
  resolution: number,
): Relation {
  const { tolerance } = cells.subdivision.graph.curves;
  const shared = areas[k] as number;
  const spared = whole - shared;
  const print = (cells.removals[k] as Cells['removals'][number]).footprint;
  const rim = perimeter(print);
  if (shared <= tolerance * rim && !overlaps(outline, cut, 0)) {
    return overlaps(outline, cut, resolution) ? 'grazes' : 'clear';
  }
  if (spared <= tolerance * perimeter(outline) && subtract(outline, [print]).length === 0) return 'swallows';
  if ((beyond[k] as number) <= touchLength(cut.diameter / 2, tolerance)) return 'inside';
  // No deeper than the resolution, it could as well miss. Only a bite as small as that is worth the closer look.
  return shared <= resolution * rim && !overlaps(outline, cut, -resolution) ? 'grazes' : 'breaks out';
}

/**
 * How long a rim can run along an edge that it only touches: by the sagitta, L² / 8r, it is within two tolerances of a
 * straight one so far.
 */
function touchLength(radius: number, tolerance: number): number {
  return Math.max(tolerance, 4 * Math.sqrt(radius * tolerance));
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

/**
 * By cut: length of its rim that runs outside of the part, or along its edge; the rim of a core is left out. An edge
 * bounds what a cut covers where one side of it is covered and the other is not, so its own operands are asked only.
 */
function beyondOf({ subdivision, covers, cores, cutOf, removals }: Cells): Float64Array {
  const { graph, faceOf } = subdivision;
  const { operand: operandOf } = graph.curves;
  const lengths = new Float64Array(removals.length);
  for (let edge = 0; edge < graph.count; edge++) {
    const first = graph.start[edge] as number;
    const last = graph.start[edge + 1] as number;
    const seen: number[] = [];
    for (let m = first; m < last; m++) {
      const operand = operandOf[graph.member[m] as number] as number;
      const k = cutOf[operand] as number;
      if (k < 0 || seen.includes(operand)) continue;
      seen.push(operand);
      const sides = [faceOf[2 * edge] as number, faceOf[2 * edge + 1] as number];
      const bare = sides.filter((face) => !(covers[face] as readonly number[]).includes(operand));
      if (bare.length !== 1) continue;
      const face = bare[0] as number;
      if ((cores[face] as readonly number[]).includes(k) || (covers[face] as readonly number[])[0] === 0)
        continue;
      lengths[k] = (lengths[k] as number) + lengthOf(subdivision, edge);
    }
  }
  return lengths;
}
