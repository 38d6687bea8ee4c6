import { type Job, parseJob, type RangeQuery } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { closedCheck } from './closed-check.js';
import { rootsOf } from './closed-roots.js';
import { closedScene } from './closed-scene.js';
import { slipRoots } from './closed-slips.js';
import { touchRoots } from './closed-touch.js';
import { webRoots } from './closed-webs.js';

/*
 * Places known by elementary geometry: a circle touches a line at the height of its radius, and another circle where
 * the centres are as far apart as the radii add up to or differ by; the triangle of sides 3, 4 and 5 is right-angled
 * (Euclid, Elements III.11, III.12, I.48).
 */

const plate = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 60] }, thickness: 12 },
  limits: { web: 3, knifeEdge: 30 },
  resolution: 0.1,
};

const WELD = 1e-7;

const stepsOf = ({ from, to }: RangeQuery) => ({ from, step: (to - from) / 10_000, count: 10_000 });

function jobOf(...cuts: readonly object[]): Job {
  return parseJob({ ...plate, cuts: cuts.map((cut, k) => ({ id: k === 0 ? 'own' : `other-${k}`, ...cut })) });
}

/** Sorted, to ten digits, each once. */
const told = (roots: readonly { readonly at: number }[]) => [
  ...new Set(roots.map(({ at }) => at.toFixed(10)).sort((a, b) => Number(a) - Number(b))),
];

const digits = (...values: readonly number[]) => values.map((value) => value.toFixed(10));

function touches(job: Job, query: RangeQuery, kind: 'touch' | 'graze' = 'touch') {
  return told(touchRoots(closedScene(job, query, WELD), stepsOf(query)).filter((root) => root.kind === kind));
}

const bore = (x: number, y: number, diameter: number) => ({ kind: 'bore', center: [x, y], diameter });

describe('values at which a cut touches, by closed forms', () => {
  it('has a hole that walks in over an edge, as it is and moved by the resolution', () => {
    const query = { cut: 'own', along: 'y', from: -20, to: 30 } as const;
    const job = jobOf(bore(50, 20, 16));
    expect(touches(job, query)).toEqual(digits(-8, 8));
    expect(touches(job, query, 'graze')).toEqual(digits(-8.1, -7.9, 7.9, 8.1));
  });

  it('has a corner, and no edge past its end', () => {
    const query = { cut: 'own', along: 'x', from: -9.7, to: 20 } as const;
    expect(touches(jobOf(bore(10, -3, 10)), query)).toEqual(digits(-4, 4));
  });

  it('has a circle that only just comes near enough to another', () => {
    const query = { cut: 'own', along: 'x', from: 30.3, to: 77.7 } as const;
    expect(touches(jobOf(bore(40, 41, 10), bore(50, 30, 12)), query)).toEqual(digits(50));
  });

  it('has both rims of a ring that grows over a hole', () => {
    const ring = { kind: 'annular', center: [50, 30], diameter: 30, wall: 4 };
    const query = { cut: 'own', along: 'diameter', from: 20, to: 50 } as const;
    expect(touches(jobOf(ring, bore(60, 30, 6)), query)).toEqual(digits(22, 26, 34));
  });

  it('has the centre pin of a ring that moves', () => {
    const ring = { kind: 'annular', center: [30, 30], diameter: 24, wall: 4 };
    // The pin comes to the edge at 60, and to the far side of the hole at 62.
    const query = { cut: 'own', along: 'y', from: 58.1, to: 63 } as const;
    expect(touches(jobOf(ring, bore(30, 57, 10)), query)).toEqual(digits(60, 62));
  });

  it('has the corner within the bend of a path', () => {
    const path = { svgPath: 'M20 20 L40 20 L40 40' };
    const query = { cut: 'own', along: 'x', from: 45, to: 62 } as const;
    const job = jobOf({ kind: 'swept', diameter: 8, path }, bore(70, 24, 10));
    // It lies at (36, 24), 16 from where the path starts.
    expect(touches(job, query)).toEqual(expect.arrayContaining(digits(70 - 5 - 16, 70 + 5 - 16)));
  });
});

