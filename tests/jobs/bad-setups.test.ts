import { parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

type Plain = Record<string, unknown>;

const FINDER = { kind: 'edge finder', from: 'zero', to: 'left', diameter: 10, way: '+', tolerance: 0.01 };
const FRONT = { ...FINDER, to: 'front' };
const SETUP = { id: 's', zero: { x: [FINDER], y: [FRONT] }, cuts: ['a'] };
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
const span = (over: Plain): Plain => ({ kind: 'measured', length: 5, way: '+', ...over });
const block = span({ kind: 'block', length: 25 });
const { diameter: _, ...withoutTip } = FINDER;

/** Name of the case; the job; the paths that must be reported, all of them and no others; words of a message. */
type Case = readonly [name: string, job: unknown, paths: readonly string[], words: string];

const CHAINS: readonly Case[] = [
  ['no chain at all', setup({ zero: { y: [FRONT] } }), [X], 'is missing; a list is needed'],
  ['a chain without links', x(), [X], 'at least 1'],
  ['no zero', x(span({ from: 'right', to: 'left' })), [X], 'has no zero: it runs from "right" to "left"'],
  ['no zero, but a stop', x(span({ from: 'stop face', to: 'left' })), [X], 'has no zero'],
  ['two zeros', x(span({ from: 'zero', to: 'left' }), span({ to: 'zero' })), [X], 'has 2 zeros'],
  [
    'a zero in the middle',
    x(span({ from: 'stop face', to: 'zero' }), span({ to: 'left' })),
    [X],
    'goes on past "zero"',
  ],
  [
    'a loop',
    x(span({ from: 'zero', to: 'stop' }), block, span({ to: 'stop' }), span({ to: 'left' })),
    [`${X}`],
    'is a loop: it comes back to "stop"',
  ],
  [
    'a loop through a place of the part',
    x(span({ from: 'zero', to: [3, 4] }), block, span({ to: [3, 4] })),
    [X],
    'is a loop: it comes back to "(3, 4)"',
  ],
  [
    'links that do not hang together',
    x(span({ from: 'zero', to: 'stop face' }), span({ from: 'stop', to: 'left' })),
    [`${X}/1/from`],
    'is "stop", but the link before ends at "stop face"',
  ],
  ['a chain without a start', x({ ...FINDER, from: undefined }), [`${X}/0/from`], 'is missing; one end'],
  ['a chain without an end', x({ ...FINDER, to: undefined }), [`${X}/0/to`], 'is missing; one end'],
  [
    'a chain that never gets to the part',
    x({ ...FINDER, to: 'stop face' }),
    [`${X}/0/to`],
    'no place on the part',
  ],
  [
    'the same from the other end',
    x({ ...FINDER, from: 'lefft', to: 'zero' }),
    [`${X}/0/from`],
    'no place on the part',
  ],
  ['an end of the other axis', x({ ...FINDER, to: 'front' }), [`${X}/0/to`], 'no end of the part in x'],
  [
    'an edge that there is none of',
    x({ ...FINDER, to: 'outline:9' }),
    [`${X}/0/to`],
    'the part has no such edge',
  ],
  [
    'a hole that there is none of',
    x({ ...FINDER, to: 'hole:0:1' }),
    [`${X}/0/to`],
    'the part has no such edge',
  ],
  ['a round edge', x({ ...FINDER, to: 'outline:1' }), [`${X}/0/to`], 'which is round'],
  ['an edge along the axis', x({ ...FINDER, to: 'outline:0' }), [`${X}/0/to`], 'does not stand square to x'],
  [
    'an edge that stands askew as the part lies',
    setup({ turn: 10, zero: { x: [{ ...FINDER, to: 'outline:2' }], y: [FRONT] } }),
    [`${X}/0/to`],
    'does not stand square to x in this setup',
  ],
  [
    'a place that is a number',
    x({ ...FINDER, to: 5 }),
    [`${X}/0/to`],
    'must be a text or a place [x, y]; it is 5',
  ],
  ['a place of three numbers', x({ ...FINDER, to: [1, 2, 3] }), [`${X}/0/to`], 'must be a text or a place'],
  ['an empty place', x({ ...FINDER, to: '' }), [`${X}/0/to`], 'must not be empty'],
  ['an unknown kind of link', x({ ...FINDER, kind: 'wiggler' }), [`${X}/0/kind`], '"edge finder"'],
  [
    'a length below 0',
    x(span({ from: 'zero', to: 'left', length: -5 })),
    [`${X}/0/length`],
    'must be over 0',
  ],
  [
    'a block without a length',
    x({ kind: 'block', from: 'zero', to: 'left', way: '+' }),
    [`${X}/0/length`],
    'missing',
  ],
  ['no way', x({ ...FINDER, way: undefined }), [`${X}/0/way`], 'is missing; it must be "+" or "-"'],
  ['a way in words', x({ ...FINDER, way: 'left' }), [`${X}/0/way`], 'must be "+" or "-"; it is "left"'],
  [
    'a stop with a length',
    x({ kind: 'stop', from: 'zero', to: 'left', length: 5 }),
    [`${X}/0/length`],
    'not a key',
  ],
  [
    'a tip given as length',
    x({ ...withoutTip, length: 5 }),
    [`${X}/0/length`],
    'not a key that belongs here',
  ],
  ['a tolerance below 0', x({ ...FINDER, tolerance: -0.01 }), [`${X}/0/tolerance`], '0 or more'],
  [
    'one thing twice in a chain',
    x({ ...FINDER, to: 'stop face', name: 'n' }, { ...block, to: 'left', name: 'n' }),
    [`${X}/1/name`],
    'is "n" like that of link 0',
  ],
  [
    'one name for two things',
    setups({ ...SETUP, zero: { x: [{ ...FINDER, name: 'n' }], y: [{ ...FRONT, name: 'n', diameter: 6 }] } }),
    ['/setups/0/zero/y/0/name'],
    'one name is one thing',
  ],
  [
    'a fault in each axis',
    setup({ zero: { x: [span({ from: 'a', to: 'b' })], y: [{ ...FRONT, to: 'top' }] } }),
    [X, '/setups/0/zero/y/0/to'],
    'has no zero',
  ],
];

const UNITS: readonly Case[] = [
  [
    'a readout in inches on a job in mm, links in neither',
    setup({ readout: { units: 'inch', resolution: 0.0005 } }),
    [`${X}/0/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  [
    'the same said for the whole job',
    job({ readout: { units: 'inch', resolution: 0.0005 } }),
    [`${X}/0/units`, '/setups/0/zero/y/0/units'],
    'say in which of them this link is given',
  ],
  [
    'one link in inches and one in neither',
    x({ ...FINDER, to: 'stop', units: 'inch' }, { ...block, to: 'left' }),
    [`${X}/1/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  [
    'a stop with a tolerance in neither',
    x(
      { ...FINDER, to: 'stop', units: 'mm' },
      { ...block, to: 'end', units: 'inch' },
      {
        kind: 'stop',
        to: 'left',
        tolerance: 0.01,
      },
    ),
    [`${X}/2/units`, '/setups/0/zero/y/0/units'],
    'has both mm and inch',
  ],
  ['an unknown unit', x({ ...FINDER, units: 'cm' }), [`${X}/0/units`], 'must be "mm" or "inch"'],
  [
    'a step in mm for a readout in inches',
    {
      ...setup({
        readout: { units: 'inch' },
        zero: { x: [{ ...FINDER, units: 'mm' }], y: [{ ...FRONT, units: 'mm' }] },
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
  ['chains', CHAINS],
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
    ['a chain begun at the part', x({ ...FINDER, from: 'left', to: 'zero', way: '-' })],
    ['a straight edge square to the axis', x({ ...FINDER, to: 'outline:6' })],
    ['a place on the part', x(span({ from: 'zero', to: [12, 3] }))],
    [
      'links without places in between',
      x({ ...FINDER, to: undefined, way: '-' }, block, { kind: 'stop', to: 'left' }),
    ],
    ['a tip whose diameter is missing', x(withoutTip)],
    [
      'every link in its own unit',
      x({ ...FINDER, to: 'stop', units: 'inch' }, { ...block, to: 'left', units: 'mm' }),
    ],
  ])('%s', (name, input) => {
    const clean = JSON.parse(JSON.stringify(input));
    if (name === 'every link in its own unit') clean.setups[0].zero.y[0].units = 'mm';
    expect(issuesOf(clean)).toEqual([]);
  });

  it('is the same chain from either end', () => {
    const two = [x({ ...FINDER, from: 'left', to: 'zero', way: '-' }), x(FINDER)].map(
      (one) => parseJob(one).setups[0]?.zero.x,
    );
    expect(two[0]).toEqual(two[1]);
  });
});
