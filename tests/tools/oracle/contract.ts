import { intersect, type Point, type Region, subtract, union, xor } from '@edgebite/core';
import { boxOf as boxOfEdges, edgesOf, regionFaults, transformed } from '@edgebite/core/testing';
import { weldTolerance } from '../../../packages/core/src/geometry/tolerance.js';
// Not by the door: it measures a splinter by its own size, and where it was cut from is what welds.
import { area, partArea, perimeter } from '../../../packages/core/src/region/measure.js';
import type { ExactAnswer, ExactReference, Operation } from './exact.js';
import { pinchesOf } from './pinches.js';

/*
 * The contract: a result is the exact one for operands moved by at most k weld tolerances. Such a move sweeps over an
 * area of at most their perimeter times k welds, so that no result may differ from the exact one in more than that. The
 * number of pieces has to be right where no such move changes it. What is thinner than twice the move may go
 * altogether, so that it does not count as a piece.
 */

/** Operands and what is done with them. */
export interface OracleCase {
  readonly op: Operation;
  readonly operands: readonly Region[];
}

/** How a result compares. */
export interface Verdict {
  /** What broke the contract; null if nothing has. */
  readonly fault: string | null;
  /** Area in which the result differs from the exact one, in perimeters times welds. */
  readonly welds: number;
}

/** The result of the library. */
export function resultOf({ op, operands }: OracleCase): Region {
  const [first = [], ...others] = operands;
  if (op === 'union') return union(operands);
  if (op === 'intersect') return intersect(operands);
  if (op === 'xor') return xor(operands);
  return subtract(first, others);
}

/** The length under which the library takes two points for one. */
export function weldOf({ op, operands }: OracleCase): number {
  const frame = boxOf(op === 'subtract' ? (operands[0] ?? []) : operands.flat());
  const all = boxOf(operands.flat());
  const [x, y] = [(frame.minX + frame.maxX) / 2, (frame.minY + frame.maxY) / 2];
  const reach = Math.max(
    all.maxX - x,
    x - all.minX,
    all.maxY - y,
    y - all.minY,
    Math.abs(x) / 100,
    Math.abs(y) / 100,
  );
  return weldTolerance(Math.max(frame.maxX - frame.minX, frame.maxY - frame.minY), reach);
}

/**
 * Compares the library's result with the exact one.
 * @param k how many weld tolerances the operands may have been moved by
 */
export async function judge(one: OracleCase, reference: ExactReference, k: number): Promise<Verdict> {
  let got: Region;
  try {
    got = resultOf(one);
  } catch (error) {
    return { fault: `throws ${String(error).slice(0, 160)}`, welds: Number.POSITIVE_INFINITY };
  }
  if (one.op === 'subtract' && one.operands[0]?.length === 0) {
    return { fault: got.length > 0 ? 'takes something from nothing' : null, welds: 0 };
  }
  const weld = weldOf(one);
  const exact = await reference.ask(one.op, one.operands, { got, thin: 2 * k * weld });
  const length = one.operands.reduce((sum, operand) => sum + perimeter(operand), 0);
  const welds = exact.off === 0 ? 0 : exact.off / (length * weld);
  if (!(welds <= k))
    return { fault: `differs in an area of ${exact.off}, ${welds.toPrecision(3)} welds`, welds };
  const all = boxOf(one.operands.flat());
  const extent = Math.max(all.maxX - all.minX, all.maxY - all.minY);
  // Of what is taken from a part the part alone says what welds.
  const welded = weld / 1e-9;
  const faults = regionFaults(got, { extent: Math.max(extent, welded), welded });
  if (faults.length > 0) return { fault: `is not valid: ${faults[0]}`, welds };
  const thin = 2 * k * weld;
  // A piece may be as thick as one limit in the result, and as the other in the exact one: those in doubt count for both.
  const thicker = (than: number) =>
    got.filter((part) => isThick(partArea(part), perimeter([part]), than)).length;
  const [sure, perhaps] = [thicker(2 * thin), thicker(thin / 2)];
  if (perhaps >= exact.least && sure <= exact.most) return { fault: null, welds };
  const range = await countsNearby(one, reference, k * weld, exact);
  const pinches = pinchesOf(one.operands, thin);
  const [least, most] = [range.least - pinches, range.most + pinches];
  if (perhaps >= least && sure <= most) return { fault: null, welds };
  return { fault: `has ${got.length} pieces, not ${least === most ? least : `${least} to ${most}`}`, welds };
}

/** Whether a piece is thicker than a length: that is twice its area over its perimeter, on average. */
function isThick(area: number, around: number, thin: number): boolean {
  return 2 * area > thin * around;
}

/** How many ways of moving the operands are tried. */
const WAYS = 12;

/** Between how many pieces there may be for operands that are moved by a distance in several ways. */
async function countsNearby(
  { op, operands }: OracleCase,
  reference: ExactReference,
  by: number,
  { least, most }: Pick<ExactAnswer, 'least' | 'most'>,
) {
  const range = { least, most };
  for (let way = 0; way < WAYS; way++) {
    const moved = operands.map((operand, k) => {
      if (!isThick(area(operand), perimeter(operand), 2 * by) && (way + k) % 2 === 0) return [];
      const angle = way * 1.1 + k * 2.4;
      const far = way < 3 ? 0 : by;
      const grows = [0, by, -by][way % 3] as number;
      const shift = { x: far * Math.cos(angle), y: far * Math.sin(angle) };
      return swollen(operand, (way + k) % 2 === 0 ? grows : -grows, shift);
    });
    const nearby = await reference.ask(op, moved, { thin: 2 * by });
    range.least = Math.min(range.least, nearby.least);
    range.most = Math.max(range.most, nearby.most);
  }
  return range;
}

/** A region shifted and scaled about its own middle, so that its boundary moves by about a distance. */
function swollen(region: Region, by: number, shift: Point): Region {
  const box = boxOf(region);
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY, 4 * Math.abs(by));
  const scale = 1 + (2 * by) / size;
  const to = [x - x * scale + shift.x, y - y * scale + shift.y] as const;
  try {
    return transformed(region, { mirror: false, turn: [1, 0], scale, shift: to });
  } catch (error) {
    // An edge so short that its ends meet: the region stays as it is, which is a way of moving it too.
    if (error instanceof RangeError) return region;
    throw error;
  }
}

function boxOf(region: Region) {
  return boxOfEdges(edgesOf(region));
}
