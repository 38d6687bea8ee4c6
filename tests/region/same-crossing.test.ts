import { arcEdge, type Edge, lineEdge, type Point, reversed } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ROW, writeRow } from '../../packages/core/src/geometry/curves.js';
import { isSameCrossing } from '../../packages/core/src/noding/same-crossing.js';

/* Two places are one crossing as long as the gap between the pieces, halfway from the one to the other, is within the tolerance. */

/** A place turned and moved, so that no coordinate is special. */
function placed(x: number, y: number): Point {
  const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
  return { x: 31 + c * x - s * y, y: -17 + s * x + c * y };
}

const line = (x: number, y: number, u: number, v: number) => lineEdge(placed(x, y), placed(u, v));

/** An arc round a centre on the level axis, between two angles. */
function arc(center: number, r: number, from: number, to: number): Edge {
  const at = (angle: number) => placed(center + r * Math.cos(angle), r * Math.sin(angle));
  return arcEdge(at(from), at(to), placed(center, 0), true);
}

/** Holds the limit to a gap from either side, in both orders of the pieces and of the places. */
function isOneUpTo(gap: number, e: Edge, f: Edge, p: Point, q: Point): void {
  const rows = new Float64Array(2 * ROW);
  for (const [g, h] of [
    [e, f],
    [f, e],
    [reversed(e), f],
    [e, reversed(f)],
  ] as const) {
    writeRow(rows, 0, g, 0, 0);
    writeRow(rows, 1, h, 0, 0);
    for (const [i, j] of [
      [0, 1],
      [1, 0],
    ] as const) {
      for (const [a, b] of [
        [p, q],
        [q, p],
      ] as const) {
        const isSame = (share: number) => isSameCrossing(rows, i, j, a.x, a.y, b.x, b.y, share * gap);
        expect([isSame(1.01), isSame(0.99)]).toEqual([true, false]);
      }
    }
  }
}

describe('two places are one crossing up to a tolerance as wide as the gap halfway', () => {
  it('of two lines at a shallow angle: half the way times its sine', () => {
    const angle = 1e-3;
    const other = line(-5, -5 * Math.tan(angle), 9, 9 * Math.tan(angle));
    // The second place lies between the two lines, a tiny way off both.
    const q = placed(4, 2 * Math.tan(angle));
    isOneUpTo(2 * Math.sin(angle), line(-5, 0, 9, 0), other, placed(0, 0), q);
  });

  it('of a line and a circle: the sagitta, r - sqrt(r² - (chord / 2)²)', () => {
    const half = Math.sqrt(100 - 81);
    isOneUpTo(1, line(9, -8, 9, 8), arc(0, 10, -1, 1), placed(9, half), placed(9, -half));
  });

  it('of two circles of one size: the distance of their centres', () => {
    const half = Math.sqrt(100 - 0.04);
    isOneUpTo(0.4, arc(0, 10, -1.7, 1.7), arc(0.4, 10, -1.7, 1.7), placed(0.2, half), placed(0.2, -half));
  });
});
