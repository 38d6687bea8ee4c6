import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { meet } from '../geometry/meet.js';
import { surelyApart } from './apart.js';

const GAP = 1e-9;
const P = (x: number, y: number) => ({ x, y });
const arc = (x: number, y: number, r: number, from: number, turn: number): Edge =>
  arcEdge(
    P(x + r * Math.cos(from), y + r * Math.sin(from)),
    P(x + r * Math.cos(from + turn), y + r * Math.sin(from + turn)),
    P(x, y),
    turn > 0,
  );

describe('surelyApart', () => {
  it('tells pairs apart that are', () => {
    const line = lineEdge(P(0, 0), P(10, 0));
    expect(surelyApart(line, lineEdge(P(0, 1), P(10, 2)), GAP)).toBe(true);
    expect(surelyApart(lineEdge(P(5, 3), P(5, 1)), line, GAP)).toBe(true);
    expect(surelyApart(line, arc(5, 2, 1, 0, 3), GAP)).toBe(true);
    expect(surelyApart(arc(5, 0, 20, 0, 3), line, GAP)).toBe(true);
    expect(surelyApart(arc(0, 0, 1, 0, 3), arc(5, 0, 3, 0, 3), GAP)).toBe(true);
    expect(surelyApart(arc(0, 0, 1, 0, 3), arc(1, 0, 3, 0, 3), GAP)).toBe(true);
  });

  it('does not tell pairs apart within the gap', () => {
    const line = lineEdge(P(0, 0), P(10, 0));
    expect(surelyApart(line, lineEdge(P(0, 5e-10), P(10, 5)), GAP)).toBe(false);
    expect(surelyApart(line, arc(5, 1 + 5e-10, 1, 3, 3), GAP)).toBe(false);
    expect(surelyApart(arc(0, 0, 1, -1, 2), arc(2 + 5e-10, 0, 1, 2, 2), GAP)).toBe(false);
  });

  it('never tells edges apart that meet', () => {
    const n = fc.integer({ min: -4, max: 4 });
    const edge = fc.oneof(
      fc
        .tuple(n, n, n, n)
        .filter(([a, b, c, d]) => a !== c || b !== d)
        .map(([a, b, c, d]) => lineEdge(P(a, b), P(c, d))),
      fc
        .tuple(
          n,
          n,
          fc.integer({ min: 1, max: 4 }),
          fc.integer({ min: 0, max: 11 }),
          fc.integer({ min: 1, max: 11 }),
        )
        .map(([x, y, r, from, turn]) => arc(x, y, r, (from * Math.PI) / 6, (turn * Math.PI) / 6)),
    );
    fc.assert(
      fc.property(edge, edge, (e, f) => {
        if (meet(e, f, GAP).kind !== 'apart') expect(surelyApart(e, f, GAP)).toBe(false);
      }),
      { numRuns: 5000 },
    );
  });
});
