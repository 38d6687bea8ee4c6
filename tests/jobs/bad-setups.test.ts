import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

type Plain = Record<string, unknown>;

const TOUCH = { touch: 'left', tip: 10, reads: 0, tolerance: 0.01 };
const FRONT = { ...TOUCH, touch: 'front' };
const SETUP = {
  id: 's',
  stops: [{ id: 'end', face: 'left' }],
  zero: { x: [TOUCH], y: [FRONT] },
  cuts: ['a'],
};
const JOB = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30], corner: 4 }, thickness: 12 },
  setups: [SETUP],
  cuts: [
    { id: 'a', kind: 'bore', center: [10, 10], diameter: 5 },
    { id: 'b', kind: 'bore', center: [30, 10], diameter: 5 },
  ],
};
const JAW = { id: 'j', kind: 'jaw', shape: { rectangle: [20, 10], at: [10, -10] }, from: -5, to: 5 };

const job = (over: Plain): Plain => ({ ...JOB, ...over });
const setups = (...list: unknown[]): Plain => job({ setups: list });
const setup = (over: Plain): Plain => setups({ ...SETUP, ...over });
const x = (...links: unknown[]): Plain => setup({ zero: { x: links, y: [FRONT] } });
const keepOut = (...list: unknown[]): Plain => job({ keepOut: list });

const X = '/setups/0/zero/x';
const STOP = { ...TOUCH, touch: 'end' };
const BEARS = { bears: 'left', on: 'end', block: 25 };
const ACROSS = { measured: 80, from: 'left', to: 'right' };
const { tip: _, ...withoutTip } = TOUCH;

/** Name of the case; the job; the paths that must be reported, all of them and no others; words of a message. */
type Case = readonly [name: string, job: unknown, paths: readonly string[], words: string];

