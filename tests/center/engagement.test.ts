import {
  circle,
  disc,
  engagementOf,
  type Point,
  type Region,
  ring,
  sideLoadOf,
  subtract,
  union,
} from '@edgebite/core';
import { outlines, placed, type Similarity, transformed, UNMOVED } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { block, near, nearPlace, underXAxis, upTo } from './near.js';
import { sampledRim } from './sample.js';

const P = (x: number, y: number): Point => ({ x, y });
const HALF = underXAxis(100);

describe('engagementOf', () => {
  // Share 1 - acos(e / r) / pi with the centre e inside the face, from cos(phi) = 1 - ae / r (Fundamentals of
  // Machining Processes, p. 174); with 40 digits by mpmath.
  it.each([
    [0, 10, 0.5],
    [3, 17, 0.5564680478984638],
    [-3, 17, 0.4435319521015362],
    [-8, 10, 0.20483276469913347],
  ])('centre %f inside a straight face, radius %f', (e, r, share) => {
    const engagement = engagementOf(HALF, P(0, -e), r);
    near(engagement.share, share, 1e-14);
    expect(engagement.entries).toBe(1);
    expect(engagement.interrupted).toBe(true);
    // The angle to either side of straight in, by the radial engagement ae = r + e.
    near(engagement.angle / 2, Math.acos(1 - (r + e) / r), 1e-13);
  });

  it.each([
    // Engagement angle of a cutter of diameter D at radial engagement ae (references as above): the printed formula's values.
    [10, 0.5, 25.841933],
    [10, 1, 36.869898],
    [10, 2, 53.130102],
    [10, 5, 90],
    [20, 3, 45.572996],
    [20, 15, 120],
  ])('diameter %f, radial engagement %f: engagement angle %f degrees', (diameter, ae, degrees) => {
    const r = diameter / 2;
    const { angle } = engagementOf(HALF, P(0, r - ae), r);
    expect(Math.abs((angle / 2) * (180 / Math.PI) - degrees)).toBeLessThanOrEqual(5e-7);
  });

  it('half a circle has side load 2 / pi, a full one 0 (integral of the definition)', () => {
    const half = engagementOf(HALF, P(0, 0), 10);
    near(half.sideLoad.size, 2 / Math.PI, 1e-14);
    // The metal lies below; a clockwise tooth moves to the left there.
    nearPlace(P(half.sideLoad.direction?.dx ?? 9, half.sideLoad.direction?.dy ?? 9), P(-1, 0), 1);
    const full = engagementOf(HALF, P(0, -50), 10);
    expect(full.sideLoad).toEqual({ size: 0, direction: null });
    expect(full.share).toBe(1);
    expect(full.entries).toBe(0);
    expect(full.interrupted).toBe(false);
    expect(full.arcs).toEqual([
      { start: full.arcs[0]?.start, sweep: 2 * Math.PI, length: 20 * Math.PI, entry: null, exit: null },
    ]);
  });

  it("one arc of sweep s has side load sin(s / 2) / (s / 2): chord over arc (Machinery's Handbook 31, p. 83)", () => {
    for (const depth of [0.001, 0.5, 3, 9, 12, 19.9]) {
      const { sideLoad, angle } = engagementOf(HALF, P(0, 10 - depth), 10);
      near(sideLoad.size, Math.sin(angle / 2) / (angle / 2), 1e-12);
    }
  });

  it('a slot twice as long as the cutter is wide: two arcs that balance', () => {
    const slotted = subtract(block(100, 100), [[moved(block(100, 10)[0] as Region[number], 45)]]);
    const { arcs, entries, sideLoad, share } = engagementOf(slotted, P(50, 50), 10);
    // Elementary: the slot of half width 5 takes an angle of 2 asin(1 / 2) out at either end.
    expect(entries).toBe(2);
    near(share, 2 / 3, 1e-13);
    expect(sideLoad).toEqual({ size: 0, direction: null });
    expect(arcs.map(({ entry }) => entry?.at.x.toFixed(6))).toHaveLength(2);
  });

  it('nothing is engaged in air, on an existing wall, or along the outside of a boss', () => {
    const nothing = {
      arcs: [],
      angle: 0,
      share: 0,
      entries: 0,
      interrupted: false,
      sideLoad: { size: 0, direction: null },
    };
    expect(engagementOf(HALF, P(0, 20), 10)).toEqual(nothing);
    expect(engagementOf(HALF, P(0, 10), 10)).toEqual(nothing);
    expect(engagementOf([], P(0, 0), 10)).toEqual(nothing);
    const bored = subtract(HALF, [disc(P(0, -3), 10)]);
    expect(engagementOf(bored, P(0, -3), 10)).toEqual(nothing);
    expect(engagementOf(disc(P(0, -3), 10), P(0, -3), 10)).toEqual(nothing);
    expect(engagementOf(ring(P(0, 0), 20, 10), P(0, 0), 10)).toEqual(nothing);
  });

  it('a hole that touches the circle from inside or outside does not part an arc', () => {
    for (const x of [7, 13]) {
      const bored = subtract(block(100, 100), [disc(P(50 + x, 50), 3)]);
      const { share, entries } = engagementOf(bored, P(50, 50), 10);
      expect(share).toBe(1);
      expect(entries).toBe(0);
    }
  });

  it('gives the corners that the cut leaves, and what the metal ends with there', () => {
    const named: Region = [{ outer: circle(60), holes: [] }];
    // Elementary: circles of 30 and 25 with centres 25 apart cross where cos = (30^2 + 25^2 - 25^2) / (2 30 25) = 0.6,
    // 18 from the one centre towards the other; the angle between the tangents is that between the radii.
    const [arc] = engagementOf(named, P(25, 0), 25).arcs;
    nearPlace(arc?.entry?.at ?? P(0, 0), P(18, -24), 30);
    nearPlace(arc?.exit?.at ?? P(0, 0), P(18, 24), 30);
    const radii = Math.acos((18 * (18 - 25) + 24 * 24) / (30 * 25));
    near(arc?.entry?.angle ?? 0, radii, 1e-12);
    near(arc?.exit?.angle ?? 0, radii, 1e-12);
    expect(arc?.entry?.source).toBe('outline:0');
  });

  it('gives no angle where the circle leaves a face as a tangent from inside, pi from outside (elementary)', () => {
    // A step of 20: the circle touches the low face in the corner of the step, and the high face at its edge.
    const stepped = union([block(100, 40), [moved(block(50, 20)[0] as Region[number], 40)]]);
    const { arcs } = engagementOf(stepped, P(50, 50), 10);
    expect(arcs).toHaveLength(1);
    near(arcs[0]?.sweep ?? 0, Math.PI, 1e-12);
    nearPlace(arcs[0]?.entry?.at ?? P(0, 0), P(50, 40), 100);
    near(arcs[0]?.entry?.angle ?? 9, Math.PI, 1e-12);
    near(arcs[0]?.exit?.angle ?? 9, 0, 1e-12, 1);
  });

  it('gives the same tip however the part is turned', () => {
    const stepped = union([block(100, 40), [moved(block(50, 20)[0] as Region[number], 40)]]);
    for (const k of upTo(60)) {
      const turned: Similarity = {
        ...UNMOVED,
        turn: [Math.cos(k / 9), Math.sin(k / 9)],
        mirror: k % 2 === 1,
      };
      const [arc] = engagementOf(transformed(stepped, turned), placed(P(50, 50), turned), 10).arcs;
      const angles = [arc?.entry?.angle ?? 9, arc?.exit?.angle ?? 9].sort((a, b) => a - b);
      near(angles[0] ?? 9, 0, 1e-6, 1);
      near(angles[1] ?? 9, Math.PI, 1e-6, 1);
    }
  });

  it('agrees with looking at many places of the circle', () => {
    const count = 1200;
    fc.assert(
      fc.property(
        outlines,
        evenly(-20, 120),
        evenly(-20, 100),
        fc.double({ min: 2, max: 40, noNaN: true }),
        (outline, x, y, radius) => {
          const found = engagementOf(outline, P(x, y), radius);
          const sampled = sampledRim(outline, P(x, y), radius, count);
          // Each end of an arc lies up to half a place off the last one that is seen.
          const ends = 2 * found.arcs.length + 2;
          near(found.share, sampled.share, ends / count, 1);
          const seen =
            found.arcs.every(({ sweep }) => sweep > 0.02) && gaps(found.arcs).every((gap) => gap > 0.02);
          if (seen) expect(sampled.entries).toBe(found.entries);
          const { size, direction } = found.sideLoad;
          const wanted = P(size * (direction?.dx ?? 0), size * (direction?.dy ?? 0));
          if (found.share > 0) nearPlace(sampled.load, wanted, 1, (2 * ends) / (count * found.share));
        },
      ),
      { numRuns: runs(150) },
    );
  });
});

