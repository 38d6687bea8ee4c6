import {
  arcEdge,
  area,
  circleLoop,
  type Edge,
  lineEdge,
  type Point,
  type Region,
  rectangle,
  type Unreached,
  unreached,
} from '@edgebite/core';
import { everyWay } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const total = (places: readonly Unreached[]) => places.reduce((sum, one) => sum + one.area, 0);
const polygon = (...corners: readonly (readonly [number, number])[]): Region => [
  {
    outer: corners.map(([x, y], k) => {
      const [u, v] = corners[(k + 1) % corners.length] as readonly [number, number];
      return lineEdge(P(x, y), P(u, v), `outline:${k}`);
    }),
    holes: [],
  },
];
/** A wedge of an angle, its tip at the origin, symmetric about the x axis. */
const wedge = (degrees: number): Region => {
  const half = (degrees * Math.PI) / 360;
  const x = 100 * Math.cos(half);
  const y = 100 * Math.sin(half);
  return polygon([0, 0], [x, -y], [x, y]);
};

describe('unreached', () => {
  it('in a corner is r^2 (cot(a/2) - (pi - a)/2): 60, 90 and 120 degrees (morphological opening)', () => {
    for (const [degrees, share] of [
      [60, 0.6848532564],
      [90, 0.2146018366],
      [120, 0.0537514936],
    ] as const) {
      const found = unreached(wedge(degrees), 4, { side: 'inside' });
      const tip = found.find(({ limit }) => Math.hypot(limit.at.x, limit.at.y) < 1e-9) as Unreached;
      near(tip.area, share * 16, 1e-9);
      expect(tip.limit).toMatchObject({ radius: 0, by: 'corner' });
      expect(tip.along.map(({ source }) => source).sort()).toEqual(['outline:0', 'outline:2']);
      expect(tip.narrowest).toBeNull();
    }
  });

  it('of a square and of a 3-4-5 triangle leaves the area of the opening', () => {
    near(1e4 - total(unreached(block(100, 100), 10, { side: 'inside' })), 9914.15926536, 1e-12);
    const triangle = polygon([0, 0], [4, 0], [0, 3]);
    near(6 - total(unreached(triangle, 0.5, { side: 'inside' })), 5.2853981634, 1e-10);
  });

  it('is nothing outside of a convex part', () => {
    expect(unreached(block(40, 20), 50)).toEqual([]);
    expect(unreached([{ outer: circleLoop(P(0, 0), 5), holes: [] }], 50)).toEqual([]);
  });

  it('in a rounded corner is limited by its radius', () => {
    const found = unreached([{ outer: rectangle(60, 40, { corner: 3 }), holes: [] }], 5, { side: 'inside' });
    expect(found).toHaveLength(4);
    for (const one of found) {
      near(one.area, (25 - 9) * (1 - Math.PI / 4), 1e-9);
      expect(one.limit.by).toBe('arc');
      near(one.limit.radius, 3, 1e-15);
    }
    expect(
      unreached([{ outer: rectangle(60, 40, { corner: 3 }), holes: [] }], 3, { side: 'inside' }),
    ).toEqual([]);
  });

  it('names the narrowest gap of a slot, whose square end no round tool reaches', () => {
    const slotted = polygon([0, 0], [100, 0], [100, 60], [54, 60], [54, 30], [46, 30], [46, 60], [0, 60]);
    const [place, ...more] = unreached(slotted, 6) as [Unreached];
    expect(more).toEqual([]);
    expect(place.limit).toMatchObject({ radius: 0, by: 'corner' });
    near(place.narrowest?.radius ?? 0, 4, 1e-15);
    // At its mouth the tool dips in by 6 - sqrt(6^2 - 4^2), a segment of a circle.
    const half = Math.asin(4 / 6);
    near(place.area, 240 - 18 * (2 * half - Math.sin(2 * half)), 1e-12);
    expect(unreached(slotted, 4 - 1e-6)).toHaveLength(2);
    // A tool that only just fits has no play, and does not count as fitting.
    near((unreached(slotted, 4)[0] as Unreached).area, 240 - 8 * Math.PI, 1e-12);
  });

  it('in a slot with a round end is limited by the gap', () => {
    const outer: Edge[] = [
      lineEdge(P(0, 0), P(100, 0)),
      lineEdge(P(100, 0), P(100, 60)),
      lineEdge(P(100, 60), P(54, 60)),
      lineEdge(P(54, 60), P(54, 30)),
      arcEdge(P(54, 30), P(46, 30), P(50, 30), false),
      lineEdge(P(46, 30), P(46, 60)),
      lineEdge(P(46, 60), P(0, 60)),
      lineEdge(P(0, 60), P(0, 0)),
    ];
    const [place] = unreached([{ outer, holes: [] }], 6) as [Unreached];
    near(place.limit.radius, 4, 1e-15);
    expect(unreached([{ outer, holes: [] }], 4 - 1e-6)).toEqual([]);
  });

  it('between round posts is limited by the gap between them', () => {
    const posts: Region = [
      { outer: circleLoop(P(0, 0), 5), holes: [] },
      { outer: circleLoop(P(13, 0), 5), holes: [] },
    ];
    const found = unreached(posts, 4);
    for (const one of found) near(one.limit.radius, 1.5, 1e-14);
    near(found[0]?.narrowest?.radius ?? 0, 1.5, 1e-14);
    nearPlace(found[0]?.narrowest?.at ?? P(9, 9), P(6.5, 0), 10);
  });

  it('between three needles is limited by the circle through their tips (Johnson 1916)', () => {
    const needles = [90, 210, 330].flatMap((degrees): Region => {
      const at = (radius: number, off: number): [number, number] => {
        const angle = ((degrees + off) * Math.PI) / 180;
        return [radius * Math.cos(angle), radius * Math.sin(angle)];
      };
      return polygon(at(10 / Math.sqrt(3), 0), at(40, -2), at(40, 2));
    });
    const found = unreached(needles, 7);
    const [middle] = found.filter(({ limit }) => limit.by === 'tips') as [Unreached];
    near(middle.limit.radius, 10 / Math.sqrt(3), 1e-12);
    nearPlace(middle.limit.at, P(0, 0), 10);
    expect(middle.along).toEqual([]);
    expect(unreached(needles, 10 / Math.sqrt(3) + 0.01)).toHaveLength(1);
    expect(unreached(needles, 10 / Math.sqrt(3) - 0.01)).toEqual([]);
  });

  it('sees the corner between two loops that touch', () => {
    const touching: Region = [
      { outer: circleLoop(P(0, 0), 5), holes: [] },
      { outer: circleLoop(P(10, 0), 5), holes: [] },
    ];
    for (const one of unreached(touching, 4)) {
      expect(one.limit).toMatchObject({ radius: 0, by: 'corner' });
      nearPlace(one.limit.at, P(5, 0), 10);
    }
  });

  it('with an allowance is what the tool leaves beyond it', () => {
    const found = unreached(wedge(90), 4, { side: 'inside', allowance: 0.5 });
    const corner = found.find(({ limit }) => limit.at.x < 10) as Unreached;
    near(corner.area, 0.2146018366 * 16, 1e-9);
    nearPlace(corner.limit.at, P(0.5 * Math.SQRT2, 0), 10);
  });

  it('takes no kink for a corner in which less than the tolerance is left', () => {
    // A fillet of 3 drawn with an end a hundredth off: the arc meets its lines at kinks of a few thousandths.
    const outer = [
      lineEdge(P(3, 0), P(40, 0)),
      lineEdge(P(40, 0), P(40, 40)),
      lineEdge(P(40, 40), P(0, 40)),
      lineEdge(P(0, 40), P(0, 2.99)),
      arcEdge(P(0, 2.99), P(3, 0), P(3, 3), true),
    ];
    const outline: Region = [{ outer, holes: [] }];
    const at = (tolerance: number | undefined) =>
      unreached(outline, 5, { side: 'inside', tolerance }).find(
        ({ limit }) => limit.at.x < 5 && limit.at.y < 5,
      );
    expect(at(undefined)?.limit).toMatchObject({ radius: 0, by: 'corner' });
    const limit = at(0.001)?.limit;
    expect(limit?.by).not.toBe('corner');
    near(limit?.radius ?? 0, 3, 0.005);
  });

  it('does not depend on how an outline is written, or on where it lies', () => {
    const odd = polygon([0, 0], [60, 0], [60, 30], [25, 30], [25, 45], [20, 30], [0, 45]);
    for (const [side, radius] of [
      ['outside', 5],
      ['inside', 3],
    ] as const) {
      const wanted = unreached(odd, radius, { side });
      for (const { name, change, scale } of everyWay(odd)) {
        const got = unreached(change(odd), radius * scale, { side });
        expect(got, name).toHaveLength(wanted.length);
        got.forEach((one, k) => {
          const { area: size, limit } = wanted[k] as Unreached;
          expect(Math.abs(one.area / scale ** 2 - size), name).toBeLessThan(1e-8 * size + 1e-9);
          expect(Math.abs(one.limit.radius / scale - limit.radius), name).toBeLessThan(1e-9 * 60);
        });
      }
    }
  });

  it('is all of what the tool fits nowhere in, with the sizes that would', () => {
    const [hole] = unreached([{ outer: circleLoop(P(0, 0), 3, true, 'outline:0'), holes: [] }], 5, {
      side: 'inside',
    });
    near(area(hole?.region ?? []), 9 * Math.PI, 1e-14);
    near(hole?.limit.radius ?? 0, 3, 1e-15);
    const [box] = unreached(block(30, 8), 5, { side: 'inside' });
    near(box?.narrowest?.radius ?? 0, 4, 1e-15);
    expect(unreached([], 5, { side: 'inside' })).toEqual([]);
  });

  it('refuses numbers out of range', () => {
    expect(() => unreached(block(9, 9), -1)).toThrow('unreached: radius is -1');
    expect(() => unreached(block(9, 9), 1, { allowance: -1 })).toThrow('unreached: allowance is -1');
    expect(() => unreached(block(9, 9), 1, { tolerance: Number.NaN })).toThrow('unreached: tolerance is NaN');
  });
});
