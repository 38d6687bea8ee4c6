import { box, hole, loopThrough, round, section, slotHole } from './section-builder.js';
import {
  arcStrip,
  type Case,
  curvedSlot,
  flareAtEdge,
  flareBetweenHoles,
  openRing,
  SQRT_HALF,
} from './web-forms.js';

/** Webs of even thickness, and what ends them. */
export const strips: readonly Case[] = [
  {
    name: 'slot beside an edge: a strip that widens at both ends',
    region: section(box(60, 40), slotHole(15, 35, 2.7, 2)),
    limit: 1.5,
    webs: [
      {
        thickness: 0.7,
        at: [25, 0.35],
        length: 20 + 2 * flareAtEdge(2, 0.7, 1.5),
        strip: 20,
        between: ['cut:slot', 'outline:0'],
      },
    ],
  },
  {
    name: 'two slots side by side, offset along each other',
    region: section(box(80, 40), slotHole(15, 35, 10, 2, 'a'), slotHole(25, 50, 14.6, 2, 'b')),
    limit: 1,
    webs: [
      {
        thickness: 0.6,
        at: [30, 12.3],
        length: 10 + 2 * flareAtEdge(2, 0.6, 1),
        strip: 10,
        between: ['cut:a', 'cut:b'],
      },
    ],
  },
  {
    name: 'thin bar',
    region: section(box(40, 0.9)),
    limit: 1.2,
    webs: [
      { thickness: 0.9, at: [20, 0.45], length: 39.1, strip: 39.1, between: ['outline:0', 'outline:2'] },
    ],
  },
  {
    name: 'a wall beside a slot that runs past a joint of the outline: one strip',
    region: section(
      loopThrough([
        [0, 0],
        [22, 0],
        [60, 0],
        [60, 40],
        [0, 40],
      ]),
      slotHole(15, 35, 2.7, 2),
    ),
    limit: 1.5,
    webs: [
      {
        thickness: 0.7,
        at: [25, 0.35],
        length: 20 + 2 * flareAtEdge(2, 0.7, 1.5),
        strip: 20,
        between: ['cut:slot', 'outline:1'],
      },
    ],
  },
  {
    name: 'whole ring: one strip all the way round',
    region: section(round(3, 4, 10), hole(3, 4, 9.2)),
    limit: 1,
    webs: [
      {
        thickness: 0.8,
        length: 2 * Math.PI * 9.6,
        strip: 2 * Math.PI * 9.6,
        between: ['cut:hole', 'outline:0'],
      },
    ],
  },
  {
    name: 'part of a ring, with square ends',
    region: openRing(9.2, 10),
    limit: 1,
    webs: [
      {
        thickness: 0.8,
        at: [9.6 * Math.cos(0.75 * Math.PI), 9.6 * Math.sin(0.75 * Math.PI)],
        length: arcStrip(9.2, 0.8, 1.5 * Math.PI),
        strip: arcStrip(9.2, 0.8, 1.5 * Math.PI),
        between: ['outline:0', 'outline:2'],
      },
    ],
  },
  {
    name: 'hole inside a curved slot of half a turn, round the same centre',
    region: section(
      loopThrough([
        [-30, -30],
        [30, -30],
        [30, 30],
        [-30, 30],
      ]),
      hole(0, 0, 6),
      curvedSlot(6.75, 10.75, 0.3, 0.3 + Math.PI),
    ),
    limit: 1.25,
    webs: [
      {
        thickness: 0.75,
        at: [6.375 * Math.cos(0.3 + Math.PI / 2), 6.375 * Math.sin(0.3 + Math.PI / 2)],
        length: 6.375 * Math.PI + 2 * flareBetweenHoles(6, 2, 0.75, 1.25),
        strip: 6.375 * Math.PI,
        between: ['cut:curve', 'cut:hole'],
      },
    ],
  },
  {
    name: 'wall of even thickness that turns a corner: straight, round, straight',
    region: section(
      loopThrough([
        [0, 0],
        [20, 0],
        [30, 10, [20, 10], true],
        [30, 30],
        [29.25, 30],
        [29.25, 10],
        [20, 0.75, [20, 10], false],
        [0, 0.75],
      ]),
    ),
    limit: 1,
    webs: [
      {
        thickness: 0.75,
        at: [20 + 9.625 * SQRT_HALF, 10 - 9.625 * SQRT_HALF],
        length: 40 - 0.75 + 9.625 * (Math.PI / 2),
        strip: 40 - 0.75 + 9.625 * (Math.PI / 2),
        between: ['outline:1', 'outline:5'],
      },
    ],
  },
  {
    name: 'strip split in two by a hole in its middle',
    region: section(box(60, 3), hole(30, 1.5, 1)),
    limit: 4,
    webs: [
      { thickness: 0.5, at: [30, 0.25], strip: 0, between: ['cut:hole', 'outline:0'] },
      { thickness: 0.5, at: [30, 2.75], strip: 0, between: ['cut:hole', 'outline:2'] },
      { thickness: 3, at: [14.5, 1.5], length: 26, strip: 26 },
      { thickness: 3, at: [45.5, 1.5], length: 26, strip: 26 },
    ],
  },
];
