import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** A window 80 by 30 whose corners have the radii given, from the lower left one round. */
const windowOf = ([a, b, c, d]: readonly [number, number, number, number]) =>
  [
    `M${a} 0H${80 - b}A${b} ${b} 0 0 1 80 ${b}`,
    `V${30 - c}A${c} ${c} 0 0 1 ${80 - c} 30`,
    `H${d}A${d} ${d} 0 0 1 0 ${30 - d}V${a}A${a} ${a} 0 0 1 ${a} 0Z`,
  ].join('');

function found(radii: readonly [number, number, number, number], diameter: number) {
  const { findings } = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { svgPath: windowOf(radii) }, thickness: 12 },
      cuts: [{ id: 'in', kind: 'swept', diameter, depth: 3, path: { along: { side: 'inside' } } }],
    }),
  );
  return findings.find(({ code }) => code === 'path-leaves-metal')?.message;
}

describe('a tool that does not reach into all corners', () => {
  // A tool reaches into a corner rounded by no more than its own radius (definition of the opening, Serra 1982).
  it.each([
    [[6, 5, 6, 5], 14, 4, '10.000'],
    [[6, 3, 5, 8], 14, 3, '6.000'],
    [[3, 6, 8, 8], 14, 2, '6.000'],
  ] as const)(
    'radii %o with a tool of %d: %d places, and one that is smaller reaches all',
    (radii, tool, places, most) => {
      expect(found(radii, tool)).toContain(`does not reach ${places} places`);
      expect(found(radii, tool)).toContain(`One of ${most} mm or less reaches all of it.`);
    },
  );

  it('and one that does is told nothing', () => {
    expect(found([8, 7, 8, 7], 14)).toBeUndefined();
  });
});
