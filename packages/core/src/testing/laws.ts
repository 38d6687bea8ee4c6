import { EdgebiteError } from '../geometry/edgebite-error.js';
import type { Region } from '../region/region.js';
import { type Cut, cutRegion, type Encoding } from './cut-case.js';
import { CLOSE, type Closeness, commonExtent, difference } from './fingerprint.js';
import { areaOf } from './probe.js';
import { halved, restarted, type Similarity, transformed } from './transform.js';
import { validateRegion } from './validate.js';

/** The operations that the laws put to the test; any implementation of them will do. */
export interface Booleans {
  union(regions: readonly Region[]): Region;
  intersect(regions: readonly Region[]): Region;
  subtract(from: Region, cuts: readonly Region[]): Region;
  xor(regions: readonly Region[]): Region;
}

/** Thrown when operations break a law: says which law, and by what. */
export class LawBroken extends EdgebiteError {
  override readonly name = 'LawBroken';
  readonly law: string;

  constructor(law: string, what: string) {
    super(`${law}: ${what}`, { code: 'law', place: law });
    this.law = law;
  }
}

/**
 * The same operations, with every result put through `validateRegion` before it is handed on.
 * They throw Error with the faults of the first region that is not valid.
 */
export function validated(ops: Booleans): Booleans {
  const checked = (result: Region, operands: readonly Region[], frame = operands): Region => {
    validateRegion(result, { extent: commonExtent(...operands), welded: commonExtent(...frame) });
    return result;
  };
  return {
    union: (regions) => checked(ops.union(regions), regions),
    intersect: (regions) => checked(ops.intersect(regions), regions),
    subtract: (from, cuts) => checked(ops.subtract(from, cuts), [from, ...cuts], [from]),
    xor: (regions) => checked(ops.xor(regions), regions),
  };
}

/**
 * Deviation that the area laws allow, as a share of the areas in the equation; or, where that is more, of the area that
 * welding may shift: it moves ends of edges by 1e-9 of the extent, and the whole of a long edge with its end. In a slender
 * outline that is more than the same share of its area.
 */
export const AREA_SLACK = 1e-9;

/**
 * area(A - B) + area(A and B) = area(A). Returns the deviation as a share of area(A).
 * @throws LawBroken if it is over `slack`, and over what welding may shift (see `AREA_SLACK`).
 */
export function conservesArea(ops: Booleans, a: Region, b: Region, slack = AREA_SLACK): number {
  const parts = areaOf(ops.subtract(a, [b])) + areaOf(ops.intersect([a, b]));
  return balanced('conserves area', parts, areaOf(a), {
    scale: areaOf(a),
    welded: weldedArea([a], [a, b]),
    slack,
  });
}

/**
 * area(A or B) + area(A and B) = area(A) + area(B), and area(A xor B) = area(A - B) + area(B - A).
 * Returns the larger deviation as a share of area(A) + area(B).
 * @throws LawBroken if it is over `slack`, and over what welding may shift (see `AREA_SLACK`).
 */
export function countsOnce(ops: Booleans, a: Region, b: Region, slack = AREA_SLACK): number {
  const sum = areaOf(a) + areaOf(b);
  const joined = areaOf(ops.union([a, b])) + areaOf(ops.intersect([a, b]));
  const either = areaOf(ops.subtract(a, [b])) + areaOf(ops.subtract(b, [a]));
  const allowed = { scale: sum, welded: weldedArea([a, b], [a, b]), slack };
  return Math.max(
    balanced('a union counts the overlap once', joined, sum, allowed),
    balanced('xor is both differences', areaOf(ops.xor([a, b])), either, allowed),
  );
}

/**
 * A - B and B have nothing in common. Returns the area of the overlap as a share of area(A).
 * @throws LawBroken if it is over `slack`, and over what welding may shift (see `AREA_SLACK`).
 */
export function leavesDisjoint(ops: Booleans, a: Region, b: Region, slack = AREA_SLACK): number {
  const overlap = areaOf(ops.intersect([ops.subtract(a, [b]), b]));
  const allowed = { scale: areaOf(a), welded: weldedArea([a], [a, b]), slack };
  return balanced('what is left is disjoint from the cut', overlap, 0, allowed);
}

/**
 * Cutting twice changes nothing: (A - B) - B = A - B, part for part; nor does joining or meeting with itself.
 * @throws LawBroken with the first difference.
 */
