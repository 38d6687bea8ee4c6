import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { type Done, numberOver, type Table, type XY } from './placed-zero.js';

/*
 * Zeros worked by hand: each sum stands beside its case. All are done a second time with shapes on a plane (see
 * `placed-zero.ts`). Unless a case says otherwise: a plate 80 by 30 with its lower left corner at the zero of the drawing,
 * a tip of 10, and a hole at (60, 10): 60 from the drawn left end, 20 from the right, 10 from the front, 20 from the back.
 * Half the tip: http://clough42.com/2017/11/30/making-split-cylinder-edge-finding-tool. 25.4 mm to the inch: NIST SP 811.
 */

interface Case {
  readonly name: string;
  readonly lie?: { readonly turn?: number; readonly flip?: 'x' | 'y' };
  readonly stops?: readonly { readonly id: string; readonly face: string }[];
  readonly x: readonly object[];
  readonly y: readonly object[];
  /** What the readout shows over the hole. */
  readonly at: XY;
  readonly hole?: XY;
  readonly units?: 'mm' | 'inch';
  readonly readout?: 'mm' | 'inch';
  readonly outline?: object;
  readonly table?: Pick<Table, 'solid' | 'faces' | 'middles'>;
}

const box = (x: number, y: number, w: number, h: number): readonly XY[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];
const PLATE = { solid: [box(0, 0, 80, 30)] };

const touch = (face: string, over: object = {}) => ({ touch: face, tip: 10, reads: 0, ...over });
const HALF = 'move half the tip and set 0';
const LEFT = [touch('left')];
const FRONT = [touch('front')];
const stopped = (face: string, block?: unknown) => [
  touch('s'),
  { bears: face, on: 's', ...(block === undefined ? {} : { block }) },
];
const on = (face: string) => [{ id: 's', face }];

const L_EDGES = [
  [0, 0],
  [80, 0],
  [80, 12],
  [50, 12],
  [50, 30],
  [0, 30],
] as const;
const L_PART = {
  outline: {
    edges: L_EDGES.map((a, k) => ({
      kind: 'line',
      a,
      b: L_EDGES[(k + 1) % L_EDGES.length],
      ...(k === 3 ? { name: 'seat' } : k === 2 ? { name: 'step' } : {}),
    })),
  },
  table: {
    solid: [box(0, 0, 80, 12), box(0, 12, 50, 18)],
    faces: {
      seat: [
        [50, 12],
        [50, 30],
      ],
      step: [
        [80, 12],
        [50, 12],
      ],
    },
  },
} as const;

