import {
  type DrawerDocument,
  examine,
  examiner,
  type JobDocument,
  JobError,
  parseDrawer,
  parseJob,
  twinOf,
} from '@edgebite/core';
import { describe, expect, test } from 'vitest';

const drawer = [
  {
    id: 'drill 9',
    kind: 'drill',
    toolMaterial: 'HSS',
    diameter: 9,
    reach: 60,
    tolerance: 0.03,
    runOut: 0.04,
  },
  {
    id: 'ring 24',
    kind: 'annular cutter',
    toolMaterial: 'HSS',
    diameter: 24,
    wall: 4,
    reach: 25,
    teeth: 6,
    pilot: true,
    maxSpeed: 300,
  },
  {
    id: 'mill 10',
    kind: 'end mill',
    toolMaterial: 'carbide',
    diameter: 10,
    reach: 12,
    teeth: 4,
    centerCutting: true,
  },
  {
    id: 'head',
    kind: 'boring head',
    toolMaterial: 'HSS',
    smallest: 12,
    largest: 60,
    bar: 40,
    maxSpeed: 800,
    tolerance: 0.02,
    dial: { step: 0.01, on: 'diameter' },
  },
] as const;

type Cut = JobDocument['cuts'][number];

const cuts: Cut[] = [
  { id: 'eye', tool: 'drill 9', kind: 'bore', center: [20, 20] },
  { id: 'window', tool: 'ring 24', kind: 'annular', center: [50, 25] },
  {
    id: 'seat',
    tool: 'head',
    kind: 'bore',
    center: [100, 25],
    diameter: 26,
    passes: { kind: 'open out', bite: 0.5 },
  },
  {
    id: 'groove',
    tool: 'mill 10',
    kind: 'swept',
    path: { edges: [{ kind: 'line', a: [70, -8], b: [70, 58] }] },
    depth: 4,
  },
  {
    id: 'dish',
    tool: 'mill 10',
    kind: 'bore',
    center: [20, 38],
    diameter: 14,
    passes: { kind: 'open out', bite: 2 },
    depth: 3,
  },
];

const base: JobDocument = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 50] }, thickness: 10, material: 'mild steel' },
  keep: [35, 5],
  drawer,
  cuts,
};

/** The same by hand: sizes in the cuts, tools with the cuts that they make. */
const byHand: JobDocument = {
  edgebite: 1,
  units: 'mm',
  part: base.part,
  keep: [35, 5],
  tools: [
    {
      id: 'drill 9',
      kind: 'drill',
      toolMaterial: 'HSS',
      diameter: 9,
      reach: 60,
      diameterTolerance: 0.03,
      runOut: 0.04,
      cuts: ['eye'],
    },
    {
      id: 'ring 24',
      kind: 'annular cutter',
      toolMaterial: 'HSS',
      diameter: 24,
      teeth: 6,
      pilot: true,
      maxSpeed: 300,
      cuts: ['window'],
    },
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      smallest: 12,
      largest: 60,
      bar: 40,
      maxSpeed: 800,
      settingTolerance: 0.02,
      dial: { step: 0.01, on: 'diameter' },
      cuts: ['seat'],
    },
    {
      id: 'mill 10',
      kind: 'end mill',
      toolMaterial: 'carbide',
      diameter: 10,
      reach: 12,
      teeth: 4,
      centerCutting: true,
      cuts: ['groove', 'dish'],
    },
  ],
  cuts: [
    { id: 'eye', kind: 'bore', center: [20, 20], diameter: 9 },
    { id: 'window', kind: 'annular', center: [50, 25], diameter: 24, wall: 4, reach: 25 },
    {
      id: 'seat',
      kind: 'bore',
      center: [100, 25],
      diameter: 26,
      passes: { kind: 'open out', bite: 0.5, smallest: 12 },
    },
    {
      id: 'groove',
      kind: 'swept',
      diameter: 10,
      path: { edges: [{ kind: 'line', a: [70, -8], b: [70, 58] }] },
      depth: 4,
    },
    {
      id: 'dish',
      kind: 'bore',
      center: [20, 38],
      diameter: 14,
      passes: { kind: 'open out', bite: 2, smallest: 10 },
      depth: 3,
    },
  ],
};

