import { examine, parseJob, type Region, type Web, websOf } from '@edgebite/core';
import { transformed, UNMOVED } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import {
  box,
  everyWay,
  hole,
  loopThrough,
  outlineJson,
  round,
  roundingUnder,
  section,
  seen,
  slotHole,
} from './section-builder.js';

/*
 * Webs in closed form. Two separate holes d - r1 - r2, hole to straight edge distance - r (elementary); an eccentric
 * bore in a round R - r - e (Dr. Math, "eccentric tube": e = D/2 - AB - d/2). Lengths from the triangle of two
 * centres and the centre of the disc of the limit's diameter, which is as far from either as the sum (inside a
 * rounded end: the difference) of the radii.
 */

interface Wanted {
  readonly thickness: number;
  readonly at?: readonly [number, number];
  readonly length?: number;
  readonly strip?: number;
  readonly between?: readonly [string, string];
}

interface Case {
  readonly name: string;
  readonly region: Region;
  readonly limit: number;
  readonly webs: readonly Wanted[];
  /** Its loops touch: the shape can be cut, but no job may have it for its outline. */
  readonly touching?: boolean;
}

/** Distance from (x, y) to where two circles round (0, 0) and (d, 0) meet. */
function toMeeting(d: number, r: number, s: number, x: number, y = 0): number {
  const along = (d * d + r * r - s * s) / (2 * d);
  return Math.hypot(along - x, Math.sqrt(r * r - along * along) - y);
}

/** From the middle of a neck between a hole and a straight edge to the disc as thick as the limit. */
function flareAtEdge(radius: number, web: number, limit: number): number {
  const out = Math.sqrt((radius + limit / 2) ** 2 - (radius + web - limit / 2) ** 2);
  return Math.hypot(out, limit / 2 - web / 2);
}

function flareBetweenHoles(r: number, s: number, web: number, limit: number): number {
  return toMeeting(r + s + web, r + limit / 2, s + limit / 2, r + web / 2);
}

function flareInRound(outer: number, inner: number, offset: number, limit: number): number {
  const web = outer - inner - offset;
  return toMeeting(offset, outer - limit / 2, inner + limit / 2, outer - web / 2);
}

const SQRT_HALF = Math.SQRT1_2;

const ell: Region = section(
  loopThrough([
    [0, 0],
    [60, 0],
    [60, 20],
    [20, 20],
    [20, 60],
    [0, 60],
  ]),
);

const withHole = (region: Region, ...holes: Region[number]['holes']): Region =>
  region.map((part) => ({ ...part, holes: [...part.holes, ...holes] }));

/** A plate with all corners rounded: bottom, right, top, left are edges 0, 2, 4, 6. */
function rounded(width: number, height: number, radius: number): Region {
  const [w, h, r] = [width, height, radius];
  return section(
    loopThrough([
      [r, 0, [r, r], true],
      [w - r, 0],
      [w, r, [w - r, r], true],
      [w, h - r],
      [w - r, h, [w - r, h - r], true],
      [r, h],
      [0, h - r, [r, h - r], true],
      [0, r],
    ]),
  );
}

/** Straight walls that end in a half circle of radius 10 at either end. */
const barWithRoundEnds: Region = section(
  loopThrough([
    [-20, -10, [-20, 0], true],
    [20, -10],
    [20, 10, [20, 0], true],
    [-20, 10],
  ]),
);

/** A curved hole round the origin, between two radii and two angles, with round ends. */
function curvedSlot(inner: number, outer: number, from: number, to: number): Region[number]['holes'][number] {
  const mid = (inner + outer) / 2;
  const p = (r: number, angle: number) => [r * Math.cos(angle), r * Math.sin(angle)] as const;
  // Clockwise: along the inner wall forward, over the end cap, back along the outer wall.
  const steps = [
    [...p(inner, from), p(mid, from), false],
    [...p(inner, to), [0, 0], true],
    [...p(outer, to), p(mid, to), false],
    [...p(outer, from), [0, 0], false],
  ] as const;
  const wide = to - from > Math.PI;
  if (wide) throw new RangeError('curvedSlot: up to half a turn');
  return loopThrough(steps, 'cut').map((edge) => ({ ...edge, source: 'cut:curve' }));
}

/** A slot that rises by an angle to the right, its left centre at (x, y). */
function tiltedSlot(
  x: number,
  y: number,
  length: number,
  radius: number,
  tilt: number,
): Region[number]['holes'][number] {
  const turn = { ...UNMOVED, turn: [Math.cos(tilt), Math.sin(tilt)], shift: [x, y] } as const;
  const [part] = transformed(section(box(1, 1), slotHole(0, length, 0, radius)), turn);
  return (part as Region[number]).holes[0] as Region[number]['holes'][number];
}

