import { type ArcEdge, arcEdge, type Loop, lineEdge, type Point } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { type Curves, gather } from '../../packages/core/src/noding/gather.js';
import { findMeetings, type Hits, shareRoots } from '../../packages/core/src/noding/meetings.js';
import { node } from '../../packages/core/src/noding/node.js';
import { boxesOf } from '../../packages/core/src/noding/pairs.js';
import { closed, p } from './shapes.js';

/*
 * Where pieces meet, which places are one, and into what pieces are cut there. Elementary, no source. All is drawn in a frame
 * of 100 round the origin, so that coordinates stay as they are and a tolerance is 1e-7.
 */

const frame = { minX: -50, minY: -50, maxX: 50, maxY: 50 };
const TOLERANCE = 1e-9 * 100;

/** What is found where each loop is an operand of its own. */
function found(...loops: readonly Loop[]) {
  const curves = gather(
    loops.map((loop) => [loop]),
    frame,
  );
  expect(curves.tolerance).toBe(TOLERANCE);
  const given = curves.points.x.length;
  const hits: Hits = { piece: [], point: [] };
  const welds: number[] = [];
  const boxes = boxesOf(curves.rows, curves.count);
  const meetings = findMeetings(curves, boxes, hits, welds, null);
  const own = { hits: listOf(curves, hits), welds: pairsOf(welds) };
  shareRoots(curves, boxes, meetings, hits, welds);
  return {
    curves,
    given,
    own,
    pairs: pairsOf(meetings.beside),
    hits: listOf(curves, hits),
    welds: pairsOf(welds),
  };
}

const listOf = ({ points }: Curves, { piece, point }: Hits) =>
  piece.map((one, k) => ({
    piece: one,
    at: p(points.x[point[k] as number] as number, points.y[point[k] as number] as number),
  }));
const pairsOf = (list: readonly number[]) =>
  list.flatMap((one, k) => (k % 2 === 0 ? [[one, list[k + 1] as number]] : []));
const sorted = <T>(list: readonly T[]) =>
  [...list].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));

describe('places where pieces meet', () => {
  // Pieces 0, 1, 2; the first one level.
  const base = closed(p(-20, 0), p(20, 0), p(0, -20));

  it('are none within one loop, whose neighbours come together without more', () => {
    const { hits, welds, pairs } = found(base);
    expect(hits).toEqual([]);
    expect(welds).toEqual([]);
    expect(pairs).toEqual([]);
  });

  it('are on both where two cross', () => {
    const { hits, welds, pairs, curves, given } = found(base, closed(p(4, -3), p(4, 5), p(30, 30)));
    // The side that rises at x = 4, and the one from (30, 30) to (4, -3), which is at height 0 at 4 + 3 * 26 / 33.
    const x = 4 + (3 * 26) / 33;
    const at = (place: Point) =>
      expect.objectContaining({ x: expect.closeTo(place.x, 12), y: expect.closeTo(place.y, 12) });
    expect(hits).toEqual([
      { piece: 0, at: at(p(4, 0)) },
      { piece: 3, at: at(p(4, 0)) },
      { piece: 0, at: at(p(x, 0)) },
      { piece: 5, at: at(p(x, 0)) },
    ]);
    expect(welds).toEqual([]);
    expect(curves.points.x.length).toBe(given + 2);
    // At clear angles: they run beside each other nowhere.
    expect(pairs).toEqual([]);
  });

  it('are the end itself where one stands on the other', () => {
    for (const height of [0, 0.9 * TOLERANCE, -0.9 * TOLERANCE]) {
      const tip = p(4, height);
      const { hits, welds, curves, given } = found(base, closed(tip, p(9, 20), p(-9, 20)));
      expect(hits).toEqual([
        { piece: 0, at: tip },
        { piece: 0, at: tip },
      ]);
      expect(welds).toEqual([]);
      expect(curves.points.x.length).toBe(given);
    }
    expect(found(base, closed(p(4, 1.1 * TOLERANCE), p(9, 20), p(-9, 20))).hits).toEqual([]);
  });

  it('are one with an end where they are no further from it than a tolerance', () => {
    for (const [x, y] of [
      [20, 0],
      [20 + 0.9 * TOLERANCE, 0],
      [20, 0.9 * TOLERANCE],
    ] as const) {
      const { hits, welds } = found(base, closed(p(x, y), p(30, 20), p(40, 0)));
      expect(hits).toEqual([]);
      // Vertex 1 is that of the first loop, 3 that of the other.
      expect(new Set(welds.map((pair) => sorted(pair).join()))).toEqual(new Set(['1,3']));
    }
  });

  it('are none beyond the ends of a slanted line, though its box reaches there', () => {
    const off = 0.9 * TOLERANCE;
    const slanted = closed(p(0, 0), p(10, 10), p(20, -30));
    for (const [tip, ...others] of [
      [p(10 + off, 10 + off), p(10, 30), p(30, 30)],
      [p(-off, -off), p(-30, -10), p(-10, -30)],
    ] as const) {
      const { hits, welds } = found(slanted, closed(tip, ...others));
      expect(hits).toEqual([]);
      expect(welds).toEqual([]);
    }
  });

  it('are on an arc between its ends only', () => {
    // The right half of a circle round (0, 0) from (3, -4) to (3, 4), and its chord.
    const bow: Loop = [arcEdge(p(3, -4), p(3, 4), p(0, 0), true), lineEdge(p(3, 4), p(3, -4))];
    const tips = (tip: Point) =>
      found(bow, closed(tip, p(tip.x + 20, tip.y + 1), p(tip.x + 20, tip.y + 2))).hits;
    expect(tips(p(5, 0))).toEqual([0, 1].map(() => ({ piece: 0, at: p(5, 0) })));
    expect(tips(p(4, 3))).toEqual([0, 1].map(() => ({ piece: 0, at: p(4, 3) })));
    expect(tips(p(5 + 1.1 * TOLERANCE, 0))).toEqual([]);
    // On the circle, and past the end of the arc by some tolerances.
    const angle = Math.atan2(4, 3) + 1e-6;
    const past = p(5 * Math.cos(angle), 5 * Math.sin(angle));
    expect(found(bow, closed(past, p(3, 30), p(2, 30))).hits).toEqual([]);
  });

  it('are both ends of a piece as short as a tolerance, and nothing else', () => {
    const short = closed(p(0, 0), p(0, 0.5 * TOLERANCE), p(20, 10), p(20, -10));
    const { hits, welds } = found(short);
    expect(hits).toEqual([]);
    expect(new Set(welds.map((pair) => sorted(pair).join()))).toEqual(new Set(['0,1']));
  });
});

