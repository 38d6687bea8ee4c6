import {
  type ArcEdge,
  arcEdge,
  circleLoop,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ROW } from '../../packages/core/src/geometry/curves.js';
import { boundsOfOperands, type Curves, gather } from '../../packages/core/src/noding/gather.js';
import { monotone } from '../../packages/core/src/region/monotone.js';
import { box, closed, p } from './shapes.js';

/*
 * What an overlay makes of its operands before it looks for places where they meet. Elementary, no source.
 */

const square = (x: number, y: number, side: number) => box(x, y, side, side);

/** Where a piece starts and ends, in the coordinates of the input. */
function endsOf({ points, from, to, originX, originY }: Curves, piece: number): [Point, Point] {
  const at = (v: number) => p((points.x[v] as number) + originX, (points.y[v] as number) + originY);
  return [at(from[piece] as number), at(to[piece] as number)];
}

describe('the pieces of an overlay', () => {
  it('are the edges in order, moved to the middle of all, with numbers for their ends', () => {
    const loops = [square(0, 0, 10), closed(p(12, 2), p(20, 2), p(12, 8))];
    const curves = gather([[loops[0] as Loop], [loops[1] as Loop]]);
    const edges = loops.flat();
    expect(curves.count).toBe(7);
    expect([curves.originX, curves.originY]).toEqual([10, 5]);
    // A billionth of the larger side.
    expect(curves.tolerance).toBe(1e-9 * 20);
    expect(curves.edges).toEqual(edges);
    expect([...curves.input.slice(0, 7)]).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect([...curves.operand.slice(0, 7)]).toEqual([0, 0, 0, 0, 1, 1, 1]);
    expect([...curves.from.slice(0, 7)]).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect([...curves.to.slice(0, 7)]).toEqual([1, 2, 3, 0, 5, 6, 4]);
    expect(curves.points.given).toEqual(edges.map(({ a }) => a));
    expect(curves.points.isSeam).toEqual(edges.map(() => false));
    edges.forEach(({ a, b }, k) => {
      expect(endsOf(curves, k)).toEqual([a, b]);
      expect([...curves.rows.slice(k * ROW, k * ROW + 4)]).toEqual([a.x - 10, a.y - 5, b.x - 10, b.y - 5]);
    });
  });

  /** A circle in two arcs that part at its sides. */
  const circle = (x: number, y: number, radius: number): Loop => {
    const [east, west] = [p(x + radius, y), p(x - radius, y)];
    return [arcEdge(east, west, p(x, y), true), arcEdge(west, east, p(x, y), true)];
  };

  it('of a circle are cut at its lowest and highest point', () => {
    const curves = gather([[circle(30, 7, 5)], [square(0, 0, 10)]]);
    expect(curves.count).toBe(8);
    const [east, north, west, south] = [p(35, 7), p(30, 12), p(25, 7), p(30, 2)];
    expect([0, 1, 2, 3].map((k) => endsOf(curves, k))).toEqual([
      [east, north],
      [north, west],
      [west, south],
      [south, east],
    ]);
    expect([...curves.input.slice(0, 8)]).toEqual([0, 0, 1, 1, 2, 3, 4, 5]);
    expect([...curves.operand.slice(0, 8)]).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
    // Of its four joints two are given, and all four part nothing but the circle.
    expect(curves.points.given.slice(0, 4)).toEqual([east, null, west, null]);
    expect(curves.points.isSeam).toEqual([true, true, true, true, false, false, false, false]);
  });

  it('of a loop of no edges are none, and leave those of the next as they are', () => {
    const alone = gather([[circle(30, 7, 5)]]);
    const curves = gather([[[], circle(30, 7, 5), []]]);
    expect(curves.count).toBe(4);
    expect(curves.points).toEqual(alone.points);
    expect(curves.rows).toEqual(alone.rows);
    expect(curves.from).toEqual(alone.from);
    expect(curves.to).toEqual(alone.to);
  });
});

