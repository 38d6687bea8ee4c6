import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate, stepOf, told } from './told.js';

const ring = (reach: number): CutDocument => ({
  id: 'ring',
  kind: 'annular',
  center: [40, 15],
  diameter: 20,
  wall: 4,
  reach,
});

describe('a slug on a floor', () => {
  it('of 0.0003 hangs: it is told once, as hanging, by that thickness', () => {
    // In a plate of 12 a reach of 11.9997 leaves 0.0003, against a web limit of 1.5 which is the least that holds.
    const report = told(plate([ring(11.9997)]));
    const { hangs, frees } = stepOf(report, 0);
    expect(frees).toEqual([]);
    expect(hangs).toHaveLength(1);
    expect(hangs[0]?.thickness).toBeCloseTo(0.0003, 9);
    expect(report.bodies).toHaveLength(1);
    expect(report.bodies[0]).toMatchObject({ role: 'hanging', step: 0, held: null });
    // It has no joint of 1.5 as soon as the floor under the kerf is thinner than that; it is told by slabs, whose lower
    // face is where the ring ends.
    expect(report.bodies[0]?.atDepth).toBeCloseTo(11.9997, 9);
    expect(report.pieces.filter(({ role }) => role === 'held slug')).toEqual([]);
    // The core of radius 6 over the foil: pi 36 11.9997. What of the foil under it counts is no more than 0.04.
    expect(Math.abs((report.bodies[0]?.volume ?? 0) - Math.PI * 36 * 11.9997)).toBeLessThan(0.05);
  });

  it('of 20 is held, and nobody is told that so much breaks out', () => {
    const part = { outline: { rectangle: [80, 30] }, thickness: 25 };
    const report = told(plate([ring(5)], { part }));
    expect(stepOf(report, 0).hangs).toEqual([]);
    expect(report.bodies).toHaveLength(1);
    expect(report.bodies[0]).toMatchObject({ role: 'held slug', step: 0 });
    expect(report.floors.map(({ thickness }) => thickness)).toEqual([20]);
    for (const { message } of report.findings) expect(message).not.toMatch(/break/i);
  });

  it('counts as loose metal in no sum: what hangs or is held is still the kept body', () => {
    const { volumes } = stepOf(told(plate([ring(11.9997)])), 0);
    expect(volumes.loose).toBe(0);
    // The ring takes pi (100 - 36) 11.9997 of 80 by 30 by 12.
    expect(volumes.removed).toBeCloseTo(Math.PI * 64 * 11.9997, 6);
    expect(volumes.kept).toBeCloseTo(80 * 30 * 12 - Math.PI * 64 * 11.9997, 6);
  });
});