const ACTIONS: readonly Case[] = [
  ['no zero of an axis', setup({ zero: { y: [FRONT] } }), [X], 'is missing; a list is needed'],
  ['a zero without actions', x(), [X], 'at least 1'],
  [
    'an action of no kind',
    x({ tip: 10 }),
    [`${X}/0`],
    '"touch", "bears", "measured", "dial in", "move" or "set"',
  ],
  ['an action of two kinds', x({ ...TOUCH, set: 0 }), [`${X}/0`], 'it has "touch" and "set"'],
  ['an action misspelt', x({ tuch: 'left', tip: 10 }), [`${X}/0`], 'it has none'],
  ['an action that is a text', x('touch'), [`${X}/0`], 'must be an object'],
  ['a touch of no text', x({ ...TOUCH, touch: 5 }), [`${X}/0/touch`], 'must be a text'],
  ['no tip', x(withoutTip), [`${X}/0/tip`], 'is missing: half of its diameter lies between'],
  ['tip and tool', x({ ...TOUCH, tool: 8 }), [`${X}/0/tool`], 'stands beside "tip"'],
  ['a tip of no size', x({ ...TOUCH, tip: 0 }), [`${X}/0/tip`], 'must be over 0'],
  [
    'a tip as a diameter',
    x({ ...withoutTip, diameter: 5 }),
    [`${X}/0/diameter`],
    'not a key that belongs here',
  ],
  ['a sign written', x({ ...TOUCH, way: '+' }), [`${X}/0/way`], 'not a key that belongs here'],
  [
    'other words for half a tip',
    x({ ...TOUCH, then: 'half' }),
    [`${X}/0/then`],
    '"move half the tip and set 0"',
  ],
  ['a tolerance below 0', x({ ...TOUCH, tolerance: -0.01 }), [`${X}/0/tolerance`], '0 or more'],
  [
    'a face misspelt',
    x({ ...TOUCH, touch: 'lefft' }),
    [`${X}/0/touch`],
    'is no face of the part; there are "left", "right"',
  ],
  [
    'a face of the other axis',
    x({ ...TOUCH, touch: 'front' }),
    [`${X}/0/touch`],
    'is no face in x; in x there are "left", "right"',
  ],
  ['a face that looks up', x({ ...TOUCH, touch: 'top' }), [`${X}/0/touch`], 'looks up or down'],
  [
    'an edge that there is none of',
    x({ ...TOUCH, touch: 'outline:9' }),
    [`${X}/0/touch`],
    'the part has no such edge',
  ],
  [
    'a hole that there is none of',
    x({ ...TOUCH, touch: 'hole:0:1' }),
    [`${X}/0/touch`],
    'the part has no such edge',
  ],
  ['a round edge', x({ ...TOUCH, touch: 'outline:1' }), [`${X}/0/touch`], 'which is round'],
  [
    'an edge along the axis',
    x({ ...TOUCH, touch: 'outline:0' }),
    [`${X}/0/touch`],
    'does not stand square to x',
  ],
  [
    'an edge that stands askew as the part lies',
    setup({ turn: 10, zero: { x: [{ ...TOUCH, touch: 'outline:2' }], y: [FRONT] } }),
    [`${X}/0/touch`],
    'does not stand square to x in this setup',
  ],
  ['a stop misspelt', x({ ...TOUCH, touch: 'ende' }), [`${X}/0/touch`], 'the setup has the stops "end"'],
  [
    'a stop of the other axis',
    setup({ zero: { x: [TOUCH], y: [STOP] } }),
    ['/setups/0/zero/y/0/touch'],
    'it is touched in x, not in y',
  ],
  [
    'a stop that nothing bears on',
    x(STOP),
    [X],
    'no face of the part bears on it; add { "bears": "left", "on": "end" }',
  ],
  [
    'bearing before the touch',
    x(BEARS, STOP),
    [`${X}/0/bears`],
    'the stop is touched before the part bears on it',
  ],
  ['a length before the touch', x(ACROSS, TOUCH), [`${X}/0/measured`], 'begin with "touch" or "dial in"'],
  ['a move before the touch', x({ move: 5 }, TOUCH), [`${X}/0/move`], 'begin with "touch" or "dial in"'],
  ['a set before the touch', x({ set: 5 }), [`${X}/0/set`], 'begin with "touch" or "dial in"'],
  ['two touches', x(TOUCH, { ...TOUCH, touch: 'right' }), [`${X}/1/touch`], 'an axis starts once'],
  [
    'a part that bears from the wrong side',
    x(STOP, { ...BEARS, bears: 'right' }),
    [`${X}/1/bears`],
    'A left end bears on that stop',
  ],
  // A stop looks towards the face that bears on it: one at the left of the part looks to the right.
  ...(
    [
      ['x', 'left', 'right', 'looks to the right like stop end itself', 'A left end bears'],
      ['x', 'right', 'left', 'looks to the left like stop end itself', 'A right end bears'],
      ['y', 'front', 'back', 'looks away from you like stop end itself', 'The front bears'],
      ['y', 'back', 'front', 'looks towards you like stop end itself', 'The back bears'],
    ] as const
  ).map(
    ([axis, face, bears, looks, own]): Case => [
      `the ${bears} on a stop for the ${face}`,
      setup({
        stops: [{ id: 'end', face }],
        zero: { x: [TOUCH], y: [FRONT], [axis]: [STOP, { bears, on: 'end' }] },
      }),
      [`/setups/0/zero/${axis}/1/bears`],
      `is "${bears}", which ${looks}: the two cannot bear on each other. ${own} on that stop`,
    ],
  ),
  [
    'bearing on a stop misspelt',
    x(STOP, { ...BEARS, on: 'ennd' }),
    [`${X}/1/on`],
    'no such stop; it has "end"',
  ],
  ['bearing on nothing', x(STOP, { bears: 'left' }), [`${X}/1/on`], 'is missing'],
  ['bearing where another thing is touched', x(TOUCH, BEARS), [`${X}/1/on`], 'touch stop end first'],
  [
    'bearing without stops',
    setup({ stops: undefined, zero: { x: [TOUCH, BEARS], y: [FRONT] } }),
    [`${X}/1/on`],
    'list it under "stops"',
  ],
  ['a block below 0', x(STOP, { ...BEARS, block: -5 }), [`${X}/1/block`], 'must be over 0'],
  [
    'a block in a list without a length',
    x(STOP, { ...BEARS, block: [{}] }),
    [`${X}/1/block/0`],
    '"block" or "measured"',
  ],
  [
    'a block in a list below 0',
    x(STOP, { ...BEARS, block: [{ block: -5 }] }),
    [`${X}/1/block/0/block`],
    'must be over 0',
  ],
  [
    'a text in a list of blocks',
    x(STOP, { ...BEARS, block: ['25'] }),
    [`${X}/1/block/0`],
    'must be a length over 0, { "block": length }',
  ],
  [
    'faces swapped',
    x(TOUCH, { ...ACROSS, from: 'right', to: 'left' }),
    [`${X}/1/from`],
    'swap "from" and "to"',
  ],
  [
    'a length from elsewhere',
    x(TOUCH, { ...ACROSS, from: 'right', to: 'outline:6' }),
    [`${X}/1/from`],
    'come to is "left"',
  ],
  [
    'a length to the same face',
    x(TOUCH, { ...ACROSS, to: 'outline:6' }),
    [`${X}/1/to`],
    'nothing to measure between',
  ],
  ['a length below 0', x(TOUCH, { ...ACROSS, measured: -5 }), [`${X}/1/measured`], 'must be over 0'],
  ['a move without a set', x(TOUCH, { move: 5 }), [`${X}/1`], 'add { "set": 0 }'],
  [
    'a hole to dial in that there is none of',
    x({ 'dial in': 'hole:0' }),
    [`${X}/0/dial in`],
    'the part has no such hole',
  ],
  ['a corner to dial in', x({ 'dial in': 'outline' }), [`${X}/0/dial in`], 'neither round nor a slot'],
  [
    'a place of three numbers to dial in',
    x({ 'dial in': [1, 2, 3] }),
    [`${X}/0/dial in`],
    'must be a name or a place [x, y]',
  ],
  [
    'one thing twice in a chain',
    x({ ...STOP, name: 'n' }, { ...BEARS, name: 'n' }),
    [`${X}/1/name`],
    'is "n" like that of action 1',
  ],
  [
    'one name for two things',
    setups({ ...SETUP, zero: { x: [{ ...TOUCH, name: 'n' }], y: [{ ...FRONT, name: 'n', tip: 6 }] } }),
    ['/setups/0/zero/y/0/name'],
    'one name is one thing',
  ],
  [
    'a stop touched with two tips',
    setups(
      { ...SETUP, zero: { x: [STOP, BEARS], y: [FRONT] } },
      { ...SETUP, id: 't', zero: { x: [{ ...STOP, tip: 6 }, BEARS], y: [FRONT] } },
    ),
    ['/setups/1/zero/x/0/name'],
    'give each a name of its own if the stop is touched anew',
  ],
  [
    'a fault in each axis',
    setup({ zero: { x: [STOP], y: [{ ...FRONT, touch: 'top' }] } }),
    [X, '/setups/0/zero/y/0/touch'],
    'no face of the part bears on it',
  ],
];

