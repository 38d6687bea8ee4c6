import { type Edge, lineEdge } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { Fan, LIKE_DIRECTION } from '../../packages/core/src/region/fan.js';
import { gather } from '../../packages/core/src/region/gather.js';
import type { Graph } from '../../packages/core/src/region/merge.js';
import { rotate } from '../../packages/core/src/region/rotate.js';
import { p } from './shapes.js';

/* The order of edges round a vertex, by their angles. Elementary, no source. */

const CENTER = p(3, -2);

/** A graph of edges that leave one vertex, each with an end of its own; every other one is drawn towards it. */
function starOf(edges: readonly Edge[]): Graph {
  const curves = gather([edges.map((edge) => [edge, lineEdge(edge.b, edge.a)])]);
  const n = edges.length;
  // Each loop has two points: where its edge starts, the common one, and where it ends.
  const from = Int32Array.from({ length: n }, () => curves.from[0] as number);
  const to = Int32Array.from({ length: n }, (_, e) => curves.to[2 * e] as number);
  return {
    curves,
    index: null,
    count: n,
    from,
    to,
    start: Int32Array.from({ length: n + 1 }, (_, e) => e),
    member: Int32Array.from({ length: n }, (_, e) => 2 * e),
    sign: new Int8Array(n).fill(1),
  };
}

const spoke = (angle: number, length = 10) =>
  lineEdge(CENTER, p(CENTER.x + length * Math.cos(angle), CENTER.y + length * Math.sin(angle)));

/** `n` angles all round, in an order that has nothing to do with their size, none of them on an axis. */
const angles = (n: number) =>
  Array.from({ length: n }, (_, k) => ((((7 * k) % n) + 0.3) * 2 * Math.PI) / n - Math.PI);
const byAngle = (list: readonly number[]) =>
  list.map((_, k) => k).sort((a, b) => (list[a] as number) - (list[b] as number));
/** The same order from wherever it begins. */
function beginAt<T>(list: readonly T[], first: T): T[] {
  const k = list.indexOf(first);
  return [...list.slice(k), ...list.slice(0, k)];
}

describe('edges round a vertex', () => {
  // Up to 16 have room at first. None of the numbers has a factor of 7.
  it.each([3, 4, 16, 17, 33, 100])('are put in order as they are added, %d of them', (n) => {
    const list = angles(n);
    const graph = starOf(list.map((angle) => spoke(angle)));
    const fan = new Fan();
    for (let e = 0; e < n; e++) fan.add(graph, 2 * e);
    expect(fan.count).toBe(n);
    const order = Array.from({ length: n }, (_, k) => fan.at(k) / 2);
    expect(beginAt(order, 0)).toEqual(beginAt(byAngle(list), 0));
    expect(fan.isClear()).toBe(true);
    // Used again for fewer.
    fan.count = 0;
    for (let e = 0; e < 3; e++) fan.add(graph, 2 * e);
    expect(
      beginAt(
        [0, 1, 2].map((k) => fan.at(k) / 2),
        0,
      ),
    ).toEqual(beginAt(byAngle(list.slice(0, 3)), 0));
  });

  it('are clearly apart if no two leave in like directions, first and last included', () => {
    const clear = (list: readonly number[]) => {
      const fan = new Fan();
      const graph = starOf(list.map((angle) => spoke(angle)));
      for (let e = 0; e < list.length; e++) fan.add(graph, 2 * e);
      return fan.isClear();
    };
    for (const at of [0.1, 1, Math.PI / 2, 2.5, -3, -2, -0.4]) {
      for (const others of [[at + 2, at - 2], [at + 1.7], [at + 1.6, at + 3.1, at - 1.6]]) {
        expect(clear([at, at + 1.1 * LIKE_DIRECTION, ...others])).toBe(true);
        expect(clear([at, at + 0.9 * LIKE_DIRECTION, ...others])).toBe(false);
        expect(clear([...others, at + 0.9 * LIKE_DIRECTION, at])).toBe(false);
        // Straight back is far apart, however exactly.
        expect(clear([at, at + Math.PI, ...others])).toBe(true);
      }
    }
  });

  it('that have no direction are never clearly apart', () => {
    const graph = starOf([1, 2, 4].map((angle) => spoke(angle)));
    graph.curves.points.x[graph.to[1] as number] = Number.NaN;
    const fan = new Fan();
    for (let e = 0; e < 3; e++) fan.add(graph, 2 * e);
    expect(fan.isClear()).toBe(false);
  });

  it('follow each other counter-clockwise, and clockwise the other way', () => {
    for (const n of [1, 2, 3, 5, 30]) {
      const list = angles(n);
      const graph = starOf(list.map((angle) => spoke(angle)));
      const { ccw, cw, anyAt } = rotate(graph);
      const order = byAngle(list);
      order.forEach((e, k) => {
        const next = order[(k + 1) % n] as number;
        expect(ccw[2 * e]).toBe(2 * next);
        expect(cw[2 * next]).toBe(2 * e);
        // At its other end each is alone.
        expect(ccw[2 * e + 1]).toBe(2 * e + 1);
        expect(cw[2 * e + 1]).toBe(2 * e + 1);
        expect(anyAt[graph.to[e] as number]).toBe(2 * e + 1);
      });
      expect((anyAt[graph.from[0] as number] as number) % 2).toBe(0);
    }
  });

  it('are told apart by where they go, where they leave in one direction', () => {
    // Five that leave to the right, by how they bend: radii of 30 and 60 to either side, and a line; and one that goes back.
    const bent = (radius: number, isLeft: boolean): Edge => {
      const side = isLeft ? 1 : -1;
      const turn = 0.2;
      return {
        kind: 'arc',
        a: CENTER,
        b: p(CENTER.x + radius * Math.sin(turn), CENTER.y + side * radius * (1 - Math.cos(turn))),
        center: p(CENTER.x, CENTER.y + side * radius),
        radius,
        ccw: isLeft,
      };
    };
    const edges = [
      bent(60, true),
      spoke(0),
      bent(30, false),
      spoke(Math.PI - 0.5),
      bent(30, true),
      bent(60, false),
    ];
    // Counter-clockwise from the right: what bends most to the right first.
    const order = [2, 5, 1, 0, 4, 3];
    const { ccw, cw } = rotate(starOf(edges));
    order.forEach((e, k) => {
      const next = order[(k + 1) % order.length] as number;
      expect(ccw[2 * e]).toBe(2 * next);
      expect(cw[2 * next]).toBe(2 * e);
    });
  });
});
