import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { findingsOf, plate, stepOf, told } from './told.js';

/*
 * A ring of diameter 40 and wall 4 in a plate 12 thick frees a core of radius 16: pi 16^2 12 = 9650.97. A bore of radius
 * 10, 10 beside its middle, takes of that what both discs share.
 */

const RING: CutDocument = { id: 'ring', kind: 'annular', center: [40, 30], diameter: 40, wall: 4 };
const BORE: CutDocument = { id: 'bore', kind: 'bore', center: [50, 30], diameter: 20 };

const WIDE = { part: { outline: { rectangle: [80, 60] }, thickness: 12 } };

/** Area that two discs share. Source: MathWorld, "Circle-Circle Intersection", equation 14. */
function shared(r: number, s: number, d: number): number {
  const one = r * r * Math.acos((d * d + r * r - s * s) / (2 * d * r));
  const other = s * s * Math.acos((d * d + s * s - r * r) / (2 * d * s));
  return one + other - Math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
}

describe('a slug that a later bore cuts into', () => {
  const report = told(plate([RING, BORE], WIDE));

  it('is told as it falls out, not as it is left', () => {
    const [slug, ...others] = stepOf(report, 0).frees;
    expect(others).toEqual([]);
    expect(slug?.volume).toBeCloseTo(Math.PI * 256 * 12, 6);
    expect(slug?.atDepth).toBe(12);
    expect(report.bodies).toHaveLength(1);
    expect(report.bodies[0]).toMatchObject({
      role: 'slug',
      step: 0,
      atDepth: 12,
      end: 'cut into',
      endStep: 1,
    });
    expect(report.bodies[0]?.volume).toBeCloseTo(Math.PI * 256 * 12, 6);
  });

  it('is met by the bore, which says how much loose metal is in its way', () => {
    const { meets } = stepOf(report, 1);
    expect(meets).toHaveLength(1);
    expect(meets[0]?.body).toBe(report.bodies[0]?.id);
    expect(meets[0]?.volume).toBeCloseTo(12 * shared(16, 10, 10), 6);
    const level = findingsOf(report, 1).find(({ message }) => /loose/.test(message))?.level;
    expect(level).toBe('danger');
  });

  it('is taken to be lifted out where the load of the bore is worked out', () => {
    // Of the bore's circle only what lies in the plate outside of the ring's outer circle, radius 20, is in metal: its
    // furthest place is 20 from the ring's middle, so it touches from within and is never in metal.
    expect(stepOf(report, 1).load?.entry).toBeNull();
  });
});

describe('a slug that two later bores cut into', () => {
  it('ends with the first of them, and is met by both', () => {
    const other: CutDocument = { ...BORE, id: 'other', center: [30, 30] };
    const report = told(plate([RING, BORE, other], WIDE));
    expect(report.bodies).toHaveLength(1);
    expect(report.bodies[0]).toMatchObject({ end: 'cut into', endStep: 1 });
    expect([1, 2].map((k) => stepOf(report, k).meets.map(({ body }) => body))).toEqual([
      ['slug-1'],
      ['slug-1'],
    ]);
  });
});

describe('a ring that frees two halves of a core', () => {
  it('tells the one first that lets go first', () => {
    // A slot parts the core from back to front, and a wide cut from below takes 4 under its left half and all round that:
    // it lets go 8 deep, the right half 12 deep. Each is half of a core of radius 16 less half of the slot, 2 wide.
    const line = (a: readonly [number, number], b: readonly [number, number]) => ({
      edges: [{ kind: 'line' as const, a, b }],
    });
    const slot: CutDocument = { id: 'slot', kind: 'swept', diameter: 2, path: line([40, 12], [40, 48]) };
    const under: CutDocument = {
      id: 'under',
      kind: 'swept',
      diameter: 40,
      depth: 4,
      from: 'bottom',
      path: line([20, 5], [20, 55]),
    };
    const report = told(plate([slot, under, RING], { ...WIDE, keep: [75, 5] }));
    const half = (Math.PI * 256) / 2 - (Math.sqrt(255) + 256 * Math.asin(1 / 16));
    const { frees } = stepOf(report, 2);
    expect(frees.map(({ atDepth }) => atDepth)).toEqual([expect.closeTo(8, 9), 12]);
    expect(frees.map(({ volume }) => volume)).toEqual([8, 12].map((high) => expect.closeTo(half * high, 3)));
  });
});
