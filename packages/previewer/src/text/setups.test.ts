import { examine, parseJob } from '@edgebite/core';
import { expect, it } from 'vitest';
import { setupsText } from './setups.js';

it('tells how far each thing of a zero may be off, and their sum for the zero itself', () => {
  // A stop touched to 0.03 and a block to 0.04: 0.07 at worst, and not the 0.05 of the root of squares.
  const zero = {
    x: [
      { touch: 's', tip: 10, tolerance: 0.03 },
      { bears: 'left', on: 's', block: 20, tolerance: 0.04 },
    ],
    y: [{ touch: 'front', tip: 10, tolerance: 0.02 }],
  };
  const text = setupsText(
    examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 30] }, thickness: 12 },
        setups: [{ id: 'one', stops: [{ id: 's', face: 'left' }], zero, cuts: ['a'] }],
        cuts: [{ id: 'a', kind: 'bore', center: [40, 15], diameter: 8 }],
      }),
    ),
  );
  const offs = (axis: string) =>
    text
      .split('\n')
      .flatMap((line) => (line.trim().startsWith(`${axis} `) ? (line.match(/±[\d.]+$/) ?? []) : []));
  expect(offs('x').at(-1)).toBe('±0.0700');
  expect(offs('x')).toEqual(expect.arrayContaining(['±0.0300', '±0.0400']));
  expect(offs('y').at(-1)).toBe('±0.0200');
  // The target besides by half a step of 0.005: 0.0725 along x and 0.0225 along y.
  expect(text).toMatch(/ 0\.0725 +0\.0225$/m);
});