const EDGES = [
  { kind: 'line', a: [0, 0], b: [80, 0] },
  { kind: 'line', a: [80, 0], b: [80, 30], name: 'seat end' },
  { kind: 'line', a: [80, 30], b: [0, 30] },
  { kind: 'line', a: [0, 30], b: [0, 0] },
];
const named = (name: string, ...more: Plain[]): Plain =>
  job({
    part: {
      outline: { edges: EDGES.map((edge, k) => (k === 3 ? { ...edge, name } : edge)), holes: more },
      thickness: 12,
    },
  });
const OUTLINE = '/part/outline';

const NAMES: readonly Case[] = [
  ['one name for two edges', named('seat end'), [`${OUTLINE}/edges/3/name`], 'like that of outline:1'],
  ['a side of any part', named('left'), [`${OUTLINE}/edges/3/name`], 'means a face of any part'],
  ['a number', named('outline:1'), [`${OUTLINE}/edges/3/name`], 'an edge by its number'],
  ['none', named(''), [`${OUTLINE}/edges/3/name`], 'must not be empty'],
  [
    'one name for an edge and a hole',
    named('rest end', { circle: 5, at: [40, 15], name: 'rest end' }),
    [`${OUTLINE}/holes/0/name`],
    'like that of outline:3',
  ],
  [
    'a stop called as a side',
    setup({ stops: [{ id: 'left', face: 'left' }] }),
    ['/setups/0/stops/0/id'],
    'a face of the part',
  ],
  [
    'two stops of one id',
    setup({ stops: [SETUP.stops[0], SETUP.stops[0]] }),
    ['/setups/0/stops/1/id'],
    'like that of stop 0',
  ],
  [
    'a stop at no side',
    setup({ stops: [{ id: 'end', face: 'top' }] }),
    ['/setups/0/stops/0/face'],
    '"left", "right", "front" or "back"',
  ],
  [
    'a stop that looks two ways',
    setups(SETUP, { ...SETUP, id: 't', stops: [{ id: 'end', face: 'right' }] }),
    ['/setups/1/stops/0/face'],
    'one stop looks one way',
  ],
];

