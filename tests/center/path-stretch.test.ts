import {
  type CenterPass,
  centerPathAlong,
  circleLoop,
  type Edge,
  edgeLength,
  edgesOfPass,
  gouges,
  type OutlinePlace,
  type Point,
  placeNear,
  placeOfSource,
  type Region,
  rectangle,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const outerAt = (edge: number, share: number): OutlinePlace => ({ part: 0, hole: null, edge, share });
const bare = { side: 'outside', radius: 5, lead: 'none' } as const;
const startOf = ({ cut }: CenterPass) => (cut[0] as Edge).a;
const endOf = ({ cut }: CenterPass) => (cut[cut.length - 1] as Edge).b;
const lengthOf = ({ cut }: CenterPass) => cut.reduce((sum, edge) => sum + edgeLength(edge), 0);
const drilled: Region = [
  { outer: rectangle(100, 60), holes: [circleLoop(P(50, 30), 12, false, 'hole:0:0')] },
];

describe('centerPathAlong', () => {
  it('follows some edges, rounds the corners between them, and stops square to the ends', () => {
    const stretch = { from: outerAt(0, 0), to: outerAt(1, 1) };
    const [pass, ...more] = centerPathAlong(block(100, 60), stretch, bare) as [CenterPass];
    expect(more).toEqual([]);
    expect(pass.closed).toBe(false);
    nearPlace(startOf(pass), P(0, -5), 100);
    nearPlace(endOf(pass), P(105, 60), 100);
    near(lengthOf(pass), 100 + 2.5 * Math.PI + 60, 1e-14);
    expect(pass.cut.map(({ source }) => source)).toEqual(['outline:0', 'outline:0', 'outline:1']);
  });

  it('runs a stretch the other way for climb milling, the stretch itself stays', () => {
    const stretch = { from: outerAt(0, 0.25), to: outerAt(1, 0.5) };
    const [pass] = centerPathAlong(block(100, 60), stretch, { ...bare, milling: 'climb' }) as [CenterPass];
    nearPlace(startOf(pass), P(105, 30), 100);
    nearPlace(endOf(pass), P(25, -5), 100);
    expect(pass.ccw).toBe(false);
  });

  it('goes past the start of the loop, and all but round it', () => {
    const over = { from: outerAt(3, 0.5), to: outerAt(0, 0.1) };
    const [pass] = centerPathAlong(block(100, 60), over, bare) as [CenterPass];
    nearPlace(startOf(pass), P(-5, 30), 100);
    nearPlace(endOf(pass), P(10, -5), 100);
    const round = { from: outerAt(0, 0.6), to: outerAt(0, 0.4) };
    const [long, ...more] = centerPathAlong(block(100, 60), round, bare) as [CenterPass];
    expect(more).toEqual([]);
    near(lengthOf(long), 320 + 10 * Math.PI - 20, 1e-13);
  });

  it('follows part of an arc', () => {
    const stretch = { from: placeNear(drilled, P(62, 30)), to: placeNear(drilled, P(50, 18)) };
    expect(stretch.from).toMatchObject({ part: 0, hole: 0 });
    const [pass] = centerPathAlong(drilled, stretch, { ...bare, radius: 4 }) as [CenterPass];
    near(lengthOf(pass), 8 * (Math.PI / 2), 1e-12);
    nearPlace(startOf(pass), P(58, 30), 100);
    nearPlace(endOf(pass), P(50, 22), 100);
  });

  it('has leads at both ends that do not gouge', () => {
    const stretch = {
      from: placeOfSource(drilled, 'outline:2', 'start'),
      to: placeOfSource(drilled, 'outline:2', 'end'),
    };
    const [pass] = centerPathAlong(drilled, stretch, { side: 'outside', radius: 5, allowance: 0.2 }) as [
      CenterPass,
    ];
    nearPlace((pass.leadIn[0] as Edge).b, P(100, 65.2), 100);
    nearPlace((pass.leadOut[0] as Edge).a, P(0, 65.2), 100);
    expect(gouges(edgesOfPass(pass), 5, drilled)).toEqual([]);
  });

  it('comes in several passes where the tool does not fit between', () => {
    // A slot 6 wide in the upper side: a tool of 5 passes it by, without a gap; one side of the slot it never sees.
    const slotted: Region = [
      {
        outer: [
          [0, 0],
          [100, 0],
          [100, 60],
          [53, 60],
          [53, 30],
          [47, 30],
          [47, 60],
          [0, 60],
        ].map(([x, y], k, all): Edge => {
          const [u, v] = all[(k + 1) % all.length] as [number, number];
          return { kind: 'line', a: P(x as number, y as number), b: P(u, v), source: `outline:${k}` };
        }),
        holes: [],
      },
    ];
    const whole = { from: outerAt(2, 0), to: outerAt(6, 1) };
    const [pass, ...more] = centerPathAlong(slotted, whole, bare) as [CenterPass];
    expect(more).toEqual([]);
    // Between the corners, 6 apart, the tool dips by the sagitta: the path meets at 4 above the face.
    expect(pass.cut.some(({ a }) => Math.hypot(a.x - 50, a.y - 64) < 1e-9)).toBe(true);
    const inSlot = { from: outerAt(4, 0), to: outerAt(4, 1) };
    expect(() => centerPathAlong(slotted, inSlot, bare)).toThrow(
      'centerPathAlong: a tool of radius 5 touches no place of the stretch',
    );
    // A waist parts the path along the inside of a pocket.
    const passes = centerPathAlong(
      waisted(),
      { from: outerAt(0, 0), to: outerAt(4, 1) },
      { ...bare, side: 'inside', radius: 3 },
    );
    expect(passes).toHaveLength(2);
    expect(passes.map((one) => startOf(one).x < 25)).toEqual([false, true]);
    const climbing = centerPathAlong(
      waisted(),
      { from: outerAt(0, 0), to: outerAt(4, 1) },
      { ...bare, side: 'inside', radius: 3, milling: 'climb' },
    );
    expect(climbing.map((one) => startOf(one).x < 25)).toEqual([true, false]);
  });

  it('refuses what is no stretch', () => {
    const go = (from: OutlinePlace, to: OutlinePlace) => () => centerPathAlong(drilled, { from, to }, bare);
    expect(go(outerAt(0, 0.5), outerAt(0, 0.5))).toThrow('from and to are one place; use centerPath');
    expect(go(outerAt(7, 0), outerAt(0, 1))).toThrow('from: the outer loop of part 0 has no edge 7');
    expect(go(outerAt(0, 0), { part: 0, hole: 3, edge: 0, share: 0 })).toThrow(
      'to: hole 3 of part 0 has no edge 0',
    );
    expect(go(outerAt(0, 0), { part: 0, hole: 0, edge: 0, share: 0 })).toThrow('on different loops');
    expect(go(outerAt(0, -0.1), outerAt(1, 1))).toThrow('from: the share is -0.1');
    expect(() => placeNear([], P(0, 0))).toThrow('placeNear: the region is empty');
    expect(() => placeNear(drilled, P(Number.NaN, 0))).toThrow('placeNear: point is (NaN, 0)');
    expect(() => placeOfSource(drilled, 'outline:9', 'end')).toThrow(
      'no edge of the outline has the source outline:9',
    );
  });
});

/** Two halls 20 by 20 with a waist 4 high between them. */
function waisted(): Region {
  const corners = [
    P(0, 0),
    P(20, 0),
    P(20, 8),
    P(30, 8),
    P(30, 0),
    P(50, 0),
    P(50, 20),
    P(30, 20),
    P(30, 12),
  ];
  const all = [...corners, P(20, 12), P(20, 20), P(0, 20)];
  return [
    {
      outer: all.map((a, k): Edge => ({ kind: 'line', a, b: all[(k + 1) % all.length] as Point })),
      holes: [],
    },
  ];
}
