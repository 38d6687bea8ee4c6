import {
  area,
  biteAlong,
  centroid,
  disc,
  intersect,
  openOut,
  type Pass,
  type Point,
  type Region,
  rectangle,
  segmentOfDepth,
  stepIn,
  subtract,
  union,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace, upTo } from './near.js';
import { type Asked, DOWN, discs, HALF, obeysLaws, P } from './plan-laws.js';

describe('stepIn into a straight face', () => {
  // Radius 17, centre 5 above the face: 12 deep. Steps of at most 2, 0.5 left to finish.
  const asked = { metal: HALF, center: P(0, 5), radius: 17, bite: 2, finish: 0.5, approach: DOWN };
  const plan = stepIn(asked);

  it('shares the way out evenly, and ends on the true centre to the last bit', () => {
    // 12 - 0.5 = 11.5 in six steps.
    expect(plan.passes).toHaveLength(7);
    near(plan.travel, 12, 1e-14);
    plan.passes.forEach(({ step, center, role }, k) => {
      near(step, k < 6 ? 11.5 / 6 : 0.5, 1e-12);
      nearPlace(center, P(0, k < 6 ? 17 - ((k + 1) * 11.5) / 6 : 5), 17);
      expect(role).toBe(k < 6 ? 'rough' : 'finish');
    });
    expect(plan.passes[6]?.center).toBe(asked.center);
    obeysLaws(asked, plan);
  });

  it("removes the difference of two segments in each pass (Machinery's Handbook 31, p. 83)", () => {
    let before = 0;
    for (const { area: size, center } of plan.passes) {
      const segment = segmentOfDepth(17, 17 - center.y).area;
      near(size, segment - before, 1e-11);
      before = segment;
    }
    near(plan.area, segmentOfDepth(17, 12).area, 1e-12);
  });

  it('engages 2 acos(1 - ae / r) at first contact (Fundamentals of Machining Processes, p. 174)', () => {
    const [first] = plan.passes;
    near(first?.engagement.angle ?? 0, 2 * Math.acos(1 - 11.5 / 6 / 17), 1e-12);
    near(first?.longestCut.length ?? 0, 17 * 2 * Math.acos(1 - 11.5 / 6 / 17), 1e-12);
    expect(first?.engagement.entries).toBe(1);
    // The deepest bite is the step, straight ahead.
    near(first?.bite?.size ?? 0, 11.5 / 6, 1e-12);
    near(first?.bite?.angle ?? 0, -Math.PI / 2, 1e-9);
    nearPlace(first?.bite?.at ?? P(0, 0), P(0, -11.5 / 6), 17, 1e-9);
  });

  it('bites d cos(phi) at angle phi, to first order: d cos(phi) + r - sqrt(r^2 - d^2 sin^2(phi)) (as above, chip thickness)', () => {
    const d = 11.5 / 6;
    const left = subtract(HALF, discs(plan.passes.slice(0, 4)));
    const { center } = plan.passes[4] as Pass;
    for (const degrees of [-50, -20, 0, 10, 35, 60]) {
      const phi = (degrees * Math.PI) / 180;
      const bite = biteAlong(left, center, 17, phi - Math.PI / 2);
      near(bite, d * Math.cos(phi) + 17 - Math.sqrt(17 ** 2 - (d * Math.sin(phi)) ** 2), 1e-12);
      near(bite, d * Math.cos(phi), 1, (d * d) / (2 * 17) + 1e-12);
    }
  });

  it('gives volumes and times', () => {
    const timed = stepIn({ ...asked, depth: 12, feed: { perTurn: 0.05, rpm: 300 }, spring: true });
    // 12 deep at 0.05 a turn and 300 turns a minute: 0.8 minutes a pass (feed = feed per turn times turns).
    for (const { minutes, volume, area: size } of timed.passes) {
      near(minutes ?? 0, 0.8, 1e-14);
      near(volume ?? -1, 12 * size, 1e-14, 1);
    }
    near(timed.minutes ?? 0, 8 * 0.8, 1e-14);
    near(timed.volume ?? 0, 12 * segmentOfDepth(17, 12).area, 1e-12);
    expect(plan.minutes).toBeNull();
    expect(plan.volume).toBeNull();
    expect(plan.passes[0]?.minutes).toBeNull();
  });

  it('makes the spring pass where the last one stood, in air', () => {
    const { passes } = stepIn({ ...asked, spring: true });
    expect(passes).toHaveLength(8);
    const spring = passes[7] as Pass;
    expect(spring.role).toBe('spring');
    expect(spring.center).toBe(asked.center);
    expect([spring.area, spring.step, spring.bite]).toEqual([0, 0, null]);
    expect(spring.engagement.arcs).toEqual([]);
    // It takes nothing, so that it makes the load of the others no less even.
    expect(stepIn({ ...asked, spring: true }).unevenness).toBe(stepIn(asked).unevenness);
  });

  it('needs one pass if the bite allows it, also with a finish allowance that is not used up', () => {
    expect(stepIn({ ...asked, bite: 12, finish: 0 }).passes).toHaveLength(1);
    expect(stepIn({ ...asked, bite: 11.999, finish: 0 }).passes).toHaveLength(2);
    const shallow = stepIn({ ...asked, center: P(0, 16.7) });
    expect(shallow.passes.map(({ role }) => role)).toEqual(['finish']);
    near(shallow.passes[0]?.step ?? 0, 0.3, 1e-12);
  });

  it('finds straight in for itself', () => {
    const own = stepIn({ ...asked, approach: undefined });
    nearPlace(P(own.approach?.dx ?? 9, own.approach?.dy ?? 9), P(0, -1), 1, 1e-9);
    near(own.travel, 12, 1e-12);
    obeysLaws(asked, own);
  });

  it('returns nothing where there is nothing to cut', () => {
    for (const metal of [HALF, []]) {
      const plan = stepIn({ ...asked, metal, center: P(0, 40) });
      expect(plan).toEqual({
        passes: [],
        approach: DOWN,
        travel: 0,
        area: 0,
        volume: null,
        minutes: null,
        unevenness: 1,
      });
    }
    expect(stepIn({ ...asked, center: P(0, 17) }).passes).toEqual([]);
    expect(openOut({ ...asked, center: P(0, 17) }).passes).toEqual([]);
  });
});

