import {
  bitesIn,
  circle,
  type FromEdge,
  type Point,
  placeByDistances,
  type Region,
  rectangle,
} from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const PLATE = block(80, 30);
const edge = (name: string, distance: number, side: 'inside' | 'outside' = 'inside'): FromEdge => ({
  from: 'edge',
  edge: name,
  distance,
  side,
});
const along = (name: string, end: 'start' | 'end', distance: number): FromEdge => ({
  from: 'along',
  edge: name,
  end,
  distance,
});
const corner = (name: string, end: 'start' | 'end', distance: number): FromEdge => ({
  from: 'corner',
  edge: name,
  end,
  distance,
});

describe('placeByDistances', () => {
  it('3 off the right face and 15 up: the centre, and all dimensions of the bite', () => {
    const answers = placeByDistances(PLATE, 17, edge('outline:1', 3, 'outside'), edge('outline:0', 15));
    expect(answers).toHaveLength(1);
    const [one] = answers as [(typeof answers)[number]];
    expect(one.center).toEqual(P(83, 15));
    expect(one.hand).toBeNull();
    // Where a circle of 17 runs out over both long faces too, only its arc between them is in metal.
    expect(one.bites).toHaveLength(1);
    // Elementary: half the opening is min(15, sqrt(17^2 - 3^2)) = 15, over the corners, at x = 83 - 8.
    nearPlace(one.bites[0]?.entry?.at ?? P(0, 0), P(75, 0), 80);
    nearPlace(one.bites[0]?.exit?.at ?? P(0, 0), P(75, 30), 80);
    near(one.bites[0]?.opening ?? 0, 30);
    near(one.bites[0]?.includedAngle ?? 0, 2 * Math.asin(15 / 17));
    expect(one.bites[0]?.entry?.source).toBe('outline:0');
  });

  it.each<[FromEdge, FromEdge, readonly Point[]]>([
    // From the end of a bar: 12 from its right end, 10 above its lower face.
    [edge('outline:1', 12), edge('outline:0', 10), [P(68, 10)]],
    [along('outline:0', 'end', 12), edge('outline:0', 10), [P(68, 10)]],
    [along('outline:0', 'start', 68), along('outline:1', 'start', 10), [P(68, 10)]],
    [along('outline:2', 'start', 12), edge('outline:2', 0), [P(68, 30)]],
    [along('outline:0', 'start', -4), edge('outline:0', 2, 'outside'), [P(-4, -2)]],
    // 3-4-5, 30-40-50 and 5-12-13 triangles from corners.
    [corner('outline:0', 'start', 5), edge('outline:0', 3), [P(-4, 3), P(4, 3)]],
    [corner('outline:0', 'start', 50), corner('outline:0', 'end', 50), [P(40, 30), P(40, -30)]],
    [corner('outline:1', 'end', 13), along('outline:2', 'start', 5), [P(75, 42), P(75, 18)]],
  ])('%o and %o', (first, second, wanted) => {
    const answers = placeByDistances(PLATE, 4, first, second);
    expect(answers).toHaveLength(wanted.length);
    answers.forEach(({ center }, k) => {
      nearPlace(center, wanted[k] as Point, 80);
    });
    expect(answers.map(({ hand }) => hand)).toEqual(wanted.length === 1 ? [null] : ['left', 'right']);
  });

  it('measures from arcs along their radius, to either side', () => {
    const rounded: Region = [{ outer: rectangle(80, 30, { corner: 10 }), holes: [] }];
    // The lower right corner arc has its centre at (70, 10).
    const [one] = placeByDistances(rounded, 4, edge('outline:1', 2), edge('outline:0', 10));
    nearPlace(one?.center ?? P(0, 0), P(62, 10), 80);
    const answers = placeByDistances(rounded, 4, edge('outline:1', 3, 'outside'), edge('outline:0', 5));
    expect(answers.map(({ center }) => Math.round(center.x * 1e9) / 1e9).sort()).toEqual([58, 82]);
    const bored: Region = [
      { outer: circle(60), holes: [circle(20, { owner: 'hole:0' }).map(reversedEdge).reverse()] },
    ];
    expect(() => placeByDistances(bored, 4, edge('outline:0', 10), edge('hole:0:0', 10))).toThrow(
      '10 inside of outline:0 and 10 inside of hole:0:0 say the same',
    );
  });

  it('refuses what cannot be, with the limit', () => {
    const refused = (first: FromEdge, second: FromEdge) => () => placeByDistances(PLATE, 4, first, second);
    expect(refused(edge('outline:0', 10), edge('outline:2', 5))).toThrow(
      'no place is 10 inside of outline:0 and 5 inside of outline:2; they are measured the same way, and 10 inside ' +
        'of outline:0 is always 20 from outline:2',
    );
    expect(refused(along('outline:0', 'end', 12), edge('outline:3', 60))).toThrow(
      'no place is 12 along outline:0 from its end and 60 inside of outline:3; they are measured the same way, and 12 ' +
        'along outline:0 from its end is always 68 from outline:3',
    );
    expect(refused(edge('outline:3', 60), along('outline:0', 'end', 12))).toThrow(
      'is always 20 from outline:0',
    );
    expect(refused(edge('outline:3', 60), along('outline:0', 'start', 12))).toThrow(
      'is always 60 from outline:0',
    );
    expect(refused(edge('outline:0', 10), edge('outline:2', 20))).toThrow('say the same; give one across it');
    expect(refused(corner('outline:0', 'start', 5), edge('outline:0', 6))).toThrow(
      'the distance from outline:0 can come as near as 6',
    );
    expect(refused(corner('outline:0', 'start', 30), corner('outline:0', 'end', 40))).toThrow(
      'no place is 30 from the start of outline:0 and 40 from the end of outline:0; with the other as it is, the ' +
        'distance from outline:0 can come as near as 40',
    );
    expect(refused(corner('outline:0', 'start', 130), corner('outline:0', 'end', 40))).toThrow(
      'come as near as 120',
    );
    expect(refused(edge('outline:7', 1), edge('outline:0', 6))).toThrow(
      'placeByDistances: the outline has no edge outline:7; it has outline:0, outline:1, outline:2, outline:3',
    );
    expect(refused(edge('outline:1', -1), edge('outline:0', 6))).toThrow('the distance from outline:1 is -1');
    expect(refused(edge('outline:1', Number.NaN), edge('outline:0', 6))).toThrow(RangeError);
    expect(() => placeByDistances(PLATE, 0, edge('outline:1', 1), edge('outline:0', 6))).toThrow(
      'radius is 0',
    );
    const round: Region = [{ outer: circle(60), holes: [] }];
    expect(() => placeByDistances(round, 4, edge('outline:0', 31), edge('outline:0', 6))).toThrow(
      'the centre of that arc is 30 away, and nothing on that side is further',
    );
    expect(() => placeByDistances(round, 4, corner('outline:0', 'end', 31), edge('outline:0', 6))).toThrow(
      'outline:0 is a full circle, which has no end',
    );
    expect(() => placeByDistances(round, 4, along('outline:0', 'end', 31), edge('outline:0', 6))).toThrow(
      'outline:0 is an arc; distances are measured along straight edges only',
    );
  });
});

