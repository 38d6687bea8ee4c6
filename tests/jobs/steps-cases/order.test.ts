import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate, stepOf, told } from './told.js';

describe('two bodies that let go at once', () => {
  it.each([27, 33])('are told largest first, wherever they lie: slot at y = %i', (y) => {
    // A core of radius 16 about (40, 30) is parted by a slot 4 wide, 1 and 5 off its middle. A segment of a circle whose
    // chord is h off the middle has the area r^2 acos(h / r) - h sqrt(r^2 - h^2) (Machinery's Handbook, 31st ed., p. 79).
    const slot: CutDocument = {
      id: 'slot',
      kind: 'swept',
      diameter: 4,
      path: { edges: [{ kind: 'line', a: [18, y], b: [62, y] }] },
    };
    const ring: CutDocument = { id: 'ring', kind: 'annular', center: [40, 30], diameter: 40, wall: 4 };
    const { frees } = stepOf(
      told(plate([slot, ring], { part: { outline: { rectangle: [80, 60] }, thickness: 12 } })),
      1,
    );
    const segment = (h: number) => 256 * Math.acos(h / 16) - h * Math.sqrt(256 - h * h);
    expect(frees.map(({ volume }) => volume)).toEqual([
      expect.closeTo(12 * (256 * Math.PI - segment(1)), 6),
      expect.closeTo(12 * segment(5), 6),
    ]);
  });
});
