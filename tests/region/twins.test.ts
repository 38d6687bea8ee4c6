import { area, disc, intersect, type Region, ring, subtract, union, xor } from '@edgebite/core';
import { validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { gather } from '../../packages/core/src/noding/gather.js';
import { twinsOf } from '../../packages/core/src/noding/twins.js';
import { loopsOf } from '../../packages/core/src/region/measure.js';
import { box, p } from './shapes.js';

/*
 * What is made again exactly where it was. The lens of two circles of radius 4, 6 apart: Codeforces problem 600D, sample
 * (docs/maths.md, "Two circles").
 */

const LENS = 7.252988063641756;
const DISC = 16 * Math.PI;

const one = disc(p(0, 0), 4);
const other = disc(p(6, 0), 4);
const stack = (region: Region, count: number): Region[] => Array.from({ length: count }, () => region);

describe('a stack of the same disc, and another that crosses it', () => {
  it.each([2, 3, 40])('has the areas of two discs, %d high', (count) => {
    const all = [...stack(one, count), other];
    expect(area(union(all))).toBeCloseTo(2 * DISC - LENS, 9);
    expect(area(intersect(all))).toBeCloseTo(LENS, 9);
    expect(area(xor(all))).toBeCloseTo(count % 2 === 1 ? 2 * DISC - 2 * LENS : DISC, 9);
    expect(area(subtract(other, stack(one, count)))).toBeCloseTo(DISC - LENS, 9);
    for (const made of [union(all), intersect(all), xor(all)]) validateRegion(made);
  });

  it('does not matter in which order it comes', () => {
    const mixed = [one, other, one, other, one];
    expect(area(xor(mixed))).toBeCloseTo(DISC, 9);
    expect(area(union(mixed))).toBeCloseTo(2 * DISC - LENS, 9);
  });
});

describe('stacks that cross each other', () => {
  it('leave of a plate what single ones leave', () => {
    const plate: Region = [{ outer: box(-10, -10, 20, 20), holes: [] }];
    const cuts = [ring(p(1, 2), 5, 3), disc(p(-3, 1), 4), disc(p(9, 9), 3)];
    const single = subtract(plate, cuts);
    const many = subtract(plate, [...cuts, ...cuts, ...cuts]);
    expect(many).toEqual(single);
  });
});

describe('pieces that are the same', () => {
  it('are found to the last digit, whatever their operand', () => {
    const near = disc(p(0, 0), 4 + 1e-15);
    const curves = gather([loopsOf(one), loopsOf(near), loopsOf(one)]);
    const twins = twinsOf(curves);
    const each = curves.count / 3;
    expect(twins).not.toBeNull();
    // Those of the third disc are those of the first; the second differs in its last digit.
    expect([...(twins as Int32Array)]).toEqual(
      Array.from({ length: curves.count }, (_, k) => (k < 2 * each ? k : k - 2 * each)),
    );
  });

  it('are none where all differ', () => {
    expect(twinsOf(gather([loopsOf(one), loopsOf(other)]))).toBeNull();
  });
});
