import { circle, rectangle, slot } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** By definition: a size is a finite number over 0. */
const BAD = [0, -0, -3, Number.NaN, Number.POSITIVE_INFINITY];

describe('ready shapes', () => {
  it.each(BAD)('refuse %s as a size and say which it is', (size) => {
    const fault = (name: string) => `${name} is ${size}; it must be a finite number over 0`;
    expect(() => rectangle(size, 5)).toThrow(`rectangle: ${fault('width')}`);
    expect(() => rectangle(5, size)).toThrow(`rectangle: ${fault('height')}`);
    expect(() => circle(size)).toThrow(`circle: ${fault('diameter')}`);
    expect(() => slot(size, 5)).toThrow(`slot: ${fault('length')}`);
    expect(() => slot(5, size)).toThrow(`slot: ${fault('width')}`);
  });

  it('take corners and widths up to the shorter side, and none over it', () => {
    // Half of 4, the shorter side, whichever it is.
    for (const [width, height] of [
      [9, 4],
      [4, 9],
    ] as const) {
      expect(rectangle(width, height, { corner: 2 })).toHaveLength(6);
      expect(() => rectangle(width, height, { corner: 2.01 })).toThrow('corner radius is 2.01');
    }
    expect(slot(5, 5)).toHaveLength(2);
    expect(() => slot(5, 5.01)).toThrow('width 5.01 is over the length 5');
  });
});
