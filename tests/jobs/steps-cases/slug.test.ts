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
