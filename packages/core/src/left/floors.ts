import type { Point } from '../geometry/point.js';
import { lengthOf } from '../overlay/faces.js';
import { type Cells, eachNeighbours, STANDS } from './cells.js';
import type { Pieces } from './pieces.js';

/** Metal that a cut has left under itself. */
export interface Floor {
  /** Number of the cut over it. */
  readonly under: number;
  readonly thickness: number;
  readonly area: number;
  /** Index of the slug that it holds; null if it holds none. */
  readonly holds: number | null;
  /** Length along which it would have to break to let the slug go: of the slug's wall in the kerf. */
  readonly kerfLength: number | null;
  /** What ends it on its other side: numbers of cuts, null for a face of the part. */
  readonly beyond: readonly (number | null)[];
  /** The slab right under the cut's end. */
  readonly slab: number;
  /** Some point on its border. */
  readonly at: Point;
}

interface Row {
  readonly under: number;
  readonly thickness: number;
  readonly slab: number;
  readonly faces: Set<number>;
  readonly beyond: Set<number | null>;
}

/** Thicknesses closer than this share of the part's are one. */
const SAME_THICKNESS = 1e-9;

/** The floors that cuts have left, by cut, thickest last. */
export function floorsOf(cells: Cells, pieces: Pieces): Floor[] {
  const n = cells.slabs.length;
  const total = (cells.slabs[n - 1]?.to ?? 0) * SAME_THICKNESS;
  const rows: Row[] = [];
  const rowsOf = new Map<number, typeof rows>();
  for (let face = 1; face < cells.subdivision.faceCount; face++) {
    for (const { under, slab, step } of endsOver(cells, face)) {
      let thickness = 0;
      let s = slab;
      for (; s >= 0 && s < n && cells.taker[face * n + s] === STANDS; s += step) {
        const layer = cells.slabs[s] as Cells['slabs'][number];
        thickness += layer.to - layer.from;
      }
      const beyond = s >= 0 && s < n ? (cells.taker[face * n + s] as number) : null;
      const known = rowsOf.get(under) ?? [];
      rowsOf.set(under, known);
      const row = known.find((one) => Math.abs(one.thickness - thickness) <= total && one.slab === slab);
      if (row !== undefined) {
        row.faces.add(face);
        row.beyond.add(beyond);
      } else known.push({ under, thickness, slab, faces: new Set([face]), beyond: new Set([beyond]) });
    }
  }
  for (const known of rowsOf.values()) rows.push(...known);
  rows.sort((a, b) => a.under - b.under || a.thickness - b.thickness);
  const kerfs = kerfsOf(cells, pieces);
  return rows.map((row) => {
    const slug = heldBy(kerfs, row.faces, isFromTop(cells, row.under));
    return {
      under: row.under,
      thickness: row.thickness,
      slab: row.slab,
      beyond: [...row.beyond],
      ...slug,
      ...extentOf(cells, row.faces),
    };
  });
}

/** Where a cut took the metal of a face down to a level under which it stands: the cut, the slab, and the way on. */
function endsOver(cells: Cells, face: number): { under: number; slab: number; step: 1 | -1 }[] {
  const n = cells.slabs.length;
  const ends: { under: number; slab: number; step: 1 | -1 }[] = [];
  for (let s = 0; s < n; s++) {
    if (cells.taker[face * n + s] !== STANDS) continue;
    for (const step of [1, -1] as const) {
      const before = s - step;
      if (before < 0 || before >= n) continue;
      const under = cells.taker[face * n + before] as number;
      if (under >= 0) ends.push({ under, slab: s, step });
    }
  }
  return ends;
}

/**
 * The slug that hangs on a floor: one whose cut runs over it. A deeper cut may have gone through the kerf there; what
 * it has left holds the slug all the same.
 */
function heldBy(
  kerfs: ReadonlyMap<number, readonly Kerf[]>,
  faces: ReadonlySet<number>,
  fromTop: boolean,
): { holds: number | null; kerfLength: number | null } {
  const lengths = new Map<number, number>();
  for (const face of faces) {
    for (const kerf of kerfs.get(face) ?? []) {
      // A cut from the other side has left the floor to a slug of its own.
      if (kerf.fromTop !== fromTop) continue;
      lengths.set(kerf.slug, (lengths.get(kerf.slug) ?? 0) + kerf.length);
    }
  }
  let holds: number | null = null;
  for (const [slug, length] of lengths) {
    if (holds === null || length > (lengths.get(holds) as number)) holds = slug;
  }
  return { holds, kerfLength: holds === null ? null : (lengths.get(holds) as number) };
}

/** The wall of a held slug along one face of its kerf, at the level where its cut ends. */
interface Kerf {
  /** Index of the slug. */
  readonly slug: number;
  readonly length: number;
  /** Which side its cut starts from. */
  readonly fromTop: boolean;
}

/** By face: the walls of held slugs along it. */
function kerfsOf(cells: Cells, { pieces, pieceOf }: Pieces): Map<number, Kerf[]> {
  const n = cells.slabs.length;
  const kerfs = new Map<number, Kerf[]>();
  const ends = pieces.map(({ role, freedBy }) =>
    (role === 'held slug' || role === 'hanging') && freedBy !== null ? endSlab(cells, freedBy) : -1,
  );
  const operands = pieces.map(({ freedBy }) => (freedBy === null ? -1 : cells.cutOf.indexOf(freedBy)));
  if (ends.every((end) => end < 0)) return kerfs;
  const levels = new Set(ends.filter((end) => end >= 0));
  eachNeighbours(cells, (left, right, edge) => {
    for (const [metal, kerf] of [
      [left, right],
      [right, left],
    ] as const) {
      for (const level of levels) {
        const slug = pieceOf[metal * n + level] as number;
        if (slug < 0 || ends[slug] !== level || pieceOf[kerf * n + level] === slug) continue;
        if (!(cells.covers[kerf] as readonly number[]).includes(operands[slug] as number)) continue;
        const known = kerfs.get(kerf) ?? [];
        kerfs.set(kerf, known);
        const cut = pieces[slug]?.freedBy as number;
        known.push({ slug, length: lengthOf(cells.subdivision, edge), fromTop: isFromTop(cells, cut) });
      }
    }
  });
  return kerfs;
}

/** Whether a cut that stops short starts from the top. */
function isFromTop(cells: Cells, cut: number): boolean {
  return (cells.removals[cut] as Cells['removals'][number]).low > 0;
}

/** The last slab that a cut takes, seen from the side that it starts from. */
function endSlab(cells: Cells, cut: number): number {
  const { low, high } = cells.removals[cut] as Cells['removals'][number];
  const isWithin = ({ from, to }: Cells['slabs'][number]) => low < (from + to) / 2 && (from + to) / 2 < high;
  return isFromTop(cells, cut) ? cells.slabs.findIndex(isWithin) : cells.slabs.findLastIndex(isWithin);
}

function extentOf(cells: Cells, faces: ReadonlySet<number>): { area: number; at: Point } {
  let area = 0;
  let at: Point = { x: 0, y: 0 };
  for (const face of faces) {
    if (area === 0) at = borderPoint(cells, face);
    area += cells.faceArea[face] as number;
  }
  return { area, at };
}

function borderPoint({ subdivision, borders }: Cells, face: number): Point {
  const { graph } = subdivision;
  const { points, originX, originY } = graph.curves;
  const half = borders.half[borders.start[face] as number] as number;
  const v = (half & 1 ? graph.to : graph.from)[half >> 1] as number;
  return { x: (points.x[v] as number) + originX, y: (points.y[v] as number) + originY };
}