const CASES: readonly Case[] = [
  // The spindle stands 5 left of the left end where it reads 0: the end is at 5, the hole at 5 + 60; 5 + 10.
  { name: 'touched at left and front', x: LEFT, y: FRONT, at: [65, 15] },
  // 5 right of the right end: that is at -5, the hole at -5 - 20; the same at the back.
  { name: 'touched at right and back', x: [touch('right')], y: [touch('back')], at: [-25, -25] },
  // The stop looks right: its face is at -5, and so is the left end: -5 + 60.
  { name: 'a stop at the left', stops: on('left'), x: stopped('left'), y: FRONT, at: [55, 15] },
  // -5 + 25 + 60.
  {
    name: 'a stop at the left with a block',
    stops: on('left'),
    x: stopped('left', 25),
    y: FRONT,
    at: [80, 15],
  },
  // The stop looks left: its face is at 5, the right end 25 before it at -20: -20 - 20.
  {
    name: 'a stop at the right with a block',
    stops: on('right'),
    x: stopped('right', 25),
    y: FRONT,
    at: [-40, 15],
  },
  // The stop in front looks away from you: -5 + 12 + 10.
  {
    name: 'a stop in front with a block',
    stops: on('front'),
    x: LEFT,
    y: stopped('front', 12),
    at: [65, 17],
  },
  // The stop behind looks towards you: 5 - 12 - 20.
  { name: 'a stop behind with a block', stops: on('back'), x: LEFT, y: stopped('back', 12), at: [65, -27] },
  // Turned by 90 the drawn back is at the left, 20 from the hole, and the drawn left in front, 60 from it.
  { name: 'turned by 90', lie: { turn: 90 }, x: LEFT, y: FRONT, at: [25, 65] },
  // The drawn right at the left, 20 from the hole; the drawn back in front, 20.
  { name: 'turned by 180', lie: { turn: 180 }, x: LEFT, y: FRONT, at: [25, 25] },
  // The drawn front at the left, 10; the drawn right in front, 20.
  { name: 'turned by 270', lie: { turn: 270 }, x: LEFT, y: FRONT, at: [15, 25] },
  // The drawn back in front.
  { name: 'flipped about x', lie: { flip: 'x' }, x: LEFT, y: FRONT, at: [65, 25] },
  // The drawn right at the left.
  { name: 'flipped about y', lie: { flip: 'y' }, x: LEFT, y: FRONT, at: [25, 15] },
  // Flipped about x the drawn front is at the back; turned by 90 at the left: 10; the drawn left in front: 60.
  { name: 'flipped about x, turned by 90', lie: { flip: 'x', turn: 90 }, x: LEFT, y: FRONT, at: [15, 65] },
  // Flipped about y the drawn right is at the left, by the turn in front: 20; the drawn back at the left: 20.
  { name: 'flipped about y, turned by 90', lie: { flip: 'y', turn: 90 }, x: LEFT, y: FRONT, at: [25, 25] },
  // -5 + 25 + 20 from the drawn right, which bears.
  {
    name: 'turned by 180 against a stop with a block',
    lie: { turn: 180 },
    stops: on('left'),
    x: stopped('left', 25),
    y: FRONT,
    at: [40, 25],
  },
  // The drawn left at the right, 60 from the hole: 5 - 10 - 60.
  {
    name: 'flipped about y against a stop at the right',
    lie: { flip: 'y' },
    stops: on('right'),
    x: stopped('right', 10),
    y: FRONT,
    at: [-65, 15],
  },
  // The drawn left in front: -5 + 25 + 60.
  {
    name: 'turned by 90 against a stop in front',
    lie: { turn: 90 },
    stops: on('front'),
    x: LEFT,
    y: stopped('front', 25),
    at: [25, 80],
  },
  // Turned by 270 the drawn left is at the back, 60 from the hole, and bears at 5: 5 - 60.
  {
    name: 'turned by 270 against a stop behind',
    lie: { turn: 270 },
    stops: on('back'),
    x: LEFT,
    y: stopped('back'),
    at: [15, -55],
  },
  // Half a tip on, the spindle stands over the face: 60 and 10.
  {
    name: 'half a tip and 0',
    x: [touch('left', { then: HALF })],
    y: [touch('front', { then: HALF })],
    at: [60, 10],
  },
  {
    name: 'half a tip and 0 at right and back',
    x: [touch('right', { then: HALF })],
    y: [touch('back', { then: HALF })],
    at: [-20, -20],
  },
  // The stop's face is at 0, the left end at 25: 25 + 60.
  {
    name: 'half a tip and 0 at a stop with a block',
    stops: on('left'),
    x: [touch('s', { then: HALF }), { bears: 'left', on: 's', block: 25 }],
    y: FRONT,
    at: [85, 15],
  },
  // The right end is at 100 - 5 = 95: 95 - 20; the back at -40 - 5 = -45: -45 - 20.
  {
    name: 'a readout set to other than 0',
    x: [touch('right', { reads: 100 })],
    y: [touch('back', { reads: -40 })],
    at: [75, -65],
  },
  // Moved 5 to the right over the left end, and 0 there: 60. Moved 5 towards you over the back, and 30 there: 30 - 20.
  {
    name: 'moved and set by hand',
    x: [touch('left'), { move: 5 }, { set: 0 }],
    y: [touch('back'), { move: -5 }, { set: 30 }],
    at: [60, 10],
  },
  // 20 beyond the stop's face at -5, so over 15, which is set to 100: the left end from -5 to 80: 80 + 60.
  {
    name: 'set after the part bears',
    stops: on('left'),
    x: [...stopped('left'), { move: 20 }, { set: 100 }],
    y: FRONT,
    at: [135, 15],
  },
  // A tool of 12: 6 + 60 and -6 - 20.
  {
    name: 'touched with the tool itself',
    x: [{ touch: 'left', tool: 12, reads: 0 }],
    y: [{ touch: 'back', tool: 12, reads: 0 }],
    at: [66, -26],
  },
  // Blocks of 10 and 15 and a length of 5.5: -5 + 30.5 + 60.
  {
    name: 'several blocks',
    stops: on('left'),
    x: stopped('left', [10, { block: 15 }, { measured: 5.5 }]),
    y: FRONT,
    at: [85.5, 15],
  },
  // The left end at 5, the right one measured 80.02 beyond: 85.02 - 20.
  {
    name: 'measured across',
    x: [touch('left'), { measured: 80.02, from: 'left', to: 'right' }],
    y: FRONT,
    at: [65.02, 15],
  },
  // Turned by 180 the drawn right bears, at -5; the drawn left 79.9 beyond it at 74.9, and the hole 60 before that.
  {
    name: 'measured across from a stop, turned by 180',
    lie: { turn: 180 },
    stops: on('left'),
    x: [...stopped('left'), { measured: 79.9, from: 'left', to: 'right' }],
    y: FRONT,
    at: [14.9, 25],
  },
  // A hole at (20, 15) dialled in: 60 - 20, 10 - 15.
  {
    name: 'a hole dialled in',
    outline: { rectangle: [80, 30], holes: [{ circle: 8, at: [20, 15], name: 'dowel' }] },
    table: { ...PLATE, middles: { dowel: [20, 15] } },
    x: [{ 'dial in': 'dowel' }],
    y: [{ 'dial in': 'dowel' }],
    at: [40, -5],
  },
  // The same turned by 180, and 100 set there: 100 - 40, 5.
  {
    name: 'a hole dialled in, turned by 180',
    lie: { turn: 180 },
    outline: { rectangle: [80, 30], holes: [{ circle: 8, at: [20, 15] }] },
    table: { ...PLATE, middles: { 'hole:0': [20, 15] } },
    x: [{ 'dial in': 'hole:0', reads: 100 }],
    y: [{ 'dial in': 'hole:0' }],
    at: [60, 5],
  },
  // Flipped about x: 60 - 40 along x; the slot is at -20 and the hole at -10: 10.
  {
    name: 'a slot dialled in, flipped about x',
    lie: { flip: 'x' },
    outline: { rectangle: [80, 30], holes: [{ slot: [12, 6], at: [40, 20], angle: 90 }] },
    table: { ...PLATE, middles: { 'hole:0': [40, 20] } },
    x: [{ 'dial in': 'hole:0' }],
    y: [{ 'dial in': 'hole:0' }],
    at: [20, 10],
  },
  // A round part about (50, 30), the hole 10 to the right of its middle; turned by 90 that is 10 behind it.
  {
    name: 'a boss dialled in, turned by 90',
    lie: { turn: 90 },
    outline: { circle: 60, at: [50, 30] },
    hole: [60, 30],
    table: { solid: [], middles: { outline: [50, 30] } },
    x: [{ 'dial in': 'outline' }],
    y: [{ 'dial in': 'outline' }],
    at: [0, 10],
  },
  // From a mark at (40, 10) it is 20 along the drawn x, which lies at 30: 20 cos 30 and 20 sin 30.
  {
    name: 'a mark, turned by 30',
    lie: { turn: 30 },
    table: PLATE,
    x: [{ 'dial in': [40, 10] }],
    y: [{ 'dial in': [40, 10] }],
    at: [17.3205080757, 10],
  },
  // The inner face "seat" looks right, at 50: read 0 at 55 of the drawing, so 60 - 55. "step" looks back, at 12: the
  // drawing's 17 reads 0: 10 - 17.
  { name: 'inner faces by name', ...L_PART, x: [touch('seat')], y: [touch('step')], at: [5, -7] },
  // Flipped about y and turned by 180 the drawing's x is as drawn and its y turned over: the step looks towards you, at -12:
  // 0 is read at -17, and the hole is at -10: 7.
  {
    name: 'inner faces by name, flipped about y, turned by 180',
    lie: { flip: 'y', turn: 180 },
    ...L_PART,
    x: [touch('seat')],
    y: [touch('step')],
    at: [5, 7],
  },
  // The wall at x = 30 of a window from (30, 12) to (50, 27) looks right into it: 0 is read at 35, the hole at 60: 25.
  {
    name: 'a wall of a window, from inside it',
    outline: { rectangle: [80, 30], holes: [{ rectangle: [20, 15], at: [30, 12] }] },
    table: {
      solid: [box(0, 0, 30, 30), box(50, 0, 30, 30), box(30, 0, 20, 12), box(30, 27, 20, 3)],
      faces: {
        'hole:0:3': [
          [30, 12],
          [30, 27],
        ],
      },
    },
    x: [touch('hole:0:3')],
    y: FRONT,
    at: [25, 15],
  },
  // A tip of 0.2 in: 0.1 + 60 / 25.4 and 0.1 + 10 / 25.4, in inches.
  {
    name: 'a part in mm on a readout in inches',
    readout: 'inch',
    x: [touch('left', { tip: 0.2, units: 'inch' })],
    y: [touch('front', { tip: 0.2, units: 'inch' })],
    at: [2.462204724409, 0.493700787402],
  },
  // The stop's face at -0.1, a block of 20 mm: -0.1 + (20 + 60) / 25.4.
  {
    name: 'a block in mm on a readout in inches',
    readout: 'inch',
    stops: on('left'),
    x: [touch('s', { tip: 0.2, units: 'inch' }), { bears: 'left', on: 's', block: 20, units: 'mm' }],
    y: [touch('front', { tip: 0.2, units: 'inch', then: HALF })],
    at: [3.049606299213, 0.393700787402],
  },
  // A plate of 3 by 2 in, its hole at (2, 1), on a readout in mm with a tip of 10 mm: 5 + 50.8, 5 + 25.4.
  {
    name: 'a part in inches on a readout in mm',
    units: 'inch',
    readout: 'mm',
    outline: { rectangle: [3, 2] },
    hole: [2, 1],
    table: { solid: [box(0, 0, 76.2, 50.8)] },
    x: [touch('left', { units: 'mm' })],
    y: [touch('front', { units: 'mm' })],
    at: [55.8, 30.4],
  },
];

