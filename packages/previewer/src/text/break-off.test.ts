import { examine, parseJob } from '@edgebite/core';
import { expect, it } from 'vitest';
import { breakOffText } from './break-off.js';

it('says how long a saw cut is and how deep it goes, of a web through all its slabs', () => {
  // A ring 10 deep in a plate of 12 leaves a floor of 2, and two slabs of 2 and 10. A bore of 8 leaves 1 to the edge,
  // from bottom to top: a saw goes across 1 and through 12.
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 30] }, thickness: 12, material: 'aluminium' },
      limits: { web: 1.5, knifeEdge: 30 },
      cuts: [
        { id: 'eye', kind: 'bore', center: [15, 5], diameter: 8 },
        { id: 'ring', kind: 'annular', center: [50, 15], diameter: 20, wall: 4, depth: 10 },
      ],
    }),
  );
  const rows = breakOffText(report)
    .split('\n')
    .map((line) => line.trim().split(/ {2,}/));
  const cell = (row: string, column: string) =>
    rows.find(([name]) => name?.startsWith(row))?.at((rows[0] as string[]).indexOf(column));
  expect([cell('web W1', 'saw cut'), cell('web W1', 'through')]).toEqual(['1.000', '12.000']);
  expect(cell('floor under', 'through')).toBe('2.000');
  // 12 mm2 of web at 83 (annealed, from memory) to 207 MPa (6061-T6), to two digits.
  expect(cell('web W1', 'shear N')).toBe('1000 to 2500');
});
