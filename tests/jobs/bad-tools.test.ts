import { describe, expect, it } from 'vitest';
import { issuesOf } from './issues-of.js';

const BORE = { id: 'eye', kind: 'bore', center: [10, 10], diameter: 5 };
const RING = { id: 'ring', kind: 'annular', center: [40, 10], diameter: 20, wall: 3 };
const DRILL = { id: 'd', kind: 'drill', toolMaterial: 'HSS', cuts: ['eye'] };
const HEAD = { id: 'h', kind: 'boring head', toolMaterial: 'HSS', maxSpeed: 800, cuts: ['eye'] };

const issuesWith = (over: Record<string, unknown>) =>
  issuesOf({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 30] }, thickness: 12 },
    cuts: [BORE, RING],
    ...over,
  });

const tools = (...list: unknown[]) => ({ tools: list });
const machine = (value: unknown) => ({ machine: value });
const { cuts: _, ...IDLE } = DRILL;

/** Name of the case; the keys; all the paths that must be reported; words of a message. */
type Case = readonly [string, Record<string, unknown>, readonly string[], string?];

const CASES: readonly Case[] = [
  ['tools that are no list', { tools: DRILL }, ['/tools'], 'must be a list'],
  ['no tools in the list', tools(), ['/tools'], 'at least 1'],
  ['a tool that is a text', tools('drill'), ['/tools/0']],
  [
    'another kind',
    tools({ ...DRILL, kind: 'fly cutter' }),
    ['/tools/0/kind'],
    'must be "drill", "annular cutter"',
  ],
  [
    'another material',
    tools({ ...DRILL, toolMaterial: 'steel' }),
    ['/tools/0/toolMaterial'],
    '"HSS" or "carbide"',
  ],
  ['no cuts', tools(IDLE), ['/tools/0/cuts'], 'is missing'],
  ['an empty list of cuts', tools({ ...DRILL, cuts: [] }), ['/tools/0/cuts']],
  ['an unknown key', tools({ ...DRILL, rpm: 5 }), ['/tools/0/rpm'], 'not a key that belongs here'],
  ['a diameter of 0', tools({ ...DRILL, diameter: 0 }), ['/tools/0/diameter'], 'must be over 0'],
  ['a negative limit', tools({ ...DRILL, maxSpeed: -1 }), ['/tools/0/maxSpeed'], 'must be over 0'],
  ['a limit that is no number', tools({ ...DRILL, maxSpeed: Number.NaN }), ['/tools/0/maxSpeed']],
  ['a limit without end', tools({ ...DRILL, maxSpeed: Number.POSITIVE_INFINITY }), ['/tools/0/maxSpeed']],
  ['half a tooth', tools({ ...DRILL, teeth: 1.5 }), ['/tools/0/teeth']],
  ['no tooth', tools({ ...DRILL, teeth: 0 }), ['/tools/0/teeth']],
  ['an unknown cut', tools({ ...DRILL, cuts: ['eyes'] }), ['/tools/0/cuts/0'], 'there is "eye" and "ring"'],
  [
    'a drill for a ring',
    tools({ ...DRILL, cuts: ['ring'] }),
    ['/tools/0/cuts/0'],
    'must be "annular cutter"',
  ],
  ['a cut made twice', tools(DRILL, HEAD), ['/tools/1/cuts/0'], 'which tool "d" makes'],
  ['a cut named twice', tools({ ...DRILL, cuts: ['eye', 'eye'] }), ['/tools/0/cuts/1'], 'leave one out'],
  ['two tools of one name', tools(DRILL, { ...DRILL, cuts: ['ring'] }), ['/tools/1/id', '/tools/1/cuts/0']],
  ['a name that starts with a space', tools({ ...DRILL, id: ' d' }), ['/tools/0/id']],
  ['a boring head with a diameter', tools({ ...HEAD, diameter: 5 }), ['/tools/0/diameter'], 'leave it out'],
  ['a boring head with teeth', tools({ ...HEAD, teeth: 2 }), ['/tools/0/teeth'], 'leave it out'],
  [
    'a drill with a dial',
    tools({ ...DRILL, dial: { step: 1, on: 'radius' } }),
    ['/tools/0/dial'],
    'leave it out',
  ],
  [
    'a drill with the sizes of a head',
    tools({ ...DRILL, smallest: 1, largest: 9, bar: 20 }),
    ['/tools/0/smallest', '/tools/0/largest', '/tools/0/bar'],
    'does not belong to "drill", which is not set',
  ],
  [
    'sizes of a head the wrong way round',
    tools({ ...HEAD, smallest: 30, largest: 20 }),
    ['/tools/0/smallest'],
    'over the largest bore, 20; exchange them',
  ],
  ['a bar of no length', tools({ ...HEAD, bar: 0 }), ['/tools/0/bar'], 'must be over 0'],
  ['a machine that is a number', machine(5), ['/machine']],
  ['a speed of 0', machine({ slowest: 0 }), ['/machine/slowest'], 'must be over 0'],
  [
    'speeds the wrong way round',
    machine({ slowest: 900, fastest: 90 }),
    ['/machine/slowest'],
    'exchange them',
  ],
  [
    'steps beside a stretch',
    machine({ speeds: [90], fastest: 900 }),
    ['/machine/speeds'],
    'leave slowest and fastest out',
  ],
  ['no steps', machine({ speeds: [] }), ['/machine/speeds']],
  [
    'faults of tools, machine and cuts at once',
    { ...tools({ ...DRILL, cuts: ['gone'] }), ...machine({ slowest: 2, fastest: 1 }), units: 'cm' },
    ['/units', '/machine/slowest', '/tools/0/cuts/0'],
  ],
  [
    'a cut at fault is not said to be missing',
    { cuts: [{ ...BORE, id: 5 }], ...tools(DRILL) },
    ['/cuts/0/id'],
  ],
];

describe('a bad job in its tools or machine', () => {
  it.each(CASES.map((one) => [one[0], one] as const))('%s', (_name, [, over, paths, words]) => {
    const issues = issuesWith(over);
    expect(issues.map(({ path }) => path).sort()).toEqual([...paths].sort());
    if (words !== undefined) expect(issues.map(({ message }) => message).join('\n')).toContain(words);
    for (const { message } of issues) expect(message).not.toMatch(/undefined|\[object|Invalid|expected|zod/i);
  });

  it('is none with tools that fit', () => {
    expect(issuesWith({ ...tools(DRILL), machine: { slowest: 60, fastest: 3000 } })).toEqual([]);
    expect(issuesWith(tools({ ...HEAD }))).toEqual([]);
    expect(issuesWith({})).toEqual([]);
  });
});