describe('sideLoadOf', () => {
  it('two opposite quarters balance; a quarter alone has 2 sqrt 2 / pi (integral of the definition)', () => {
    const quarter = Math.PI / 2;
    expect(
      sideLoadOf([
        { start: 0.3, sweep: quarter },
        { start: 0.3 + Math.PI, sweep: quarter },
      ]).size,
    ).toBe(0);
    near(sideLoadOf([{ start: -2, sweep: quarter }]).size, (2 * Math.SQRT2) / Math.PI, 1e-14);
    // Opposite arcs of unlike sweep: the difference of the chords over the sum of the arcs.
    const { size, direction } = sideLoadOf([
      { start: -1, sweep: 2 },
      { start: Math.PI - 0.5, sweep: 1 },
    ]);
    near(size, (2 * Math.sin(1) - 2 * Math.sin(0.5)) / 3, 1e-13);
    nearPlace(P(direction?.dx ?? 9, direction?.dy ?? 9), P(0, -1), 1);
  });

  it('is 0 for no arcs', () => {
    expect(sideLoadOf([])).toEqual({ size: 0, direction: null });
  });
});

function moved(part: Region[number], by: number): Region[number] {
  const up = ({ x, y }: Point): Point => P(x, y + by);
  return { outer: part.outer.map((edge) => ({ ...edge, a: up(edge.a), b: up(edge.b) })), holes: [] };
}

function gaps(arcs: readonly { readonly start: number; readonly sweep: number }[]): number[] {
  return arcs.map(({ start, sweep }, k) => {
    const next = arcs[(k + 1) % arcs.length] as { readonly start: number };
    const gap = (next.start - start - sweep) % (2 * Math.PI);
    return gap <= 0 ? gap + 2 * Math.PI : gap;
  });
}
