import {
  area,
  biteAlong,
  disc,
  intersect,
  openOut,
  type Region,
  rectangle,
  ring,
  stepIn,
  subtract,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block, near } from './near.js';
import { type Asked, DOWN, HALF, obeysLaws, P } from './plan-laws.js';

describe('after roughing', () => {
  // A saddle seat: an annular cutter of radius 16 at the true centre, then the wall brought to 17.
  const plate = block(80, 30);
  const center = P(83, 15);
  const sawn = subtract(plate, [ring(center, 16, 11.5)]);
  // The slug has dropped out.
  const roughed = sawn.filter((part) => area([part]) === Math.max(...sawn.map((one) => area([one]))));

  it('opens out only what is left, from where it first touches', () => {
    const asked = { metal: roughed, center, radius: 17, bite: 0.4, finish: 0.1 };
    const plan = openOut(asked);
    expect(plan.passes).toHaveLength(4);
    near(plan.travel, 1, 1e-12);
    near(plan.passes[0]?.radius ?? 0, 16.3, 1e-12);
    obeysLaws(asked, plan);
    // Between the long faces, as sectors of rings (elementary); the ends at the faces make it less exact.
    near(plan.area, area(intersect([roughed, disc(center, 17)])), 1e-12);
  });

  it('steps in past the air that roughing left', () => {
    const asked = { metal: roughed, center, radius: 17, bite: 0.4, approach: { dx: -1, dy: 0 } };
    const plan = stepIn(asked);
    obeysLaws(asked, plan);
    for (const { area: size } of plan.passes) expect(size).toBeGreaterThan(0);
  });

  it('leaves out stops between two thin walls, and bounds the bite where it touches again', () => {
    // Two ribs of 1, 6 apart, in the way of a cutter that ends up past both.
    const ribs: Region = [
      { outer: rectangle(60, 1, { at: P(-30, -1) }), holes: [] },
      { outer: rectangle(60, 1, { at: P(-30, -8) }), holes: [] },
    ];
    const asked = { metal: ribs, center: P(0, 3), radius: 11, bite: 0.5, approach: DOWN };
    const plan = stepIn(asked);
    obeysLaws(asked, plan);
    // The second rib is first touched 7 on: straight ahead only 1 of the way from 11 to 4 is metal, but the sides of
    // the first rib are cut wider on the way.
    expect(plan.passes.length).toBeGreaterThan(4);
    const opened = openOut({ ...asked, approach: undefined } as Asked);
    obeysLaws(asked, opened);
    // From 3 to 11 at 0.5 a step, without any radius that cuts nothing.
    near(opened.travel, 8, 1e-12);
  });

  it('drops passes in air: a far crumb, then nothing, then the wall', () => {
    const metal: Region = [
      { outer: rectangle(2, 1, { at: P(-1, -1) }), holes: [] },
      { outer: rectangle(60, 10, { at: P(-30, -16) }), holes: [] },
    ];
    const asked = { metal, center: P(0, 3), radius: 11, bite: 0.5, approach: DOWN };
    const plan = stepIn(asked);
    obeysLaws(asked, plan);
    // The crumb ends 7 before the true centre, the wall is first touched 2 before it, which makes 4 passes.
    const shorts = plan.passes.map(({ center: { y } }) => y - 3);
    expect(shorts.filter((short) => short < 2.01)).toHaveLength(4);
    expect(shorts.some((short) => short > 2.01 && short < 6.4)).toBe(false);
    expect(plan.passes.length).toBeLessThanOrEqual(8);
    expect(openOut(asked).passes.length).toBeLessThanOrEqual(8);
    obeysLaws(asked, openOut(asked));
  });

  it('leaves a wall that is rounder than itself by internal touch: as deep as the difference of radii says', () => {
    // A cutter of 10 at the bottom of a hole of 20, centres 12 apart: 12 + 10 - 20 deep (elementary).
    const bored = subtract(HALF, [disc(P(0, -50), 20)]);
    const asked = { metal: bored, center: P(0, -62), radius: 10, bite: 1.5, approach: DOWN };
    const plan = stepIn(asked);
    near(plan.travel, 2, 1e-11);
    near(plan.passes[0]?.bite?.size ?? 0, 1, 1e-11);
    obeysLaws(asked, plan);
    near(openOut(asked).travel, 2, 1e-11);
  });

  it('keeps to the bite with the last of the metal, and leaves some for the true centre', () => {
    // What lies between the stops 8 and 7 short, square to the way: under 1 thick from there, but from the true
    // centre sqrt(10^2 - 7^2) - sqrt(10^2 - 8^2) = 1.14 and more (elementary).
    const between = subtract(disc(P(0, 7), 10), [disc(P(0, 8), 10)]);
    const metal = intersect([between, [{ outer: rectangle(4, 2, { at: P(5, -1) }), holes: [] }]]);
    const asked = { metal, center: P(0, 0), radius: 10, bite: 1.05, approach: DOWN };
    near(biteAlong(metal, P(0, 0), 10, 0), Math.sqrt(51) - 6, 1e-9);
    const plan = stepIn(asked);
    obeysLaws(asked, plan);
    expect(plan.passes.map(({ role }) => role)).toEqual(['rough', 'finish']);
    expect(plan.passes[0]?.center.y).toBeGreaterThan(7);
  });

  it('takes the last crumb from the true centre', () => {
    // A pin that the final cut swallows, nowhere near its circle.
    const pin = disc(P(1, -2), 1.5);
    const asked = { metal: pin, center: P(0, 0), radius: 10, bite: 0.8, approach: DOWN };
    for (const plan of [stepIn(asked), openOut(asked)]) {
      obeysLaws(asked, plan);
      expect(plan.passes.length).toBeGreaterThanOrEqual(2);
    }
  });
});

describe('openOut', () => {
  it('opens a full hole from the solid: each pass takes a ring (elementary)', () => {
    const asked = { metal: block(80, 60), center: P(40, 30), radius: 12, bite: 5 };
    const plan = openOut(asked);
    expect(plan.passes.map(({ radius }) => radius)).toEqual([4, 8, 12]);
    expect(plan.approach).toBeNull();
    plan.passes.forEach(({ area: size, engagement, bite }, k) => {
      near(size, Math.PI * 16 * (2 * k + 1), 1e-12);
      expect(engagement.share).toBe(1);
      near(bite?.size ?? 0, 4, 1e-12);
    });
    obeysLaws(asked, plan);
    near(plan.unevenness, 5 / 3, 1e-12);
  });

  it('refuses a tool that cannot be set small enough, and says what to rough', () => {
    const asked = { metal: block(80, 60), center: P(40, 30), radius: 12, bite: 2, smallest: 6 };
    expect(() => openOut(asked)).toThrow(
      'openOut: at its smallest, radius 6, the tool would bite 6 deep, over 2; rough a hole of radius 4 first',
    );
    const roughed = subtract(asked.metal, [disc(P(40, 30), 4)]);
    const plan = openOut({ ...asked, metal: roughed });
    expect(plan.passes.map(({ radius }) => radius)).toEqual([6, 8, 10, 12]);
    expect(() => openOut({ ...asked, smallest: 13 })).toThrow(
      'smallest is 13; it must not be over the radius, 12',
    );
  });
});