describe('stepIn keeps to the final cut', () => {
  it('refuses to widen the mouth of a hole whose centre lies inside the face', () => {
    const asked = { metal: HALF, center: P(0, -5), radius: 17, bite: 2, approach: DOWN };
    // 2 short of the end the centre is 3 inside; the opening is then 2 sqrt(17^2 - 3^2), wider than 2 sqrt(17^2 - 5^2).
    expect(() => stepIn(asked)).toThrow(
      /^stepIn: [\d.]+ short of the true centre the cutter would cut [\d.]+ square units/,
    );
    expect(() => stepIn(asked)).toThrow('or allow a bite of 22, which needs no stop on the way');
    expect(() => stepIn({ ...asked, approach: undefined })).toThrow(
      'stepIn: from every side a stop on the way',
    );
    const single = stepIn({ ...asked, bite: 22 });
    expect(single.passes).toHaveLength(1);
    obeysLaws({ ...asked, bite: 22 }, single);
    const opened = openOut({ ...asked });
    obeysLaws(asked, opened);
    expect(opened.passes).toHaveLength(9);
  });

  it('takes from which side into account: a face beside the way', () => {
    // A step: coming straight down beside the higher part is free, coming from over it is not.
    const stepped = union([HALF, [{ outer: rectangle(40, 30, { at: P(20, -1) }), holes: [] }]]);
    const asked = { metal: stepped, center: P(0, 8), radius: 17, bite: 3 };
    obeysLaws(asked, stepIn({ ...asked, approach: DOWN }));
    expect(() => stepIn({ ...asked, approach: { dx: -1, dy: -0.1 } })).toThrow('square units of metal');
    const own = stepIn(asked);
    obeysLaws(asked, own);
  });

  it('is exact: an oblique way is free as far as the mouth allows, and not beyond', () => {
    // Centre e above the face, coming in at an angle a from square. The stop short by t sweeps the mouth on one side
    // out to where its circle meets the face: t sin a + sqrt(r^2 - (e + t cos a)^2), at most sqrt(r^2 - e^2).
    const [r, e, t] = [17, 8, 4];
    const reach = (a: number) => t * Math.sin(a) + Math.sqrt(r * r - (e + t * Math.cos(a)) ** 2);
    const mouth = Math.sqrt(r * r - e * e);
    let [low, high] = [0, 1.2];
    while (high - low > 1e-12) {
      const middle = (low + high) / 2;
      if (reach(middle) > mouth) high = middle;
      else low = middle;
    }
    const stop = (a: number) => {
      const approach = { dx: Math.sin(a), dy: -Math.cos(a) };
      // One stop, t short: the allowance makes it.
      return () => stepIn({ metal: HALF, center: P(0, e), radius: r, bite: 40, finish: t, approach });
    };
    expect(stop(low - 1e-4)().passes).toHaveLength(2);
    expect(stop(high + 1e-3)).toThrow('4 short of the true centre');
  });
});

