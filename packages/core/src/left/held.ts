import { area } from '../region/measure.js';
import { type Cells, STANDS } from './cells.js';

/** Slugs that hang on a floor: their cells, and the cut that would have set them loose. */
export interface HeldSlugs {
  readonly slugs: readonly { readonly cells: number[]; readonly cut: number }[];
  /** By cell: 1 where it belongs to one of them. */
  readonly claimed: Uint8Array;
}

/**
 * Finds what would be a slug if it did not stand on the floor that a ring-shaped cut has left: metal in the core,
 * on the cut's side of its end, joined to the rest through that level only.
 * @param isKept whether a cell is part of the body that is kept
 */
export function heldSlugs(cells: Cells, isKept: (cell: number) => boolean): HeldSlugs {
  const claimed = new Uint8Array(cells.taker.length);
  const slugs: { cells: number[]; cut: number }[] = [];
  const facesIn = new Map<number, number[]>();
  cells.cores.forEach((cuts, face) => {
    for (const cut of cuts) {
      const list = facesIn.get(cut);
      if (list === undefined) facesIn.set(cut, [face]);
      else list.push(face);
    }
  });
  const depth = (cut: number) => {
    const { low, high } = cells.removals[cut] as Cells['removals'][number];
    return high - low;
  };
  const size = new Map([...facesIn.keys()].map((cut) => [cut, area(cells.removals[cut]?.core ?? [])]));
  const larger = (a: number, b: number) => (size.get(a) as number) - (size.get(b) as number);
  // Smaller cores first: a slug within a slug is a piece of its own. Of equal ones the deeper cut says how far down.
  const inOrder = [...facesIn].sort(([a], [b]) => larger(a, b) || depth(b) - depth(a) || a - b);
  const keptFaces = facesOf(cells, isKept);
  for (const [cut, faces] of inOrder) {
    // What is kept lies in the core itself: then no floor joins it to anything.
    const inCore = new Set(faces);
    if (keptFaces.every((face) => inCore.has(face))) continue;
    for (const body of floodCore(cells, cut, faces, claimed, isKept)) {
      for (const cell of body) claimed[cell] = 1;
      slugs.push({ cells: body, cut });
    }
  }
  return { slugs, claimed };
}

/** Faces in which some cell stands that is chosen. */
function facesOf(cells: Cells, isChosen: (cell: number) => boolean): number[] {
  const n = cells.slabs.length;
  const faces: number[] = [];
  for (let face = 0; face < cells.cores.length; face++) {
    const some = cells.slabs.some((_, s) => cells.taker[face * n + s] === STANDS && isChosen(face * n + s));
    if (some) faces.push(face);
  }
  return faces;
}

function floodCore(
  cells: Cells,
  cut: number,
  faces: readonly number[],
  claimed: Uint8Array,
  isKept: (cell: number) => boolean,
): number[][] {
  const removal = cells.removals[cut] as Cells['removals'][number];
  const n = cells.slabs.length;
  const beside = cells.slabs.map(
    ({ from, to }) => removal.low < (from + to) / 2 && (from + to) / 2 < removal.high,
  );
  const inside = new Set(faces);
  const seen = new Set<number>();
  const free = (cell: number) => cells.taker[cell] === STANDS && claimed[cell] === 0;
  const { faceOf } = cells.subdivision;
  const { start, half } = cells.borders;
  const found: number[][] = [];
  for (const face of faces) {
    for (let s = 0; s < n; s++) {
      const first = face * n + s;
      if (beside[s] !== true || !free(first) || seen.has(first)) continue;
      const body: number[] = [first];
      seen.add(first);
      let escapes = false;
      let stands = false;
      for (let k = 0; k < body.length; k++) {
        const cell = body[k] as number;
        const at = Math.floor(cell / n);
        const level = cell % n;
        for (const [next, slab] of [
          [cell - 1, level - 1],
          [cell + 1, level + 1],
        ] as const) {
          if (slab < 0 || slab >= n || cells.taker[next] !== STANDS) continue;
          // What it stands on may itself be a slug that is held, cut from the other side.
          if (beside[slab] !== true || claimed[next] === 1) stands = true;
          else if (!seen.has(next)) {
            seen.add(next);
            body.push(next);
          }
        }
        for (let e = start[at] as number; e < (start[at + 1] as number); e++) {
          const neighbour = faceOf[(half[e] as number) ^ 1] as number;
          const next = neighbour * n + level;
          if (!free(next)) continue;
          if (!inside.has(neighbour)) escapes = true;
          else if (!seen.has(next)) {
            seen.add(next);
            body.push(next);
          }
        }
      }
      // Without a floor under it, or on a body that is loose itself, it is no slug that is held.
      if (!escapes && stands && isKept(first)) found.push(body);
    }
  }
  return found;
}
