import { area, type Loop, normalize, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { gather } from '../../packages/core/src/noding/gather.js';
import { node } from '../../packages/core/src/noding/node.js';
import { subdivide } from '../../packages/core/src/overlay/label.js';
import { facesToTheLeft, Rays } from '../../packages/core/src/overlay/locate.js';
import { type Graph, merge } from '../../packages/core/src/overlay/merge.js';
import { endOf, startOf } from '../../packages/core/src/overlay/rotate.js';
import { Strands } from '../../packages/core/src/overlay/strands.js';
import { box, closed, p } from './shapes.js';

/*
 * What lies to the left of a place, and the faces that a graph parts the plane into. Elementary, no source; that no
 * plane has five points each joined to all others is Kuratowski's theorem (Fundamenta Mathematicae 15, 1930).
 */

const diamond = (x: number, y: number, half: number) =>
  closed(p(x, y), p(x + half, y + half), p(x, y + 2 * half), p(x - half, y + half));

const graphOf = (loops: readonly Loop[]) => merge(node(gather([loops])));

/** Where a half-edge starts and ends, in the coordinates of the input. */
function placesOf(graph: Graph, half: number): [Point, Point] {
  const { points, originX, originY } = graph.curves;
  const at = (v: number) => p((points.x[v] as number) + originX, (points.y[v] as number) + originY);
  return [at(startOf(graph, half)), at(endOf(graph, half))];
}

/** All orders of a few things. */
function orders<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, k) => orders(list.filter((_, i) => i !== k)).map((rest) => [one, ...rest]));
}

describe('a ray to the left', () => {
  // All lies round the origin, so that coordinates stay as they are.
  const frame = closed(p(-64, -64), p(64, -64), p(64, -63), p(-64, -63));
  const first = (loops: readonly Loop[], x: number, y: number) => {
    const graph = graphOf([...loops, frame]);
    expect([graph.curves.originX, graph.curves.originY]).toEqual([0, expect.closeTo(0, 9)]);
    const half = new Rays(graph, new Strands(graph)).firstToTheLeft(x, y);
    return half < 0 ? null : placesOf(graph, half);
  };
  const top = closed(p(-64, 63), p(64, 63), p(64, 64), p(-64, 64));

  it('comes to the nearest edge first, and to it as one that falls', () => {
    const loops = [top, box(-30, 0, 10, 10), box(-10, 0, 10, 10), box(10, 0, 10, 10)];
    for (const list of orders(loops.slice(1))) {
      const all = [top, ...list];
      expect(first(all, 5, 5)).toEqual([p(0, 10), p(0, 0)]);
      expect(first(all, 15, 5)).toEqual([p(10, 10), p(10, 0)]);
      expect(first(all, -5, 5)).toEqual([p(-10, 10), p(-10, 0)]);
      expect(first(all, -40, 5)).toBeNull();
      // At the height of their upper sides it runs a hair below these, at that of their lower ones below all.
      expect(first(all, 5, 10)).toEqual([p(0, 10), p(0, 0)]);
      expect(first(all, 5, 0)).toBeNull();
    }
  });

  it('through a vertex from which edges fall comes to the one furthest to the right', () => {
    const tip = p(8, 32);
    const feet = [-40, -24, -8, 16];
    const spikes = feet.map((x) => closed(p(x, 0), p(x + 4, 0), tip));
    for (const list of orders(spikes)) {
      // Of the last spike the right side; without it, of the one before.
      expect(first([top, ...list], 40, 32)).toEqual([tip, p(20, 0)]);
      const others = list.filter((loop) => loop !== spikes[3]);
      expect(first([top, ...others], 40, 32)).toEqual([tip, p(-4, 0)]);
    }
  });

  it('a hair over a vertex from which edges rise comes to the one furthest to the right', () => {
    const tip = p(1, 1);
    const feet = [-40, -24, -8, 16];
    const spikes = feet.map((x) => closed(tip, p(x + 4, 32), p(x, 32)));
    // So near that all crossings come out at the vertex.
    const height = 1 + Number.EPSILON;
    for (const list of orders(spikes)) {
      expect(first([top, ...list], 40, height)).toEqual([p(20, 32), tip]);
      const others = list.filter((loop) => loop !== spikes[3]);
      expect(first([top, ...others], 40, height)).toEqual([p(-4, 32), tip]);
    }
  });

  it('tells edges apart that lie some tolerances beside each other', () => {
    // A tolerance is 1.28e-7 here, so that these are 40 and 400 apart.
    for (const gap of [5e-6, 5e-5]) {
      const bars = [0, 1, 2].map((k) => box(k * gap, 2 * k, 8 + k, 40 - 4 * k));
      for (const list of orders(bars)) {
        expect(first([top, ...list], 4, 10)).toEqual([p(2 * gap, 36), p(2 * gap, 4)]);
        expect(first([top, ...list], 4, 3)).toEqual([p(gap, 38), p(gap, 2)]);
      }
    }
  });

  it('goes no further than it is told', () => {
    const graph = graphOf([frame, top, box(-30, 0, 10, 10), box(10, 0, 10, 10)]);
    const rays = new Rays(graph, new Strands(graph));
    const from = (half: number) => (half < 0 ? null : placesOf(graph, half));
    expect(from(rays.firstToTheLeft(5, 5, -20))).toEqual([p(-20, 10), p(-20, 0)]);
    expect(from(rays.firstToTheLeft(5, 5, -19.5))).toBeNull();
  });
});

