import { arcEdge, lineEdge } from '@edgebite/core';
import { boxRegion, CLOSE, difference } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import type { Region } from './kernel.js';

/** A plate of the extent 100 and, beside it, a strip 5 long whose mean thickness is next to its width. */
const withStrip = (width: number): Region => [
  ...boxRegion(0, 0, 100, 60),
  ...boxRegion(0, 70, 5, 70 + width),
];
const plate = boxRegion(0, 0, 100, 60);
const limit = CLOSE.thin * 100;

describe('the difference of two regions', () => {
  it('is none where a part is a little over the limit of what is thin in one, and a little under it in the other', () => {
    const [over, under] = [withStrip(limit * 1.001), withStrip(limit * 0.999)];
    expect(difference(over, under, 100)).toBeNull();
    expect(difference(under, over, 100)).toBeNull();
  });

  it('is a part over that limit which only one of them has', () => {
    const wide = withStrip(limit * 1.1);
    expect(difference(wide, plate, 100)).toMatch(/part/);
    expect(difference(plate, wide, 100)).toMatch(/part/);
    expect(difference(wide, plate.concat(boxRegion(0, 80, 5, 80 + limit * 0.9)), 100)).toMatch(/part/);
  });

  it('is a part that one of them has twice', () => {
    const twice = [...withStrip(limit * 1.1), ...boxRegion(0, 70, 5, 70 + limit * 1.2)];
    expect(difference(twice, withStrip(limit * 1.1), 100)).toMatch(/part/);
    expect(difference(withStrip(limit * 1.1), twice, 100)).toMatch(/part/);
  });

  it('is none where a tip slides by the root of the tolerance and of its radius, and is one past that', () => {
    // The lower side of a plate of 100, up to a little before its end; its box ends there.
    const feather = (radius: number, end: number): Region => {
      const at = (x: number) => ({ x, y: 70 + (x * x) / (radius + Math.sqrt(radius * radius - x * x)) });
      const [a, b] = [at(-20), at(-end)];
      const foot = { x: -20, y: 70 };
      return [
        ...plate,
        {
          outer: [
            lineEdge(foot, { x: -end, y: 70 }),
            lineEdge({ x: -end, y: 70 }, b),
            arcEdge(b, a, { x: 0, y: 70 + radius }, false),
            lineEdge(a, foot),
          ],
          holes: [],
        },
      ];
    };
    for (const radius of [40, 400, 40_000]) {
      // How thick the feather is at a place: x^2 / 2 r.
      const at = (thickness: number) => Math.sqrt(2 * radius * thickness);
      const sharp = feather(radius, at(1e-9));
      expect(difference(sharp, feather(radius, at(1.9e-7) + at(1e-9)), 100)).toBeNull();
      expect(difference(sharp, feather(radius, at(2.1e-7) + at(1e-9)), 100)).toMatch(/part/);
    }
  });

  it('is none for a part up to that limit which only one of them has', () => {
    const narrow = withStrip(limit * 0.9);
    expect(difference(narrow, plate, 100)).toBeNull();
    expect(difference(plate, narrow, 100)).toBeNull();
  });
});
