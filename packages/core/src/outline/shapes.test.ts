import { describe, expect, it } from 'vitest';
import { area, loopArea, loopBounds, loopLength, perimeter } from '../region/measure.js';
import type { Loop } from '../region/region.js';
import { circle, rectangle, slot } from './shapes.js';
import { outlineRegion } from './validate.js';

const sources = (loop: Loop) => loop.map((edge) => edge.source);

/** Every end is the next start to the last bit. */
function expectClosed(loop: Loop): void {
  loop.forEach((edge, i) => {
    expect(edge.b).toEqual(loop[(i + 1) % loop.length]?.a);
  });
}

describe('rectangle', () => {
  it('is named from the bottom edge round', () => {
    const loop = rectangle(80, 30, { at: { x: 5, y: 7 } });
    expect(sources(loop)).toEqual(['outline:0', 'outline:1', 'outline:2', 'outline:3']);
    expect(loop[0]).toEqual({ kind: 'line', a: { x: 5, y: 7 }, b: { x: 85, y: 7 }, source: 'outline:0' });
    expect(loopArea(loop)).toBe(2400);
    expectClosed(loop);
  });

  // Elementary: each rounded corner takes r² - pi r²/4 away from the area and 2r - pi r/2 from the perimeter.
  it('has rounded corners', () => {
    const loop = rectangle(80, 30, { corner: 4 });
    expect(sources(loop)).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((i) => `outline:${i}`));
    expect(loop[1]).toMatchObject({ kind: 'arc', a: { x: 76, y: 0 }, b: { x: 80, y: 4 }, ccw: true });
    expect(loopArea(loop)).toBeCloseTo(2400 - (4 - Math.PI) * 16, 10);
    expect(loopLength(loop)).toBeCloseTo(220 - (8 - 2 * Math.PI) * 4, 10);
    expectClosed(loop);
  });

  it('leaves out sides that the corners use up, and keeps the numbers of the others', () => {
    const loop = rectangle(80, 30, { corner: 15 });
    expect(sources(loop)).toEqual([0, 1, 3, 4, 5, 7].map((i) => `outline:${i}`));
    expect(loopArea(loop)).toBeCloseTo(50 * 30 + Math.PI * 225, 9);
    expectClosed(loop);
    expect(area(outlineRegion(rectangle(30, 30, { corner: 15 })))).toBeCloseTo(Math.PI * 225, 9);
  });

  it('stands where it is put, with round corners in sizes that are no binary fractions', () => {
    const loop = rectangle(0.3, 0.7, { at: { x: -0.1, y: 0.2 }, corner: 0.1, owner: 'hole:3' });
    const box = loopBounds(loop);
    expect([box.minX, box.minY, box.maxX, box.maxY].map((n) => Number(n.toFixed(12)))).toEqual([
      -0.1, 0.2, 0.2, 0.9,
    ]);
    expect(loop[0]?.source).toBe('hole:3:0');
    expectClosed(loop);
  });

  it.each([
    [0, 5, 0],
    [5, -1, 0],
    [Number.NaN, 5, 0],
    [5, Number.POSITIVE_INFINITY, 0],
    [5, 5, 2.6],
    [5, 5, -1],
    [5, 5, Number.NaN],
  ])('refuses %d by %d with corner %d', (width, height, corner) => {
    expect(() => rectangle(width, height, { corner })).toThrow(RangeError);
  });
});

describe('circle', () => {
  it('has one name for its two arcs', () => {
    const loop = circle(10, { at: { x: 3, y: 4 } });
    expect(sources(loop)).toEqual(['outline:0', 'outline:0']);
    expect(loopArea(loop)).toBeCloseTo(Math.PI * 25, 12);
    expectClosed(loop);
  });

  it('refuses a diameter that is not over 0', () => {
    expect(() => circle(0)).toThrow('circle: diameter is 0; it must be a finite number over 0');
  });
});

describe('slot', () => {
  // Elementary: a rectangle and a circle.
  it.each([0, 30, 90, 123, 180, 270, 360, -45])(
    'has the area of a rectangle and a circle at %d degrees',
    (degrees) => {
      const loop = slot(40, 12, { at: { x: -7, y: 3 }, angle: (degrees * Math.PI) / 180 });
      const region = outlineRegion(loop);
      expect(area(region)).toBeCloseTo(28 * 12 + Math.PI * 36, 9);
      expect(perimeter(region)).toBeCloseTo(56 + Math.PI * 12, 9);
      expectClosed(loop);
    },
  );

  it('is named from its lower side round, and lies true at right angles', () => {
    const loop = slot(40, 12);
    expect(sources(loop)).toEqual(['outline:0', 'outline:1', 'outline:2', 'outline:3']);
    expect(loop[0]).toMatchObject({ a: { x: -14, y: -6 }, b: { x: 14, y: -6 } });
    expect(slot(40, 12, { angle: Math.PI / 2 })[0]).toMatchObject({
      a: { x: 6, y: -14 },
      b: { x: 6, y: 14 },
    });
  });

  it('is a circle if as long as wide', () => {
    const loop = slot(12, 12);
    expect(sources(loop)).toEqual(['outline:1', 'outline:3']);
    expect(area(outlineRegion(loop))).toBeCloseTo(Math.PI * 36, 10);
  });

  it.each([
    [10, 12],
    [10, 0],
    [Number.NaN, 1],
  ])('refuses length %d with width %d', (length, width) => {
    expect(() => slot(length, width)).toThrow(RangeError);
  });
});
