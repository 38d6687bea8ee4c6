import { area, disc, intersect, type Region, subtract, union, xor } from '@edgebite/core';
import { validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { slabs, slabsSubtract } from '../tools/slabs.js';
import { box, p } from './shapes.js';

/*
 * Circles that touch, or coincide, but for less than welding tells apart. Areas are closed forms, or sums over slabs (see
 * tests/tools/slabs.ts), which make no topology. What welding may shift is a tolerance along all edges.
 */

const WELD = 1e-9;
const plate = (width: number, height: number): Region => [{ outer: box(0, 0, width, height), holes: [] }];
const discArea = (radius: number) => Math.PI * radius * radius;

describe('two bores that overlap from outside by less than a weld tolerance', () => {
  const part = plate(1000, 700);
  const check = (a: Region, b: Region, lost: number) => {
    const left = subtract(part, [a, b]);
    expect(Math.abs(area(left) - (7e5 - lost))).toBeLessThan(1e-3);
    validateRegion(left, { extent: 1000 });
    expect(Math.abs(area(union([a, b])) - lost)).toBeLessThan(1e-3);
    expect(area(intersect([a, b]))).toBeLessThan(1e-3);
  };

  it('takes both, where their centres were rounded to six places', () => {
    const a = disc(p(441.884994, 410.367997), 15);
    const b = disc(p(441.885152, 442.367996), 17);
    check(a, b, discArea(15) + discArea(17));
  });

  it.each([0.02, 0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 1, 1.01, 1.5, 3])(
    'takes both, %d tolerances deep, near the highest place of one and the lowest of the other',
    (depth) => {
      for (const tilt of [0, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, -1e-7, -1e-5]) {
        const away = 32 - depth * WELD * 1000;
        const a = disc(p(400, 300), 15);
        const b = disc(p(400 + away * Math.sin(tilt), 300 + away * Math.cos(tilt)), 17);
        check(a, b, discArea(15) + discArea(17));
      }
    },
  );
});

describe('discs whose rims coincide within some tolerances', () => {
  it('are each in their exclusive sum', () => {
    const discs = [
      disc(p(-2.4e-8, 2.000000008), 1),
      disc(p(-3, 1), 3),
      disc(p(-8e-9, 2.000000032), 1.000000034),
      disc(p(2, -1), 4),
    ];
    const found = xor(discs);
    // By CGAL's arrangements of circle segments, in exact arithmetic.
    expect(Math.abs(area(found) - 68.80259549094362)).toBeLessThan(1e-7);
    validateRegion(found, { extent: 9 });
  });
});

describe('circles of many sizes on one rim', () => {
  it('leave what slabs leave', () => {
    const part = disc(p(50, 50), 50);
    const cuts = [
      disc(p(100.0000505, 49.9999878), 0.0000203),
      disc(p(99.977, 50.093), 0.096),
      disc(p(100.1600841, 49.5637502), 0.4646857),
      disc(p(100.85, 50.14086), 0.861644),
      disc(p(100, 50.0001), 0.000077),
    ];
    const left = subtract(part, cuts);
    expect(Math.abs(area(left) - slabsSubtract(part, cuts).area)).toBeLessThan(100 * WELD * 400);
    validateRegion(left, { extent: 102 });
    const all = union([part, ...cuts]);
    expect(Math.abs(area(all) - slabs([part, ...cuts], (inside) => inside.includes(true)).area)).toBeLessThan(
      100 * WELD * 400,
    );
  });
});
