import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import type { Place } from '../../outside/machine/sim/shapes.js';
import { plate, stepOf, told } from './told.js';

describe('a centre right on an edge', () => {
  it('has no metal to bear on, on whichever edge it is', () => {
    // The plate is 80 by 30: the middles of its four edges.
    for (const center of [
      [0, 15],
      [80, 15],
      [40, 0],
      [40, 30],
    ] satisfies Place[]) {
      const ring: CutDocument = { id: 'ring', kind: 'annular', center, diameter: 20, wall: 4 };
      const codes = told(plate([ring])).findings.map(({ code }) => code);
      expect(codes, `${center}`).toContain('no-metal-under-centre');
    }
  });
});

describe('a pass that steps in beside the final circle', () => {
  it('takes of loose metal what is under it, not only what the final circle takes', () => {
    // A core of radius 17 about (57, 30) is loose. Passes of radius 9 stand at (41, 30) and (37, 30): the first shares
    // with it what discs 16 apart share, the second nothing more, as that lies within. Source: MathWorld, "Circle-Circle
    // Intersection", equation 14.
    const cuts: CutDocument[] = [
      { id: 'ring', kind: 'annular', center: [57, 30], diameter: 42, wall: 4 },
      {
        id: 'seat',
        kind: 'bore',
        center: [37, 30],
        diameter: 18,
        passes: { kind: 'step in', bite: 4, approach: 180 },
      },
    ];
    const report = told(plate(cuts, { part: { outline: { rectangle: [90, 60] }, thickness: 12 } }));
    expect(report.steps.map(({ center }) => center)).toEqual([
      [57, 30],
      [41, 30],
      [37, 30],
    ]);
    const [r, s, d] = [9, 17, 16];
    const shared =
      r * r * Math.acos((d * d + r * r - s * s) / (2 * d * r)) +
      s * s * Math.acos((d * d + s * s - r * r) / (2 * d * s)) -
      Math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
    expect(stepOf(report, 1).meets[0]?.volume).toBeCloseTo(12 * shared, 6);
    expect(stepOf(report, 2).meets).toEqual([]);
  });
});
