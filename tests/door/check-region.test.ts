import {
  area,
  checkRegion,
  circleLoop,
  disc,
  type Edge,
  EdgebiteError,
  type Loop,
  lineEdge,
  loopArea,
  normalize,
  type Region,
  rectangle,
  repairRegion,
  reversed,
  subtract,
  union,
} from '@edgebite/core';
import { cutRegions, families, outlines, regionFaults } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

const P = (x: number, y: number) => ({ x, y });
const turned = (loop: Loop): Loop => loop.map(reversed).reverse();
const square = (x: number, y: number, side: number): Loop => rectangle(side, side, { at: P(x, y) });
const polygon = (...corners: readonly (readonly [number, number])[]): Loop =>
  corners.map(([x, y], k) => {
    const [u, v] = corners[(k + 1) % corners.length] as readonly [number, number];
    return lineEdge(P(x, y), P(u, v));
  });

describe('checkRegion', () => {
  it('finds nothing in what the operations make, as a checker with geometry of its own finds nothing', () => {
    for (const family of families) {
      fc.assert(
        fc.property(family.cases, (one) => {
          const made = subtract(one.outline, cutRegions(one));
          expect(regionFaults(made)).toEqual([]);
          // Through JSON, so that nobody vouches for it.
          expect(checkRegion(JSON.parse(JSON.stringify(made)))).toEqual([]);
        }),
        { numRuns: runs(40) },
      );
    }
  });

  const outer = square(0, 0, 10);
  it.each<readonly [string, unknown, string, RegExp]>([
    ['no list', 7, '', /is 7; it must be a region/],
    ['a loop for a part', outer, '[0]', /must be a part of a region/],
    ['a clockwise outer loop', [{ outer: turned(outer), holes: [] }], '[0].outer', /runs clockwise/],
    [
      'a hole as outer loops run',
      [{ outer, holes: [square(2, 2, 3)] }],
      '[0].holes[0]',
      /runs counter-clock/,
    ],
    ['an open loop', [{ outer: outer.slice(1), holes: [] }], '[0].outer[2]', /ends at \(0, 0\), 10 from/],
    [
      'a number that is none',
      [{ outer: [{ ...(outer[0] as Edge), a: P(Number.NaN, 0) }, ...outer.slice(1)], holes: [] }],
      '[0].outer[0].a',
      /is \(NaN, 0\)/,
    ],
    [
      'an end off its circle',
      [{ outer: circleLoop(P(0, 0), 5).map((one) => ({ ...one, radius: 5.1 })), holes: [] }],
      '[0].outer[0]',
      /an end 0\.1 off its circle of radius 5\.1/,
    ],
    [
      'a bow',
      [{ outer: polygon([0, 4], [9, 0], [9, 9], [0, 0]), holes: [] }],
      '[0].outer[0]',
      /crosses \[0\]\.outer\[2\]/,
    ],
    [
      'a spike',
      [{ outer: polygon([0, 0], [9, 0], [9, 9], [9, 12], [9, 9], [0, 9]), holes: [] }],
      '[0].outer[2]',
      /runs along \[0\]\.outer\[3\]/,
    ],
    [
      'a hole across',
      [{ outer, holes: [turned(square(8, 2, 4))] }],
      '[0].outer[1]',
      /crosses \[0\]\.holes\[0\]/,
    ],
    [
      'a hole outside',
      [{ outer, holes: [turned(square(20, 2, 4))] }],
      '[0].holes[0]',
      /outside its outer loop/,
    ],
    [
      'a hole in a hole',
      [{ outer, holes: [turned(square(2, 2, 6)), turned(square(4, 4, 2))] }],
      '[0].holes[1]',
      /lies in hole 0/,
    ],
    [
      'a part in the metal of another',
      [
        { outer, holes: [] },
        { outer: square(2, 2, 3), holes: [] },
      ],
      '[1]',
      /in the metal of part 0/,
    ],
  ])('finds %s', (_, region, place, message) => {
    const [fault] = checkRegion(region);
    expect(fault?.place).toBe(place);
    expect(fault?.message).toMatch(message);
    expect(fault?.remedy).not.toBe('');
  });

  it('lets loops touch in a point, and a part lie in the hole of another', () => {
    const touching: Region = [{ outer, holes: [turned(polygon([0, 0], [4, 1], [1, 4]))] }];
    expect(checkRegion(touching)).toEqual([]);
    const nested: Region = [
      { outer, holes: [turned(square(2, 2, 6))] },
      { outer: square(4, 4, 2), holes: [] },
    ];
    expect(checkRegion(nested)).toEqual([]);
  });
});

