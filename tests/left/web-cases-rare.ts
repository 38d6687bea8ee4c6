import { box, hole, loopThrough, round, section } from './section-builder.js';
import { type Case, flareAtEdge, SQRT_HALF, tiltedSlot } from './web-forms.js';

/** Webs that are easily missed or made up, and metal that has none. */
export const rare: readonly Case[] = [
  {
    name: 'neck of two holes taken up by a third one between them',
    region: section(box(60, 40), hole(20, 20, 4, 'a'), hole(31, 20, 4, 'b'), hole(25.5, 20.2, 1, 'c')),
    limit: 3.5,
    webs: [
      { thickness: Math.hypot(5.5, 0.2) - 5, between: ['cut:a', 'cut:c'] },
      { thickness: Math.hypot(5.5, 0.2) - 5, between: ['cut:b', 'cut:c'] },
    ],
  },
  {
    name: 'holes on a square: thin between neighbours, not across the middle',
    region: section(
      box(40, 40),
      hole(10, 10, 1, 'a'),
      hole(12.5, 10, 1, 'b'),
      hole(10, 12.5, 1, 'c'),
      hole(12.5, 12.5, 1, 'd'),
    ),
    limit: 2,
    webs: [
      { thickness: 0.5, at: [11.25, 10], strip: 0 },
      { thickness: 0.5, at: [10, 11.25], strip: 0 },
      { thickness: 0.5, at: [12.5, 11.25], strip: 0 },
      { thickness: 0.5, at: [11.25, 12.5], strip: 0 },
    ],
  },
  {
    name: 'holes on a longish rhomb: across its short way they are thin, across the long way not',
    region: section(
      box(40, 40),
      hole(20, 18.6, 1, 'a'),
      hole(20, 21.4, 1, 'b'),
      hole(17, 20, 1, 'c'),
      hole(23, 20, 1, 'd'),
    ),
    limit: 5,
    webs: [
      { thickness: 0.8, at: [20, 20], between: ['cut:a', 'cut:b'] },
      ...[
        [18.5, 19.3],
        [21.5, 19.3],
        [18.5, 20.7],
        [21.5, 20.7],
      ].map(([x, y]) => ({ thickness: Math.hypot(3, 1.4) - 2, at: [x, y] as [number, number] })),
    ],
  },
  {
    name: 'joint of two round walls right at the thinnest place: one web',
    region: section(
      loopThrough([
        [0, 0],
        [40, 0],
        [40, 20],
        [28, 20],
        [28, 8.8],
        [20, 0.8, [20, 8.8], false],
        [8, 12.8, [20, 12.8], false],
        [8, 20],
        [0, 20],
      ]),
    ),
    limit: 1,
    webs: [
      {
        thickness: 0.8,
        at: [20, 0.4],
        length: flareAtEdge(8, 0.8, 1) + flareAtEdge(12, 0.8, 1),
        strip: 0,
      },
    ],
  },
  {
    name: 'tangent joint where the metal only gets thinner: no web there',
    region: section(
      loopThrough([
        [-3, 0],
        [3, 0],
        [3, 1],
        [0, 2, [0, -3], true],
        [-3, 3, [0, 7], false],
      ]),
    ),
    limit: 4,
    webs: [],
  },
  {
    name: 'strip that runs on into a place that gets thinner: the strip alone',
    region: section(
      loopThrough([
        [-8, 0],
        [3, 0],
        [3, 1],
        [0, 2, [0, -3], true],
        [-8, 2],
      ]),
    ),
    limit: 4,
    webs: [{ thickness: 2, at: [-3.5, 1], length: 7, strip: 7 }],
  },
  {
    name: 'holes that touch in a row: thin beside them, 0 where they touch, nothing across the one between',
    region: section(box(40, 40), hole(15, 10, 5, 'a'), hole(15, 20, 5, 'b'), hole(15, 30, 5, 'c')),
    limit: 10.5,
    touching: true,
    webs: [
      ...['a', 'b', 'c'].map((id, k) => ({
        thickness: 10,
        at: [5, 10 * (k + 1)] as const,
        between: [`cut:${id}`, 'outline:3'] as const,
      })),
      { thickness: 5, at: [15, 2.5], between: ['cut:a', 'outline:0'] },
      { thickness: 5, at: [15, 37.5], between: ['cut:c', 'outline:2'] },
      { thickness: 0, at: [15, 15], between: ['cut:a', 'cut:b'] },
      { thickness: 0, at: [15, 25], between: ['cut:b', 'cut:c'] },
    ],
  },
  {
    name: 'bore as wide as the bar on its end: two tips of angle 0 that face each other over nothing',
    region: section(
      loopThrough([
        [-10, -40],
        [10, -40],
        [10, 0],
        [-10, 0, [0, 0], false],
      ]),
    ),
    limit: 21,
    webs: [{ thickness: 20, at: [0, -30 + 10 - 5], strip: 10 }],
  },
  {
    name: 'three quarters of a round, its corner in the middle: as thick all round the corner',
    region: section(
      loopThrough([
        [0, 0],
        [6, 0],
        [0, -6, [0, 0], true],
      ]),
    ),
    limit: 7,
    webs: [
      {
        thickness: 6,
        at: [-3 * SQRT_HALF, 3 * SQRT_HALF],
        length: (3 * Math.PI) / 2,
        strip: (3 * Math.PI) / 2,
      },
    ],
  },
  ...[0.4e-6, 1.2e-6, 1.5e-6, 1.9e-6, 3e-6, 1e-5].map((off) => ({
    name: `hole ${off} off the middle of a round: one web`,
    region: section(round(0, 0, 10.5), hole(off, 0, 9.5)),
    limit: 1.2,
    webs: [{ thickness: 1 - off }],
  })),
  ...[0.5e-7, 1.2e-7, 1.5e-7, 1.9e-7, 1e-6, 1e-5].map((tilt) => ({
    name: `slot tilted by ${tilt} to an edge a thousand long: one web`,
    region: section(box(1000, 400), tiltedSlot(400, 2.5, 200, 2, tilt)),
    limit: 1,
    webs: [{ thickness: 0.5 }],
  })),
  {
    name: 'half-round end under a wider head: the metal ends there, it is no neck',
    region: section(
      loopThrough([
        [-10, 0, [-30, 0], false],
        [10, 0, [0, 0], true],
        [30, 20, [30, 0], false],
        [-30, 20],
      ]),
    ),
    limit: 25,
    webs: [],
  },
  {
    name: 'lens: thickest in its middle (r 4, r 4, d 6)',
    region: section(
      loopThrough([
        [3, -Math.sqrt(7), [6, 0], true],
        [3, Math.sqrt(7), [0, 0], true],
      ]),
    ),
    limit: 3,
    webs: [],
  },
  {
    name: 'crescent: thickest in its middle',
    region: section([
      {
        kind: 'arc',
        a: { x: 3, y: 4 },
        b: { x: 3, y: -4 },
        center: { x: 0, y: 0 },
        radius: 5,
        ccw: true,
        source: 'outline:0',
      },
      {
        kind: 'arc',
        a: { x: 3, y: -4 },
        b: { x: 3, y: 4 },
        center: { x: 6, y: 0 },
        radius: 5,
        ccw: false,
        source: 'cut:a',
      },
    ]),
    limit: 9,
    webs: [],
  },
  {
    name: 'wedge between two edges that meet at a sharp corner',
    region: section(
      loopThrough([
        [0, 0],
        [40, 0],
        [40, 5],
      ]),
    ),
    limit: 10,
    webs: [],
  },
  {
    name: 'square: a disc that touches all sides is no neck',
    region: section(box(3, 3)),
    limit: 4,
    webs: [],
  },
  { name: 'disc', region: section(round(0, 0, 1)), limit: 4, webs: [] },
  {
    name: 'barely under the limit',
    region: section(box(60, 40), hole(20, 6, 5)),
    limit: 1 + 1e-9,
    webs: [{ thickness: 1, at: [20, 0.5] }],
  },
  {
    name: 'barely over the limit',
    region: section(box(60, 40), hole(20, 6, 5)),
    limit: 1 - 1e-9,
    webs: [],
  },
];