describe('loops whose lowest points lie at one height', () => {
  // Areas of squares, told apart by their sizes.
  it.each([
    // The side that falls to the left of the second one is the first edge of all.
    [
      'one outside, one in a loop that begins with its left side',
      [closed(p(20, 40), p(20, -40), p(80, -40), p(80, 40)), diamond(0, 0, 5), diamond(50, 0, 7)],
      4800 + 2 * 25 - 2 * 49,
    ],
    [
      'both in a loop that comes last',
      [diamond(30, 0, 5), diamond(50, 0, 7), box(0, -40, 80, 80)],
      6400 - 2 * 25 - 2 * 49,
    ],
    [
      'each in a loop of its own',
      [diamond(30, 0, 5), diamond(70, 0, 7), box(20, -10, 20, 40), box(60, -10, 20, 40)],
      2 * 800 - 2 * 25 - 2 * 49,
    ],
    [
      'one in the other loop, and one beside',
      [diamond(10, 0, 2), diamond(30, 0, 5), diamond(50, 0, 7), box(20, -10, 40, 40)],
      1600 + 2 * 4 - 2 * 25 - 2 * 49,
    ],
  ] as const)('lie where they do: %s', (_, loops, size) => {
    for (const list of orders<Loop>(loops)) expect(area(normalize(list, 'evenodd'))).toBeCloseTo(size, 9);
  });

  it('each have one face outside, and it is the same in both', () => {
    const graph = graphOf([diamond(0, 0, 5), diamond(20, 0, 5), box(40, 0, 10, 10)]);
    const subdivision = subdivide(graph);
    expect(subdivision?.faceCount).toBe(4);
    expect([...facesToTheLeft(graph, new Strands(graph), Int32Array.from([1]))]).toEqual([-1]);
    // The lower left sides rise from the lowest points, so that the outside is to the left of what runs against them.
    const lowest = (x: number) => {
      for (let half = 0; half < 2 * graph.count; half++) {
        const [a, b] = placesOf(graph, half);
        if (a.x === x && a.y === 0 && b.x < x) return half;
      }
      throw new Error('no such edge');
    };
    const halves = [lowest(20), lowest(0)];
    const found = facesToTheLeft(graph, new Strands(graph), Int32Array.from(halves));
    expect(found[1]).toBe(-1);
    expect([-1, halves[1]]).toContain(found[0]);
  });
});

describe('the faces of a graph', () => {
  it('are counted, the unbounded one first', () => {
    const graph = graphOf([box(0, 0, 10, 10)]);
    // The loop runs counter-clockwise, so that half-edge 1, against its first edge, has the outside to its left.
    const subdivision = subdivide(graph);
    expect(subdivision?.faceCount).toBe(2);
    expect([...(subdivision?.faceOf ?? [])]).toEqual([1, 0, 1, 0, 1, 0, 1, 0]);
    const clockwise = graphOf([closed(p(0, 0), p(0, 10), p(10, 10), p(10, 0))]);
    expect([...(subdivide(clockwise)?.faceOf ?? [])]).toEqual([0, 1, 0, 1, 0, 1, 0, 1]);
  });

  it('are each reached over an edge from one that is reached before', () => {
    const loops = [
      box(0, 0, 90, 90),
      ...[0, 1, 2, 3].map((k) => box(10 + 20 * k, 10, 25, 20 + k)),
      box(40, 50, 9, 9),
    ];
    const subdivision = subdivide(graphOf(loops));
    if (subdivision === null) throw new Error('there are faces');
    const { faceCount, faceOf, order, via } = subdivision;
    expect(order).toHaveLength(faceCount - 1);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: faceCount - 1 }, (_, k) => k + 1));
    const seen = new Set([0]);
    for (let k = 0; k < order.length; k++) {
      const half = via[k] as number;
      expect(faceOf[half]).toBe(order[k]);
      expect(seen).toContain(faceOf[half ^ 1]);
      seen.add(order[k] as number);
    }
  });

  it('are none where no plane has that order: five points each joined to all others', () => {
    const corners = [0, 1, 2, 3, 4].map((k) => {
      const angle = ((90 + 72 * k) * Math.PI) / 180;
      return p(10 * Math.cos(angle), 10 * Math.sin(angle));
    });
    const star = [0, 2, 4, 1, 3].map((k) => corners[k] as Point);
    const curves = gather([[closed(...corners)], [closed(...star)]]);
    const vertex = (v: number) => corners.indexOf(curves.points.given[v] as Point);
    // Taken as it is, without the places where the sides of the star cross.
    const uncut = {
      curves,
      index: null,
      count: curves.count,
      from: curves.from.map(vertex),
      to: curves.to.map(vertex),
      piece: Int32Array.from({ length: curves.count }, (_, k) => k),
    };
    expect(merge(uncut).count).toBe(10);
    expect(subdivide(merge(uncut))).toBeNull();
    // Cut where they cross: the star's five points, five triangles beside, five flaps and the middle.
    expect(subdivide(merge(node(curves)))?.faceCount).toBe(1 + 5 + 5 + 1);
  });
});
