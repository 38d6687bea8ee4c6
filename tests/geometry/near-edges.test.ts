import { circleLoop, type Edge, lineEdge, nearestOnEdge, type Point } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxTreeOf } from '../../packages/core/src/geometry/box-tree.js';
import { gapBetween, NearEdges } from '../../packages/core/src/geometry/edge-gap.js';
import { edgeBounds } from '../../packages/core/src/geometry/measure.js';

/* Edges looked up in a tree against all of them looked at one by one. */

/** Whole numbers, so that edges are often equally near. */
const whole = fc.integer({ min: -9, max: 9 });
const place = fc.record({ x: whole, y: whole });
const line = fc
  .tuple(place, place)
  .filter(([a, b]) => a.x !== b.x || a.y !== b.y)
  .map(([a, b]): Edge => lineEdge(a, b));
const half = fc
  .tuple(place, fc.integer({ min: 1, max: 5 }), fc.boolean())
  .map(([center, radius, ccw]) => circleLoop(center, radius, ccw)[0] as Edge);
const edge = fc.oneof(line, half);
const edges = fc.array(edge, { maxLength: 60, size: 'max' });

describe('edges in a tree', () => {
  it('give the nearest place to a point, the first of those that are as near', () => {
    fc.assert(
      fc.property(edges, place, (list, p) => {
        const all = list.map((one) => nearestOnEdge(one, p));
        const least = Math.min(...all.map(({ distance }) => distance));
        const first = all.find(({ distance }) => distance === least) ?? null;
        expect(new NearEdges(list).nearestPlace(p)).toEqual(first);
      }),
    );
  });

  it('give the nearest place to an edge within reach, the first of those that are as near', () => {
    fc.assert(
      fc.property(edges, edge, fc.constantFrom(0, 1, 4, Infinity), (list, one, reach) => {
        const all = list.map((other) => gapBetween(one, other, 1e-9));
        const least = Math.min(...all.map(({ distance }) => distance));
        const first = least < reach ? (all.find(({ distance }) => distance === least) ?? null) : null;
        expect(new NearEdges(list).nearestTo(one, reach, 1e-9)).toEqual(first);
      }),
    );
  });

  it('give those within reach of a box, in their order', () => {
    fc.assert(
      fc.property(edges, edge, fc.constantFrom(0, 1.5), (list, one, reach) => {
        const box = edgeBounds(one);
        const near = list.filter((other) => {
          const { minX, minY, maxX, maxY } = edgeBounds(other);
          const level = minX <= box.maxX + reach && maxX >= box.minX - reach;
          return level && minY <= box.maxY + reach && maxY >= box.minY - reach;
        });
        expect(new NearEdges(list).within(box, reach)).toEqual(near);
      }),
    );
  });

  it('look at few of many', () => {
    const looked = (n: number) => {
      const all = Array.from({ length: n * n }, (_, k): Edge => {
        const a: Point = { x: 3 * (k % n), y: 3 * Math.floor(k / n) };
        return lineEdge(a, { x: a.x + 1, y: a.y });
      });
      const tree = boxTreeOf(all.map(edgeBounds));
      let visits = 0;
      let most = 0;
      for (let k = 0; k < 50; k++) {
        const p = { x: (k * 7.3) % (3 * n), y: (k * 5.1) % (3 * n) };
        let reach = Infinity;
        visits = 0;
        tree.nearBox({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y }, reach, (item) => {
          visits++;
          reach = Math.min(reach, nearestOnEdge(all[item] as Edge, p).distance);
          return reach;
        });
        most = Math.max(most, visits);
      }
      return most;
    };
    // A few leaves of four boxes, however many there are.
    expect(looked(10)).toBeLessThan(40);
    expect(looked(100)).toBeLessThan(40);
  });
});
