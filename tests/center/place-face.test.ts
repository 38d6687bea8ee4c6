import {
  bitesIn,
  type FacePlacement,
  lineEdge,
  type PlacedBite,
  placeByDepth,
  placeByOpening,
  placementOn,
  placeThrough,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number) => ({ x, y });
/** The lower face of a block: the metal lies above it. */
const FACE = lineEdge(P(0, 0), P(80, 0), 'outline:0');

describe('placeByDepth', () => {
  it("gives every dimension of the handbook's segment (Machinery's Handbook 31, p. 50), and where it is", () => {
    const bite = placeByDepth({ face: FACE, along: 30, radius: 12, depth: 2 });
    expect(bite.center).toEqual(P(30, -10));
    expect(bite.side).toBe('outside');
    expect(bite.withinFace).toBe(true);
    near(bite.opening, 13.2664991614216);
    near(bite.arcLength, 14.056453042971622);
    near(bite.area, 18.00622245072174);
    // A clockwise tooth with the metal ahead of it goes from left to right.
    nearPlace(bite.entry.at, P(30 - Math.sqrt(44), 0), 30);
    nearPlace(bite.exit.at, P(30 + Math.sqrt(44), 0), 30);
    expect(bite.entry.source).toBe('outline:0');
    // Centre outside by e: the corner of metal has 180 degrees - acos(e / r) (elementary).
    near(bite.entry.angle, Math.PI - Math.acos(10 / 12));
    near(bite.exit.angle, Math.PI - Math.acos(10 / 12));
  });

  it('with the centre inside leaves corners under a right angle: acos(e / r) (elementary)', () => {
    const bite = placeByDepth({ face: FACE, along: 30, radius: 12, depth: 20 });
    expect(bite.side).toBe('inside');
    near(bite.entry.angle, Math.acos(8 / 12));
    const flush = placeByDepth({ face: FACE, along: 30, radius: 12, depth: 12 });
    expect(flush.side).toBe('on the face');
    near(flush.exit.angle, Math.PI / 2);
  });

  it('says when the opening runs over an end of the face', () => {
    expect(placeByDepth({ face: FACE, along: 6, radius: 12, depth: 2 }).withinFace).toBe(false);
    expect(placeByDepth({ face: FACE, along: 75, radius: 12, depth: 2 }).withinFace).toBe(false);
    expect(placeByDepth({ face: FACE, along: 7, radius: 12, depth: 2 }).withinFace).toBe(true);
  });

  it('refuses what cannot be, with the limit', () => {
    expect(() => placeByDepth({ face: FACE, along: 30, radius: 12, depth: 24 })).toThrow(
      'depth is 24; with radius 12 a bite is less than 24 deep',
    );
    expect(() => placeByDepth({ face: FACE, along: Number.NaN, radius: 12, depth: 2 })).toThrow(
      'along is NaN',
    );
  });
});

describe('placeByOpening', () => {
  it('has two answers, named by the side of the centre', () => {
    const { outside, inside } = placeByOpening({ face: FACE, along: 40, radius: 17, opening: 30 });
    // 8-15-17 triangle.
    expect(outside.side).toBe('outside');
    nearPlace(outside.center, P(40, -8), 40);
    near(outside.depth, 9);
    expect(inside.side).toBe('inside');
    nearPlace(inside.center, P(40, 8), 40);
    near(inside.depth, 25);
    nearPlace(outside.entry.at, inside.entry.at, 40);
    nearPlace(outside.entry.at, P(25, 0), 40);
    near(outside.entry.angle + inside.entry.angle, Math.PI);
  });

  it('has one where the opening is the diameter', () => {
    const { outside, inside } = placeByOpening({ face: FACE, along: 40, radius: 17, opening: 34 });
    expect(outside.center).toEqual(P(40, 0));
    expect(inside.center).toEqual(P(40, 0));
    expect(outside.side).toBe('on the face');
  });

  it('refuses what cannot be, with the limit', () => {
    expect(() => placeByOpening({ face: FACE, along: 40, radius: 17, opening: 34.1 })).toThrow(
      'opening is 34.1; a circle of radius 17 opens a face 34 wide at most',
    );
  });
});

describe('placementOn', () => {
  it('refuses a circle that does not cut the face, with the limit', () => {
    expect(() => placementOn(FACE, P(40, -17.5), 17)).toThrow(
      'the centre lies 17.5 short of the face; with radius 17 the circle cuts the face only if it lies less than 17',
    );
    expect(() => placementOn(FACE, P(40, 20), 17)).toThrow('the centre lies 20 inside the metal');
    expect(() => placementOn(FACE, P(40, Number.NaN), 17)).toThrow('center is (40, NaN)');
  });
});

