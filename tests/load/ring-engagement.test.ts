import {
  disc,
  engagementOf,
  type Point,
  type Region,
  rectangle,
  ring,
  ringEngagementOf,
  subtract,
  union,
} from '@edgebite/core';
import { outlines, placed, type Similarity, transformed, UNMOVED } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace, underXAxis } from '../center/near.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { sampledRing } from './sampled-ring.js';

const P = (x: number, y: number): Point => ({ x, y });
const HALF = underXAxis(100);

describe('ringEngagementOf', () => {
  it('half a ring has side load 2 / pi, a whole one 0, a quarter 2 sqrt 2 / pi (integral of the definition)', () => {
    const half = ringEngagementOf(HALF, P(0, 0), 16, 11.5);
    near(half.share, 0.5, 1e-14);
    expect(half.strikes).toBe(1);
    near(half.meanWidth, 4.5, 1e-13);
    near(half.sideLoad.size, 2 / Math.PI, 1e-13);
    // The metal lies below; a clockwise tooth moves to the left there.
    nearPlace(P(half.sideLoad.direction?.dx ?? 9, half.sideLoad.direction?.dy ?? 9), P(-1, 0), 1);
    const whole = ringEngagementOf(HALF, P(0, -50), 16, 11.5);
    expect(whole.share).toBe(1);
    expect(whole.strikes).toBe(0);
    expect(whole.interrupted).toBe(false);
    expect(whole.sideLoad).toEqual({ size: 0, direction: null });
    near(whole.meanWidth, 4.5, 1e-13);
    const quarter = ringEngagementOf(block(100, 100), P(0, 0), 16, 11.5);
    near(quarter.share, 0.25, 1e-14);
    near(quarter.sideLoad.size, (2 * Math.SQRT2) / Math.PI, 1e-13);
    // Metal up to the right: clockwise there is down to the right.
    const { dx, dy } = quarter.sideLoad.direction ?? { dx: 0, dy: 0 };
    nearPlace(P(dx, dy), P(Math.SQRT1_2, -Math.SQRT1_2), 1);
  });

  // Centre e over a straight face, radii R and r: the line is met within acos(e / R) of straight down, w = R - e / cos(a)
  // down to acos(e / r), then R - r. So with A = acos(e / R), B = acos(e / r):
  // W / 2 = R A - e asinh(tan A) + e asinh(tan B) - r B, and the sum along x is 2 (R sin A - e A + e B - r sin B).
  it.each([
    [3, 16, 11.5],
    [11.5, 16, 11.5],
    [11.4999, 16, 11.5],
    [13, 16, 11.5],
    [15.999, 16, 11.5],
    [0.001, 16, 11.5],
  ])('centre %f over a straight face, radii %f and %f (integrals of the definition)', (e, R, r) => {
    const found = ringEngagementOf(HALF, P(0, e), R, r);
    const [A, B] = [Math.acos(e / R), e >= r ? 0 : Math.acos(e / r)];
    const width = R * A - e * Math.asinh(Math.tan(A)) + e * Math.asinh(Math.tan(B)) - r * B;
    const pushed = R * Math.sin(A) - e * A + e * B - r * Math.sin(B);
    near(found.share, A / Math.PI, 1e-12);
    near(found.meanWidth, width / A, 1e-9, 1);
    near(found.sideLoad.size, pushed / width, 1e-7);
    expect(found.sideLoad.direction?.dx).toBeCloseTo(-1, 9);
    const [stretch] = found.stretches;
    nearPlace(stretch?.high?.at ?? P(0, 0), P(Math.sqrt(R * R - e * e), 0), R, 1e-9);
  });

  it('counts metal that only the inner part of the teeth meets', () => {
    // A boss of radius 2, 13 off the centre: seen within asin(2 / 13) either way, and the outer circle is in air.
    const boss = disc(P(13, 0), 2);
    const found = ringEngagementOf(boss, P(0, 0), 16, 10);
    expect(engagementOf(boss, P(0, 0), 16).share).toBe(0);
    near(found.share, Math.asin(2 / 13) / Math.PI, 1e-13);
    expect(found.strikes).toBe(1);
    nearPlace(P(found.sideLoad.direction?.dx ?? 9, found.sideLoad.direction?.dy ?? 9), P(0, -1), 1);
    // By mpmath, 30 digits: integral of 2 sqrt(4 - 169 sin^2 a) over the angles, and the same with cos a.
    near(found.meanWidth * found.share * 2 * Math.PI, BOSS_WIDTH, 1e-12);
    near(found.sideLoad.size, BOSS_PUSH / BOSS_WIDTH, 1e-12);
  });

  it('strikes are those of the tooth as a whole, however the metal lies along it', () => {
    // Two bosses at one angle, one behind the other, and one opposite.
    const bosses = union([disc(P(11, 0), 0.5), disc(P(14, 0.2), 0.5), disc(P(0, -12), 1)]);
    expect(ringEngagementOf(bosses, P(0, 0), 16, 10).strikes).toBe(2);
    // A thin gap all the way through the ring parts them; one that does not reach through does not.
    const slit = (from: number): Region => [{ outer: rectangle(20, 0.001, { at: P(from, 0) }), holes: [] }];
    const cut = (from: number) => ringEngagementOf(subtract(underMiddle(), [slit(from)]), P(0, 0), 16, 10);
    expect(cut(5).strikes).toBe(1);
    expect(cut(5).interrupted).toBe(true);
    expect(cut(10.5).strikes).toBe(0);
    expect(cut(10.5).share).toBe(1);
  });

  it('is all the way round in a spiral that no circle stays in', () => {
    // Half rings of which the right one reaches further out, with a step between them at the top; cut at the bottom.
    const spiral = subtract(ring(P(0, 0), 15, 11), [
      [{ outer: rectangle(0.5, 9, { at: P(0, -18) }), holes: [] }],
    ]);
    const tail = union([spiral, subtract(ring(P(0, -0.2), 13, 12), [HALF_LEFT])]);
    const found = ringEngagementOf(tail, P(0, 0), 16, 10);
    expect(found.share).toBeGreaterThan(0.99);
  });

  it('is nothing in air, along walls that are there already, and at corners that a circle touches', () => {
    const none = {
      share: 0,
      strikes: 0,
      meanWidth: 0,
      interrupted: false,
      sideLoad: { size: 0, direction: null },
    };
    expect(ringEngagementOf(HALF, P(0, 20), 16, 10)).toMatchObject(none);
    expect(ringEngagementOf(HALF, P(0, 16), 16, 10)).toMatchObject(none);
    expect(ringEngagementOf([], P(0, 0), 16, 10)).toMatchObject(none);
    expect(ringEngagementOf(disc(P(0, -3), 10), P(0, -3), 16, 10)).toMatchObject(none);
    expect(ringEngagementOf(subtract(HALF, [disc(P(0, -3), 16)]), P(0, -3), 16, 10)).toMatchObject(none);
    const corner: Region = [{ outer: rectangle(5, 5, { at: P(16, 0) }), holes: [] }];
    expect(ringEngagementOf(corner, P(0, 0), 16, 10)).toMatchObject(none);
  });

  it('a core that stands, and a hole in it, are no concern of the teeth', () => {
    const core = union([disc(P(0, -40), 9.999), HALF]);
    expect(ringEngagementOf(subtract(core, [disc(P(0, -40), 5)]), P(0, -40), 16, 10).share).toBe(1);
  });

  it('gives the same wherever the part lies and however large it is', () => {
    const part = subtract(block(100, 40), [disc(P(60, 30), 9)]);
    const still = ringEngagementOf(part, P(52, 36), 16, 10);
    expect(still.strikes).toBeGreaterThan(0);
    for (const [k, factor] of [1e-6, 1e-3, 1, 1e3, 1e6].entries()) {
      const moved: Similarity = {
        ...UNMOVED,
        turn: [Math.cos(k), Math.sin(k)],
        scale: factor,
        mirror: k % 2 === 1,
      };
      const found = ringEngagementOf(
        transformed(part, moved),
        placed(P(52, 36), moved),
        16 * factor,
        10 * factor,
      );
      near(found.share, still.share, 1e-8);
      near(found.sideLoad.size, still.sideLoad.size, 1e-8);
      near(found.meanWidth, still.meanWidth * factor, 1e-8);
      expect(found.strikes).toBe(still.strikes);
    }
  });

  it('agrees with looking along many radii', () => {
    const count = 720;
    fc.assert(
      fc.property(
        outlines,
        evenly(-20, 120),
        evenly(-20, 100),
        fc.double({ min: 2, max: 40, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (outline, x, y, outer, part) => {
          const inner = outer * part;
          const found = ringEngagementOf(outline, P(x, y), outer, inner);
          const sampled = sampledRing(outline, P(x, y), outer, inner, count);
          const ends = 2 * found.stretches.length + 2;
          near(found.share, sampled.share, ends / count, 1);
          const seen =
            found.stretches.every(({ sweep }) => sweep > 0.02) &&
            gaps(found.stretches).every((g) => g > 0.02);
          if (seen) expect(sampled.strikes).toBe(found.strikes);
          const step = (2 * Math.PI) / count;
          near(found.meanWidth * found.angle, sampled.width, (40 * step * (outer - inner)) / 1, 1);
          if (found.share < 0.05) return;
          const { size, direction } = found.sideLoad;
          const wanted = P(size * (direction?.dx ?? 0), size * (direction?.dy ?? 0));
          if (found.meanWidth > (outer - inner) / 20)
            nearPlace(sampled.load, wanted, 1, (60 * ends) / (count * found.share) / 10);
        },
      ),
      { numRuns: runs(120) },
    );
  });

  it('refuses radii in the wrong order', () => {
    expect(() => ringEngagementOf(HALF, P(0, 0), 10, 10)).toThrow('must be under the outer radius');
    expect(() => ringEngagementOf(HALF, P(0, 0), 10, 0)).toThrow('ringEngagementOf: inner is 0');
    expect(() => ringEngagementOf(HALF, P(Number.NaN, 0), 10, 5)).toThrow(
      'ringEngagementOf: center is (NaN, 0)',
    );
  });
});

const BOSS_WIDTH = 0.9695294877803649;
/** Also the area over the distance, as 1 / z is harmonic (mean value property): 4 pi / 13. */
const BOSS_PUSH = 0.9666438934122441;

const HALF_LEFT: Region = [{ outer: rectangle(50, 100, { at: P(-50, -50) }), holes: [] }];

/** A block round the origin. */
function underMiddle(): Region {
  return [{ outer: rectangle(100, 100, { at: P(-50, -50) }), holes: [] }];
}

function gaps(stretches: readonly { readonly start: number; readonly sweep: number }[]): number[] {
  return stretches.map(({ start, sweep }, k) => {
    const next = stretches[(k + 1) % stretches.length] as { readonly start: number };
    const gap = (next.start - start - sweep) % (2 * Math.PI);
    return gap <= 0 ? gap + 2 * Math.PI : gap;
  });
}