const jobOf = (one: Case) => ({
  edgebite: 1,
  units: one.units ?? 'mm',
  part: { outline: one.outline ?? { rectangle: [80, 30] }, thickness: 12 },
  setups: [
    {
      id: 'one',
      ...one.lie,
      ...(one.stops === undefined ? {} : { stops: one.stops }),
      ...(one.readout === undefined ? {} : { readout: { units: one.readout, resolution: 0.001 } }),
      zero: { x: one.x, y: one.y },
      cuts: ['eye'],
    },
  ],
  cuts: [{ id: 'eye', kind: 'bore', center: one.hole ?? [60, 10], diameter: one.units === 'inch' ? 0.2 : 4 }],
});

/** The actions as the shapes take them: lengths in millimetres. */
function doneWith(actions: readonly object[], one: Case): Done[] {
  const perInch = (units: unknown) => ((units ?? one.units) === 'inch' ? 25.4 : 1);
  const shown = one.readout === 'inch' ? 25.4 : 1;
  return (actions as readonly Record<string, unknown>[]).map((action): Done => {
    const size = perInch(action.units);
    if (action.touch !== undefined) {
      return {
        touch: String(action.touch),
        across: Number(action.tip ?? action.tool) * size,
        reads: Number(action.reads ?? 0) * shown,
        half: action.then !== undefined,
      };
    }
    if (action.bears !== undefined) {
      const list = action.block === undefined ? [] : [action.block].flat();
      const blocks = list.map((block) =>
        typeof block === 'number'
          ? block * size
          : Number(Object.values(block as Record<string, number>)[0]) * size,
      );
      return { bears: String(action.bears), on: String(action.on), blocks };
    }
    if (action.measured !== undefined) {
      return { measured: Number(action.measured) * size, from: String(action.from), to: String(action.to) };
    }
    if (action['dial in'] !== undefined) {
      return { middle: action['dial in'] as XY | string, reads: Number(action.reads ?? 0) * shown };
    }
    return action.move !== undefined
      ? { move: Number(action.move) * shown }
      : { set: Number(action.set) * shown };
  });
}

