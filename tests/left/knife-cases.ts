import { disc, type Region, subtract } from '@edgebite/core';
import { at, box, hole, loopThrough, round, section } from './section-builder.js';

/*
 * Interior angles in closed form. A circle whose centre lies e inside a straight edge leaves two horns of
 * acos(e / r), one outside of it horns of 180 degrees less acos(|e| / r) (chord geometry, Machinery's Handbook, 31st
 * ed., "Formulas for Segments of a Circle"). Two circles meet at the angle between their radii, from the law of
 * cosines: cos f = (r² + s² - d²) / (2 r s).
 */

export const DEGREE = Math.PI / 180;

export interface Wanted {
  readonly angle: number;
  readonly at: readonly [number, number];
  readonly feather?: number | null;
  readonly between?: readonly [string, string];
}

export interface Case {
  readonly name: string;
  readonly region: Region;
  readonly limit?: number;
  readonly web?: number;
  readonly edges: readonly Wanted[];
}

const radiiAngle = (r: number, s: number, d: number) => Math.acos((r * r + s * s - d * d) / (2 * r * s));

/** A plate 60 by 40 bitten from below by a disc of radius 10, its centre (30, e). */
export const bitten = (e: number) => subtract(section(box(60, 40)), [disc(at(30, e), 10, 'cut:a')]);

const halfChord = (e: number) => Math.sqrt(100 - e * e);

/**
 * Distance from the tip of a horn to the centre of the disc of a radius that touches the edge y = 0 from above and the
 * circle round (0, e) from outside, the tip at (c, 0).
 */
function featherOfHorn(r: number, e: number, radius: number): number {
  const across = Math.sqrt((r + radius) ** 2 - (radius - e) ** 2);
  return Math.hypot(across - Math.sqrt(r * r - e * e), radius);
}

const wedge = (angle: number, length = 40): Region =>
  section(
    loopThrough([
      [0, 0],
      [length, 0],
      [length * Math.cos(angle), length * Math.sin(angle)],
    ]),
  );

