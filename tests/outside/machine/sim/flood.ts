import type { Grid, Slab } from './grid.js';
import { coverage } from './grid.js';

/*
 * Which metal hangs together, twice over: by what is joined for certain, and by what may be joined. A signed distance
 * over half a cell at two neighbours means metal all the way between their middles; a place of metal means a signed
 * distance over minus half a diagonal at the middle of its cell. Where both tell the same bodies, the grid has decided.
 */

const DIAGONAL = Math.SQRT1_2;

/** Bodies that may be joined in themselves, and are apart from all others for certain. */
export interface Body {
  readonly label: number;
  /** Cell of a slab, `slab * cells + cell`, where it is thickest; the middle of what it is known by. */
  readonly witness: number;
  readonly volume: number;
  /** How far off that volume may be by sampling. */
  readonly slack: number;
  /** How many parts of it are large enough to tell that the grid cannot join. */
  readonly parts: number;
}

export interface Flood {
  /** By slab and cell: label of what may be joined; -1 for no metal. */
  readonly label: Int32Array;
  /** By slab and cell: label of what is joined for certain; -1 where that is not told. */
  readonly sure: Int32Array;
  /** Without specks, of which the grid tells nothing. */
  readonly bodies: ReadonlyMap<number, Body>;
}

/** Parts of fewer cells are specks. */
const SPECK = 8;

/** Share of the cells on a border by which a sampled area may be off: they cancel for the most part. */
const BORDER_SLACK = 0.08;

/** Floods the metal of all slabs. */
export function flood(grid: Grid, slabs: readonly Slab[], metal: readonly Float32Array[]): Flood {
  const label = joined(grid, metal, -DIAGONAL * grid.cell);
  const sure = joined(grid, metal, grid.cell / 2);
  return { label, sure, bodies: bodiesOf(grid, slabs, metal, label, sure) };
}

/** Labels what is joined where the signed distance is over a threshold. */
function joined({ across, along }: Grid, metal: readonly Float32Array[], over: number): Int32Array {
  const cells = across * along;
  const leader = new Int32Array(cells * metal.length).fill(-1);
  const find = (k: number): number => {
    let root = k;
    while (leader[root] !== root) root = leader[root] as number;
    for (let at = k; at !== root; ) {
      const next = leader[at] as number;
      leader[at] = root;
      at = next;
    }
    return root;
  };
  const join = (a: number, b: number) => {
    const [p, q] = [find(a), find(b)];
    if (p < q) leader[q] = p;
    else leader[p] = q;
  };
  metal.forEach((values, s) => {
    for (let cell = 0; cell < cells; cell++) {
      if ((values[cell] as number) <= over) continue;
      const k = s * cells + cell;
      leader[k] = k;
      if (cell % across > 0 && leader[k - 1] !== -1) join(k, k - 1);
      if (cell >= across && leader[k - across] !== -1) join(k, k - across);
      if (s > 0 && leader[k - cells] !== -1) join(k, k - cells);
    }
  });
  for (let k = 0; k < leader.length; k++) if (leader[k] !== -1) leader[k] = find(k);
  return leader;
}

function bodiesOf(
  grid: Grid,
  slabs: readonly Slab[],
  metal: readonly Float32Array[],
  label: Int32Array,
  sure: Int32Array,
): Map<number, Body> {
  const cells = grid.across * grid.along;
  const square = grid.cell * grid.cell;
  const sizes = new Map<number, number>();
  for (const one of sure) if (one !== -1) sizes.set(one, (sizes.get(one) ?? 0) + 1);
  const drafts = new Map<
    number,
    { witness: number; best: number; volume: number; border: number; parts: Set<number> }
  >();
  metal.forEach((values, s) => {
    const { from, to } = slabs[s] as Slab;
    for (let cell = 0; cell < cells; cell++) {
      const k = s * cells + cell;
      const own = label[k] as number;
      if (own === -1) continue;
      let draft = drafts.get(own);
      if (draft === undefined) {
        draft = { witness: k, best: Number.NEGATIVE_INFINITY, volume: 0, border: 0, parts: new Set() };
        drafts.set(own, draft);
      }
      const value = values[cell] as number;
      const height = to - from;
      draft.volume += coverage(value, grid.cell) * square * height;
      if (Math.abs(value) < DIAGONAL * grid.cell) draft.border += square * height;
      const part = sure[k] as number;
      if (part === -1 || (sizes.get(part) as number) < SPECK) continue;
      draft.parts.add(part);
      if (value > draft.best) [draft.best, draft.witness] = [value, k];
    }
  });
  const bodies = new Map<number, Body>();
  for (const [own, { witness, volume, border, parts }] of drafts) {
    if (parts.size === 0) continue;
    bodies.set(own, { label: own, witness, volume, slack: BORDER_SLACK * border, parts: parts.size });
  }
  return bodies;
}