describe('a zero worked by hand', () => {
  it.each(CASES.map((one) => [one.name, one] as const))('%s', (_, one) => {
    const [target] = examine(parseJob(jobOf(one))).setups[0]?.targets ?? [];
    expect(target?.exact[0]).toBeCloseTo(one.at[0], 9);
    expect(target?.exact[1]).toBeCloseTo(one.at[1], 9);
    // And with the things placed as shapes.
    const inch = one.units === 'inch' ? 25.4 : 1;
    const [hx, hy] = one.hole ?? [60, 10];
    const table: Table = {
      ...(one.table ?? PLATE),
      ...one.lie,
      stops: Object.fromEntries((one.stops ?? []).map(({ id, face }) => [id, face])),
    };
    for (const axis of [0, 1] as const) {
      const doing = doneWith(axis === 0 ? one.x : one.y, one);
      const over = numberOver(table, axis, doing, [hx * inch, hy * inch]);
      expect(target?.exact[axis]).toBeCloseTo(over / (one.readout === 'inch' ? 25.4 : 1), 6);
    }
  });
});

describe('the chain that actions come to', () => {
  it('is told in the order in which it is done, with where things stand', () => {
    const [row] = examine(
      parseJob(
        jobOf({
          name: '',
          stops: on('left'),
          x: [
            touch('s', { tolerance: 0.01 }),
            { bears: 'left', on: 's', block: [{ block: 25, tolerance: 0.001 }], tolerance: 0.005 },
          ],
          y: FRONT,
          at: [80, 15],
        }),
      ),
    ).setups;
    expect(row?.stops).toEqual([{ id: 's', face: 'left' }]);
    expect(row?.zero.x.links.map(({ kind, of, side, at }) => [kind, of, side, at])).toEqual([
      ['touch', 'stop:s', 'right', null],
      ['set', 'stop:s', null, -5],
      ['block', null, null, 20],
      ['bears', 'left', null, 20],
    ]);
    // 0.010 + 0.001 + 0.005 = 0.016; sqrt(100 + 1 + 25) / 1000 = 0.0112250.
    expect(row?.zero.x.worst).toBeCloseTo(0.016, 15);
    expect(row?.zero.x.rss).toBeCloseTo(0.011224972, 9);
  });
});
