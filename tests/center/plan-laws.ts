import {
  area,
  biteAlong,
  disc,
  intersect,
  type Pass,
  type PassOptions,
  type PassPlan,
  type Point,
  type Region,
  subtract,
  xor,
} from '@edgebite/core';
import fc from 'fast-check';
import { expect } from 'vitest';
import { near, underXAxis, upTo } from './near.js';
import { metalAlong } from './sample.js';

/** A place. */
export const P = (x: number, y: number): Point => ({ x, y });
/** As good as a half plane, with the x axis as its face. */
export const HALF = underXAxis(100);
/** Square into that face. */
export const DOWN = { dx: 0, dy: -1 };

/**
 * Coordinates on a fine grid. Places that lie a billionth off an edge are on it for the overlay, and beside it for
 * what is sampled; here they lie on it or well beside it.
 */
export const coordinate = (min: number, max: number) =>
  fc.integer({ min: min * 997, max: max * 997 }).map((n) => n / 997);

/** What the laws below need of a request. */
export type Asked = Pick<PassOptions, 'metal' | 'center' | 'radius' | 'bite'>;

/** What some passes cover. */
export const discs = (passes: readonly Pass[]): Region[] =>
  passes.map(({ center, radius }) => disc(center, radius));

/** The laws of every plan: together the final cut and nothing more, no bite too deep, no pass in air. */
export function obeysLaws(asked: Asked, plan: PassPlan): void {
  const { metal, center, radius, bite } = asked;
  const { passes } = plan;
  expect(oddNumbers(plan)).toEqual([]);
  const final = disc(center, radius);
  const whole = area(intersect([metal, final]));
  const nothing = 1e-8 * 300 * 2 * Math.PI * radius;
  if (passes.length === 0) {
    expect(whole).toBeLessThan(nothing);
    return;
  }
  const last = passes[passes.length - 1] as Pass;
  expect(last.center).toBe(center);
  expect(last.radius).toBe(radius);
  // Metal that is left after all passes, and after the final cut alone.
  const one = subtract(metal, [final]);
  const other = subtract(metal, discs(passes));
  expect(area(xor([one, other]))).toBeLessThan(nothing);
  near(plan.area, whole, 1, nothing);
  near(
    passes.reduce((sum, pass) => sum + pass.area, 0),
    plan.area,
    1e-12,
  );
  let left = metal;
  passes.forEach((pass, k) => {
    expect(pass.area).toBeGreaterThan(0);
    expect(pass.role).toBe(k === passes.length - 1 ? 'finish' : 'rough');
    expect(pass.bite?.size).toBeLessThanOrEqual(bite * (1 + 1e-8));
    const { arcs } = pass.engagement;
    expect(pass.longestCut.angle).toBe(Math.max(0, ...arcs.map(({ sweep }) => sweep)));
    expect(pass.longestCut.length).toBe(Math.max(0, ...arcs.map(({ length }) => length)));
    const found = pass.bite as NonNullable<typeof pass.bite>;
    // What is said of the deepest bite, by the crossings of its radius; and no other radius has a deeper one.
    const slack = 1e-7 * radius;
    near(deepestBeside(left, pass, found.angle), found.size, 1e-5, radius);
    for (const turn of upTo(24)) {
      const angle = turn * 0.2617 + k + 0.0123;
      const along = metalAlong(left, pass.center, pass.radius, angle);
      expect(along).toBeLessThanOrEqual(found.size + slack);
      expect(Math.abs(biteAlong(left, pass.center, pass.radius, angle) - along)).toBeLessThan(slack);
    }
    left = subtract(left, [disc(pass.center, pass.radius)]);
  });
}

/** Whatever in a result is no plain data or no finite number. */
function oddNumbers(value: unknown): unknown[] {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return [];
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [value];
  return typeof value === 'object' ? Object.values(value).flatMap(oddNumbers) : [value];
}

/** The largest length of metal along a radius and those just beside it, as metal may end at the radius. */
export function deepestBeside(
  metal: Region,
  { center, radius }: Pick<Pass, 'center' | 'radius'>,
  angle: number,
): number {
  return Math.max(
    ...[-1e-4, -1e-6, -1e-8, 0, 1e-8, 1e-6, 1e-4].map((by) => metalAlong(metal, center, radius, angle + by)),
  );
}
