import { box, hole, loopThrough, round, section } from './section-builder.js';
import {
  barWithRoundEnds,
  type Case,
  ell,
  flareAtEdge,
  flareBetweenHoles,
  flareInRound,
  rounded,
  SQRT_HALF,
  withHole,
} from './web-forms.js';

/** At which angle a place 9 from the middle is 1 beyond the line x + y = 9. */
const ALONG_RIM = Math.asin((9 + Math.SQRT2) / (9 * Math.SQRT2)) - Math.PI / 4;

/** Webs at a point: between holes, edges, corners and rounded ends. */
export const necks: readonly Case[] = [
  {
    name: 'hole to edge',
    region: section(box(60, 40), hole(20, 5.8, 5)),
    limit: 2,
    webs: [
      {
        thickness: 0.8,
        at: [20, 0.4],
        length: 2 * flareAtEdge(5, 0.8, 2),
        strip: 0,
        between: ['cut:hole', 'outline:0'],
      },
    ],
  },
  {
    name: 'hole to hole',
    region: section(box(60, 40), hole(20, 20, 4, 'a'), hole(27.5, 20, 3, 'b')),
    limit: 1.75,
    webs: [
      {
        thickness: 0.5,
        at: [24.25, 20],
        length: 2 * flareBetweenHoles(4, 3, 0.5, 1.75),
        strip: 0,
        between: ['cut:a', 'cut:b'],
      },
    ],
  },
  {
    name: 'eccentric hole in a round',
    region: section(round(0, 0, 20), hole(0, -4.4, 15)),
    limit: 1.5,
    webs: [
      {
        thickness: 0.6,
        at: [0, -19.7],
        length: 2 * flareInRound(20, 15, 4.4, 1.5),
        strip: 0,
        between: ['cut:hole', 'outline:0'],
      },
    ],
  },
  {
    name: 'eccentric hole in a round, the limit over its thickest place too',
    region: section(round(0, 0, 20), hole(0, -4.4, 15)),
    limit: 12,
    webs: [{ thickness: 0.6, at: [0, -19.7], strip: 0 }],
  },
  {
    name: 'hole to reflex corner',
    region: withHole(ell, hole(20 - 4.7 * SQRT_HALF, 20 - 4.7 * SQRT_HALF, 4)),
    limit: 0.8,
    webs: [
      {
        thickness: 0.7,
        at: [20 - 0.35 * SQRT_HALF, 20 - 0.35 * SQRT_HALF],
        length: 2 * flareBetweenHoles(0, 4, 0.7, 0.8),
        strip: 0,
        between: ['cut:hole', 'outline:2'],
      },
    ],
  },
  {
    name: 'hole beside a reflex corner, nearest to a face',
    region: withHole(ell, hole(30, 15.4, 4)),
    limit: 1,
    webs: [
      {
        thickness: 0.6,
        at: [30, 19.7],
        length: 2 * flareAtEdge(4, 0.6, 1),
        between: ['cut:hole', 'outline:2'],
      },
    ],
  },
  {
    name: 'corner to corner',
    region: section(
      loopThrough([
        [0, 0],
        [32, 0],
        [32, 11],
        [42, 11],
        [42, 0],
        [60, 0],
        [60, 20],
        [30, 20],
        [30, 12],
        [20, 12],
        [20, 20],
        [0, 20],
      ]),
    ),
    limit: 2.3,
    webs: [
      {
        thickness: Math.sqrt(5),
        at: [31, 11.5],
        length: 2 * Math.sqrt(1.15 ** 2 - 5 / 4),
        strip: 0,
        between: ['outline:1', 'outline:7'],
      },
    ],
  },
  {
    name: 'corner to edge',
    region: section(
      loopThrough([
        [0, 0],
        [60, 0],
        [60, 20],
        [35, 20],
        [30, 0.9],
        [25, 20],
        [0, 20],
      ]),
    ),
    limit: 1.2,
    webs: [{ thickness: 0.9, at: [30, 0.45], length: 2 * flareAtEdge(0, 0.9, 1.2), strip: 0 }],
  },
  {
    name: 'hole to rounded end',
    region: withHole(barWithRoundEnds, hole(23.5, 0, 6)),
    limit: 1.2,
    webs: [
      {
        thickness: 0.5,
        at: [29.75, 0],
        length: 2 * flareInRound(10, 6, 3.5, 1.2),
        strip: 0,
        between: ['cut:hole', 'outline:1'],
      },
    ],
  },
  {
    name: 'hole to a bite in the outline',
    region: section(
      loopThrough([
        [0, 0],
        [60, 0],
        [60, 40],
        [38, 40],
        [22, 40, [30, 40], false],
        [0, 40],
      ]),
      hole(30, 27, 4.4),
    ),
    limit: 1.5,
    webs: [
      {
        thickness: 0.6,
        at: [30, 31.7],
        length: 2 * flareBetweenHoles(8, 4.4, 0.6, 1.5),
        between: ['cut:hole', 'outline:3'],
      },
    ],
  },
  {
    name: 'hole beside a rounded corner, nearest to the corner',
    region: withHole(rounded(60, 40, 8), hole(52 + 4.4 * SQRT_HALF, 32 + 4.4 * SQRT_HALF, 3)),
    limit: 1,
    webs: [
      {
        thickness: 0.6,
        at: [52 + 7.7 * SQRT_HALF, 32 + 7.7 * SQRT_HALF],
        length: 2 * flareInRound(8, 3, 4.4, 1),
        between: ['cut:hole', 'outline:3'],
      },
    ],
  },
  {
    name: 'hole beside a rounded corner, nearest to the side just before it',
    region: withHole(rounded(60, 40, 8), hole(56.2, 31.9, 3)),
    limit: 1,
    webs: [{ thickness: 0.8, at: [59.6, 31.9], strip: 0, between: ['cut:hole', 'outline:2'] }],
  },
  {
    name: 'hole beside an inside corner with a fillet',
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
      hole(26 - 10.5 * SQRT_HALF, 26 - 10.5 * SQRT_HALF, 4),
    ),
    limit: 1,
    webs: [
      {
        thickness: 0.5,
        at: [26 - 6.25 * SQRT_HALF, 26 - 6.25 * SQRT_HALF],
        length: 2 * flareBetweenHoles(6, 4, 0.5, 1),
        between: ['cut:hole', 'outline:3'],
      },
    ],
  },
  {
    name: 'corner of a square hole near the rim of a round',
    region: section(
      round(0, 0, 10),
      loopThrough(
        [
          [9, 0],
          [4, -5],
          [-1, 0],
          [4, 5],
        ],
        'hole',
      ),
    ),
    limit: 2,
    // The disc of 2 lies 9 from the middle, and 1 from the side of the hole, x + y = 9.
    webs: [
      {
        thickness: 1,
        at: [9.5, 0],
        length: 2 * Math.hypot(9 * Math.cos(ALONG_RIM) - 9.5, 9 * Math.sin(ALONG_RIM)),
        strip: 0,
        between: ['hole:0', 'outline:0'],
      },
    ],
  },
];
