import {
  areaOf,
  type Booleans,
  CLOSE,
  type Closeness,
  type CutCase,
  commonExtent,
  conservesArea,
  countsOnce,
  cutRegions,
  type Encoding,
  encodingDoesNotMatter,
  type Family,
  idempotent,
  invariantUnder,
  leavesDisjoint,
  orderDoesNotMatter,
  type Similarity,
  startPointDoesNotMatter,
  UNMOVED,
  validated,
} from '@edgebite/core/testing';
import { kernel, type Region } from '../region/kernel.js';
import { type SlabResult, slabsSubtract, TILTS } from './slabs.js';

/** Circles of two, three and four arcs with joints at no round place. */
const ENCODINGS: readonly Encoding[] = [
  { arcs: 2, start: 0.3 },
  { arcs: 3, start: 1.234 },
  { arcs: 4, start: -2.1 },
];

/** Where every case is tried again. Shifts are in extents of the case. */
export const MOVES: readonly Similarity[] = [
  { ...UNMOVED, turn: [0.6, 0.8] },
  { ...UNMOVED, turn: [Math.cos(1), Math.sin(1)] },
  { ...UNMOVED, mirror: true },
  { ...UNMOVED, shift: [1e4, -1e4] },
  { ...UNMOVED, scale: 1e-9 },
  { ...UNMOVED, scale: 1e9 },
];

/** Where the number of pieces may hang on rounding, areas still agree to the weld tolerance times the perimeter. */
const MARGINAL: Closeness = { ...CLOSE, area: 2e-8, areaOnly: true };

/**
 * Puts one case through every law, every result validated, and compares the answer with the slab reference.
 * Returns the deviation from the reference as a share of the outline's area.
 * Throws the first law that is broken, or the faults of the first region that is not valid.
 */
export function obeysAllLaws(
  cutCase: CutCase,
  { marginal }: Pick<Family, 'marginal'>,
  slack = marginal ? 2e-8 : 1e-9,
): number {
  const closeness = marginal ? MARGINAL : CLOSE;
  const ops = remembering(validated(kernel));
  const { outline } = cutCase;
  const cuts = cutRegions(cutCase);
  const cut = ops.union(cuts);
  conservesArea(ops, outline, cut, slack);
  countsOnce(ops, outline, cut, slack);
  leavesDisjoint(ops, outline, cut, slack);
  idempotent(ops, outline, cut, closeness);
  orderDoesNotMatter(ops, outline, cuts, closeness);
  startPointDoesNotMatter(ops, outline, cuts, closeness);
  encodingDoesNotMatter(ops, outline, cutCase.cuts, ENCODINGS, closeness);
  const extent = commonExtent(outline, ...cuts);
  for (const move of MOVES) {
    const shift = [move.shift[0] * extent, move.shift[1] * extent] as const;
    invariantUnder(ops, outline, cuts, { ...move, shift }, closeness);
  }
  return agreesWithSlabs(ops.subtract(outline, cuts), outline, cuts, marginal);
}

/** The same operations; differences of the very same operands, which most laws start from, are computed once. */
function remembering(ops: Booleans): Booleans {
  const known = new Map<Region, Map<readonly Region[], Region>>();
  return {
    ...ops,
    subtract: (from, cuts) => {
      const byCuts = known.get(from) ?? new Map<readonly Region[], Region>();
      known.set(from, byCuts);
      const left = byCuts.get(cuts) ?? ops.subtract(from, cuts);
      byCuts.set(cuts, left);
      return left;
    },
  };
}

/** Pieces under this share of the squared extent are left to the laws: the reference may take rounding for one. */
const DUST = 1e-9;

/**
 * Compares what is left with the slab reference: total area, and piece by piece area and enclosed holes.
 * Returns the deviation of the total as a share of the outline's area; throws Error with the difference.
 */
export function agreesWithSlabs(
  left: Region,
  outline: Region,
  cuts: readonly Region[],
  marginal: boolean,
): number {
  const reference = slabsSubtract(outline, cuts);
  const whole = areaOf(outline);
  const deviation = Math.abs(areaOf(left) - reference.area) / whole;
  const size = commonExtent(outline, ...cuts);
  // Welding moves ends of edges by 1e-9 of the size, and areas by that along as much boundary.
  if (!(deviation <= (marginal ? 2e-8 : Math.max(1e-9, (1e-9 * size * size) / whole)))) {
    throw new Error(`slab reference: area ${reference.area}, the region has ${areaOf(left)}`);
  }
  if (marginal) return deviation;
  const extent = commonExtent(outline, ...cuts);
  const difference = pieceDifference(left, reference, extent);
  if (difference === null) return deviation;
  const others = TILTS.slice(1).map((tilt) => slabsSubtract(outline, cuts, tilt));
  if (others.some((other) => pieceDifference(left, other, extent) === null)) return deviation;
  throw new Error(difference);
}

/** The first piece of the region or of the reference that the other does not have, in words; null if none. */
function pieceDifference(left: Region, reference: SlabResult, extent: number): string | null {
  const big = DUST * extent * extent;
  const found = left.map((part) => ({ area: areaOf([part]), enclosed: enclosedHoles(part) }));
  for (const [mine, theirs, whose] of [
    [found, reference.pieces, 'region'],
    [reference.pieces, found, 'reference'],
  ] as const) {
    for (const piece of mine.filter((p) => p.area > big)) {
      const same = (p: { area: number; enclosed: number }): boolean =>
        Math.abs(p.area - piece.area) <= 1e-9 * extent * extent && p.enclosed === piece.enclosed;
      if (!theirs.some(same)) {
        const list = theirs.map((p) => `${p.area} with ${p.enclosed} holes`).join(', ');
        return `only the ${whose} has a piece of ${piece.area} with ${piece.enclosed} holes, not in ${list}`;
      }
    }
  }
  return null;
}

/** Holes of a part, taking for one what touches: each joint that loops share takes one away. */
export function enclosedHoles(part: Region[number]): number {
  const visits = new Map<string, number>();
  for (const edge of [part.outer, ...part.holes].flat()) {
    const key = `${edge.a.x},${edge.a.y}`;
    visits.set(key, (visits.get(key) ?? 0) + 1);
  }
  const shared = [...visits.values()].reduce((sum, count) => sum + count - 1, 0);
  return part.holes.length - shared;
}
