import { type ArcEdge, arcEdge, type Edge, lineEdge, reversed } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ROW, writeRow } from '../../packages/core/src/geometry/curves.js';
import { meetRows } from '../../packages/core/src/geometry/meet.js';

/* Where the overlay's loops look for crossings: an end on the other edge is found before, and must not come twice. */

const TOLERANCE = 1e-9;
const p = (x: number, y: number) => ({ x, y });

/** How many places lie on both and on no end; the same from both, whichever way they run. */
function count(e: Edge, f: Edge): number {
  const rows = new Float64Array(2 * ROW);
  const out = new Float64Array(5);
  const counts = [
    [e, f],
    [f, e],
    [reversed(e), f],
    [e, reversed(f)],
  ].map(([one, other]) => {
    writeRow(rows, 0, one as Edge, 0, 0);
    writeRow(rows, 1, other as Edge, 0, 0);
    return meetRows(rows, 0, 1, TOLERANCE, out);
  });
  expect(new Set(counts).size).toBe(1);
  return counts[0] as number;
}

describe('inside both edges lie', () => {
  // 3, 4, 5: all places below are exact.
  const upper: ArcEdge = arcEdge(p(5, 0), p(-5, 0), p(0, 0), true);

  it('no crossing where a line ends on another, one where it goes on', () => {
    const line = lineEdge(p(0, 0), p(4, 0));
    expect(count(line, lineEdge(p(2, 0), p(3, 3)))).toBe(0);
    expect(count(line, lineEdge(p(0, -1), p(0, 2)))).toBe(0);
    expect(count(line, lineEdge(p(4, -1), p(4, 2)))).toBe(0);
    expect(count(line, lineEdge(p(1, -1), p(3, 1)))).toBe(1);
  });

  it('no crossing where a line ends on an arc, one where it goes on', () => {
    expect(count(lineEdge(p(0, 4), p(3, 4)), upper)).toBe(0);
    expect(count(lineEdge(p(0, 4), p(4, 4)), upper)).toBe(1);
    expect(count(lineEdge(p(-3, 4), p(3, 4)), upper)).toBe(0);
    expect(count(lineEdge(p(-4, 4), p(4, 4)), upper)).toBe(2);
    expect(count(lineEdge(p(-4, 4), p(3, 4)), upper)).toBe(1);
  });

  it('no touching place where a line ends in it, one where it goes on', () => {
    expect(count(lineEdge(p(0, 5), p(3, 5)), upper)).toBe(0);
    expect(count(lineEdge(p(-3, 5), p(0, 5)), upper)).toBe(0);
    expect(count(lineEdge(p(-3, 5), p(3, 5)), upper)).toBe(1);
  });
});
