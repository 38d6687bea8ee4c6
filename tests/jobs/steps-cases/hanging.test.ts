import { examine, parseJob } from '@edgebite/core';
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

  it('takes the force that shears all of the metal round it', () => {
    // A core of 12 on 0.5: pi 12 0.5 mm2. Aluminium shears at 83 (annealed, from memory) to 207 MPa (6061-T6, sheet).
    const part = { outline: { rectangle: [80, 30] }, thickness: 12, material: 'aluminium' };
    const [hung] = stepOf(told(plate([ring(11.5)], { part })), 0).hangs;
    expect(hung?.thickness).toBeCloseTo(0.5, 9);
    expect(hung).toMatchObject({ forceUnit: 'N' });
    const { force = [] } = hung as unknown as { force: number[] };
    expect(force[0]).toBeCloseTo(Math.PI * 12 * 0.5 * 83, 6);
    expect(force[1]).toBeCloseTo(Math.PI * 12 * 0.5 * 207, 6);
  });

  it('takes that of the whole floor under the kerf where it is held', () => {
    // A floor of 2, over the 1.5 that holds, sheared right round the core of 12: pi 12 2 mm2.
    const part = { outline: { rectangle: [80, 30] }, thickness: 12, material: 'aluminium' };
    const [held] = told(plate([ring(10)], { part })).bodies as unknown as { held: { force: number[] } }[];
    expect(held).toMatchObject({ role: 'held slug', held: { thickness: 2, forceUnit: 'N' } });
    expect(held?.held.force[0]).toBeCloseTo(Math.PI * 12 * 2 * 83, 6);
    expect(held?.held.force[1]).toBeCloseTo(Math.PI * 12 * 2 * 207, 6);
  });

  it('takes that of the wall alone where it hangs at the rim of the part', () => {
    // A core of radius 6 with its middle on the edge y = 30: half a circle of kerf, pi 6 0.5 mm2.
    const part = { outline: { rectangle: [80, 30] }, thickness: 12, material: 'aluminium' };
    const [hung] = stepOf(told(plate([{ ...ring(11.5), center: [40, 30] }], { part })), 0).hangs;
    const { force = [] } = hung as unknown as { force: number[] };
    expect(force[0]).toBeCloseTo(Math.PI * 6 * 0.5 * 83, 6);
    expect(force[1]).toBeCloseTo(Math.PI * 6 * 0.5 * 207, 6);
  });
});

describe('a slug that a floor holds within what hung before it', () => {
  // A ring leaves a corner that hangs by 1.35 mm; a second ring, too short, takes its core out of that corner.
  const outline = { rectangle: [78, 65] };
  const cuts = [
    { id: 'first', kind: 'annular', center: [10.52, 22.35], diameter: 42, wall: 3.6, reach: 18 },
    { id: 'second', kind: 'annular', center: [1.96, 0.44], diameter: 38, wall: 3.88, reach: 9 },
  ];
  const limits = { web: 1.5, hold: 1.5 };

  it('is a body of its own, and no piece is in two bodies', () => {
    const { bodies, pieces } = examine(
      parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 11 }, limits, cuts }),
    );
    const ids = bodies.map(({ id }) => id);
    expect(bodies.map(({ role }) => role)).toEqual(['slug', 'hanging', 'held slug']);
    expect(new Set(ids).size).toBe(ids.length);
    const held = bodies.find(({ role }) => role === 'held slug');
    expect(held?.pieces).toEqual([pieces.find(({ role }) => role === 'held slug')?.id]);
    const owned = bodies.flatMap((body) => body.pieces).filter((id) => id !== 'kept');
    expect(new Set(owned).size).toBe(owned.length);
  });
});

describe('the corner that one bore parts off', () => {
  // A bore of 6.7, 8.5 from one face and 3.5 from the other, leaves 1.8 of the 2 that hold where it is 3.5 off.
  const [r, off, near] = [6.7, 8.5, 3.5];
  const [width, height] = [30, 20];
  const corners = [0, width].flatMap((x) => [0, height].map((y) => [x, y] as const));

  it.each(
    corners.flatMap(([x, y]) => [
      [x, y, off, near],
      [x, y, near, off],
    ]),
  )('at (%d, %d) hangs, with the bore %d and %d from it', (x, y, dx, dy) => {
    const center = [Math.abs(x - dx), Math.abs(y - dy)] as const;
    const part = { outline: { rectangle: [width, height] }, thickness: 6 };
    const limits = { web: 2, knifeEdge: 30 };
    const report = told(plate([{ id: 'a', kind: 'bore', center, diameter: 2 * r }], { part, limits }));
    const [hung] = stepOf(report, 0).hangs;
    expect(hung?.thickness).toBeCloseTo(off - r, 9);
    expect(report.bodies).toMatchObject([{ role: 'hanging', step: 0, end: 'left' }]);
    // The rectangle of 8.5 by 3.5 less what the circle takes of it: half of 3.5 chords and of a sector of asin(3.5 / 6.7).
    const taken = (near * Math.sqrt(r * r - near * near) + r * r * Math.asin(near / r)) / 2;
    const [body] = report.bodies;
    // Across the neck less than a thousandth is taken as cut.
    expect(body?.volume).toBeLessThanOrEqual(6 * (off * near - taken));
    expect(body?.volume).toBeGreaterThan(6 * (off * near - taken - (off - r) / 1000));
  });
});
