import { arrange } from '../overlay/arrange.js';
import { type FaceBorders, faceAreas, faceBorders } from '../overlay/faces.js';
import type { Subdivision } from '../overlay/label.js';
import { Groups } from '../region/groups.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A cut as it acts on the part: what it takes away in plan, and between which heights above the bottom. */
export interface Removal {
  readonly id: string;
  readonly footprint: Region;
  /** What a ring-shaped cut leaves in its middle; null for all others. */
  readonly core: Region | null;
  readonly low: number;
  readonly high: number;
  /** What its passes take in plan, in order, where it has several; the last takes what the others leave. */
  readonly passes?: readonly Region[] | undefined;
}

/** A layer of the part in which every cut either takes all of the height or nothing. */
export interface Slab {
  readonly from: number;
  readonly to: number;
}

/**
 * The part as cells: a face of the overlay of outline and cuts, times a slab. One overlay serves all slabs and
 * all cuts, so that what stands above and below one another has the same borders to the last bit.
 */
export interface Cells {
  readonly subdivision: Subdivision;
  readonly borders: FaceBorders;
  readonly faceArea: Float64Array;
  readonly slabs: readonly Slab[];
  readonly removals: readonly Removal[];
  /** By cell, that is face * slabs + slab: what became of it; the number of the cut that took it is 0 or more. */
  readonly taker: Int32Array;
  /** By face: the operands of the overlay that cover it, in order; 0 is the outline. */
  readonly covers: readonly (readonly number[])[];
  /** By face: the numbers of the ring-shaped cuts whose core it lies in. */
  readonly cores: readonly (readonly number[])[];
  /**
   * By operand of the overlay: the number of the cut that it is the footprint of; -1 for the outline, -2 for a core,
   * -3 for a pass, -4 for a mark.
   */
  readonly cutOf: Int32Array;
  /** Operands of the overlay that are passes. */
  readonly passOf: ReadonlyMap<number, CutPass>;
  /** By mark: the faces that it covers. */
  readonly markedFaces: readonly (readonly number[])[];
}

/** A pass of a cut, both by number. */
export interface CutPass {
  readonly cut: number;
  readonly pass: number;
}

/** The cell still stands. */
export const STANDS = -1;
/** The cell was never part of the outline. */
export const VOID = -2;

/** Heights closer than this share of the thickness are one: depths are typed in, sums of them are rounded. */
const SAME_HEIGHT = 1e-9;

/**
 * Lays the cuts over the outline and says of each cell which cut takes it first.
 * @param slabs layers to part the height into, fine enough for all cuts; those of the cuts unless given
 * @param marks regions whose borders part faces and take nothing
 */
export function cellsOf(
  outline: Region,
  thickness: number,
  removals: readonly Removal[],
  slabs: readonly Slab[] = slabsOf(thickness, removals),
  marks: readonly Region[] = [],
): Cells {
  const operands = [loopsOf(outline)];
  const cutOf: number[] = [-1];
  const coreOf: number[] = [-1];
  removals.forEach((removal, k) => {
    operands.push(loopsOf(removal.footprint));
    cutOf.push(k);
    coreOf.push(-1);
    if (removal.core === null) return;
    operands.push(loopsOf(removal.core));
    cutOf.push(-2);
    coreOf.push(k);
  });
  const passOf = new Map<number, CutPass>();
  removals.forEach(({ passes = [] }, cut) => {
    passes.forEach((footprint, pass) => {
      passOf.set(operands.length, { cut, pass });
      operands.push(loopsOf(footprint));
      cutOf.push(-3);
      coreOf.push(-1);
    });
  });
  const firstMark = operands.length;
  for (const mark of marks) {
    operands.push(loopsOf(mark));
    cutOf.push(-4);
    coreOf.push(-1);
  }
  const subdivision = arrange(operands, boundsOf(outline) ?? undefined);
  const covers = coversOf(subdivision);
  const taker = new Int32Array(subdivision.faceCount * slabs.length).fill(VOID);
  const cores: number[][] = [];
  for (let face = 0; face < subdivision.faceCount; face++) {
    const cover = covers[face] as readonly number[];
    cores.push(cover.map((operand) => coreOf[operand] as number).filter((k) => k >= 0));
    if (cover[0] !== 0) continue;
    slabs.forEach((slab, s) => {
      const middle = (slab.from + slab.to) / 2;
      const by = cover.find((operand) => takes(removals[cutOf[operand] as number], middle));
      taker[face * slabs.length + s] = by === undefined ? STANDS : (cutOf[by] as number);
    });
  }
  const borders = faceBorders(subdivision);
  return {
    subdivision,
    borders,
    faceArea: faceAreas(subdivision, borders),
    slabs,
    removals,
    taker,
    covers,
    cores,
    cutOf: Int32Array.from(cutOf),
    passOf,
    markedFaces: facesUnder(covers, firstMark, marks.length),
  };
}