function reversedEdge<E extends { readonly a: Point; readonly b: Point }>(one: E): E {
  return 'ccw' in one ? { ...one, a: one.b, b: one.a, ccw: !one.ccw } : { ...one, a: one.b, b: one.a };
}

describe('placeByDistances on generated outlines', () => {
  const named = outlines.map((outline) =>
    outline.map(({ outer, holes }) => ({
      outer: outer.map((one, k) => ({ ...one, source: `outline:${k}` })),
      holes: holes.map((loop, h) => loop.map((one, k) => ({ ...one, source: `hole:${h}:${k}` }))),
    })),
  );

  it('finds a centre again from its measured distances to any two edges, and the same bites', () => {
    fc.assert(
      fc.property(
        named,
        evenly(-30, 120),
        evenly(-30, 120),
        fc.double({ min: 1, max: 30, noNaN: true }),
        fc.nat(),
        fc.nat(),
        (outline, x, y, radius, i, j) => {
          const edges = outline.flatMap(({ outer, holes }) => [outer, ...holes]).flat();
          const pair = [edges[i % edges.length], edges[j % edges.length]] as [
            (typeof edges)[number],
            (typeof edges)[number],
          ];
          fc.pre(pair[0] !== pair[1]);
          const center = P(x, y);
          const normals = pair.map((one) => {
            if (one.kind === 'arc') {
              const d = Math.hypot(x - one.center.x, y - one.center.y);
              return { nx: (x - one.center.x) / d, ny: (y - one.center.y) / d };
            }
            const length = Math.hypot(one.b.x - one.a.x, one.b.y - one.a.y);
            return { nx: -(one.b.y - one.a.y) / length, ny: (one.b.x - one.a.x) / length };
          });
          // Measured nearly the same way, two distances say nothing across.
          const [p, q] = normals as [(typeof normals)[number], (typeof normals)[number]];
          fc.pre(Math.abs(p.nx * q.ny - p.ny * q.nx) > 0.01);
          const measured = pair.map((one, k): FromEdge => {
            const { nx, ny } = normals[k] as (typeof normals)[number];
            const left =
              one.kind === 'line'
                ? nx * (x - one.a.x) + ny * (y - one.a.y)
                : (one.ccw ? 1 : -1) * (one.radius - Math.hypot(x - one.center.x, y - one.center.y));
            const side = left >= 0 ? 'inside' : 'outside';
            return { from: 'edge', edge: one.source, distance: Math.abs(left), side };
          }) as [FromEdge, FromEdge];
          const answers = placeByDistances(outline, radius, ...measured);
          const away = answers.map((one) => Math.hypot(one.center.x - x, one.center.y - y));
          const nearest = answers[away.indexOf(Math.min(...away))] as (typeof answers)[number];
          nearPlace(nearest.center, center, 300, 1e-11);
          near(nearest.removedArea, bitesIn(outline, center, radius).removedArea, 1e-10, 1e4);
        },
      ),
    );
  });
});