export function idempotent(ops: Booleans, a: Region, b: Region, closeness: Closeness = CLOSE): void {
  const extent = commonExtent(a, b);
  const once = ops.subtract(a, [b]);
  same('cutting twice changes nothing', ops.subtract(once, [b]), once, extent, closeness);
  same('a region joined with itself is itself', ops.union([once, once]), once, extent, closeness);
  same('a region met with itself is itself', ops.intersect([once, once]), once, extent, closeness);
  same('a region less itself is nothing', ops.subtract(once, [once]), [], extent, closeness);
}

/**
 * Cuts may be made in any order, one by one or all at once.
 * @throws LawBroken with the first difference.
 */
export function orderDoesNotMatter(
  ops: Booleans,
  a: Region,
  cuts: readonly Region[],
  closeness: Closeness = CLOSE,
): void {
  const extent = commonExtent(a, ...cuts);
  const atOnce = ops.subtract(a, cuts);
  const inTurn = (order: readonly Region[]): Region =>
    order.reduce((left, cut) => ops.subtract(left, [cut]), a);
  same('cuts one by one leave what they leave at once', inTurn(cuts), atOnce, extent, closeness);
  same('cuts in reverse order leave the same', inTurn([...cuts].reverse()), atOnce, extent, closeness);
  same('the list of cuts may be reversed', ops.subtract(a, [...cuts].reverse()), atOnce, extent, closeness);
}

/**
 * Moving outline and cuts moves the answer, and nothing else.
 * @throws LawBroken with the first difference.
 */
export function invariantUnder(
  ops: Booleans,
  a: Region,
  cuts: readonly Region[],
  move: Similarity,
  closeness: Closeness = CLOSE,
): void {
  const there = ops.subtract(
    transformed(a, move),
    cuts.map((cut) => transformed(cut, move)),
  );
  const expected = transformed(ops.subtract(a, cuts), move);
  const what = `mirror ${move.mirror}, turn ${move.turn.join(' ')}, scale ${move.scale}, shift ${move.shift.join(' ')}`;
  same(
    `moved (${what}), the answer is the same`,
    there,
    expected,
    commonExtent(a, ...cuts) * move.scale,
    closeness,
  );
}

/**
 * It does not matter where the loops of outline and cuts start, nor whether their edges are split in two.
 * @throws LawBroken with the first difference.
 */
export function startPointDoesNotMatter(
  ops: Booleans,
  a: Region,
  cuts: readonly Region[],
  closeness: Closeness = CLOSE,
): void {
  const extent = commonExtent(a, ...cuts);
  const expected = ops.subtract(a, cuts);
  const later = ops.subtract(
    restarted(a, 1),
    cuts.map((cut) => restarted(cut, 1)),
  );
  same('loops may start anywhere', later, expected, extent, closeness);
  same('edges may be split in two', ops.subtract(halved(a), cuts.map(halved)), expected, extent, closeness);
}

/**
 * It does not matter of how many arcs a circle is made, nor where they join.
 * @throws LawBroken with the first difference.
 */
export function encodingDoesNotMatter(
  ops: Booleans,
  a: Region,
  cuts: readonly Cut[],
  encodings: readonly Encoding[],
  closeness: Closeness = CLOSE,
): void {
  const regions = cuts.map((cut) => cutRegion(cut));
  const extent = commonExtent(a, ...regions);
  const expected = ops.subtract(a, regions);
  for (const encoding of encodings) {
    const got = ops.subtract(
      a,
      cuts.map((cut) => cutRegion(cut, encoding)),
    );
    const what = `circles of ${encoding.arcs} arcs from ${encoding.start}`;
    same(`${what} leave what half circles leave`, got, expected, extent, closeness);
  }
}

/** By how much two areas may differ: `slack` of the scale, or what welding shifts. */
interface Allowed {
  readonly scale: number;
  /** See `weldedArea`. */
  readonly welded: number;
  readonly slack: number;
}

/**
 * Of this area, the share of the weld tolerance is what welding may shift: along a side of what is divided, by a tolerance
 * that goes by the extent of all operands.
 */
function weldedArea(divided: readonly Region[], operands: readonly Region[]): number {
  return commonExtent(...divided) * commonExtent(...operands);
}

function balanced(law: string, got: number, expected: number, { scale, welded, slack }: Allowed): number {
  const off = Math.abs(got - expected);
  const deviation = off / (scale > 0 ? scale : 1);
  // A slack over the usual one is of the areas only: it is there for cases, not for coarser welding.
  if (deviation <= slack || off <= Math.min(slack, AREA_SLACK) * welded) return deviation;
  throw new LawBroken(law, `${got} against ${expected}, off by ${deviation} of ${scale}`);
}

function same(law: string, got: Region, expected: Region, extent: number, closeness: Closeness): void {
  const found = difference(got, expected, extent, closeness);
  if (found !== null) throw new LawBroken(law, found);
}
