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

  it('is none for a part up to that limit which only one of them has', () => {
    const narrow = withStrip(limit * 0.9);
    expect(difference(narrow, plate, 100)).toBeNull();
    expect(difference(plate, narrow, 100)).toBeNull();
  });
});
