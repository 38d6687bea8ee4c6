import type { Point } from '../geometry/point.js';
import { lengthOf } from '../region/faces.js';
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
  /** The slab right under the cut's end. */
  readonly slab: number;
  /** Some point on its border. */
  readonly at: Point;
}

/** Thicknesses closer than this share of the part's are one. */
const SAME_THICKNESS = 1e-9;

/** The floors that cuts have left, by cut, thickest last. */
export function floorsOf(cells: Cells, pieces: Pieces): Floor[] {
  const n = cells.slabs.length;
  const total = (cells.slabs[n - 1]?.to ?? 0) * SAME_THICKNESS;
  const rows: { under: number; thickness: number; slab: number; faces: Set<number> }[] = [];
  const rowsOf = new Map<number, typeof rows>();
  for (let face = 1; face < cells.subdivision.faceCount; face++) {
    for (const { under, slab, step } of endsOver(cells, face)) {
      let thickness = 0;
      for (let s = slab; s >= 0 && s < n && cells.taker[face * n + s] === STANDS; s += step) {
        const layer = cells.slabs[s] as Cells['slabs'][number];
        thickness += layer.to - layer.from;
      }
      const known = rowsOf.get(under) ?? [];
      rowsOf.set(under, known);
      const row = known.find((one) => Math.abs(one.thickness - thickness) <= total && one.slab === slab);
      if (row !== undefined) row.faces.add(face);
      else known.push({ under, thickness, slab, faces: new Set([face]) });
    }
  }
  for (const known of rowsOf.values()) rows.push(...known);
  rows.sort((a, b) => a.under - b.under || a.thickness - b.thickness);
  return rows.map((row) => {
    const slug = heldBy(cells, pieces, row);
    return {
      under: row.under,
      thickness: row.thickness,
      slab: row.slab,
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

function heldBy(
  cells: Cells,
  pieces: Pieces,
  row: { under: number; slab: number; faces: ReadonlySet<number> },
): { holds: number | null; kerfLength: number | null } {
  const n = cells.slabs.length;
  const isHeld = (piece: number) => {
    const one = pieces.pieces[piece];
    return one !== undefined && one.role === 'held slug' && one.freedBy === row.under;
  };
  if (!pieces.pieces.some((_, piece) => isHeld(piece))) return { holds: null, kerfLength: null };
  const { low } = cells.removals[row.under] as Cells['removals'][number];
  const slab = cells.slabs[row.slab] as Cells['slabs'][number];
  // The slab of the cut that ends at this floor lies above it for a cut from the top, below it otherwise.
  const beside = slab.from < low ? row.slab + 1 : row.slab - 1;
  const lengths = new Map<number, number>();
  eachNeighbours(cells, (left, right, edge) => {
    for (const [metal, kerf] of [
      [left, right],
      [right, left],
    ] as const) {
      const piece = pieces.pieceOf[metal * n + beside] as number;
      if (!row.faces.has(kerf) || !isHeld(piece)) continue;
      lengths.set(piece, (lengths.get(piece) ?? 0) + lengthOf(cells.subdivision, edge));
    }
  });
  let holds: number | null = null;
  for (const [piece, length] of lengths) {
    if (holds === null || length > (lengths.get(holds) as number)) holds = piece;
  }
  return { holds, kerfLength: holds === null ? null : (lengths.get(holds) as number) };
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
