import { generalTolerance } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** ISO 2768-1:1989 table 1, deviations for linear dimensions, mm, as printed at http://fabriqax.com/standarts/. */
const TABLE = `
f 0.05 0.05 0.1 0.15 0.2 0.3 0.5 -
m 0.1 0.1 0.2 0.3 0.5 0.8 1.2 2
c 0.2 0.3 0.5 0.8 1.2 2 3 4
v - 0.5 1 1.5 2.5 4 6 8`;
const RANGES = [0.5, 3, 6, 30, 120, 400, 1000, 2000, 4000];

const rows = TABLE.trim()
  .split('\n')
  .flatMap((line) => {
    const [grade, ...cells] = line.split(' ');
    return cells.map((cell, k) => ({
      grade: grade as 'f' | 'm' | 'c' | 'v',
      over: RANGES[k] as number,
      upTo: RANGES[k + 1] as number,
      deviation: cell === '-' ? null : Number(cell),
    }));
  });

describe('general tolerances', () => {
  it('cover 4 classes of 8 ranges', () => {
    expect(rows).toHaveLength(32);
  });

  it.each(rows)('class $grade over $over up to $upTo mm', ({ grade, over, upTo, deviation }) => {
    expect(generalTolerance(upTo, grade)).toBe(deviation);
    expect(generalTolerance((over + upTo) / 2, grade)).toBe(deviation);
    expect(generalTolerance(over * (1 + 1e-12), grade)).toBe(deviation);
  });

  it('start at 0.5 mm, which they include, and end at 4 m', () => {
    expect(generalTolerance(0.5, 'm')).toBe(0.1);
    expect(generalTolerance(0.499, 'm')).toBeNull();
    expect(generalTolerance(0, 'c')).toBeNull();
    expect(generalTolerance(4000.001, 'm')).toBeNull();
  });
});
