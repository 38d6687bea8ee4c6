import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * A seat of radius 15 with its centre 4 over the back face of a plate 80 by 40, so 44 over its front. ISO 2768-1, table 1,
 * class m: over 3 up to 6 mm 0.1, over 6 up to 30 0.2, over 30 up to 120 0.3.
 */

function waysOf(over: object, scale = 1) {
  const job = {
    edgebite: 1,
    units: scale === 1 ? 'mm' : 'inch',
    part: { outline: { rectangle: [80 / scale, 40 / scale] }, thickness: 20 / scale },
    cuts: [{ id: 'a', kind: 'bore', center: [40 / scale, 44 / scale], diameter: 30 / scale }],
    ...over,
  };
  return examine(parseJob(job)).checks[0]?.ways ?? [];
}

const GENERAL = (scale: number) => ({
  part: { outline: { rectangle: [80 / scale, 40 / scale] }, thickness: 20 / scale, tolerances: 'm' },
});

describe('what a reading may be', () => {
  it.each([1, 25.4])(
    'is the radius and the place by the general tolerances of each, in a unit of %f mm',
    (scale) => {
      const allowed = (kind: string) => {
        const way = waysOf(GENERAL(scale), scale).find((one) => one.kind === kind);
        return way?.allowed?.map((end) => end * scale);
      };
      // 44 - 15 = 29 left to the front: 0.2 of the radius and 0.3 of the 44. 11 deep from the back: 0.2 and 0.1 of the 4.
      expect(allowed('left')).toEqual([expect.closeTo(28.5, 9), expect.closeTo(29.5, 9)]);
      expect(allowed('depth')).toEqual([expect.closeTo(10.7, 9), expect.closeTo(11.3, 9)]);
      // A height over a chord c does not tell the place: r - sqrt(r^2 - c^2 / 4), which falls as the radius grows.
      const height = waysOf(GENERAL(scale), scale).find(({ kind }) => kind === 'height');
      const half = ((height?.chord ?? 0) * scale) / 2;
      expect(allowed('height')).toEqual(
        [15.2, 14.8].map((r) => expect.closeTo(r - Math.sqrt(r * r - half * half), 9)),
      );
    },
  );

  it('is nothing where the part has no tolerances', () => {
    expect(waysOf({}).map(({ allowed }) => allowed)).toEqual(waysOf({}).map(() => null));
  });
});

describe('pins for a seat of radius 15', () => {
  const pinsOf = (pins: readonly number[]) =>
    waysOf({ gauges: { pins } }).flatMap((way) =>
      way.pin === null ? [] : [{ pin: way.pin, pins: way.pins, isRead: Number.isFinite(way.reading) }],
    );

  it('are two side by side only where both go in', () => {
    // Two of 14.9 are 29.8 across, but touch the horns; two of 15 and of 20 are as wide as the seat, or wider.
    for (const wide of [15, 20, 26]) {
      const told = pinsOf([8, wide]);
      expect(new Set(told.filter(({ pins }) => pins === 2).map(({ pin }) => pin))).toEqual(new Set([8]));
      expect(new Set(told.filter(({ pins }) => pins === 1).map(({ pin }) => pin))).toEqual(new Set([wide]));
      expect(told.every(({ isRead }) => isRead)).toBe(true);
    }
    expect(pinsOf([30])).toEqual([]);
  });
});