describe('webs, by closed forms', () => {
  const query = { cut: 'own', along: 'x', from: 50, to: 80 } as const;
  // The hole leaves a web of 2 over the edge, whose disc has its middle at the height 1.
  const scene = closedScene(jobOf(bore(60, 12, 20), bore(70, 1, 8)), query, WELD);

  it('end where a third boundary comes into the disc between two', () => {
    expect(told(webRoots(scene, 3, 65.001, stepsOf(query)))).toContain((70 - 4 - 1).toFixed(10));
  });

  it('end where a third boundary cuts off the foot of the disc', () => {
    const at = 70 - Math.sqrt(4 * 4 - 1);
    expect(told(webRoots(scene, 3, at + 0.001, stepsOf(query)))).toContain(at.toFixed(10));
  });

  it('slip off the end of an edge where the centre is square to it', () => {
    const over = { cut: 'own', along: 'x', from: -10, to: 10.3 } as const;
    const slips = slipRoots(closedScene(jobOf(bore(5, -3, 5)), over, WELD), 3, stepsOf(over));
    expect(slips.length).toBeGreaterThan(0);
    for (const { at } of slips) expect(at).toBeCloseTo(0, 10);
    // Square to the lower edge in its end; the sine of the angle at 4 aside is 4 in 5.
    for (const { angleAt } of slips) expect(angleAt(4)).toBeCloseTo(0.8, 10);
  });
});

describe('an event of touching', () => {
  const query = { cut: 'own', along: 'y', from: -20, to: 30 } as const;
  const right = 1e-9 * (query.to - query.from);
  const { confirm: check, touchesAt } = closedCheck(jobOf(bore(50, 20, 16)), query, 10_000, WELD, right);

  it('is confirmed where it is at a root, and the report changes as near as it can tell', () => {
    expect(check(8, 8 + 15 * WELD)).toMatchObject({ kind: 'touch' });
    expect(check(8 + 0.9 * right, 8)?.off).toBeCloseTo(0.9 * right, 12);
  });

  it('is not where it is off by more than a billionth of the range, or the report by more than it may', () => {
    expect(check(8 + 1.1 * right, 8)).toBeNull();
    expect(check(8, 8 + 17 * WELD)).toBeNull();
    expect(check(12, 12)).toBeNull();
    expect(touchesAt(8 + 15 * WELD)).toHaveLength(1);
    expect(touchesAt(8 + 17 * WELD)).toEqual([]);
  });

  it('may be told of for longer where the cut comes up at a slant', () => {
    // It touches the hole beside it at 10, where the line between the centres goes 3 in 5 the way of the cut.
    const job = jobOf(bore(50, 30, 6), bore(50 + 6, 30 + 8, 14));
    const along = { cut: 'own', along: 'x', from: 40, to: 56 } as const;
    const { confirm } = closedCheck(job, along, 10_000, WELD, 1e-9 * 16);
    expect(confirm(50, 50 - (15 * WELD * 5) / 3)).toMatchObject({ kind: 'touch' });
    expect(confirm(50, 50 - (17 * WELD * 5) / 3)).toBeNull();
  });

  it('is confirmed at a web that slips off while directions are one, and no longer', () => {
    const along = { cut: 'own', along: 'x', from: -10, to: 10.3 } as const;
    const { confirm: slip } = closedCheck(jobOf(bore(5, -25, 44)), along, 10_000, WELD, 1e-9 * 20.3);
    expect(slip(0, 25 * 3.9e-7)).toMatchObject({ kind: 'slip' });
    expect(slip(0, 25 * 4.1e-7)).toBeNull();
  });
});

describe('roots of a function', () => {
  const steps = { from: 0, step: 0.01, count: 1000 };

  it('are found at every change of sign, with steps left out where it is far from 0', () => {
    let asked = 0;
    const sine = (v: number) => {
      asked += 1;
      return Math.sin(v + 1);
    };
    const roots = rootsOf(sine, steps, 1e-9, 1);
    expect(roots.map((at) => at.toFixed(10))).toEqual(digits(...[1, 2, 3].map((n) => n * Math.PI - 1)));
    expect(asked).toBeLessThan(500);
  });

  it('are found where it turns at 0, and where it turns just past it', () => {
    const distance = (v: number) => Math.hypot(v - Math.E, 3) - 3;
    expect(rootsOf(distance, steps, 1e-9, 1).map((at) => at.toFixed(10))).toContain(Math.E.toFixed(10));
    const past = rootsOf((v) => (v - Math.E) ** 2 - 1e-6, steps, 1e-9, Number.POSITIVE_INFINITY);
    expect(past.map((at) => at.toFixed(9))).toEqual([-1e-3, 1e-3].map((by) => (Math.E + by).toFixed(9)));
  });

  it('are none where it stays at 0', () => {
    expect(rootsOf(() => 0, steps, 1e-9, 1)).toEqual([]);
  });
});
