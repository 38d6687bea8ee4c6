import {
  arcEdge,
  area,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
  type Region,
  subtract,
  union,
} from '@edgebite/core';
import { regionFaults } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { p } from './shapes.js';

/*
 * Which joints of a boundary an overlay keeps: those that mean something. Where an edge is only written down in two, it
 * comes back as one; where names, bends or curvatures differ, the joint stays. Elementary, no source.
 */

/** A rectangle of 20 by 10 with a joint in its lower side. */
function split(joint: Point, left?: string, right?: string): Region {
  return [
    {
      outer: [
        lineEdge(p(0, 0), joint, left),
        lineEdge(joint, p(20, 0), right),
        lineEdge(p(20, 0), p(20, 10), 'east'),
        lineEdge(p(20, 10), p(0, 10), 'north'),
        lineEdge(p(0, 10), p(0, 0), 'west'),
      ],
      holes: [],
    },
  ];
}

/** The region laid over something far away, so that all of its loops are drawn anew. */
function redrawn(region: Region): Loop {
  const [first] = union([region, disc(p(100, 100), 1)]);
  if (first === undefined) throw new Error('nothing came back');
  return first.outer;
}

const below = (loop: Loop): Edge[] => loop.filter(({ a, b }) => Math.max(a.y, b.y) < 5);

describe('a joint between two lines', () => {
  it.each([
    ['without names', undefined, undefined],
    ['of one name', 'south', 'south'],
  ])('goes where they are in line, %s', (_, left, right) => {
    for (const x of [0.001, 4, 10, 19.99]) {
      const edges = below(redrawn(split(p(x, 0), left, right)));
      expect(edges).toEqual([
        left === undefined ? lineEdge(p(0, 0), p(20, 0)) : lineEdge(p(0, 0), p(20, 0), left),
      ]);
    }
  });

  it('goes where the bend is rounding, and stays where it can be seen', () => {
    expect(below(redrawn(split(p(8, 1e-10), 's', 's')))).toHaveLength(1);
    for (const off of [1e-5, -1e-5, 0.5, -0.5])
      expect(below(redrawn(split(p(8, off), 's', 's')))).toHaveLength(2);
    // A short edge turned by a good angle is a bend too, however little it reaches to the side.
    expect(below(redrawn(split(p(0.001, 2e-5), 's', 's')))).toHaveLength(2);
  });

  it('stays where the names differ, or one has none', () => {
    expect(below(redrawn(split(p(8, 0), 'one', 'other'))).map(({ source }) => source)).toEqual([
      'one',
      'other',
    ]);
    expect(below(redrawn(split(p(8, 0), 'one')))).toHaveLength(2);
    expect(below(redrawn(split(p(8, 0), undefined, 'other')))).toHaveLength(2);
  });

  it('of two regions stays unless they share a name', () => {
    const box = (x: number, source?: string): Region => [
      {
        outer: [
          lineEdge(p(x, 0), p(x + 10, 0), source),
          lineEdge(p(x + 10, 0), p(x + 10, 10), 'a'),
          lineEdge(p(x + 10, 10), p(x, 10), 'b'),
          lineEdge(p(x, 10), p(x, 0), 'c'),
        ],
        holes: [],
      },
    ];
    const lowest = (one?: string, other?: string) =>
      below((union([box(0, one), box(10, other)])[0] as Region[number]).outer).length;
    expect(lowest()).toBe(2);
    expect(lowest('s', 's')).toBe(1);
    expect(lowest('s', 't')).toBe(2);
  });
});