const issuesOf = (job: unknown, shared?: DrawerDocument) => {
  try {
    parseJob(job, shared);
  } catch (error) {
    if (error instanceof JobError) return error.issues.map(({ path, message }) => `${path}: ${message}`);
    throw error;
  }
  return [];
};

const changed = (id: string, change: object): JobDocument => ({
  ...base,
  cuts: cuts.map((cut) => (cut.id === id ? ({ ...cut, ...change } as Cut) : cut)),
});

describe('cuts that name a tool of the drawer', () => {
  test('come to the same as the job that is written out by hand', () => {
    expect(examine(parseJob(base))).toEqual(examine(parseJob(byHand)));
  });

  test('are told with their tools, at the speeds that these allow', () => {
    const report = examine(parseJob(base));
    expect(new Map(report.steps.map(({ cut, tool }) => [cut, tool]))).toEqual(
      new Map([
        ['eye', 'drill 9'],
        ['window', 'ring 24'],
        ['seat', 'head'],
        ['groove', 'mill 10'],
        ['dish', 'mill 10'],
      ]),
    );
    expect(report.cuts.find(({ id }) => id === 'window')?.running?.set?.[1]).toBeLessThanOrEqual(300);
  });

  test('stay as they are written, and are read again to the same job', () => {
    const job = parseJob(base);
    expect(job.document).toEqual(base);
    expect(parseJob(job.document)).toEqual(job);
    expect(parseJob(job.plain).cuts).toEqual(job.cuts);
  });

  test('take a drawer that jobs share', () => {
    const { drawer: _, ...bare } = base;
    const shared = parseDrawer({ edgebite: 1, units: 'mm', drawer });
    expect(parseJob(bare, shared).cuts).toEqual(parseJob(base).cuts);
    expect(issuesOf(base, shared)).toEqual(['/drawer: stands beside a shared drawer; leave one of them out']);
    expect(issuesOf({ ...bare, units: 'inch' }, shared)[0]).toMatch(
      /^\/units: is "inch", but the shared drawer is in mm/,
    );
  });

  test('are repeated with their tool, and mirrored in the twin', () => {
    const job = parseJob({
      ...base,
      repeat: [{ cuts: ['eye'], row: { count: 3, step: [0, -6] } }],
      twin: { swaps: 'left and right' },
    });
    const made = job.tools.find(({ id }) => id === 'drill 9');
    expect(made?.cuts).toHaveLength(3);
    expect(twinOf(job)?.tools.map(({ id }) => id)).toEqual(job.tools.map(({ id }) => id));
  });

  test('are looked at again after a change as in a job of their own', () => {
    const live = examiner(parseJob(base));
    const moved = live.moved('eye', [22, 18]);
    expect(moved.report).toEqual(examine(parseJob(changed('eye', { center: [22, 18] }))));
    expect(moved.job).toEqual(parseJob(changed('eye', { center: [22, 18] })));
    const other = moved.changed('seat', { diameter: 30 });
    expect(other.job.tools.find(({ id }) => id === 'head')?.cuts).toEqual(['seat']);
    expect(() => live.changed('eye', { diameter: 9.5 })).toThrow('tool "drill 9" has 9');
  });

  test('go down with a mill that is not said to cut to its centre as with one that does not', () => {
    const codesOf = (centerCutting?: boolean) => {
      const mill = {
        id: 'm',
        kind: 'end mill',
        toolMaterial: 'HSS',
        diameter: 10,
        reach: 20,
        teeth: 4,
      } as const;
      const own = centerCutting === undefined ? mill : { ...mill, centerCutting };
      const cut = { id: 'c', tool: 'm', kind: 'bore', center: [50, 25] } as const;
      return examine(parseJob({ ...base, drawer: [own], cuts: [cut] })).findings.map(({ code }) => code);
    };
    expect(codesOf()).toEqual(codesOf(false));
    expect(codesOf()).toContain('plunges-on-center');
    expect(codesOf(true)).not.toContain('plunges-on-center');
  });

  test('have the reach of drills and mills, and the metal under a pilot, looked at', () => {
    const told = (job: JobDocument) =>
      examine(parseJob(job)).findings.flatMap(({ code, level, about }) =>
        ['reach-too-short', 'pilot-in-air'].includes(code) ? [[code, level, about[0]]] : [],
      );
    expect(told(base)).toEqual([]);
    expect(told(changed('groove', { depth: 'through' }))).toEqual([]);
    const thick = { ...changed('groove', { depth: 13 }), part: { ...base.part, thickness: 20 } };
    expect(told(thick)).toEqual([['reach-too-short', 'check', 'cut:groove']]);
    expect(told(changed('window', { center: [50, -2] }))).toEqual([['pilot-in-air', 'danger', 'cut:window']]);
  });
});

