import {
  arcEdge,
  type CenterPass,
  centerPath,
  circleLoop,
  disc,
  type Edge,
  edgeLength,
  edgesOfPass,
  edgesToJson,
  lineEdge,
  nearestOnEdge,
  type Point,
  passesToJson,
  pointAlong,
  type Region,
  rectangle,
  ring,
  slot,
} from '@edgebite/core';
import { everyWay, extentOf } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace } from './near.js';

const P = (x: number, y: number): Point => ({ x, y });
const bare = (region: Region, side: 'outside' | 'inside', radius: number, allowance = 0) =>
  centerPath(region, { side, radius, allowance, lead: 'none' });
const lengthOf = (edges: readonly Edge[]) => edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
const cutLength = (passes: readonly CenterPass[]) => passes.reduce((sum, { cut }) => sum + lengthOf(cut), 0);
const triangle: Region = [
  { outer: [lineEdge(P(0, 0), P(4, 0)), lineEdge(P(4, 0), P(0, 3)), lineEdge(P(0, 3), P(0, 0))], holes: [] },
];
const plate: Region = [{ outer: rectangle(100, 60), holes: [circleLoop(P(30, 30), 12, false, 'hole:0:0')] }];

describe('centerPath', () => {
  it('is as long as the outline and a full turn of the tool round a convex part (Steiner formula)', () => {
    near(cutLength(bare(block(100, 100), 'outside', 10).passes), 462.8318530718, 1e-12);
    near(cutLength(bare(triangle, 'outside', 1).passes), 12 + 2 * Math.PI, 1e-14);
    near(cutLength(bare(triangle, 'outside', 0.75, 0.25).passes), 12 + 2 * Math.PI, 1e-14);
    near(cutLength(bare(disc(P(3, 4), 20), 'outside', 5).passes), 2 * Math.PI * 25, 1e-14);
  });

  it('inside of a 3-4-5 triangle is the same triangle at half the size for half its inradius', () => {
    near(cutLength(bare(triangle, 'inside', 0.5).passes), 6, 1e-14);
  });

  it('keeps lines and arcs, and names each by the outline edge that it follows or pivots round', () => {
    const { passes } = bare([{ outer: slot(40, 20), holes: [] }], 'outside', 3);
    const kinds = (passes[0] as CenterPass).cut.map(({ kind, source }) => `${kind} ${source}`);
    expect([...new Set(kinds)].sort()).toEqual([
      'arc outline:1',
      'arc outline:3',
      'line outline:0',
      'line outline:2',
    ]);
    const [round] = bare(block(50, 50), 'outside', 5).passes as [CenterPass];
    const pivot = round.cut.find(
      (edge) => edge.kind === 'arc' && edge.center.x === 50 && edge.center.y === 0,
    );
    // In the direction of the outline the corner at (50, 0) is where the lower edge ends.
    expect(pivot?.source).toBe('outline:0');
  });

  it('goes the way that milling says, for a spindle that turns clockwise (common practice, no source)', () => {
    const ways = (side: 'outside' | 'inside', milling: 'climb' | 'conventional') =>
      centerPath(plate, { side, radius: 3, milling, lead: 'none' }).passes.map(
        ({ outer, ccw }) => `${outer ? 'outer' : 'inner'} ${ccw ? 'ccw' : 'cw'}`,
      );
    expect(ways('outside', 'climb')).toEqual(['inner ccw', 'outer cw']);
    expect(ways('outside', 'conventional')).toEqual(['inner cw', 'outer ccw']);
    expect(ways('inside', 'climb')).toEqual(['inner cw', 'outer ccw']);
    expect(ways('inside', 'conventional')).toEqual(['inner ccw', 'outer cw']);
    expect(bare(block(9, 9), 'outside', 1)).toEqual(
      centerPath(block(9, 9), { side: 'outside', radius: 1, milling: 'conventional', lead: 'none' }),
    );
  });

  it('runs the way that it says', () => {
    for (const milling of ['climb', 'conventional'] as const) {
      for (const { cut, ccw } of centerPath(plate, { side: 'outside', radius: 3, milling, lead: 'none' })
        .passes) {
        const turned = cut.reduce((sum, { a, b }) => sum + a.x * b.y - a.y * b.x, 0);
        expect(turned > 0).toBe(ccw);
      }
    }
  });

  it('goes in the order asked for', () => {
    const three: Region = [
      {
        outer: rectangle(100, 30),
        holes: [circleLoop(P(80, 15), 8, false), circleLoop(P(20, 15), 8, false)],
      },
    ];
    const xs = (order: 'inner first' | 'outer first' | 'nearest', start?: Point) =>
      centerPath(three, { side: 'outside', radius: 2, lead: 'none', order, start }).passes.map(
        ({ cut, outer }) => (outer ? 'outer' : Math.round((cut[0] as Edge).a.x / 40) * 40 + 0),
      );
    expect(xs('inner first')[2]).toBe('outer');
    expect(xs('outer first')[0]).toBe('outer');
    expect(xs('nearest', P(-40, 15))).toEqual(['outer', 0, 80]);
    expect(xs('nearest', P(21, 15))).toEqual([40, 'outer', 80]);
  });

  it('begins in the middle of the longest straight edge, or next to the place asked for', () => {
    const [round] = bare(block(100, 40), 'outside', 5).passes as [CenterPass];
    nearPlace((round.cut[0] as Edge).a, P(50, -5), 100);
    const at = (start: Point) => {
      const [pass] = centerPath(block(100, 40), { side: 'outside', radius: 5, lead: 'none', start }).passes;
      return ((pass as CenterPass).cut[0] as Edge).a;
    };
    nearPlace(at(P(30, 90)), P(30, 45), 100);
    // A hair beside a joint is the joint, so that no sliver of an edge is made.
    expect(at(P(100 + 1e-10, -9))).toEqual(P(100, -5));
  });

  it('leaves out loops that the tool does not fit in, and names them', () => {
    const drilled: Region = [
      {
        outer: rectangle(100, 60),
        holes: [circleLoop(P(30, 30), 12, false), circleLoop(P(70, 30), 3, false)],
      },
    ];
    const { passes, missed } = bare(drilled, 'outside', 4);
    expect(passes).toHaveLength(2);
    expect(missed).toEqual([{ part: 0, hole: 1 }]);
    expect(bare(drilled, 'outside', 2).missed).toEqual([]);
  });

  it('parts a pocket with a waist into two passes', () => {
    const hall: Region = [
      {
        outer: [
          lineEdge(P(0, 0), P(20, 0)),
          lineEdge(P(20, 0), P(20, 8)),
          lineEdge(P(20, 8), P(30, 8)),
          lineEdge(P(30, 8), P(30, 0)),
          lineEdge(P(30, 0), P(50, 0)),
          lineEdge(P(50, 0), P(50, 20)),
          lineEdge(P(50, 20), P(30, 20)),
          lineEdge(P(30, 20), P(30, 12)),
          lineEdge(P(30, 12), P(20, 12)),
          lineEdge(P(20, 12), P(20, 20)),
          lineEdge(P(20, 20), P(0, 20)),
          lineEdge(P(0, 20), P(0, 0)),
        ],
        holes: [],
      },
    ];
    expect(bare(hall, 'inside', 3).passes).toHaveLength(2);
    expect(bare(hall, 'inside', 1.5).passes).toHaveLength(1);
  });

  it('refuses a tool that fits nowhere, and numbers out of range', () => {
    expect(() => bare(block(9, 9), 'inside', 4.5)).toThrow(
      'a tool of radius 4.5 with an allowance of 0 fits nowhere',
    );
    expect(() => bare(block(9, 9), 'inside', 4, 0.6)).toThrow('fits nowhere inside of the outline');
    expect(() => bare(block(9, 9), 'outside', 0)).toThrow('centerPath: radius is 0');
    expect(() => bare(block(9, 9), 'outside', 1, -1)).toThrow('centerPath: allowance is -1');
    expect(() => bare(block(9, 9), 'outside', 1e-12)).toThrow('is rounding');
    expect(() => centerPath(block(9, 9), { side: 'outside', radius: 1, lead: 0 })).toThrow(
      'centerPath: lead is 0',
    );
    const start = P(Number.NaN, 0);
    expect(() => centerPath(block(9, 9), { side: 'outside', radius: 1, start })).toThrow('start is (NaN, 0)');
  });

  it('does not depend on how an outline is written, or on where it lies', () => {
    const odd: Region = [
      {
        outer: [
          lineEdge(P(0, 0), P(60, 0)),
          arcEdge(P(60, 0), P(60, 30), P(60, 15), true),
          lineEdge(P(60, 30), P(25, 30)),
          lineEdge(P(25, 30), P(25, 45)),
          lineEdge(P(25, 45), P(0, 45)),
          lineEdge(P(0, 45), P(0, 0)),
        ],
        holes: [circleLoop(P(58, 15), 7, false)],
      },
    ];
    for (const [side, radius] of [
      ['outside', 5],
      ['inside', 3],
    ] as const) {
      const wanted = cutLength(bare(odd, side, radius).passes);
      for (const { name, change, scale } of everyWay(odd)) {
        const got = bare(change(odd), side, radius * scale);
        expect(Math.abs(cutLength(got.passes) / scale - wanted) / wanted, name).toBeLessThan(1e-9);
        expect(got.passes, name).toHaveLength(2);
      }
    }
  });

  it('gives plain JSON, of the same form as edges of jobs', () => {
    const { passes } = centerPath(ring(P(0, 0), 30, 20), { side: 'outside', radius: 4 });
    const json = JSON.parse(JSON.stringify(passesToJson(passes)));
    expect(json).toEqual(passesToJson(passes));
    const [first] = passes as [CenterPass];
    expect(json[0].cut).toEqual(edgesToJson(first.cut));
    expect(json[0].cut[0]).toMatchObject({ kind: 'arc', center: [0, 0], radius: 16, ccw: false });
    expect(edgesToJson([lineEdge(P(-0, 1), P(2, 3), 'outline:7')])).toEqual([
      { kind: 'line', a: [0, 1], b: [2, 3], source: 'outline:7' },
    ]);
  });
});