describe('a joint between two arcs', () => {
  /** Seams among the joints that were given, by place. */
  const seams = (loop: readonly Edge[]) => {
    const { points } = gather([[loop, square(-100, -100, 10)]]);
    return loop.map(({ a }) => points.isSeam[points.given.indexOf(a)]);
  };
  const on = (degrees: number, radius = 5) =>
    p(20 + radius * Math.cos((degrees * Math.PI) / 180), 30 + radius * Math.sin((degrees * Math.PI) / 180));
  const center = p(20, 30);

  it('of one circle is a seam, in either direction and wherever it is', () => {
    const joints = [20, 130, 255];
    for (const list of [joints, [...joints].reverse()]) {
      const places = list.map((degrees) => on(degrees));
      const loop = places.map((a, k) => arcEdge(a, places[(k + 1) % 3] as Point, center, list === joints));
      expect(seams(loop)).toEqual([true, true, true]);
    }
  });

  it('is none beside a line', () => {
    const [a, b] = [on(-90), on(90)];
    expect(seams([arcEdge(a, b, center, true), lineEdge(b, a)])).toEqual([false, false]);
    // At the end of a line as at its start.
    expect(seams([lineEdge(b, a), arcEdge(a, b, center, true)])).toEqual([false, false]);
  });

  it('is one beside an arc of the same circle only', () => {
    const [a, b, c] = [on(-90), on(0), on(90)];
    const loop = [arcEdge(a, b, center, true), arcEdge(b, c, center, true), lineEdge(c, a)];
    expect(seams(loop)).toEqual([false, true, false]);
    expect(seams([loop[2] as Edge, loop[0] as Edge, loop[1] as Edge])).toEqual([false, false, true]);
  });

  it('is none where the other one turns the other way, or its middle or radius differs', () => {
    const [a, b, c] = [on(-90), on(0), on(90)];
    const first: ArcEdge = { kind: 'arc', a, b, center, radius: 5, ccw: true };
    const second: ArcEdge = { kind: 'arc', a: b, b: c, center, radius: 5, ccw: true };
    const back = lineEdge(c, a);
    const isSeam = (changed: Partial<ArcEdge>) => seams([first, { ...second, ...changed }, back])[1];
    expect(isSeam({})).toBe(true);
    expect(isSeam({ ccw: false })).toBe(false);
    // Of the size of the drawing, 135 or so, a billionth is rounding and a millionth is not.
    for (const far of [1e-6, -1e-6, 0.01]) {
      expect(isSeam({ center: p(20 + far, 30) })).toBe(false);
      expect(isSeam({ center: p(20, 30 + far) })).toBe(false);
      expect(isSeam({ radius: 5 + far })).toBe(false);
    }
    for (const near of [1e-9, -1e-9]) {
      expect(isSeam({ center: p(20 + near, 30) })).toBe(true);
      expect(isSeam({ center: p(20, 30 + near) })).toBe(true);
      expect(isSeam({ radius: 5 + near })).toBe(true);
    }
  });
});

describe('an arc', () => {
  const center = p(4, -3);
  const on = (degrees: number) =>
    p(4 + 5 * Math.cos((degrees * Math.PI) / 180), -3 + 5 * Math.sin((degrees * Math.PI) / 180));
  const low = p(4, -8);
  const high = p(4, 2);
  it.each([
    ['right of its centre', -80, 80, true, []],
    ['right of its centre, down', 80, -80, false, []],
    ['over its highest point', 30, 150, true, [high]],
    ['over its highest point, back', 150, 30, false, [high]],
    ['under its lowest', 200, 340, true, [low]],
    ['under its lowest, back', 340, 200, false, [low]],
    ['from the right over both', 10, -10, true, [high, low]],
    ['from the left over both', 190, 170, true, [low, high]],
    ['back from the right over both', -10, 10, false, [low, high]],
    ['back from the left over both', 170, 190, false, [high, low]],
    ['from its lowest point to its highest', -90, 90, true, []],
    ['from its highest point once over the lowest', 90, 80, true, [low]],
  ] as const)('%s is cut where it turns', (_, from, to, ccw, cuts) => {
    const arc: ArcEdge = { kind: 'arc', a: on(from), b: on(to), center, radius: 5, ccw, source: 'name' };
    const parts = monotone(arc, 1e-9);
    const joints = [arc.a, ...cuts, arc.b];
    expect(parts).toEqual(
      cuts.length === 0 ? [arc] : joints.slice(1).map((b, k) => ({ ...arc, a: joints[k], b })),
    );
  });

  it('that ends so near its highest point that it rises no more is not cut', () => {
    const away = (share: number) => {
      const x = share * 1e3;
      return monotone(
        { kind: 'arc', a: p(1e3, 0), b: p(-x, 1e3), center: p(0, 0), radius: 1e3, ccw: true },
        1e-5,
      ).length;
    };
    // A tolerance of 1e-5 is a hundred-millionth of the radius.
    expect(away(0)).toBe(1);
    expect(away(0.9e-8)).toBe(1);
    expect(away(1.1e-8)).toBe(2);
    const alone = (x: number) =>
      monotone({ kind: 'arc', a: p(1e3, 0), b: p(-x, 1e3), center: p(0, 0), radius: 1e3, ccw: true }, 0)
        .length;
    // Without a tolerance a billionth of the radius counts.
    expect(alone(0.9e-6)).toBe(1);
    expect(alone(1.1e-6)).toBe(2);
  });
});

