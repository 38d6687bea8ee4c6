import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onPaper } from '../../packages/core/src/alike/on-paper.js';

describe('sums on paper', () => {
  it.each<[readonly (readonly [number, number])[], number]>([
    [
      [
        [1, 12.7],
        [3, 25.4],
      ],
      88.9,
    ],
    [
      [
        [1, 0.1],
        [1, 0.2],
      ],
      0.3,
    ],
    [
      [
        [2, 80],
        [-1, 88.9],
      ],
      71.1,
    ],
    [
      [
        [-1, 1e-7],
        [1, 1e7],
      ],
      9999999.9999999,
    ],
    [
      [
        [1, 1e21],
        [-1, 1e21],
      ],
      0,
    ],
    [[[7, 0]], 0],
    [[], 0],
  ])('%j come to %d', (terms, sum) => {
    expect(onPaper(...terms)).toBe(sum);
  });

  it('are those of whole numbers, with the point put back', () => {
    // Up to four decimals: whole numbers of ten thousandths, which doubles add without an error.
    const written = fc.integer({ min: -1e9, max: 1e9 });
    const times = fc.integer({ min: -1000, max: 1000 });
    fc.assert(
      fc.property(fc.array(fc.tuple(times, written), { minLength: 1, maxLength: 4 }), (terms) => {
        const sum = terms.reduce((total, [n, v]) => total + n * v, 0);
        expect(onPaper(...terms.map(([n, v]) => [n, v / 1e4] as const))).toBe(sum / 1e4 + 0);
      }),
    );
  });

  it('are exact for doubles of any digits that cancel', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.integer({ min: 1, max: 9 }),
        (v, n) => {
          expect(onPaper([n + 1, v], [-n, v])).toBe(v + 0);
        },
      ),
    );
  });
});