describe('leads', () => {
  const away = (region: Region, p: Point) =>
    Math.min(
      ...region
        .flatMap(({ outer, holes }) => [outer, ...holes].flat())
        .map((e) => nearestOnEdge(e, p).distance),
    );

  it('are quarter turns of the tool diameter off a straight wall, tangent to the path', () => {
    const [pass] = centerPath(block(100, 40), { side: 'outside', radius: 5 }).passes as [CenterPass];
    expect(edgesOfPass(pass)).toEqual([...pass.leadIn, ...pass.cut, ...pass.leadOut]);
    const [into, out] = [pass.leadIn[0] as Edge, pass.leadOut[0] as Edge];
    expect(into).toMatchObject({ kind: 'arc', radius: 10 });
    nearPlace(into.a, P(40, -15), 100);
    nearPlace(into.b, P(50, -5), 100);
    nearPlace(out.b, P(60, -15), 100);
    near(edgeLength(into), 5 * Math.PI, 1e-12);
  });

  it('are on the free side whichever way the tool runs', () => {
    for (const milling of ['climb', 'conventional'] as const) {
      for (const side of ['outside', 'inside'] as const) {
        const { passes } = centerPath(plate, { side, radius: 3, allowance: 0.5, milling, lead: 2 });
        for (const { leadIn, leadOut } of passes) {
          for (const edge of [...leadIn, ...leadOut]) {
            for (const share of [0, 0.25, 0.5, 0.75, 1]) {
              expect(away(plate, pointAlong(edge, share))).toBeGreaterThanOrEqual(3.5 - 1e-9);
            }
          }
        }
      }
    }
  });

  it('in a hole come as far off the wall as they can: half the radius of the path', () => {
    // R - sqrt((R - q)^2 + q^2) is largest at q = R / 2.
    const { passes } = centerPath(plate, { side: 'outside', radius: 4 });
    const inner = passes.find(({ outer }) => !outer) as CenterPass;
    const into = inner.leadIn[0] as Edge & { kind: 'arc' };
    expect(into.radius).toBeGreaterThan(4 * 0.9);
    expect(into.radius).toBeLessThan(4 / 0.9);
    near(12 - 4 - Math.hypot(into.a.x - 30, into.a.y - 30), 8 - Math.hypot(4, 4), 0.02);
  });

  it('of a given radius are cut short where a wall is in the way', () => {
    const ell: Region = [
      {
        outer: [
          lineEdge(P(0, 0), P(100, 0)),
          lineEdge(P(100, 0), P(100, 20)),
          lineEdge(P(100, 20), P(20, 20)),
          lineEdge(P(20, 20), P(20, 100)),
          lineEdge(P(20, 100), P(0, 100)),
          lineEdge(P(0, 100), P(0, 0)),
        ],
        holes: [],
      },
    ];
    // The centre runs along y = 25 to x = 25; started 7 before the corner, a quarter turn of 10 would run into the wall.
    const [pass] = centerPath(ell, { side: 'outside', radius: 5, lead: 10, start: P(32, 25) }).passes as [
      CenterPass,
    ];
    const [into, out] = [pass.leadIn[0] as Edge, pass.leadOut[0] as Edge];
    // Going left along the wall: the lead-in comes from the free right, the lead-out must stop at sin 30° of 10.
    near(edgeLength(into), 5 * Math.PI, 1e-9);
    near(edgeLength(out), (10 * Math.PI) / 6, 1e-9);
    expect(away(ell, out.b)).toBeGreaterThan(5);
  });

  it('that fit nowhere are refused with the place and what would do', () => {
    const go = (lead: number) => () =>
      centerPath(plate, { side: 'outside', radius: 6, lead, start: P(42, 30) });
    // The path in the hole has a radius of 6: a lead of 6 would run along the wall, one of 9 into it.
    for (const lead of [6, 9]) {
      expect(go(lead)).toThrow(`no lead-in of radius ${lead} fits at (36, 30) beside hole:0:0: one of 3.`);
    }
    expect(go(3)).not.toThrow();
    // 1 before an inner corner a lead-in comes from the free side; a lead-out of 10 goes 5 on, into the wall.
    const ell: Region = [
      {
        outer: [P(0, 0), P(100, 0), P(100, 20), P(20, 20), P(20, 100), P(0, 100)].map((a, k, all) =>
          lineEdge(a, all[(k + 1) % all.length] as Point),
        ),
        holes: [],
      },
    ];
    expect(() => centerPath(ell, { side: 'outside', radius: 5, lead: 10, start: P(26, 25) })).toThrow(
      expect.objectContaining({
        at: { x: 26, y: 25 },
        message: expect.stringMatching(/no lead-out of radius 10 fits at \(26, 25\)/),
      }),
    );
    // In a slot hardly wider than the tool there is no room for any.
    const narrow: Region = [{ outer: slot(40, 8.02), holes: [] }];
    expect(() => centerPath(narrow, { side: 'inside', radius: 4 })).toThrow(
      /no lead-in of any radius fits at .* start elsewhere, take a smaller tool, or go without leads/,
    );
    expect(() => centerPath(narrow, { side: 'inside', radius: 4, lead: 'none' })).not.toThrow();
  });

  it('make a loop begin where there is room, if the longest edge has none', () => {
    // A second part 1 beside the long edges: there, no lead fits.
    const rails: Region = [
      ...block(100, 40),
      { outer: rectangle(100, 10, { at: P(0, 52) }), holes: [] },
      { outer: rectangle(100, 10, { at: P(0, -22) }), holes: [] },
    ];
    const { passes } = centerPath(rails, { side: 'outside', radius: 5, lead: 5 });
    for (const { leadIn } of passes) {
      const { a } = leadIn[0] as Edge;
      expect(a.x < 0 || a.x > 100 || a.y < -22 || a.y > 62).toBe(true);
    }
    expect(extentOf(rails)).toBe(100);
  });

  it.each(['climb', 'conventional'] as const)('begin where both have room, milling %s', (milling) => {
    // Posts on one side of the middle of each long edge: there one of the two comes away as far as ever, whichever way
    // the tool runs, and the other runs into a post. At the short edges both have room: twice the tool's radius.
    const posts: Region = [
      ...block(100, 40),
      ...[-18, 50.5].map((y) => ({ outer: rectangle(10, 7.5, { at: P(56, y) }), holes: [] })),
    ];
    const { passes } = centerPath(posts, { side: 'outside', radius: 5, milling });
    expect(passes).toHaveLength(3);
    for (const { leadIn, leadOut } of passes) {
      expect(away(posts, (leadIn[0] as Edge).a)).toBeGreaterThan(5 + 9.9);
      expect(away(posts, (leadOut.at(-1) as Edge).b)).toBeGreaterThan(5 + 9.9);
    }
  });
});
