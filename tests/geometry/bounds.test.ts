import { boxAround, boxesMeet, extentOf, grown, joined, middleOf, moved, vector } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

describe('a box', () => {
  const one = box(2, 3, 10, 5);

  it('has the longer side as its extent, whichever that is', () => {
    expect(extentOf(one)).toBe(8);
    expect(extentOf(box(3, 2, 5, 10))).toBe(8);
  });

  it('has its middle halfway between its sides, wherever it lies', () => {
    expect(middleOf(one)).toEqual({ x: 6, y: 4 });
    expect(middleOf(box(-10, -5, -2, -3))).toEqual({ x: -6, y: -4 });
  });

  it('grows to all sides, and back', () => {
    expect(grown(one, 2)).toEqual(box(0, 1, 12, 7));
    expect(grown(grown(one, 2), -2)).toEqual(one);
    expect(boxAround({ x: 3, y: -4 }, 2)).toEqual(box(1, -6, 5, -2));
  });

  it('joined with another holds both and no more', () => {
    expect(joined(one, box(4, 0, 6, 9))).toEqual(box(2, 0, 10, 9));
    expect(joined(box(0, 4, 11, 4.5), one)).toEqual(box(0, 3, 11, 5));
  });

  // Two boxes are apart where a line along an axis parts them: one on each of the four sides.
  it.each([
    ['left', -7, 0],
    ['right', 7, 0],
    ['below', 0, -5],
    ['above', 0, 5],
  ])('meets another up to where they touch, to the %s', (_, x, y) => {
    const still = box(0, 0, 7, 5);
    const beside = (by: number) => box(x * by, y * by, 7 + x * by, 5 + y * by);
    for (const [by, meets] of [
      [0.5, true],
      [1, true],
      [1.01, false],
    ] as const) {
      expect([by, boxesMeet(still, beside(by))]).toEqual([by, meets]);
      expect([by, boxesMeet(beside(by), still)]).toEqual([by, meets]);
    }
  });
});

describe('a vector', () => {
  it('leads from one place to the other', () => {
    const [a, b] = [
      { x: 3, y: -2 },
      { x: -1, y: 5 },
    ];
    expect(vector(a, b)).toEqual({ dx: -4, dy: 7 });
    expect(moved(a, vector(a, b))).toEqual(b);
    expect(moved(a, vector(a, b), 0.5)).toEqual({ x: 1, y: 1.5 });
  });
});
