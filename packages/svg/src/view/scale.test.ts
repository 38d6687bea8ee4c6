import { describe, expect, it } from 'vitest';
import { factorOf, largestScale, roundLength, SCALES, scaleText } from './scale.js';

describe('scales', () => {
  // ISO 5455: 50:1 20:1 10:1 5:1 2:1, 1:1, 1:2 1:5 1:10 1:20 1:50 1:100, and so on by powers of ten.
  it('are those of ISO 5455, largest first', () => {
    const texts = SCALES.map(scaleText);
    const middle = texts.indexOf('1:1');
    expect(texts.slice(middle - 5, middle + 7)).toEqual(
      '50:1 20:1 10:1 5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100'.split(' '),
    );
    expect(SCALES.map(factorOf)).toEqual([...SCALES.map(factorOf)].sort((a, b) => b - a));
  });

  it('are chosen as large as fits', () => {
    expect(scaleText(largestScale((factor) => 80 * factor <= 200))).toBe('2:1');
    expect(scaleText(largestScale((factor) => 80 * factor <= 160))).toBe('2:1');
    expect(scaleText(largestScale((factor) => 80 * factor < 160))).toBe('1:1');
    expect(scaleText(largestScale((factor) => 1e4 * factor <= 200))).toBe('1:50');
  });

  it('fall back on the smallest', () => {
    expect(largestScale(() => false)).toEqual(SCALES.at(-1));
  });
});

describe('round lengths', () => {
  it.each([
    [42, 20],
    [50, 50],
    [0.0019, 0.001],
    [1.654, 1],
    [1000, 1000],
  ])('under %f: %f', (limit, length) => {
    expect(roundLength(limit)).toBeCloseTo(length, 12);
  });
});