describe('the smoothest approach', () => {
  /** Largest over mean area removed over 24 even steps, and the length of the way; null if a stop is refused. */
  function judged(
    asked: Asked,
    approach: { dx: number; dy: number },
  ): { uneven: number; travel: number } | null {
    let travel: number;
    try {
      travel = stepIn({ ...asked, approach }).travel;
    } catch (error) {
      expect((error as Error).message).toContain('short of the true centre');
      return null;
    }
    const { metal, center, radius } = asked;
    const removed = intersect([metal, disc(center, radius)]);
    const covered = upTo(25).map((k) => {
      const back = travel * (1 - k / 24);
      return area(
        intersect([removed, disc(P(center.x - back * approach.dx, center.y - back * approach.dy), radius)]),
      );
    });
    const steps = upTo(24).map((k) => (covered[k + 1] as number) - (covered[k] as number));
    return { uneven: (Math.max(...steps) * 24) / area(removed), travel };
  }

  // The stated objective, worked out for all 72 directions through the public functions.
  it.each<[string, Region, Point, number]>([
    [
      'beside a step',
      union([HALF, [{ outer: rectangle(40, 30, { at: P(20, -1) }), holes: [] }]]),
      P(0, 8),
      17,
    ],
    ['over a corner', block(80, 30), P(82, 33), 12],
    ['at a round end', intersect([block(80, 30), disc(P(30, 15), 40)]), P(78, 20), 14],
  ])('%s', (_, metal, center, radius) => {
    const asked = { metal, center, radius, bite: 1.5 };
    const plan = stepIn(asked);
    obeysLaws(asked, plan);
    const middle = centroid(intersect([metal, disc(center, radius)])) as Point;
    const ahead = Math.atan2(middle.y - center.y, middle.x - center.x);
    const all = upTo(72).map((k) => {
      const angle = ahead + (k * Math.PI) / 36;
      return judged(asked, { dx: Math.cos(angle), dy: Math.sin(angle) });
    });
    const free = all.filter((one) => one !== null);
    expect(free.length).toBeGreaterThan(3);
    const chosen = judged(asked, plan.approach as { dx: number; dy: number }) as NonNullable<
      (typeof all)[number]
    >;
    const smoothest = Math.min(...free.map(({ uneven }) => uneven));
    expect(chosen.uneven).toBeLessThanOrEqual(smoothest * 1.05 * (1 + 1e-9));
    const asSmooth = free.filter(({ uneven }) => uneven <= smoothest * 1.05 * (1 - 1e-9));
    expect(chosen.travel).toBeLessThanOrEqual(Math.min(...asSmooth.map(({ travel }) => travel)) * (1 + 1e-8));
  });
});