describe('what is wrong with a tool that is named is said at its place', () => {
  test.each<[string, unknown, string[]]>([
    [
      'no such tool',
      changed('eye', { tool: 'drill 8' }),
      [
        '/cuts/0/tool: is "drill 8", but no tool of the drawer has that id; there is "drill 9", "ring 24", "mill 10" and "head"',
      ],
    ],
    [
      'no drawer',
      { ...base, drawer: undefined, cuts: [cuts[0]] },
      ['/cuts/0/tool: is "drill 9", but the job has no drawer; list its tools under "drawer"'],
    ],
    [
      'a wrong kind',
      changed('window', { tool: 'drill 9' }),
      ['/cuts/1/tool: is "drill 9", of kind "drill"; that of an annular cut must be "annular cutter"'],
    ],
    [
      'another diameter',
      changed('eye', { diameter: 9.5 }),
      ['/cuts/0/diameter: is 9.5, but tool "drill 9" has 9; leave it out, or name another tool'],
    ],
    ['the same diameter', changed('eye', { diameter: 9 }), []],
    [
      'another wall and reach',
      changed('window', { wall: 5, reach: 30 }),
      [
        '/cuts/1/wall: is 5, but tool "ring 24" has 4; leave it out, or name another tool',
        '/cuts/1/reach: is 30, but tool "ring 24" has 25; leave it out, or name another tool',
      ],
    ],
    [
      'a bore under its mill',
      changed('dish', { diameter: 8, passes: undefined }),
      ['/cuts/4/diameter: is 8, but tool "mill 10" has 10; leave it out, or name another tool'],
    ],
    [
      'a head without a size',
      changed('seat', { diameter: undefined }),
      [expect.stringMatching(/^\/cuts\/2\/diameter: is missing/)],
    ],
    [
      'no size and no tool',
      changed('window', { tool: undefined }),
      [
        '/cuts/1/diameter: is missing; a number is needed, or the "tool" of the drawer that has it',
        '/cuts/1/wall: is missing; a number is needed, or the "tool" of the drawer that has it',
      ],
    ],
    [
      'a swept cut of no size',
      changed('groove', { tool: undefined }),
      ['/cuts/3/diameter: is missing; a number is needed, or the "tool" of the drawer that has it'],
    ],
    [
      'tools beside it',
      { ...base, tools: byHand.tools },
      ['/drawer: stands beside "tools"; leave one of them out'],
    ],
    [
      'two tools of one name',
      { ...base, drawer: [...drawer, { ...drawer[0] }] },
      [expect.stringMatching(/^\/drawer\/4\/id: /)],
    ],
    [
      'a tool with faults',
      { ...base, drawer: [drawer[0], { ...drawer[1], wall: 12 }, drawer[2], drawer[3]] },
      ['/drawer/1/wall: must be under half the diameter, 12; it is 12'],
    ],
    [
      'a tool without a kind',
      { ...base, drawer: [{ ...drawer[0], kind: 'awl' }], cuts: [cuts[0]] },
      [expect.stringMatching(/^\/drawer\/0\/kind: must be/)],
    ],
    [
      'a drawer that is no list',
      { ...base, drawer: 7, cuts: [cuts[0], cuts[1]] },
      [expect.stringMatching(/^\/drawer: must be a list/)],
    ],
    [
      'a name that is no text',
      changed('eye', { tool: 9 }),
      [expect.stringMatching(/^\/cuts\/0\/tool: must be a text/)],
    ],
  ])('%s', (_, job, expected) => {
    expect(issuesOf(job)).toEqual(expected);
  });
});