/** The faces that each of some operands covers, the first of which is given. Covers are in order, so these stand last. */
function facesUnder(covers: Cells['covers'], first: number, count: number): number[][] {
  const faces = Array.from({ length: count }, (): number[] => []);
  covers.forEach((cover, face) => {
    for (let k = cover.length - 1; k >= 0 && (cover[k] as number) >= first; k--) {
      faces[(cover[k] as number) - first]?.push(face);
    }
  });
  return faces;
}

function takes(removal: Removal | undefined, height: number): boolean {
  return removal !== undefined && removal.low < height && height < removal.high;
}

/** By face, the operands that cover it, in their order. */
function coversOf({ graph, order, via, faceOf, faceCount }: Subdivision): readonly (readonly number[])[] {
  const covers: (readonly number[])[] = new Array(faceCount).fill([]);
  for (let k = 0; k < order.length; k++) {
    const half = via[k] as number;
    const edge = half >> 1;
    const across = covers[faceOf[half ^ 1] as number] as readonly number[];
    const change = new Map<number, number>();
    for (let m = graph.start[edge] as number; m < (graph.start[edge + 1] as number); m++) {
      const operand = graph.curves.operand[graph.member[m] as number] as number;
      const sign = (graph.sign[m] as number) * (half & 1 ? -1 : 1);
      change.set(operand, (change.get(operand) ?? 0) + sign);
    }
    const cover = across.filter((operand) => (change.get(operand) ?? 0) >= 0);
    for (const [operand, sum] of change) if (sum > 0) cover.push(operand);
    covers[order[k] as number] = cover.sort((a, b) => a - b);
  }
  return covers;
}

/** Layers between all heights at which some cut begins or ends, from the bottom up. */
function slabsOf(thickness: number, removals: readonly Removal[]): Slab[] {
  const heights = [0, thickness, ...removals.flatMap(({ low, high }) => [low, high])]
    .filter((h) => h >= 0 && h <= thickness)
    .sort((a, b) => a - b);
  const slabs: Slab[] = [];
  let from = 0;
  for (const h of heights) {
    if (h - from <= SAME_HEIGHT * thickness) continue;
    slabs.push({ from, to: h });
    from = h;
  }
  const last = slabs[slabs.length - 1];
  if (last !== undefined) slabs[slabs.length - 1] = { from: last.from, to: thickness };
  return slabs;
}

/** Calls `visit` for each two faces that share an edge of the overlay, with that edge. */
export function eachNeighbours(
  { subdivision }: Cells,
  visit: (left: number, right: number, edge: number) => void,
): void {
  const { graph, faceOf } = subdivision;
  for (let e = 0; e < graph.count; e++) visit(faceOf[2 * e] as number, faceOf[2 * e + 1] as number, e);
}

/**
 * Bodies of metal: cells joined where they share a wall or lie on one another.
 * @param stands whether a cell counts as metal
 */
export function bodiesOf(cells: Cells, stands: (cell: number) => boolean): Groups {
  const n = cells.slabs.length;
  const bodies = new Groups(cells.taker.length);
  eachNeighbours(cells, (left, right) => {
    for (let s = 0; s < n; s++) {
      if (stands(left * n + s) && stands(right * n + s)) bodies.join(left * n + s, right * n + s);
    }
  });
  for (let face = 1; face < cells.subdivision.faceCount; face++) {
    for (let s = 1; s < n; s++) {
      if (stands(face * n + s - 1) && stands(face * n + s)) bodies.join(face * n + s - 1, face * n + s);
    }
  }
  return bodies;
}

/** Volume of one cell. */
export function cellVolume(cells: Cells, cell: number): number {
  const n = cells.slabs.length;
  const slab = cells.slabs[cell % n] as Slab;
  return (cells.faceArea[Math.floor(cell / n)] as number) * (slab.to - slab.from);
}