describe('placeThrough', () => {
  it.each([
    // Code Golf 2289.
    [P(7, -5), P(-1, 1), P(0, -6), P(3, -2), 5, 1e-12],
    [P(1, 7), P(8, 6), P(7, -2), P(3.921, 2.447), 5.409, 1e-4],
    // A Programmer's Geometry, demo input; result with 50 digits by mpmath.
    [P(80, 50), P(200, 20), P(230, 100), P(152.14285714285714, 83.57142857142857), 79.57155680933498, 1e-14],
    // Machinery's Handbook 31, p. 79: chord 16, height 6.
    [P(0, 0), P(8, 6), P(16, 0), P(8, 6 - 25 / 3), 25 / 3, 1e-14],
  ])('%o %o %o', (a, m, b, center, radius, share) => {
    const bite = placeThrough(a, m, b);
    nearPlace(bite.center, center, radius, share);
    near(bite.radius, radius, share);
    expect([bite.entry.at, bite.exit.at].map(({ x }) => x).sort()).toEqual([a.x, b.x].sort());
  });

  it('names the end where a clockwise tooth enters, whichever way the points are given', () => {
    for (const [a, b] of [
      [P(-3, 0), P(3, 0)],
      [P(3, 0), P(-3, 0)],
    ] as const) {
      const over = placeThrough(a, P(0, 1), b);
      expect(over.entry.at).toEqual(P(-3, 0));
      expect(over.exit.at).toEqual(P(3, 0));
      expect(placeThrough(a, P(0, -1), b).entry.at).toEqual(P(3, 0));
    }
  });

  it('refuses points in line, and points that coincide', () => {
    expect(() => placeThrough(P(0, 0), P(1, 1), P(3, 3))).toThrow(
      '(0, 0), (1, 1) and (3, 3) are in line; no radius is large enough',
    );
    expect(() => placeThrough(P(1e6, 0.1), P(1e6 + 1, 0.2), P(1e6 + 2, 0.3))).toThrow('are in line');
    expect(() => placeThrough(P(0, 0), P(1, 1), P(0, 0))).toThrow('two of the three points are at (0, 0)');
    expect(() => placeThrough(P(0, 0), P(Number.NaN, 1), P(1, 0))).toThrow('the middle point is (NaN, 1)');
  });
});

/** Random bites in random faces, at least a hundredth of the diameter deep and as far from a full hole. */
const bites = fc
  .record({
    ax: evenly(-100, 100),
    ay: evenly(-100, 100),
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    length: fc.double({ min: 1, max: 200, noNaN: true }),
    along: evenly(-0.5, 1.5),
    radius: fc.double({ min: 0.1, max: 60, noNaN: true }),
    depth: fc.double({ min: 0.01, max: 1.99, noNaN: true }),
  })
  .map(({ ax, ay, turn, length, along, radius, depth }) => {
    const face = lineEdge(P(ax, ay), P(ax + length * Math.cos(turn), ay + length * Math.sin(turn)));
    return { face, along: along * length, radius, depth: depth * radius };
  });

describe('every way of placing a bite in a face', () => {
  const size = ({ radius }: PlacedBite, along: number) => 150 + radius + Math.abs(along);
  const same = (a: PlacedBite, b: PlacedBite, along: number, share: number): void => {
    const places = size(b, along);
    nearPlace(a.center, b.center, places, share);
    nearPlace(a.entry.at, b.entry.at, places, share);
    nearPlace(a.exit.at, b.exit.at, places, share);
    // Places are as good as their coordinates, and so is all that is worked out from them.
    for (const key of ['radius', 'depth', 'opening', 'arcLength'] as const)
      near(a[key], b[key], share, places);
    near(a.includedAngle, b.includedAngle, share, (10 * places) / b.radius);
    near(a.entry.angle, b.entry.angle, share, (10 * places) / b.radius);
    near(a.area, b.area, share, 10 * places * b.radius);
  };

  it('leads to every other', () => {
    fc.assert(
      fc.property(bites, ({ face, along, radius, depth }) => {
        const one: FacePlacement = placeByDepth({ face, along, radius, depth });
        near(
          Math.hypot(one.entry.at.x - one.exit.at.x, one.entry.at.y - one.exit.at.y),
          one.opening,
          1e-12,
          300,
        );
        const on = placementOn(face, one.center, radius);
        same(on, one, along, 1e-13);
        expect(on.side).toBe(Math.abs(depth - radius) < 1e-9 ? on.side : one.side);
        near(on.along, along, 1e-13, 300);
        // Far from half a turn; there the opening hardly depends on the depth.
        if (Math.abs(depth / radius - 1) > 0.05) {
          const both = placeByOpening({ face, along, radius, opening: one.opening });
          same(both[one.side as 'inside' | 'outside'], one, along, 1e-12);
        }
        const deepest = {
          x:
            one.center.x +
            ((face.a.y - face.b.y) / Math.hypot(face.b.x - face.a.x, face.b.y - face.a.y)) * radius,
          y:
            one.center.y +
            ((face.b.x - face.a.x) / Math.hypot(face.b.x - face.a.x, face.b.y - face.a.y)) * radius,
        };
        const three = placeThrough(one.entry.at, deepest, one.exit.at);
        // A shallow or nearly closed arc magnifies the rounding of its three points.
        same(three, one, along, 1e-13 * (1 + (radius / Math.min(one.opening, depth)) ** 2));
      }),
    );
  });

  it('agrees with the overlay of outline and circle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 14, noNaN: true }),
        fc.double({ min: 0.01, max: 1.99, noNaN: true }),
        (radius, depth) => {
          const face = lineEdge(P(0, 0), P(80, 0), 'outline:0');
          const one = placeByDepth({ face, along: 40, radius, depth: depth * radius });
          const { bites: found, removedArea } = bitesIn(block(80, 30), one.center, radius);
          expect(found).toHaveLength(1);
          const [bite] = found as [(typeof found)[number]];
          for (const key of ['depth', 'opening', 'includedAngle', 'arcLength', 'area'] as const) {
            near(bite[key], one[key], 1e-12, radius * radius + 30);
          }
          near(removedArea, one.area, 1e-12, 900);
          nearPlace(bite.entry?.at ?? P(0, 0), one.entry.at, 80);
          nearPlace(bite.exit?.at ?? P(0, 0), one.exit.at, 80);
          near(bite.entry?.angle ?? -1, one.entry.angle, 1e-11, 1 / Math.sqrt(Math.min(depth, 2 - depth)));
          near(bite.exit?.angle ?? -1, one.exit.angle, 1e-11, 1 / Math.sqrt(Math.min(depth, 2 - depth)));
          expect(bite.entry?.source).toBe('outline:0');
        },
      ),
    );
  });
});