describe('where three pieces cross in one place', () => {
  const lines = [0, 1, 2].map((k) => {
    const angle = (k * Math.PI) / 3 + 0.2;
    const [x, y] = [30 * Math.cos(angle), 30 * Math.sin(angle)];
    return closed(p(7 - x, 9 - y), p(7 + x, 9 + y), p(7 + x - 3 * y, 9 + y + 3 * x));
  });

  it('there is one vertex', () => {
    const { curves, from, to, count } = node(
      gather(
        lines.map((loop) => [loop]),
        frame,
      ),
    );
    const isNear = (v: number) =>
      Math.hypot((curves.points.x[v] as number) - 7, (curves.points.y[v] as number) - 9) < TOLERANCE;
    const used = new Set([...from.slice(0, count), ...to.slice(0, count)].filter(isNear));
    expect(used.size).toBe(1);
    expect(found(...lines).pairs).toEqual([]);
  });

  it('a crossing of two that run beside a third is one of the third too', () => {
    // The second line is turned against the first one by a hundredth, so that they cross at a shallow angle.
    const turned = closed(p(-23, 8.7), p(37, 9.3), p(0, 45));
    const level = closed(p(-23, 9), p(37, 9), p(0, -45));
    const { own, hits } = found(level, turned, lines[1] as Loop);
    const near = (list: typeof hits) =>
      list.filter(({ at }) => Math.hypot(at.x - 7, at.y - 9) < TOLERANCE).map(({ piece }) => piece);
    expect(near(own.hits).sort()).toEqual([0, 0, 3, 3, 6, 6]);
    expect(near(hits).sort()).toEqual([0, 0, 0, 3, 3, 3, 6, 6]);
  });

  it('it is one with the end of a third that lies there', () => {
    const spike = closed(p(7, 9), p(12, 40), p(2, 40));
    const { given, curves, hits, welds } = found(lines[0] as Loop, lines[1] as Loop, spike);
    const tip = curves.points.given.findIndex((place) => place?.x === 7 && place.y === 9);
    const crossing = curves.points.x.findIndex(
      (x, k) => k >= given && Math.hypot(x - 7, (curves.points.y[k] as number) - 9) < TOLERANCE,
    );
    expect(crossing).toBeGreaterThanOrEqual(given);
    expect(new Set(welds.map((pair) => pair.join()))).toEqual(new Set([`${crossing},${tip}`]));
    expect(hits.filter(({ piece, at }) => piece >= 6 && at.y < 20)).toEqual([]);
  });
});