const UNITS: readonly Case[] = [
  [
    'a readout in inches on a job in mm, actions in neither',
    setup({ readout: { units: 'inch', resolution: 0.0005 } }),
    [`${X}/0/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  [
    'the same said for the whole job',
    job({ readout: { units: 'inch', resolution: 0.0005 } }),
    [`${X}/0/units`, '/setups/0/zero/y/0/units'],
    'say in which of them this is given',
  ],
  [
    'one action in inches and one in neither',
    x({ ...STOP, units: 'inch' }, BEARS),
    [`${X}/1/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  [
    'a block in a list in neither',
    x(
      { ...STOP, units: 'mm' },
      { bears: 'left', on: 'end', block: [{ block: 5 }, { block: 1, units: 'inch' }] },
    ),
    [`${X}/1/block/0/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  ['an unknown unit', x({ ...TOUCH, units: 'cm' }), [`${X}/0/units`], 'must be "mm" or "inch"'],
  [
    'a step in mm for a readout in inches',
    {
      ...setup({
        readout: { units: 'inch' },
        zero: { x: [{ ...TOUCH, units: 'mm' }], y: [{ ...FRONT, units: 'mm' }] },
      }),
      resolution: 0.005,
    },
    ['/setups/0/readout/resolution'],
    'say the step that this one shows',
  ],
  ['a step of 0', setup({ readout: { resolution: 0 } }), ['/setups/0/readout/resolution'], 'must be over 0'],
  [
    'an unknown class',
    job({ part: { ...JOB.part, tolerances: 'fine' } }),
    ['/part/tolerances'],
    '"f", "m", "c" or "v"',
  ],
];

const SETUPS: readonly Case[] = [
  ['no setup in a list of them', setups(), ['/setups'], 'at least 1'],
  ['setups that are no list', job({ setups: {} }), ['/setups'], 'must be a list'],
  [
    'an unknown cut',
    setup({ cuts: ['a', 'c'] }),
    ['/setups/0/cuts/1'],
    'is "c", but the job has no such cut',
  ],
  ['a cut named twice', setup({ cuts: ['a', 'b', 'a'] }), ['/setups/0/cuts/2'], 'like entry 0'],
  ['a setup without cuts', setup({ cuts: [] }), ['/setups/0/cuts'], 'at least 1'],
  [
    'a cut in nine setups',
    setups(...Array.from({ length: 9 }, (_, k) => ({ ...SETUP, id: `s${k}` }))),
    ['/setups/8/cuts/0'],
    'in over 8 setups',
  ],
  [
    'two setups of one id',
    setups(SETUP, { ...SETUP, cuts: ['b'] }),
    ['/setups/1/id'],
    'like that of setup 0',
  ],
  ['an id with a space at its end', setup({ id: 's ' }), ['/setups/0/id'], 'start or end with a space'],
  ['a turn of more than once round', setup({ turn: 361 }), ['/setups/0/turn'], 'at most 360'],
  ['a flip about z', setup({ flip: 'z' }), ['/setups/0/flip'], 'must be "x" or "y"'],
  ['an unknown key', setup({ offset: 3 }), ['/setups/0/offset'], 'not a key that belongs here'],
];

const KEEP_OUTS: readonly Case[] = [
  ['an unknown kind', keepOut({ ...JAW, kind: 'vise' }), ['/keepOut/0/kind'], '"jaw"'],
  ['upside down', keepOut({ ...JAW, from: 5, to: -5 }), ['/keepOut/0/to'], 'must be over from, 5; it is -5'],
  [
    'without a height',
    keepOut({ ...JAW, from: 5, to: 5 }),
    ['/keepOut/0/to'],
    'must be over from, 5; it is 5',
  ],
  ['an unknown setup', keepOut({ ...JAW, setup: 't' }), ['/keepOut/0/setup'], 'the job has no such setup'],
  ['two of one id', keepOut(JAW, JAW), ['/keepOut/1/id'], 'like that of keep-out 0'],
  [
    'a shape of two keys',
    keepOut({ ...JAW, shape: { circle: 5, slot: [5, 2] } }),
    ['/keepOut/0/shape'],
    'exactly one',
  ],
  [
    'a shape that is open',
    keepOut({ ...JAW, shape: { svgPath: 'M0 0 H5 V5' } }),
    ['/keepOut/0/shape/svgPath'],
    '',
  ],
  [
    'a shape that crosses itself',
    keepOut({ ...JAW, shape: { svgPath: 'M0 0 L10 10 L10 0 L0 10 Z' } }),
    ['/keepOut/0/shape/svgPath'],
    '(5, 5)',
  ],
  [
    'a shape of two lines',
    keepOut({ ...JAW, shape: { svgPath: 'M0 0 H5 V5 Z M20 0 H25 V5 Z' } }),
    ['/keepOut/0/shape/svgPath'],
    'draws 2 closed lines',
  ],
  ['none in a list of them', keepOut(), ['/keepOut'], 'at least 1'],
];

describe.each([
  ['actions', ACTIONS],
  ['names', NAMES],
  ['units', UNITS],
  ['setups', SETUPS],
  ['keep-outs', KEEP_OUTS],
])('bad %s', (_, list) => {
  it.each(list.map((one) => [one[0], one] as const))('%s', (_name, [, input, paths, words]) => {
    const issues = issuesOf(JSON.parse(JSON.stringify(input)));
    expect(issues.map(({ path }) => path).sort()).toEqual([...paths].sort());
    expect(issues.map(({ message }) => message).join('\n')).toContain(words);
    for (const { message } of issues) {
      expect(message.length).toBeGreaterThan(10);
      expect(message).not.toMatch(/undefined|\[object|Invalid|expected|zod/i);
    }
  });
});

describe('what is sound', () => {
  it('is the base of these cases', () => {
    expect(issuesOf(JOB)).toEqual([]);
    expect(issuesOf(keepOut(JAW, { ...JAW, id: 'k', setup: 's' }))).toEqual([]);
  });

  it.each([
    ['a straight edge square to the axis', x({ ...TOUCH, touch: 'outline:6' })],
    ['a mark on the part', x({ 'dial in': [12, 3] })],
    ['a part that bears on a stop', x(STOP, BEARS)],
    ['a tool that touches', x({ ...withoutTip, tool: 12 })],
    ['names of edges and holes', named('rest end', { circle: 5, at: [40, 15], name: 'eye' })],
    [
      'every action in its own unit',
      setup({
        zero: {
          x: [
            { ...STOP, units: 'inch' },
            { ...BEARS, units: 'mm' },
          ],
          y: [{ ...FRONT, units: 'mm' }],
        },
      }),
    ],
  ])('%s', (_, input) => {
    expect(issuesOf(JSON.parse(JSON.stringify(input)))).toEqual([]);
  });
});