describe('the tolerance', () => {
  const frame = { minX: 100, minY: 200, maxX: 110, maxY: 205 };
  const within = (...loops: readonly Loop[]) => gather([loops], frame).tolerance;
  const inside = square(101, 201, 2);

  it('is a billionth of what is worked on, however large that which is cut', () => {
    expect(gather([[inside]]).tolerance).toBe(2e-9);
    expect(within(inside)).toBe(1e-8);
    expect(within(inside, square(-1000, -1000, 3000))).toBe(1e-8);
  });

  // 1e-14 of the largest coordinate, measured from the middle of the frame, (105, 202.5).
  it.each([
    ['to the right', p(3e7, 202)],
    ['to the left', p(-3e7, 202)],
    ['upwards', p(104, 3e7)],
    ['downwards', p(104, -3e7)],
  ])('is what rounding may come to where the cut reaches far, %s', (_, tip) => {
    const reach = Math.max(Math.abs(tip.x - 105), Math.abs(tip.y - 202.5));
    expect(within(inside, closed(p(105, 202), tip, p(106, 203)))).toBeCloseTo(1e-14 * reach, 13);
    expect(within(inside, closed(p(105, 202), tip, p(106, 203)))).toBe(1e-14 * reach);
  });

  it.each([
    ['to the sides', p(105, 202.5 - 3e7), p(105, 202.5 + 3e7)],
    ['up and down', p(105 - 3e7, 202.5), p(105 + 3e7, 202.5)],
  ])('counts a circle as far as it reaches, %s of its joints', (_, a, b) => {
    const center = p(105, 202.5);
    const arc = (from: Point, to: Point): ArcEdge => ({
      kind: 'arc',
      a: from,
      b: to,
      center,
      radius: 3e7,
      ccw: true,
    });
    expect(within(inside, [arc(a, b), arc(b, a)])).toBe(1e-14 * 3e7);
  });

  it.each([
    ['right', 1, 0],
    ['left', -1, 0],
    ['above', 0, 1],
    ['below', 0, -1],
  ])('counts an arc as far as it reaches, all to the %s of its ends', (_, x, y) => {
    // All but a piece of 2 of a circle through the middle of the frame. Twice its radius counts, and once would not yet.
    const radius = 0.7e6;
    const center = p(105 + radius * x, 202.5 + radius * y);
    const [a, b] = [p(105 + y, 202.5 - x), p(105 - y, 202.5 + x)];
    const large: ArcEdge = { kind: 'arc', a, b, center, radius, ccw: true };
    expect(within(inside, [large, lineEdge(b, a)])).toBe(1e-14 * 2 * radius);
  });

  it('is not moved by a large circle of which only a little is there', () => {
    // Sagitta of a chord of 2 at a radius of 1e8: 5e-9, so that it stays in the frame.
    const [a, b, center] = [p(104, 202), p(106, 202), p(105, 202 + 1e8)];
    const flat: ArcEdge = { kind: 'arc', a, b, center, radius: 1e8, ccw: true };
    expect(within([flat, lineEdge(b, a)])).toBe(1e-8);
  });

  it.each([
    ['x', 1e9, 0],
    ['x under 0', -1e9, 0],
    ['y', 0, 1e9],
    ['y under 0', 0, -1e9],
  ])('counts what a place far from the origin has lost by that, along %s', (_, x, y) => {
    // A hundredth of 1e-14 of it, which is more than a billionth of 4.
    expect(gather([[square(x, y, 4)]]).tolerance).toBeCloseTo(1e-7, 14);
  });
});

describe('the box round operands', () => {
  it('of nothing is a point', () => {
    const origin = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
    expect(boundsOfOperands([])).toEqual(origin);
    expect(boundsOfOperands([[[]], []])).toEqual(origin);
  });

  it('has all edges in it, arcs with how far they reach', () => {
    expect(boundsOfOperands([[square(3, 4, 2)], [circleLoop(p(-1, 2), 3)]])).toEqual({
      minX: -4,
      minY: -1,
      maxX: 5,
      maxY: 6,
    });
    expect(boundsOfOperands([[circleLoop(p(-1, 2), 3), square(3, 4, 2)]])).toEqual({
      minX: -4,
      minY: -1,
      maxX: 5,
      maxY: 6,
    });
    // Each circle reaches out of the one before to one side.
    const center = p(7, 8);
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const box = boundsOfOperands([[circleLoop(center, 3), circleLoop(p(7 + dx, 8 + dy), 3)]]);
      expect(box).toEqual({
        minX: 4 + Math.min(0, dx),
        minY: 5 + Math.min(0, dy),
        maxX: 10 + Math.max(0, dx),
        maxY: 11 + Math.max(0, dy),
      });
    }
  });

  it('of an upright line is that line', () => {
    expect(boundsOfOperands([[closed(p(5, 1), p(5, 9))]])).toEqual({ minX: 5, minY: 1, maxX: 5, maxY: 9 });
  });
});