describe('a joint that only parts a circle', () => {
  // Touching at (20, -30), where a circle is within a tolerance of its tangent for 2e-3 to both sides (sagitta s * s / 2 r).
  const [x, y, radius] = [20, -30, 10];
  const center = p(x + radius, y);
  const seam = (along: number) => {
    const angle = along / radius;
    return p(x + radius * (1 - Math.cos(angle)), y + radius * Math.sin(angle));
  };
  const wall = closed(p(x, -45), p(x, -15), p(-40, -30));
  const circle = (...joints: readonly Point[]): Loop =>
    joints.map(
      (a, k): ArcEdge => ({
        kind: 'arc',
        a,
        b: joints[(k + 1) % joints.length] as Point,
        center,
        radius,
        ccw: false,
      }),
    );
  const opposite = p(x + 2 * radius, y);
  const onWall = (hits: ReturnType<typeof found>['hits']) =>
    hits.filter(({ piece }) => piece === 0).map(({ at }) => at);

  it('is no place of a line that the circle touches beside it', () => {
    for (const along of [1e-3, -1e-3, 1e-4, -1e-4]) {
      const { hits } = found(wall, circle(seam(along), opposite));
      expect(onWall(hits)).toEqual([p(expect.closeTo(x, 9) as never, expect.closeTo(y, 9) as never)]);
    }
  });

  it('is one where it is the place of touching', () => {
    const { hits } = found(wall, circle(p(x, y), opposite));
    expect(onWall(hits).every((at) => isDeepClose(at, p(x, y)))).toBe(true);
    expect(onWall(hits).length).toBeGreaterThan(0);
  });

  it('is one where it parts more than that', () => {
    // The circle ends there, and a line goes on inside of it.
    const along = 1e-3;
    const [a, b] = [seam(along), opposite];
    const half: Loop = [{ kind: 'arc', a, b, center, radius, ccw: false }, lineEdge(b, a)];
    const places = onWall(found(wall, half).hits);
    expect(places.some((at) => isDeepClose(at, a))).toBe(true);
  });
});

const isDeepClose = (one: Point, other: Point) => Math.hypot(one.x - other.x, one.y - other.y) < 1e-12;

describe('vertices', () => {
  const noded = (...loops: readonly Loop[]) =>
    node(
      gather(
        loops.map((loop) => [loop]),
        frame,
      ),
    );
  /** The vertices in use near a place. */
  const at = ({ count, from, to, curves: { points } }: ReturnType<typeof node>, place: Point) => {
    const used = new Set([...from.slice(0, count), ...to.slice(0, count)]);
    return [...used].filter(
      (v) => Math.hypot((points.x[v] as number) - place.x, (points.y[v] as number) - place.y) < 1e-5,
    );
  };
  const ring: Loop = [
    arcEdge(p(10, 0), p(-10, 0), p(0, 0), true),
    arcEdge(p(-10, 0), p(10, 0), p(0, 0), true),
  ];

  it('have the place that was given, not one that was found, in any order of the operands', () => {
    const off = 0.5 * TOLERANCE;
    const tip = p(off, -10 + off);
    const spike = closed(tip, p(-20, -40), p(20, -40));
    for (const list of [
      [ring, spike],
      [spike, ring],
    ]) {
      const noding = noded(...(list as [Loop, Loop]));
      const [vertex, ...others] = at(noding, p(0, -10));
      expect(others).toEqual([]);
      expect(noding.curves.points.given[vertex as number]).toBe(tip);
    }
  });

  it('have the first of two places that were given', () => {
    const [one, other] = [p(1, 2), p(1 + 0.5 * TOLERANCE, 2)];
    const [left, right] = [closed(one, p(-20, 5), p(-20, 0)), closed(other, p(20, 0), p(20, 5))];
    for (const [list, tip] of [
      [[left, right], one],
      [[right, left], other],
    ] as const) {
      const noding = noded(...(list as readonly [Loop, Loop]));
      expect(at(noding, one).map((v) => noding.curves.points.given[v])).toEqual([tip]);
    }
  });

  it('are one where a place stands off the end of a piece by a tolerance', () => {
    const base = closed(p(-20, 0), p(20, 0), p(0, -20));
    for (const [x, end] of [
      [20, 1],
      [-20, -1],
    ] as const) {
      // Beside the end by so little that it is further from it than a tolerance, by a hundred-thousandth of that.
      const tip = p(x - end * 0.005 * TOLERANCE, 0.999999 * TOLERANCE);
      expect(Math.hypot(tip.x - x, tip.y)).toBeGreaterThan(TOLERANCE);
      const noding = noded(base, closed(tip, p(x, 30), p(x - 5, 30)));
      expect(at(noding, p(x, 0))).toHaveLength(1);
    }
  });

  it('part a piece in order, from its start to its end', () => {
    const base = closed(p(-20, 0), p(20, 0), p(0, -20));
    const spikes = [5, -15, 0, 15, -5].map((x) => closed(p(x, 0), p(x + 1, 9), p(x - 1, 9)));
    const { count, from, to, piece, curves } = noded(base, ...spikes);
    const parts = Array.from({ length: count }, (_, s) => s).filter((s) => piece[s] === 0);
    const place = (v: number) => curves.points.x[v];
    expect(parts.map((s) => [place(from[s] as number), place(to[s] as number)])).toEqual([
      [-20, -15],
      [-15, -5],
      [-5, 0],
      [0, 5],
      [5, 15],
      [15, 20],
    ]);
    expect(count).toBe(6 + 2 + 5 * 3);
  });
});
