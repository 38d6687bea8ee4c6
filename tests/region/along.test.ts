import { lineEdge, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sortHits } from '../../packages/core/src/noding/along.js';
import { type Curves, gather } from '../../packages/core/src/noding/gather.js';
import type { Hits } from '../../packages/core/src/noding/meetings.js';
import { addPoint, isNear, type Points } from '../../packages/core/src/noding/points.js';
import { p } from './shapes.js';

/* The order of places along a piece. Elementary, no source. In a frame round the origin coordinates stay as they are. */

const frame = { minX: -50, minY: -50, maxX: 50, maxY: 50 };

describe('places along a piece', () => {
  const line = (a: Point, b: Point) => gather([[[lineEdge(a, b), lineEdge(b, a)]]], frame);
  const order = (curves: Curves, piece: number, places: readonly Point[]) => {
    const hits: Hits = { piece: [], point: [] };
    for (const { x, y } of places) {
      hits.piece.push(piece);
      hits.point.push(addPoint(curves.points, x, y, null));
    }
    const { start, point } = sortHits(curves, hits);
    const list = [...point.slice(start[piece], start[piece + 1])];
    return list.map((v) => p(curves.points.x[v] as number, curves.points.y[v] as number));
  };

  it.each([2, 7, 8, 9, 10, 100])('are put in order, %d of them', (n) => {
    // Steps of 37 go through all of 1 to 100 in an order of their own.
    const places = Array.from({ length: n }, (_, k) => p(((37 * (k + 1)) % 101) / 3, 0));
    const byX = [...places].sort((a, b) => a.x - b.x);
    expect(order(line(p(0, 0), p(40, 0)), 0, places)).toEqual(byX);
    expect(order(line(p(0, 0), p(40, 0)), 1, places)).toEqual(byX.reverse());
  });

  it('are told apart beside either end, however close', () => {
    const places = [p(3e-16, 0), p(1e-16, 0), p(2e-16, 0)];
    const byX = [...places].sort((a, b) => a.x - b.x);
    expect(order(line(p(0, 0), p(40, 0)), 0, places)).toEqual(byX);
    expect(order(line(p(40, 0), p(0, 0)), 0, places)).toEqual(byX.reverse());
  });

  it('that are the same stand in the order of their numbers', () => {
    const curves = line(p(0, 0), p(40, 0));
    const hits: Hits = { piece: [], point: [] };
    const numbers = [0, 1, 2, 3, 4].map((k) => addPoint(curves.points, k === 4 ? 1 : 30, 0, null));
    for (const k of [2, 0, 4, 3, 1]) {
      hits.piece.push(0);
      hits.point.push(numbers[k] as number);
    }
    expect([...sortHits(curves, hits).point]).toEqual([4, 0, 1, 2, 3].map((k) => numbers[k]));
  });
});

describe('a place', () => {
  it('is near another up to the distance itself', () => {
    const points: Points = { x: [], y: [], given: [], isSeam: [] };
    const v = addPoint(points, 1, 2, null);
    expect(isNear(points, v, 4, 6, 5)).toBe(true);
    expect(isNear(points, v, -2, -2, 5)).toBe(true);
    expect(isNear(points, v, 4, 6, 4.999)).toBe(false);
  });

  it('is no seam unless it is said to be one', () => {
    const points: Points = { x: [], y: [], given: [], isSeam: [] };
    const given = p(3, 4);
    expect(addPoint(points, 1, 2, null)).toBe(0);
    expect(addPoint(points, 3, 4, given, true)).toBe(1);
    expect(points).toEqual({ x: [1, 3], y: [2, 4], given: [null, given], isSeam: [false, true] });
  });
});
