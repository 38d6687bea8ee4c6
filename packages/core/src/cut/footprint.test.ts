import { describe, expect, it } from 'vitest';
import { lineEdge } from '../geometry/edge.js';
import { area, loopsOf, perimeter } from '../region/measure.js';
import type { Cut } from './cut.js';
import { coreOf, footprint } from './footprint.js';

const EVERY = { id: 'seat', from: 'top', depth: 5, through: false } as const;
const RING = {
  ...EVERY,
  kind: 'annular',
  center: { x: 83, y: 15 },
  diameter: 32,
  wall: 4.5,
  reach: null,
} as const;

describe('footprint', () => {
  // Elementary: areas of circle, ring and slot.
  it.each<[Cut, number, number]>([
    [{ ...EVERY, kind: 'bore', center: { x: 83, y: 15 }, diameter: 34 }, Math.PI * 289, Math.PI * 34],
    [RING, Math.PI * (256 - 132.25), Math.PI * (32 + 23)],
    [
      { ...EVERY, kind: 'swept', diameter: 6, path: [lineEdge({ x: 0, y: 0 }, { x: 30, y: 40 })] },
      300 + Math.PI * 9,
      100 + Math.PI * 6,
    ],
  ])('of %o', (cut, size, length) => {
    const region = footprint(cut);
    expect(area(region)).toBeCloseTo(size, 9);
    expect(perimeter(region)).toBeCloseTo(length, 9);
    for (const edge of loopsOf(region).flat()) expect(edge.source).toBe('cut:seat');
  });
});

describe('coreOf', () => {
  it('is the disc inside the teeth', () => {
    expect(area(coreOf(RING))).toBeCloseTo(Math.PI * 11.5 ** 2, 10);
    expect(area(coreOf(RING)) + area(footprint(RING))).toBeCloseTo(Math.PI * 256, 10);
  });
});