function arcStrip(radius: number, web: number, turn: number): number {
  // At a straight end the disc of the web stops half its thickness short.
  return (radius + web / 2) * (turn - 2 * Math.asin(web / 2 / (radius + web / 2)));
}

/** A ring of 270 degrees with square ends. */
function openRing(inner: number, outer: number): Region {
  return section(
    loopThrough([
      [outer, 0],
      [0, -outer, [0, 0], true],
      [0, -inner],
      [inner, 0, [0, 0], false],
    ]),
  );
}

const cases: Case[] = [
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
    name: 'holes that touch in a row: thin beside them, nothing across the one between',
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

function sameWebs(
  found: readonly Web[],
  wanted: readonly Wanted[],
  slack: number,
  scale: number,
  place: (p: readonly [number, number]) => { x: number; y: number },
): void {
  expect(found.map(({ thickness }) => thickness / scale)).toHaveLength(wanted.length);
  const open = [...found];
  for (const one of wanted) {
    const k = open.findIndex(
      (web) =>
        Math.abs(web.thickness - one.thickness * scale) <= 1e-9 * web.thickness + slack &&
        (one.at === undefined ||
          Math.hypot(web.at.x - place(one.at).x, web.at.y - place(one.at).y) <= 1e-9 * 100 * scale + slack) &&
        (one.between === undefined ||
          (one.between[0] === web.between[0] && one.between[1] === web.between[1])),
    );
    expect(k, `${JSON.stringify(one)} among ${JSON.stringify(open)}`).toBeGreaterThanOrEqual(0);
    const [web] = open.splice(k, 1) as [Web];
    if (one.length !== undefined)
      expect(Math.abs(web.length / (one.length * scale) - 1)).toBeLessThan(1e-9 + (1e3 * slack) / scale);
    if (one.strip !== undefined)
      expect(Math.abs(web.strip - one.strip * scale)).toBeLessThanOrEqual(
        1e-9 * one.strip * scale + 10 * slack,
      );
  }
}

describe('webs in closed form', () => {
  it.each(cases.map((one) => [one.name, one] as const))('%s', (_, { region, limit, webs }) => {
    for (const { how, by, region: there } of everyWay(region)) {
      const found = websOf(there, limit * by.scale);
      const slack = roundingUnder(by);
      try {
        sameWebs(found, webs, slack, by.scale, (p) => seen(p, by));
      } catch (error) {
        throw new Error(`${how}: ${error instanceof Error ? error.message : error}`);
      }
    }
  });
});

describe('webs of a job', () => {
  it.each(cases.filter(({ touching }) => touching !== true).map((one) => [one.name, one] as const))(
    '%s, drawn in either direction',
    (_, one) => {
      const part = one.region[0] as Region[number];
      for (const turnedRound of [false, true]) {
        const outline = outlineJson(part, turnedRound);
        const { webs } = examine(
          parseJob({
            edgebite: 1,
            units: 'mm',
            part: { outline, thickness: 5 },
            limits: { web: one.limit },
            cuts: [],
          }),
        );
        const found = webs.map((web) => ({
          ...web,
          at: { x: web.at[0], y: web.at[1] },
          ends: web.ends.map(([x, y]) => ({ x, y })) as [Web['at'], Web['at']],
          part: 0,
        }));
        const wanted = one.webs.map(({ between: _names, ...rest }) => rest);
        sameWebs(found, wanted, roundingUnder(UNMOVED), 1, ([x, y]) => ({ x, y }));
      }
    },
  );

  it('names them thinnest first, in each slab that they stand in, with the cuts that made them', () => {
    const { webs } = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [60, 40] }, thickness: 10 },
        limits: { web: 1 },
        cuts: [
          { id: 'a', kind: 'bore', center: [20, 5.8], diameter: 10 },
          { id: 'b', kind: 'bore', center: [40, 3.5], diameter: 6, depth: 4 },
        ],
      }),
    );
    expect(webs.map(({ slab, between }) => [slab, ...between])).toEqual([
      [1, 'cut:b', 'outline:0'],
      [0, 'cut:a', 'outline:0'],
      [1, 'cut:a', 'outline:0'],
    ]);
    expect(webs.map(({ thickness }) => thickness)).toEqual([
      expect.closeTo(0.5, 12),
      expect.closeTo(0.8, 12),
      expect.closeTo(0.8, 12),
    ]);
  });
});
