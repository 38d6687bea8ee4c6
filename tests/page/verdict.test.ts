import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseJob, type RangeQuery, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../packages/previewer/page/src/panels/verdict.js';

const row = JSON.parse(
  readFileSync(fileURLToPath(new URL('../../examples/row-of-bites.json', import.meta.url)), 'utf8'),
);

/** A hole of radius 8 in a plate 60 high, with webs under 2: safe inside from 10 to 50, and in the middle with 20 either way. */
const plate = (center: number) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 60] }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  cuts: [{ id: 'hole', kind: 'bore', center: [50, center], diameter: 16 }],
});

const inRow = (over: Partial<RangeQuery>) =>
  verdictOf(rangeOf(parseJob(row), { cut: 'bite-3', along: 'x', from: 48, to: 58, ...over }));
const inPlate = (center: number, from: number, to: number) =>
  verdictOf(rangeOf(parseJob(plate(center)), { cut: 'hole', along: 'y', from, to }));

describe('the verdict on a range', () => {
  it('says that a value is not safe, and which way the nearest safe one lies', () => {
    // Bites of 14 at 37 and 70 with webs under 1.5: 37 + 14 + 1.5 = 52.5, and 70 - 15.5 = 54.5. The bite is at 51.8.
    const { safe, head, next, stretches } = inRow({});
    expect([safe, head]).toEqual([false, 'Not safe at 51.800 mm']);
    expect(next).toBe('Nearest safe: 52.500 to 54.500 mm, which begins 0.700 mm up.');
    expect(stretches).toContain('52.500 to 54.500 mm');
  });

  it('says how much room a safe value has, as far as the range goes', () => {
    expect(inPlate(30, 5, 55)).toMatchObject({
      safe: true,
      head: 'Safe at 30.000 mm, as to shape and clamps',
      next: 'Room to the next change: 20.000 mm down, 20.000 mm up.',
    });
    expect(inPlate(30, 25, 45).next).toBe(
      'Room to the next change: 5.000 mm and more down, 15.000 mm and more up.',
    );
  });

  it('says so where a value lies outside, on a change, or where nothing is safe', () => {
    expect(inRow({ from: 52, to: 58 })).toMatchObject({
      safe: null,
      head: '51.800 mm is outside of this range',
      next: 'Nearest safe: 52.500 to 54.500 mm, which begins 0.700 mm up.',
    });
    // Under 8 cos 30 = 6.928 the edge and the rim cross at over 30 degrees.
    expect(inPlate(8, 5, 55)).toMatchObject({
      safe: false,
      head: 'Stay off 8.000 mm: two edges touch there',
      next: 'Nearest safe: 5.000 to 6.928 mm, which begins 1.072 mm down.',
    });
    expect(inRow({ from: 51.1, to: 52.4 })).toMatchObject({
      next: 'Nothing in this range is safe.',
      stretches: [],
    });
  });
});