describe('repairRegion', () => {
  it('gives a sound region back whatever way its loops and edges run, whatever has no length', () => {
    fc.assert(
      fc.property(outlines, fc.array(fc.boolean(), { minLength: 40, maxLength: 40 }), (region, turns) => {
        let k = 0;
        const isTurned = () => turns[k++ % turns.length] as boolean;
        const spoiled = (loop: Loop): Loop => {
          const run = isTurned() ? turned(loop) : loop;
          const speck = { kind: 'line', a: (run[0] as Edge).a, b: (run[0] as Edge).a } as const;
          const others = run
            .slice(1)
            .map((edge, n) => (n < run.length - 2 && isTurned() ? reversed(edge) : edge));
          // Two edges alone can be run either way.
          return [run[0] as Edge, ...(run.length > 2 ? others : run.slice(1)), speck];
        };
        const bad = region.map(({ outer, holes }) => ({ outer: spoiled(outer), holes: holes.map(spoiled) }));
        const mended = repairRegion(bad);
        expect(checkRegion(JSON.parse(JSON.stringify(mended)))).toEqual([]);
        expect(Math.abs(area(mended) - area(region))).toBeLessThan(1e-9 * area(region));
      }),
    );
  });

  it('parts what crosses itself, takes holes from their part, and joins parts that overlap', () => {
    // Elementary: a bow of two triangles of base 10 and height 5.
    const bow = polygon([0, 0], [10, 10], [10, 0], [0, 10]);
    expect(area(repairRegion([{ outer: bow, holes: [] }]))).toBeCloseTo(50, 12);
    const outer = square(0, 0, 10);
    expect(area(repairRegion([{ outer, holes: [square(2, 2, 3)] }]))).toBeCloseTo(91, 12);
    const two = repairRegion([
      { outer, holes: [] },
      { outer: turned(square(5, 5, 10)), holes: [] },
    ]);
    expect(area(two)).toBeCloseTo(175, 12);
    expect(two).toHaveLength(1);
  });

  it('closes small gaps, and refuses large ones with their place', () => {
    const gap = (by: number) => {
      const [first, ...others] = square(0, 0, 10) as [Edge, ...Edge[]];
      return [{ outer: [{ ...first, a: P(by, 0) }, ...others], holes: [] }];
    };
    expect(area(repairRegion(gap(1e-6)))).toBeCloseTo(100, 4);
    expect(() => repairRegion(gap(1e-3))).toThrow(
      'repairRegion: region[0].outer[3] ends 0.001 from where [0] starts',
    );
  });

  it('takes a radius from the centre and the ends', () => {
    const off = [{ outer: circleLoop(P(0, 0), 5).map((one) => ({ ...one, radius: 7 })), holes: [] }];
    expect(area(repairRegion(off))).toBeCloseTo(25 * Math.PI, 12);
  });
});

describe('errors', () => {
  it('have a code, a place and a remedy', () => {
    const refusal = (() => {
      try {
        return union([[{ outer: turned(square(0, 0, 4)), holes: [] }]]);
      } catch (error) {
        return error;
      }
    })();
    expect(refusal).toBeInstanceOf(EdgebiteError);
    expect(refusal).toMatchObject({
      name: 'EdgebiteError',
      code: 'region',
      place: 'union: regions[0][0].outer',
      remedy: 'turn it round, or use repairRegion',
    });
  });

  it('are told of regions that nobody vouches for, not of what the library made', () => {
    const made = disc(P(0, 0), 5);
    expect(Object.isFrozen(made)).toBe(true);
    const bad = [{ outer: turned(square(0, 0, 4)), holes: [] }];
    expect(() => area(bad)).toThrow('runs clockwise');
    expect(loopArea(normalize([turned(square(0, 0, 4))], 'nonzero')[0]?.outer ?? [])).toBe(16);
  });
});
