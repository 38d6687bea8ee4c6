import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * Two passes into a straight face: a bore of radius 10 goes 5 deep into it, in bites of 2.5. J. Burkardt's segments of a
 * unit circle, printed: 0.226656 for a height of 1/4, 0.614185 for 1/2.
 */

const FIRST = 22.6656;
const BOTH = 61.4185;

describe('the volume of each pass', () => {
  it.each([
    { name: 'through', over: {}, depth: 12 },
    { name: 'blind from the top', over: { depth: 5 }, depth: 5 },
    { name: 'blind from the bottom', over: { depth: 5, from: 'bottom' }, depth: 5 },
  ])('is its area times how deep it goes: $name', ({ over, depth }) => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 30] }, thickness: 12 },
        cuts: [
          {
            id: 'bite',
            kind: 'bore',
            center: [40, 35],
            diameter: 20,
            passes: { kind: 'step in', bite: 2.5, approach: 270 },
            ...over,
          },
        ],
      } as never),
    );
    const volumes = report.cuts[0]?.passes?.list.map(({ volume }) => volume) ?? [];
    expect(volumes).toHaveLength(2);
    expect(volumes[0]).toBeGreaterThan((FIRST - 5e-5) * depth);
    expect(volumes[0]).toBeLessThan((FIRST + 5e-5) * depth);
    expect(volumes[1]).toBeGreaterThan((BOTH - FIRST - 1e-4) * depth);
    expect(volumes[1]).toBeLessThan((BOTH - FIRST + 1e-4) * depth);
  });
});