describe('a joint between two arcs', () => {
  /** Half a disc of radius 5 on a base line, its arc in two that join at an angle, the second about a centre of its own. */
  function dome(
    angle: number,
    second: { readonly center: Point; readonly end: Point },
    names: readonly [string, string],
  ): Region {
    const joint = p(5 * Math.cos(angle), 5 * Math.sin(angle));
    return [
      {
        outer: [
          arcEdge(p(5, 0), joint, p(0, 0), true, names[0]),
          arcEdge(joint, second.end, second.center, true, names[1]),
          lineEdge(second.end, p(5, 0), 'base'),
        ],
        holes: [],
      },
    ];
  }
  const same = { center: p(0, 0), end: p(-5, 0) };
  /** A tangent arc of radius 3 that goes on from the top of the dome. */
  const tighter = { center: p(0, 2), end: p(-3, 2) };
  const arcs = (loop: Loop) => loop.filter(({ kind }) => kind === 'arc');

  it('goes where they are of one circle and one name', () => {
    for (const angle of [0.3, 1, 2, 3])
      expect(arcs(redrawn(dome(angle, same, ['top', 'top'])))).toHaveLength(1);
  });

  it('stays where the names differ, or one circle goes over into another', () => {
    expect(arcs(redrawn(dome(1, same, ['one', 'other'])))).toHaveLength(2);
    expect(
      arcs(redrawn(dome(Math.PI / 2, tighter, ['top', 'top']))).map((e) => (e as { radius: number }).radius),
    ).toEqual([5, 3]);
  });

  it.each([
    ['goes beside the place where a cut touches, which has no joint there', ['top', 'top'], 1],
    ['is one of the cut too, if the names differ: the two run together from there', ['one', 'other'], 0],
  ] as const)('%s', (_, names, holes) => {
    // A weld tolerance is 1e-8 here. The joint is 5e-5 along from the touch, where the circles are 4e-10 apart.
    const angle = 1;
    const touching = disc(p(3 * Math.cos(angle), 3 * Math.sin(angle)), 2, 'bore');
    const left = subtract(dome(angle + 1e-5, same, names), [touching]);
    expect(regionFaults(left, { extent: 10 })).toEqual([]);
    expect(left.map((part) => part.holes.length)).toEqual([holes]);
    const loops = left.flatMap((part) => [part.outer, ...part.holes]);
    const top = loops.flat().filter(({ source }) => source !== 'bore' && source !== 'base');
    expect(top.map(({ source }) => source)).toEqual(expect.arrayContaining([...names]));
    expect(top).toHaveLength(2);
  });

  it('goes from a circle in three arcs altogether: it comes back in two, as a circle does', () => {
    const at = (angle: number) => p(3 + 2 * Math.cos(angle), 4 + 2 * Math.sin(angle));
    const ends = [0.1, 2, 4.5].map(at);
    const three = ends.map((a, k) => arcEdge(a, ends[(k + 1) % 3] as Point, p(3, 4), true, 'bore'));
    const loop = redrawn([{ outer: three, holes: [] }]);
    expect(loop).toHaveLength(2);
    expect(loop.every((e) => e.kind === 'arc' && e.radius === 2 && e.source === 'bore')).toBe(true);
  });
});

describe('what is thinner than a few weld tolerances', () => {
  /** Two discs of radius 10 that overlap by `depth`: a lens, whose mean thickness is about two thirds of that. */
  const lens = (depth: number) => {
    const half = Math.sqrt(10 * depth);
    const [low, high] = [p(0, -half), p(0, half)];
    const center = Math.sqrt(100 - half * half);
    return [
      {
        outer: [arcEdge(low, high, p(-center, 0), true), arcEdge(high, low, p(center, 0), true)],
        holes: [],
      },
    ] as Region;
  };

  it('is left out, and what is thicker is not', () => {
    // The work is 200 across, so a tolerance is 2e-7 and four are 8e-7.
    const frame: Region = [
      {
        outer: [
          lineEdge(p(-100, -100), p(100, -100)),
          lineEdge(p(100, -100), p(0, -99)),
          lineEdge(p(0, -99), p(-100, -100)),
        ],
        holes: [],
      },
    ];
    const parts = (depth: number) => union([frame, lens(depth)]).length;
    expect(parts(3e-6)).toBe(2);
    expect(parts(2e-7)).toBe(1);
  });
});

describe('a vertex where many edges meet', () => {
  /** Wedges about one point, each 15 degrees wide with as much between them. */
  const wedge = (k: number): Region => {
    const at = (degrees: number) =>
      p(7 * Math.cos((degrees * Math.PI) / 180), 7 * Math.sin((degrees * Math.PI) / 180));
    const [low, high] = [at(30 * k), at(30 * k + 15)];
    return [{ outer: [lineEdge(p(0, 0), low), lineEdge(low, high), lineEdge(high, p(0, 0))], holes: [] }];
  };

  it('keeps twelve wedges apart, with r² sin(15°) / 2 each', () => {
    const parts = union(Array.from({ length: 12 }, (_, k) => wedge(k)));
    expect(parts).toHaveLength(12);
    for (const part of parts) {
      expect(part.outer).toHaveLength(3);
      expect(area([part])).toBeCloseTo((49 * Math.sin(Math.PI / 12)) / 2, 11);
    }
  });

  it('joins twelve discs through one point into a rosette that goes round it', () => {
    // The union of discs of radius r with their centres at a distance r from one point, 30 degrees apart: neighbours meet
    // at 2 r cos(15°), and between two such places lies a sector of each disc. Elementary, no source.
    const r = 3;
    const discs = Array.from({ length: 12 }, (_, k) =>
      disc(p(r * Math.cos((k * Math.PI) / 6), r * Math.sin((k * Math.PI) / 6)), r),
    );
    const [part, ...others] = union(discs);
    expect(others).toHaveLength(0);
    expect(part?.holes).toHaveLength(0);
    // Polar about the point each outer arc is 2 r cos(t) for t within 15 degrees: half the integral of its square.
    const t = Math.PI / 12;
    const petal = r * r * (2 * t + Math.sin(2 * t));
    expect(area([part as Region[number]])).toBeCloseTo(12 * petal, 10);
  });
});
