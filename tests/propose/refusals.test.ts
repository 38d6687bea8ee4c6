import { type AimDocument, type DrawerTool, JobError, parseAim, propose } from '@edgebite/core';
import { describe, expect, test } from 'vitest';

const drill = (diameter: number, reach = 60): DrawerTool => ({
  id: `drill ${diameter}`,
  kind: 'drill',
  toolMaterial: 'HSS',
  diameter,
  reach,
});

const head: DrawerTool = {
  id: 'head',
  kind: 'boring head',
  toolMaterial: 'HSS',
  range: [10, 40],
  reach: 60,
  maxSpeed: 900,
};

const ring: DrawerTool = {
  id: 'ring',
  kind: 'annular cutter',
  toolMaterial: 'HSS',
  diameter: 20,
  wall: 4,
  reach: 9,
};

const mill: DrawerTool = {
  id: 'mill',
  kind: 'end mill',
  toolMaterial: 'HSS',
  diameter: 8,
  teeth: 2,
  reach: 30,
};

/** A plate 20 thick with one round hole of 20. */
const plate: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [80, 50] },
  finished: { rectangle: [80, 50], holes: [{ circle: 20, at: [30, 20] }] },
  thickness: 20,
  material: 'mild steel',
  drawer: [drill(20)],
};

const refusalsOf = (aim: Partial<AimDocument>) =>
  propose(parseAim({ ...plate, ...aim })).refusals.map(({ code, at }) => ({ code, at }));

// Each follows from what the tools are, by hand.
describe('why a hole of 20 through 20 cannot be made', () => {
  test.each<{ readonly why: string; readonly drawer: DrawerTool[]; readonly code: string | null }>([
    { why: 'a drill of its size makes it', drawer: [drill(20)], code: null },
    { why: 'no tool has its size', drawer: [drill(19.5), { ...head, range: [21, 40] }], code: 'no-size' },
    { why: 'the drill is too short', drawer: [drill(20, 19)], code: 'reach' },
    { why: 'the hollow cutter does not come half way', drawer: [ring], code: 'reach' },
    {
      why: 'the hollow cutter meets itself from the other side',
      drawer: [{ ...ring, reach: 10 }],
      code: null,
    },
    { why: 'a head has nothing to go into', drawer: [head], code: 'no-way-in' },
    { why: 'the drill before the head leaves no allowance', drawer: [head, drill(19.5)], code: 'no-way-in' },
    { why: 'the drill before the head leaves its allowance', drawer: [head, drill(19)], code: null },
    { why: 'the hole is narrower than the head can be set to', drawer: [head, drill(5)], code: 'passes' },
    { why: 'the mill does not cut to its centre', drawer: [mill], code: 'no-way-in' },
    { why: 'the mill cuts to its centre', drawer: [{ ...mill, centerCutting: true }], code: null },
    { why: 'the mill goes down in a drilled hole', drawer: [mill, drill(8)], code: null },
    { why: 'the hole is narrower than the mill', drawer: [mill, drill(7)], code: 'no-way-in' },
  ])('$why', ({ drawer, code }) => {
    expect(refusalsOf({ drawer })).toEqual(code === null ? [] : [{ code, at: [30, 20] }]);
  });

  test('the spindle is too fast for it', () => {
    expect(refusalsOf({ machine: { slowest: 4000 } })).toEqual([{ code: 'spindle', at: [30, 20] }]);
  });
});

test('a straight wall is no round', () => {
  const finished = { svgPath: 'M0 0 H80 V50 H50 V30 H40 V50 H0 Z' };
  const [refusal] = propose(parseAim({ ...plate, finished })).refusals;
  expect(refusal?.code).toBe('shape');
  expect(refusal?.at[1]).toBeGreaterThan(29);
});

test('nothing to cut is one way without cuts', () => {
  const { ways, refusals } = propose(parseAim({ ...plate, finished: { rectangle: [80, 50] } }));
  expect(refusals).toEqual([]);
  expect(ways.map(({ job }) => job.cuts)).toEqual([[]]);
});

describe('faults of an aim', () => {
  const issuesOf = (aim: object): string[] => {
    try {
      parseAim({ ...plate, ...aim });
    } catch (error) {
      if (error instanceof JobError) return error.issues.map(({ path }) => path);
    }
    return [];
  };

  test.each<{ readonly aim: object; readonly paths: string[] }>([
    { aim: { finished: { rectangle: [81, 50] } }, paths: ['/finished'] },
    { aim: { finished: { rectangle: [80] } }, paths: ['/finished/rectangle'] },
    { aim: { blank: { svgPath: 'M0 0 H10' } }, paths: ['/blank/svgPath'] },
    { aim: { drawer: [{ ...ring, wall: 10 }] }, paths: ['/drawer/0/wall'] },
    { aim: { drawer: [{ ...head, range: [40, 10] }] }, paths: ['/drawer/0/range'] },
    { aim: { drawer: [drill(5), drill(5)] }, paths: ['/drawer/1/id'] },
    { aim: { drawer: [{ ...drill(5), wall: 2 }] }, paths: ['/drawer/0/wall'] },
    { aim: { drawer: [] }, paths: ['/drawer'] },
    { aim: { thickness: 0 }, paths: ['/thickness'] },
    { aim: { keep: [30, 20] }, paths: ['/keep'] },
    { aim: { machine: { slowest: 900, fastest: 100 } }, paths: ['/machine/slowest'] },
  ])('$paths', ({ aim, paths }) => {
    expect(issuesOf(aim)).toEqual(paths);
  });
});
