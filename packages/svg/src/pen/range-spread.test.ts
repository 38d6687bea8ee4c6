import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomFor, spread, type Wish } from './range-spread.js';

const wishes = fc
  .array(
    fc.record({
      top: fc.double({ min: -50, max: 150, noNaN: true }),
      height: fc.double({ min: 1, max: 9, noNaN: true }),
    }),
    { maxLength: 40 },
  )
  .map((all): Wish[] => [...all].sort((a, b) => a.top - b.top));

describe('entries of a column', () => {
  it('stay where they wish to be where there is room', () => {
    const all = [
      { top: 10, height: 4 },
      { top: 20, height: 4 },
      { top: 25, height: 4 },
    ];
    expect(spread(all, 0, 100, 1)).toEqual([10, 20, 25]);
  });

  it('share the way that they have to give, and keep within the column', () => {
    // Two wish for the same place: each gives half of the height and the gap, (4 + 2) / 2 = 3.
    const pair = [
      { top: 50, height: 4 },
      { top: 50, height: 4 },
    ];
    expect(spread(pair, 0, 100, 2)).toEqual([47, 53]);
    expect(
      spread(
        [
          { top: -5, height: 4 },
          { top: 0, height: 4 },
        ],
        0,
        100,
        2,
      ),
    ).toEqual([0, 6]);
    expect(
      spread(
        [
          { top: 98, height: 4 },
          { top: 99, height: 4 },
        ],
        0,
        100,
        2,
      ),
    ).toEqual([90, 96]);
    expect(spread([], 0, 100, 2)).toEqual([]);
    expect(roomFor([], 2)).toBe(0);
  });

  it('never overlap and keep their order; they keep within the column where it has room', () => {
    fc.assert(
      fc.property(wishes, fc.double({ min: 0, max: 3, noNaN: true }), (all, gap) => {
        const to = Math.max(100, roomFor(all, gap));
        const tops = spread(all, 0, to, gap);
        tops.forEach((top, k) => {
          const { height } = all[k] as Wish;
          expect(top).toBeGreaterThanOrEqual(-1e-9);
          expect(top + height).toBeLessThanOrEqual(to + 1e-9);
          const next = tops[k + 1];
          if (next !== undefined) expect(next - top - height).toBeGreaterThanOrEqual(gap - 1e-9);
        });
      }),
    );
  });

  it('are nearer to their wishes, by least squares, than with any one of them moved a little', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const tops = spread(all, -1e4, 1e4, 0);
        const miss = (places: readonly number[]) =>
          places.reduce((sum, top, k) => sum + (top - (all[k] as Wish).top) ** 2, 0);
        for (const step of [-0.01, 0.01]) {
          // Moving the entries from one on keeps them in order where there is room before it.
          tops.forEach((_, k) => {
            for (const last of [k, tops.length - 1]) {
              const other = tops.map((top, n) => (n >= k && n <= last ? top + step : top));
              const keeps = other.every(
                (top, n) => n === 0 || top >= (other[n - 1] as number) + (all[n - 1] as Wish).height - 1e-12,
              );
              if (keeps) expect(miss(other)).toBeGreaterThanOrEqual(miss(tops) - 1e-9);
            }
          });
        }
      }),
      { numRuns: 50 },
    );
  });
});
