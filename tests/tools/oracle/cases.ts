import type { Region } from '@edgebite/core';
import { extentOf, regionFaults, type Similarity, transformed } from '@edgebite/core/testing';
import type { OracleCase } from './contract.js';
import type { OracleFamily } from './families.js';
import { type Draw, drawFrom } from './random.js';

/** Gaps are swept over these powers of ten of the size. */
export const GAPS = { from: -6, to: -13 } as const;

const OPERATIONS = ['union', 'intersect', 'subtract', 'xor', 'xor'] as const;

/** The case of a family with a number; null where an operand cannot be written down: an edge without length, or ends off their circle by rounding. */
export function caseOf(family: OracleFamily, seed: number, number: number): OracleCase | null {
  const draw = drawFrom(seed * 7919 + number * 104729 + family.name.length);
  const gap = 10 ** draw.between(GAPS.to, GAPS.from);
  const move = placing(draw);
  try {
    const operands: readonly Region[] = family
      .operands(draw, gap)
      .map((operand) => transformed(operand, move));
    const op = draw.pick(OPERATIONS);
    const extent = extentOf(...operands);
    return operands.every((operand) => regionFaults(operand, { extent }).length === 0)
      ? { op, operands }
      : null;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Where a case lies: as drawn, or turned, mirrored, larger, smaller, off the origin, or far from it. */
function placing(draw: Draw): Similarity {
  const angle = draw.pick([0, 0, draw.between(0, 7)]);
  const scale = draw.pick([1, 1, 100, 1000, 0.01]);
  const away = draw.pick([0, 0, 1, 1000]) * scale;
  return {
    mirror: draw.unit() < 0.3,
    turn: [Math.cos(angle), Math.sin(angle)],
    scale,
    shift: [away, -away / 2],
  };
}
