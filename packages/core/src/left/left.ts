/*
 * Room: what the cuts leave of a part, slab by slab.
 * In: the outline, and the removal of each cut.
 * Out: pieces with their roles, webs, knife edges, floors.
 */

import type { Point } from '../geometry/point.js';
import { type Cells, cellVolume, STANDS } from './cells.js';
import { Discs, type ZonedWeb } from './discs.js';
import { type Floor, floorsOf } from './floors.js';
import { sharperFirst, type ZonedKnifeEdge, zonedKnifeEdges } from './knife-edges.js';
import { type Pieces, piecesOf } from './pieces.js';
import { wallsOf } from './walls.js';
import { zonedWebs } from './webs.js';
import { wedgesOf } from './wedges.js';

/** Something found in the section of a slab, and the piece that it belongs to. */
export type InSlab<T> = Omit<T, 'part'> & { readonly slab: number; readonly piece: number };

/** What a cut takes in its turn, after the cuts before it. */
export interface Taken {
  /** Plan area in which it takes metal at some height. */
  readonly area: number;
  readonly volume: number;
}

/** Everything that is left of a part, and what there is to know of it. */
export interface Left {
  readonly cells: Cells;
  readonly pieces: Pieces;
  readonly webs: readonly InSlab<ZonedWeb>[];
  readonly knifeEdges: readonly InSlab<ZonedKnifeEdge>[];
  readonly floors: readonly Floor[];
  /** By cut. */
  readonly taken: readonly Taken[];
  /** By slab: area of the metal in it. */
  readonly slabArea: readonly number[];
  /** Area of the outline in which nothing is left at any height. */
  readonly openArea: number;
}

/**
 * Looks at what the cuts have left.
 * @param keep where the part is clamped; null if that is not said
 * @param webLimit thickness under which metal is a web, in the unit of the part
 * @param knifeLimit interior angle under which a corner is a knife edge, in radians
 * @param hanging cells of each body that only thin metal joins to the kept one
 */
export function whatIsLeft(
  cells: Cells,
  keep: Point | null,
  webLimit: number,
  knifeLimit: number,
  hanging: readonly (readonly number[])[],
): Left {
  const pieces = piecesOf(cells, keep, hanging);
  const webs: InSlab<ZonedWeb>[] = [];
  const knifeEdges: InSlab<ZonedKnifeEdge>[] = [];
  pieces.sections.forEach((parts, slab) => {
    const section = parts.map(({ part }) => part);
    const placed = <T extends { readonly part: number }>({ part, ...rest }: T) => ({
      slab,
      piece: (parts[part] as (typeof parts)[number]).piece,
      ...rest,
    });
    const walls = wallsOf(section);
    if (walls === null) return;
    const discs = new Discs(walls, webLimit / 2);
    const wedges = wedgesOf(section);
    for (const web of zonedWebs(discs, wedges)) webs.push(placed(web));
    for (const edge of zonedKnifeEdges(wedges, knifeLimit, discs)) knifeEdges.push(placed(edge));
  });
  webs.sort((a, b) => a.thickness - b.thickness || a.slab - b.slab);
  knifeEdges.sort((a, b) => sharperFirst(a, b) || a.slab - b.slab);
  return { cells, pieces, webs, knifeEdges, floors: floorsOf(cells, pieces), ...sums(cells) };
}

function sums(cells: Cells): Pick<Left, 'taken' | 'slabArea' | 'openArea'> {
  const n = cells.slabs.length;
  const taken = cells.removals.map(() => ({ area: 0, volume: 0 }));
  const slabArea: number[] = cells.slabs.map(() => 0);
  let openArea = 0;
  for (let face = 1; face < cells.faceArea.length; face++) {
    if ((cells.covers[face] as readonly number[])[0] !== 0) continue;
    const size = cells.faceArea[face] as number;
    const takers = new Set<number>();
    let open = true;
    for (let s = 0; s < n; s++) {
      const by = cells.taker[face * n + s] as number;
      if (by === STANDS) {
        slabArea[s] = (slabArea[s] as number) + size;
        open = false;
      } else if (by >= 0) {
        takers.add(by);
        (taken[by] as { volume: number }).volume += cellVolume(cells, face * n + s);
      }
    }
    if (open) openArea += size;
    for (const by of takers) (taken[by] as { area: number }).area += size;
  }
  return { taken, slabArea, openArea };
}
