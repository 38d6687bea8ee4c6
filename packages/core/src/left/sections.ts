import { type CollectedPart, collect } from '../overlay/stitch.js';
import type { Region } from '../region/region.js';
import { type Cells, type Slab, STANDS } from './cells.js';

/** A stretch of height in which a piece has one and the same section. */
export interface Section {
  readonly from: number;
  readonly to: number;
  readonly region: Region;
}

/** By slab: the section of all that stands in it, by the number of the owner. */
export type SlabSections = readonly ReadonlyMap<number, CollectedPart[]>[];

/** Draws the section of every slab once, and deals out its parts to the owners of their cells. */
export function sectionsBySlab(cells: Cells, ownerOf: Int32Array): SlabSections {
  const n = cells.slabs.length;
  return cells.slabs.map((_, s) => {
    const faces: number[] = [];
    for (let face = 1; face < cells.subdivision.faceCount; face++) {
      if (cells.taker[face * n + s] === STANDS) faces.push(face);
    }
    const byOwner = new Map<number, CollectedPart[]>();
    for (const part of regionOf(cells, faces, s)) {
      const owner = ownerOf[part.face * n + s] as number;
      const list = byOwner.get(owner);
      if (list === undefined) byOwner.set(owner, [part]);
      else list.push(part);
    }
    return byOwner;
  });
}

/** Sections of one piece from the bottom up; neighbouring slabs with the same faces are one stretch. */
export function sectionsOf(
  cells: Cells,
  own: readonly number[],
  bySlab: SlabSections,
  owner: number,
): Section[] {
  const n = cells.slabs.length;
  const faces: number[][] = cells.slabs.map(() => []);
  for (const cell of own) (faces[cell % n] as number[]).push(Math.floor(cell / n));
  for (const list of faces) list.sort((a, b) => a - b);
  const sections: Section[] = [];
  for (let s = 0; s < n; s++) {
    const parts = (bySlab[s] as ReadonlyMap<number, CollectedPart[]>).get(owner);
    if (parts === undefined) continue;
    const slab = cells.slabs[s] as Slab;
    const before = sections[sections.length - 1];
    if (
      before !== undefined &&
      before.to === slab.from &&
      same(faces[s] as number[], faces[s - 1] as number[])
    ) {
      sections[sections.length - 1] = { ...before, to: slab.to };
    } else {
      sections.push({
        from: slab.from,
        to: slab.to,
        region: parts.map(({ outer, holes }) => ({ outer, holes })),
      });
    }
  }
  return sections;
}

function same(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, k) => value === b[k]);
}

/** Plan view of a piece: the union of its sections. */
export function planOf(cells: Cells, own: readonly number[], sections: readonly Section[]): Region {
  if (sections.length === 1) return (sections[0] as Section).region;
  const faces = new Set(own.map((cell) => Math.floor(cell / cells.slabs.length)));
  return regionOf(cells, faces, null).map(({ outer, holes }) => ({ outer, holes }));
}

/** Some faces as a region; walls are named after the cuts that reach slab `s`, or any cut for a plan view. */
export function regionOf(cells: Cells, faces: Iterable<number>, s: number | null): CollectedPart[] {
  const kept = new Uint8Array(cells.subdivision.faceCount);
  for (const face of faces) kept[face] = 1;
  return collect(cells.subdivision, kept, (operand) => namesWall(cells, operand, s));
}

function namesWall(cells: Cells, operand: number, s: number | null): boolean {
  const cut = cells.cutOf[operand] as number;
  if (cut < 0) return cut === -1;
  if (s === null) return true;
  const { low, high } = cells.removals[cut] as Cells['removals'][number];
  const { from, to } = cells.slabs[s] as Slab;
  return low < (from + to) / 2 && (from + to) / 2 < high;
}
