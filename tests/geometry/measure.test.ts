import {
  arcEdge,
  area,
  centroid,
  circleLoop,
  contains,
  curvature,
  directionAtEnd,
  directionAtStart,
  disc,
  edgeBounds,
  edgeLength,
  lineEdge,
  nearestOnEdge,
  onArcSide,
  pointAlong,
  ring,
  segmentArea,
  sineExcess,
  subtract,
  sweep,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

const p = (x: number, y: number) => ({ x, y });
const at = (r: number, degrees: number) =>
  p(r * Math.cos((degrees * Math.PI) / 180), r * Math.sin((degrees * Math.PI) / 180));
const arc = (r: number, from: number, to: number, ccw = true) =>
  arcEdge(at(r, from), at(r, to), p(0, 0), ccw);

describe('an arc', () => {
  // Machinery's Handbook, 31st ed., p. 50: R 12, depth 2: angle 67.13°, arc 14.06, area 18.01 as printed.
  it('has the angle, length and segment of the handbook', () => {
    const half = (Math.acos(1 - 2 / 12) * 180) / Math.PI;
    const edge = arc(12, -half, half);
    expect(Math.abs((sweep(edge) * 180) / Math.PI - 67.13)).toBeLessThan(0.02);
    expect(edgeLength(edge)).toBeCloseTo(14.06, 2);
    expect(segmentArea(edge)).toBeCloseTo(18.01, 2);
    expect(segmentArea(arc(12, half, -half, false))).toBe(-segmentArea(edge));
  });

  // J. Burkardt, circle-segment test output: unit circle, by height.
  it.each([
    [1 / 2, 0.614185],
    [1 / 4, 0.226656],
    [1 / 8, 0.081753],
    [1 / 16, 0.029185],
    [1 / 64, 0.0036742],
    [1 / 1024, 5.75361e-5],
  ])('of height %d has the tabulated segment', (h, printed) => {
    const half = (Math.acos(1 - h) * 180) / Math.PI;
    const found = segmentArea(arc(1, -half, half));
    expect(Math.abs(found - printed) / printed).toBeLessThan(2e-5);
  });

  it('turns by up to a full turn, either way', () => {
    for (const degrees of [1e-6, 1, 90, 179, 180, 181, 270, 359]) {
      expect((sweep(arc(3, 20, 20 + degrees)) * 180) / Math.PI).toBeCloseTo(degrees, 9);
      expect((sweep(arc(3, 20, 20 - degrees, false)) * 180) / Math.PI).toBeCloseTo(degrees, 9);
    }
  });

  it('is boxed with its bulges', () => {
    const box = edgeBounds(arc(5, -30, 100));
    expect(box.maxX).toBe(5);
    expect(box.maxY).toBe(5);
    expect(box.minX).toBeCloseTo(5 * Math.cos((100 * Math.PI) / 180), 12);
    expect(box.minY).toBeCloseTo(-2.5, 12);
    expect(edgeBounds(arc(5, 100, -30))).toMatchObject({ minX: -5, minY: -5 });
  });

  // 0.3 - 0.1 is not 0.2, and 0.1 + 0.2 is not 0.3; a drawing has those, and its neighbours end there.
  it.each([
    [0.3, 0.2, 0.4],
    [0.1, -0.1, 0.3],
  ])('round %d is boxed by its ends alone, from %d to %d, to the last bit', (middle, low, high) => {
    const c = p(middle, middle);
    const quarters = [p(high, middle), p(middle, high), p(low, middle), p(middle, low)];
    quarters.forEach((a, k) => {
      const b = quarters[(k + 1) % 4] as typeof a;
      const box = {
        minX: Math.min(a.x, b.x),
        minY: Math.min(a.y, b.y),
        maxX: Math.max(a.x, b.x),
        maxY: Math.max(a.y, b.y),
      };
      expect(edgeBounds(arcEdge(a, b, c, true))).toEqual(box);
      expect(edgeBounds(arcEdge(b, a, c, false))).toEqual(box);
    });
  });

  it('is boxed by its ends alone between the extremes of its circle', () => {
    for (const from of [10, 100, 190, 280]) {
      const short = arc(5, from, from + 70);
      const xs = [short.a.x, short.b.x].sort((a, b) => a - b);
      const ys = [short.a.y, short.b.y].sort((a, b) => a - b);
      expect(edgeBounds(short)).toEqual({ minX: xs[0], minY: ys[0], maxX: xs[1], maxY: ys[1] });
    }
  });

  it('has its ends on its side, whichever way it runs, and what lies between them', () => {
    for (const degrees of [40, 90, 180, 220, 300]) {
      for (const edge of [arc(3, 25, 25 + degrees), arc(3, 25 + degrees, 25, false)]) {
        expect(onArcSide(edge, edge.a)).toBe(true);
        expect(onArcSide(edge, edge.b)).toBe(true);
        expect(onArcSide(edge, at(3, 26))).toBe(true);
        expect(onArcSide(edge, at(3, 24 + degrees))).toBe(true);
        expect(onArcSide(edge, at(3, 24))).toBe(false);
        expect(onArcSide(edge, at(3, 26 + degrees))).toBe(false);
      }
    }
  });

  it('is walked by shares of its length, ends exact', () => {
    const edge = arc(2, 0, 240);
    expect(pointAlong(edge, 0)).toBe(edge.a);
    expect(pointAlong(edge, 1)).toBe(edge.b);
    expect(pointAlong(edge, 0.5).x).toBeCloseTo(-1, 12);
    expect(pointAlong(edge, 0.5).y).toBeCloseTo(Math.sqrt(3), 12);
    const clockwise = pointAlong(arc(2, 0, -90, false), 0.5);
    expect(clockwise.y).toBeCloseTo(-Math.SQRT2, 12);
  });

  it('has tangents and a curvature with a sign', () => {
    const edge = arc(4, 0, 90);
    expect(directionAtStart(edge).dy).toBeCloseTo(1, 15);
    expect(directionAtEnd(edge).dx).toBeCloseTo(-1, 15);
    expect(curvature(edge)).toBe(0.25);
    expect(curvature(arc(4, 90, 0, false))).toBe(-0.25);
    expect(curvature(lineEdge(p(0, 0), p(1, 0)))).toBe(0);
  });

  it('is refused where it cannot be', () => {
    expect(() => arcEdge(p(1, 0), p(1, 0), p(0, 0), true)).toThrow(/two arcs/);
    expect(() => arcEdge(p(1, 0), p(0, 2), p(0, 0), true)).toThrow(/equally far/);
    expect(() => arcEdge(p(1, 0), p(0, Number.NaN), p(0, 0), true)).toThrow(/finite/);
    expect(() => lineEdge(p(1, 1), p(1, 1))).toThrow(/both ends/);
    expect(() => circleLoop(p(0, 0), 0)).toThrow(/radius/);
    expect(() => circleLoop(p(Number.POSITIVE_INFINITY, 0), 1)).toThrow(/finite/);
    expect(() => ring(p(0, 0), 2, 3)).toThrow(/inner radius/);
  });

  it('has its centre moved where a drawing has rounded it', () => {
    const edge = arcEdge(p(1.0002, 0), p(0, 1), p(0, 0), true);
    const { center, radius } = edge;
    expect(Math.hypot(edge.a.x - center.x, edge.a.y - center.y)).toBeCloseTo(radius, 14);
    expect(Math.hypot(edge.b.x - center.x, edge.b.y - center.y)).toBeCloseTo(radius, 14);
  });
});

describe('the sine excess', () => {
  it('does not cancel for small angles: its series is t³/6 - t⁵/120', () => {
    for (const t of [1e-8, 1e-4, 1e-2, 0.1]) {
      const series = t ** 3 / 6 - t ** 5 / 120 + t ** 7 / 5040 - t ** 9 / 362880;
      expect(Math.abs(sineExcess(t) / series - 1)).toBeLessThan(1e-14);
    }
    expect(sineExcess(2)).toBeCloseTo(2 - Math.sin(2), 15);
    expect(sineExcess(0)).toBe(0);
  });
});

describe('the nearest place of an edge', () => {
  it('lies on it, or is an end', () => {
    expect(nearestOnEdge(lineEdge(p(0, 0), p(4, 0)), p(1, 3))).toEqual({ at: p(1, 0), distance: 3 });
    expect(nearestOnEdge(lineEdge(p(0, 0), p(4, 0)), p(7, 4))).toEqual({ at: p(4, 0), distance: 5 });
    const quarter = arc(5, 0, 90);
    expect(nearestOnEdge(quarter, p(3, 4)).distance).toBeCloseTo(0, 12);
    expect(nearestOnEdge(quarter, p(6, 8)).distance).toBeCloseTo(5, 12);
    expect(nearestOnEdge(quarter, p(0.6, 0.8)).distance).toBeCloseTo(4, 12);
    expect(nearestOnEdge(quarter, p(-3, -4)).at).toEqual(quarter.a);
    expect(nearestOnEdge(quarter, p(-4, -3)).at).toEqual(quarter.b);
    expect(nearestOnEdge(quarter, p(0, 0)).distance).toBeCloseTo(5, 12);
  });

  it('at an end is that end to the last bit', () => {
    // 0.1 + (0.7 - 0.1) is not 0.7.
    const line = lineEdge(p(0.7, 0.2), p(0.1, 0.9));
    for (const edge of [line, lineEdge(line.b, line.a)]) {
      expect(nearestOnEdge(edge, edge.a)).toEqual({ at: edge.a, distance: 0 });
      expect(nearestOnEdge(edge, edge.b)).toEqual({ at: edge.b, distance: 0 });
    }
  });

  it('is the start of an arc from its centre, also where the end is rounded to be nearer', () => {
    const large = arcEdge(at(5, 10), at(5 - 1e-7, 9), p(0, 0), true);
    expect(nearestOnEdge(large, large.center).at).toEqual(large.a);
  });
});

describe('a region', () => {
  it('contains what it should at the heights of its vertices and extremes', () => {
    const plate = subtract(disc(p(0, 0), 10), [disc(p(0, 0), 4)]);
    for (const y of [-10, -4, 0, 4, 10]) {
      for (const x of [-12, -7, -1, 1, 7, 12]) {
        const away = Math.hypot(x, y);
        const expected = away > 10 || away < 4 ? 'outside' : 'inside';
        if (away !== 10 && away !== 4) expect([x, y, contains(plate, p(x, y))]).toEqual([x, y, expected]);
      }
    }
    expect(contains(plate, p(0, -10))).toBe('boundary');
    expect(contains(plate, p(4, 0))).toBe('boundary');
    expect(contains(plate, p(4 + 1e-7, 0))).toBe('inside');
    expect(contains([], p(0, 0))).toBe('outside');
  });

  // Machinery's Handbook, 31st ed., centres of gravity: half a disc lies at 4 r / (3 pi) from its diameter.
  it('has its centroid where the handbook puts that of half a disc', () => {
    const square = [p(-9, 0), p(9, 0), p(9, -9), p(-9, -9)];
    const lower = [
      {
        outer: square.map((a, k) => lineEdge(square[(k + 1) % 4] as typeof a, a)).reverse(),
        holes: [],
      },
    ];
    const half = subtract(disc(p(0, 0), 6), [lower]);
    expect(area(half)).toBeCloseTo(18 * Math.PI, 10);
    expect(centroid(half)?.x).toBeCloseTo(0, 12);
    expect(centroid(half)?.y).toBeCloseTo((4 * 6) / (3 * Math.PI), 12);
    expect(centroid([])).toBeNull();
  });

  it('has the centroid of a disc with an eccentric hole by moments', () => {
    const plate = subtract(disc(p(100, 50), 10), [disc(p(103, 50), 4)]);
    // (100 * 100 - 16 * 103) / 84, the areas over pi.
    expect(centroid(plate)?.x).toBeCloseTo((100 * 100 - 16 * 103) / 84, 10);
    expect(centroid(plate)?.y).toBeCloseTo(50, 10);
  });
});
