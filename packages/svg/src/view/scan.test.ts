import { describe, expect, it } from 'vitest';
import { block } from '../../fixtures/block.js';
import { arc, circle, polygon, region } from '../../fixtures/shapes.js';
import { boundsOfRegion, placeInside, stretchesAt } from './scan.js';

describe('stretches at a level', () => {
  const holed = region(polygon([0, 0], [10, 0], [10, 10], [0, 10]), circle([5, 5], 3, false, 'cut:a'));

  // Half chord of a circle: sqrt(r² - d²), Euclid III.3.
  it.each([
    [
      5,
      [
        [0, 2],
        [8, 10],
      ],
    ],
    [
      7,
      [
        [0, 5 - Math.sqrt(5)],
        [5 + Math.sqrt(5), 10],
      ],
    ],
    [9, [[0, 10]]],
    [11, []],
  ])('at %f', (level, expected) => {
    const found = stretchesAt(holed, level);
    expect(found.length).toBe(expected.length);
    expect(found.flat().every((x, i) => Math.abs(x - (expected.flat()[i] as number)) < 1e-12)).toBe(true);
  });

  it('finds both sides of a circle, wherever its arcs join and whichever way they run', () => {
    for (const turn of [0, 0.25, 0.6, 1.1, 2.5]) {
      for (const ccw of [true, false]) {
        const at = (angle: number) => [5 + 3 * Math.cos(angle), 5 + 3 * Math.sin(angle)] as const;
        const [a, b] = [at(turn * Math.PI), at((turn + 1) * Math.PI)];
        const loop = [arc(a, b, [5, 5], 3, ccw, 'cut:a'), arc(b, a, [5, 5], 3, ccw, 'cut:a')];
        const found = stretchesAt(region(loop), 6.2);
        expect(found).toHaveLength(1);
        expect(found[0]?.[0]).toBeCloseTo(5 - Math.sqrt(9 - 1.44), 12);
        expect(found[0]?.[1]).toBeCloseTo(5 + Math.sqrt(9 - 1.44), 12);
      }
    }
    const ends = { low: [5, 2], high: [5, 8] } as const;
    const upright = region([
      arc(ends.low, ends.high, [5, 5], 3, true, 'cut:a'),
      arc(ends.high, ends.low, [5, 5], 3, true, 'cut:a'),
    ]);
    expect(stretchesAt(upright, 5)).toEqual([[2, 8]]);
  });

  it('counts a level through corners and through the highest point of an arc once or twice, never by half', () => {
    expect(stretchesAt(holed, 0)).toEqual([[0, 10]]);
    expect(stretchesAt(holed, 8)).toEqual([[0, 10]]);
    expect(stretchesAt(region(polygon([0, 0], [5, 5], [10, 0], [5, 9])), 5)).toHaveLength(1);
  });
});

describe('a place inside', () => {
  it('lies in metal, away from holes and rims', () => {
    for (const piece of block.pieces) {
      const place = placeInside(piece.view);
      const [x, y] = place as readonly [number, number];
      expect(stretchesAt(piece.view, y).some(([from, to]) => from < x && x < to)).toBe(true);
    }
  });

  it('is null for nothing', () => {
    expect(placeInside([])).toBeNull();
  });
});

describe('bounds', () => {
  it('take in the bulge of an arc', () => {
    const slug = block.pieces[1];
    const bounds = boundsOfRegion(slug?.view ?? []);
    expect(bounds?.minX).toBeCloseTo(71.5, 12);
    expect(bounds?.maxX).toBe(80);
  });
});