export const cases: Case[] = [
  ...[0.1, 5, 29.9].map(
    (degrees): Case => ({
      name: `two straight edges at ${degrees} degrees`,
      region: wedge(degrees * DEGREE),
      web: 0.02,
      edges: [
        {
          angle: degrees * DEGREE,
          at: [0, 0],
          feather: 0.01 / Math.sin((degrees * DEGREE) / 2),
          between: ['outline:0', 'outline:2'],
        },
      ],
    }),
  ),
  {
    name: 'two straight edges, metal never as thick as the limit',
    region: wedge(10 * DEGREE),
    web: 20,
    edges: [{ angle: 10 * DEGREE, at: [0, 0], feather: null }],
  },
  { name: 'at the limit exactly', region: wedge(30 * DEGREE), limit: 30 * DEGREE - 1e-12, edges: [] },
  ...[9.99, 9, 8.7].map(
    (e): Case => ({
      name: `horns of a bore with its centre ${e} inside an edge`,
      region: bitten(e),
      edges: [-1, 1].map((side) => ({
        angle: Math.acos(e / 10),
        at: [30 + side * halfChord(e), 0] as const,
        feather: featherOfHorn(10, e, 0.75),
        between: ['cut:a', 'outline:0'] as const,
      })),
    }),
  ),
  {
    name: 'bore with its centre on the edge: square horns',
    region: bitten(0),
    limit: 89.999 * DEGREE,
    edges: [],
  },
  {
    name: 'tip between two bores that overlap',
    region: subtract(section(box(60, 40)), [disc(at(20, 20), 8, 'cut:a'), disc(at(33.9, 20), 6, 'cut:b')]),
    edges: [1, -1].map((side) => {
      const along = (13.9 ** 2 + 8 ** 2 - 6 ** 2) / 27.8;
      return {
        angle: Math.PI - radiiAngle(8, 6, 13.9),
        at: [20 + along, 20 + side * Math.sqrt(64 - along * along)] as const,
        between: ['cut:a', 'cut:b'] as const,
      };
    }),
  },
  {
    name: 'lens of two rounds (r 4, r 4, d 7.9)',
    region: section(
      loopThrough([
        [3.95, -Math.sqrt(16 - 3.95 ** 2), [7.9, 0], true],
        [3.95, Math.sqrt(16 - 3.95 ** 2), [0, 0], true],
      ]),
    ),
    web: 0.05,
    edges: [-1, 1].map((side) => ({
      angle: Math.PI - radiiAngle(4, 4, 7.9),
      at: [3.95, side * Math.sqrt(16 - 3.95 ** 2)] as const,
      // Within both rounds the disc's centre is 4 less its radius from either centre.
      feather: Math.sqrt(16 - 3.95 ** 2) - Math.sqrt((4 - 0.025) ** 2 - 3.95 ** 2),
    })),
  },
  {
    name: 'crescent (r 5, r 5, d 2)',
    region: subtract(section(round(0, 0, 5)), [disc(at(2, 0), 5, 'cut:a')]),
    web: 0.4,
    edges: [-1, 1].map((side) => ({
      angle: radiiAngle(5, 5, 2),
      at: [1, side * Math.sqrt(24)] as const,
      between: ['cut:a', 'outline:0'] as const,
    })),
  },
  {
    name: 'bore that touches an edge from inside: two tips of no angle',
    region: subtract(section(box(60, 40)), [disc(at(30, 10), 10, 'cut:a')]),
    edges: [1, 2].map(() => ({
      angle: 0,
      at: [30, 0] as const,
      feather: Math.hypot(2 * Math.sqrt(10 * 0.75), 0.75),
    })),
  },
  { name: 'bore that touches an edge from outside', region: bitten(-10), edges: [] },
  {
    name: 'two bores that touch: two tips of no angle',
    region: subtract(section(box(60, 40)), [disc(at(20, 20), 5, 'cut:a'), disc(at(30, 20), 5, 'cut:b')]),
    edges: [1, 2].map(() => ({
      angle: 0,
      at: [25, 20] as const,
      between: ['cut:a', 'cut:b'] as const,
      feather: Math.sqrt(5.75 ** 2 - 25),
    })),
  },
  {
    name: 'bore that touches the rim of a round from inside',
    region: subtract(section(round(0, 0, 20)), [disc(at(0, -12), 8, 'cut:a')]),
    edges: [1, 2].map(() => ({ angle: 0, at: [0, -20] as const })),
  },
  {
    name: 'square hole that touches a side with a corner: 45 degrees on either side',
    region: subtract(section(box(60, 40)), [
      [
        {
          outer: loopThrough(
            [
              [30, 0],
              [34, 4],
              [30, 8],
              [26, 4],
            ],
            'cut',
          ),
          holes: [],
        },
      ] as Region,
    ]),
    limit: 60 * DEGREE,
    edges: [1, 2].map(() => ({ angle: 45 * DEGREE, at: [30, 0] as const })),
  },
  {
    name: 'two square holes corner to corner',
    region: subtract(section(box(60, 40)), [
      [
        {
          outer: loopThrough(
            [
              [20, 17],
              [30, 20],
              [20, 23],
            ],
            'left',
          ),
          holes: [],
        },
      ] as Region,
      [
        {
          outer: loopThrough(
            [
              [40, 14],
              [40, 26],
              [30, 20],
            ],
            'right',
          ),
          holes: [],
        },
      ] as Region,
    ]),
    limit: 89 * DEGREE,
    edges: [],
  },
  {
    name: 'spike between two triangular holes that share a corner',
    region: subtract(section(box(60, 40)), [
      [
        {
          outer: loopThrough(
            [
              [20, 10],
              [30, 20],
              [20, 18],
            ],
            'left',
          ),
          holes: [],
        },
      ] as Region,
      [
        {
          outer: loopThrough(
            [
              [20, 22],
              [30, 20],
              [20, 30],
            ],
            'right',
          ),
          holes: [],
        },
      ] as Region,
    ]),
    edges: [
      {
        angle: 2 * Math.atan2(2, 10),
        at: [30, 20],
        between: ['left:1', 'right:0'],
        feather: 0.75 / Math.sin(Math.atan2(2, 10)),
      },
    ],
  },
  {
    name: 'bore that touches a hole in its cusp: one tip, on the side of the bore',
    region: [
      {
        outer: loopThrough([
          [-20, -20],
          [20, -20],
          [20, 20],
          [-20, 20],
        ]),
        holes: [
          loopThrough(
            [
              [0, 0, [0, 10], false],
              [4, 2, [0, 5], true],
              [6, 2],
            ],
            'cusp',
          ),
          [
            {
              kind: 'arc',
              a: at(0, 0),
              b: at(0, -8),
              center: at(0, -4),
              radius: 4,
              ccw: false,
              source: 'cut:b',
            },
            {
              kind: 'arc',
              a: at(0, -8),
              b: at(0, 0),
              center: at(0, -4),
              radius: 4,
              ccw: false,
              source: 'cut:b',
            },
          ],
        ],
      },
    ],
    limit: 20 * DEGREE,
    edges: [{ angle: 0, at: [0, 0], between: ['cusp:2', 'cut:b'] }],
  },
  {
    name: 'cusp of metal between curves that bend apart',
    region: section(
      loopThrough([
        [0, 0, [0, 5], false],
        [4, -2, [0, -5], false],
        [4, 2],
      ]),
    ),
    web: 0.2,
    edges: [{ angle: 0, at: [0, 0], feather: Math.sqrt(5.1 ** 2 - 25) }],
  },
  {
    name: 'cusp of metal between curves that bend the same way, one more than the other',
    region: section(
      loopThrough([
        [0, 0, [0, 5], false],
        [6, 2, [0, 10], true],
        [3, 1],
      ]),
    ),
    limit: 10 * DEGREE,
    web: 0.02,
    edges: [{ angle: 0, at: [0, 0] }],
  },
  {
    name: 'slit: the same cusp with metal all round it is no tip',
    region: section(
      loopThrough([
        [-20, -20],
        [20, -20],
        [20, 20],
        [-20, 20],
      ]),
      loopThrough(
        [
          [0, 0, [0, -5], true],
          [4, 2, [0, 5], true],
          [4, -2],
        ],
        'cut',
      ),
    ),
    edges: [],
  },
  {
    name: 'reflex and square corners, smooth joints',
    region: section(
      loopThrough([
        [0, 0],
        [60, 0],
        [60, 20],
        [26, 20],
        [20, 26, [26, 26], false],
        [20, 60],
        [0, 60],
      ]),
      hole(10, 10, 3),
    ),
    limit: 89 * DEGREE,
    edges: [],
  },
  {
    name: 'needle of 2e-7 radians: an angle all the same',
    region: wedge(2e-7, 1000),
    web: 1e-4,
    edges: [{ angle: 2e-7, at: [0, 0], feather: 0.5e-4 / Math.sin(1e-7) }],
  },
];
