import {
  type AimDocument,
  type DrawerTool,
  disc,
  JobError,
  parseAim,
  propose,
  subtract,
} from '@edgebite/core';
import { describe, expect, test } from 'vitest';
import { rectangle, written } from './parts.js';

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
  smallest: 10,
  largest: 40,
  bar: 60,
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
  arcs: true,
};

const refusalsOf = (aim: Partial<AimDocument>) =>
  propose(parseAim({ ...plate, ...aim })).refusals.map(({ code, at }) => ({ code, at }));

// Each follows from what the tools are, by hand.
describe('why a hole of 20 through 20 cannot be made', () => {
  test.each<{ readonly why: string; readonly drawer: DrawerTool[]; readonly code: string | null }>([
    { why: 'a drill of its size makes it', drawer: [drill(20)], code: null },
    { why: 'no tool has its size', drawer: [drill(19.5), { ...head, smallest: 21 }], code: 'no-size' },
    { why: 'the drill does not come half way', drawer: [drill(20, 9)], code: 'reach' },
    { why: 'the drill meets itself from the other side', drawer: [drill(20, 10)], code: null },
    {
      why: 'the bar of the head is no longer than half the way',
      drawer: [{ ...head, bar: 10 }, drill(15)],
      code: 'reach',
    },
    { why: 'the head meets itself', drawer: [{ ...head, bar: 10.5 }, drill(15)], code: null },
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

  test('hand wheels lead no mill round', () => {
    const drawer = [{ ...mill, centerCutting: true }];
    expect(refusalsOf({ drawer, arcs: false })).toEqual([{ code: 'arcs', at: [30, 20] }]);
  });

  test('a head would go over it more than a hundred times', () => {
    // From radius 9.5, where the drill leaves it, to 10: 100 bites of 0.005, 125 of 0.004.
    const drawer = [head, drill(19)];
    expect(refusalsOf({ drawer, bite: 0.005 })).toEqual([]);
    expect(refusalsOf({ drawer, bite: 0.004 })).toEqual([{ code: 'passes', at: [30, 20] }]);
  });

  test('the spindle is too fast for it', () => {
    expect(refusalsOf({ machine: { slowest: 4000 } })).toEqual([{ code: 'spindle', at: [30, 20] }]);
  });
});

/** A notch of 10 with square corners, or with rounds of so much in them. */
const notch = (round: number) => {
  const low = 30 + round;
  const arcs =
    round === 0
      ? 'V30 H40'
      : `V${low} A${round} ${round} 0 0 0 ${50 - round} 30 H${40 + round} A${round} ${round} 0 0 0 40 ${low}`;
  return { svgPath: `M0 0 H80 V50 H50 ${arcs} V50 H0 Z` };
};

/** A slot 8 wide round (40, 0), from 60 to 120 degrees of a circle of 20: its walls are of 16 and 24, its ends of 4. */
const bow = (() => {
  const at = (radius: number, degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return `${40 + radius * Math.cos(angle)} ${radius * Math.sin(angle)}`;
  };
  return `M${at(24, 60)} A24 24 0 0 1 ${at(24, 120)} A4 4 0 0 1 ${at(16, 120)} A16 16 0 0 0 ${at(16, 60)} A4 4 0 0 1 ${at(24, 60)} Z`;
})();

const cutting: DrawerTool = { ...mill, centerCutting: true };

// By hand: a round tool of 8 leaves corners of 4 or more, and a slot of 8 or more.
describe('why walls, slots and pockets cannot be made', () => {
  test.each<{ readonly why: string; readonly aim: Partial<AimDocument>; readonly codes: string[] }>([
    { why: 'square inside corners', aim: { finished: notch(0), drawer: [cutting] }, codes: ['shape'] },
    {
      why: 'rounds that are too small for the mill',
      aim: { finished: notch(3), drawer: [cutting] },
      codes: ['no-size'],
    },
    { why: 'rounds that let the mill in', aim: { finished: notch(4.5), drawer: [cutting] }, codes: [] },
    {
      why: 'a mill that is too short',
      aim: { finished: notch(4.5), drawer: [{ ...cutting, reach: 9 }] },
      codes: ['reach'],
    },
    {
      why: 'a pocket wants a square floor',
      aim: { finished: plate.blank, pockets: [{ circle: 8, at: [30, 20], depth: 5 }], drawer: [drill(8)] },
      codes: ['no-size'],
    },
    {
      why: 'a mill of its size makes the pocket',
      aim: { finished: plate.blank, pockets: [{ circle: 8, at: [30, 20], depth: 5 }], drawer: [cutting] },
      codes: [],
    },
    {
      why: 'a slot of the width of the mill',
      aim: { finished: plate.blank, pockets: [{ slot: [30, 8], at: [30, 20], depth: 5 }], drawer: [cutting] },
      codes: [],
    },
    {
      why: 'a slot that is narrower than the mill',
      aim: { finished: plate.blank, pockets: [{ slot: [30, 7], at: [30, 20], depth: 5 }], drawer: [cutting] },
      codes: ['no-size'],
    },
    {
      why: 'a slot that is wider than the mill',
      aim: {
        finished: plate.blank,
        pockets: [{ slot: [30, 21], at: [30, 20], depth: 5, from: 'bottom' }],
        drawer: [cutting],
      },
      codes: [],
    },
    {
      why: 'rounds that want the mill led along arcs',
      aim: { finished: notch(4.5), drawer: [cutting], arcs: false },
      codes: ['arcs'],
    },
    {
      why: 'rounds that the mill leaves where it turns',
      aim: { finished: notch(4), drawer: [cutting], arcs: false },
      codes: [],
    },
    {
      why: 'a side that is milled straight',
      aim: { finished: { rectangle: [77, 50] }, drawer: [mill] },
      codes: [],
    },
    {
      why: 'a slot along an arc, of the width of the mill',
      aim: { finished: { ...plate.blank, holes: [{ svgPath: bow }] }, drawer: [cutting] },
      codes: [],
    },
    {
      why: 'a slot along an arc, where nothing is led along one',
      aim: { finished: { ...plate.blank, holes: [{ svgPath: bow }] }, drawer: [cutting], arcs: false },
      codes: ['arcs'],
    },
  ])('$why', ({ aim, codes }) => {
    expect(refusalsOf(aim).map(({ code }) => code)).toEqual(codes);
  });

  test('the corner is told', () => {
    const [refusal] = propose(parseAim({ ...plate, finished: notch(0), drawer: [cutting] })).refusals;
    expect([
      [40, 30],
      [50, 30],
    ]).toContainEqual(refusal?.at);
  });
});

// By hand: 6.25 + 6.25 is more than the 7 between the centres, so the arcs meet; the head ends at 12, short of 12.5.
test('arcs that run into each other are refused by their own sizes, not as a wall', () => {
  const centers = [
    { x: -3, y: -2 },
    { x: 4, y: -2 },
  ];
  const [part] = subtract(
    rectangle(60, 40),
    centers.map((center) => disc(center, 6.25)),
  );
  const { refusals } = propose(
    parseAim({
      ...plate,
      blank: { rectangle: [60, 40] },
      finished: written(part?.outer ?? []),
      thickness: 4,
      drawer: [{ ...head, smallest: 8, largest: 12 }],
    }),
  );
  expect(refusals.map(({ code, at }) => [code, ...at])).toEqual([
    ['no-size', 4, -2],
    ['no-size', -3, -2],
  ]);
  for (const { message } of refusals) expect(message).toContain('12.500 mm across');
});

test('a slot along an arc is one cut along its middle', () => {
  const aim = { ...plate, finished: { ...plate.blank, holes: [{ svgPath: bow }] }, drawer: [cutting] };
  const { cuts } = propose(parseAim(aim)).ways[0]?.job ?? { cuts: [] };
  const [cut] = cuts;
  expect(cuts).toHaveLength(1);
  if (cut?.kind !== 'swept' || !('edges' in cut.path)) throw new Error('not along a path');
  const [edge] = cut.path.edges;
  // By hand: half way between 16 and 24 from (40, 0), from 60 to 120 degrees.
  expect(Math.hypot((edge?.a[0] ?? 0) - 40, edge?.a[1] ?? 0)).toBeCloseTo(20, 9);
  expect([edge?.a[0], edge?.b[0]].sort()).toEqual([expect.closeTo(30, 9), expect.closeTo(50, 9)]);
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
    { aim: { drawer: [{ ...head, smallest: 50 }] }, paths: ['/drawer/0/largest'] },
    { aim: { drawer: [drill(5), drill(5)] }, paths: ['/drawer/1/id'] },
    { aim: { drawer: [{ ...drill(5), wall: 2 }] }, paths: ['/drawer/0/wall'] },
    { aim: { drawer: [] }, paths: ['/drawer'] },
    { aim: { thickness: 0 }, paths: ['/thickness'] },
    { aim: { pockets: [{ circle: 8, at: [30, 20], depth: 20 }] }, paths: ['/pockets/0/depth'] },
    { aim: { pockets: [{ svgPath: 'M0 0 H10', depth: 2 }] }, paths: ['/pockets/0/svgPath'] },
    { aim: { keep: [30, 20] }, paths: ['/keep'] },
    { aim: { machine: { slowest: 900, fastest: 100 } }, paths: ['/machine/slowest'] },
  ])('$paths', ({ aim, paths }) => {
    expect(issuesOf(aim)).toEqual(paths);
  });
});

test.each([
  { smallest: 9, largest: 13 },
  { smallest: 5, largest: 9 },
])(
  'an arc of just the size that a head of $smallest to $largest ends at is bored, whatever its last digit',
  (range) => {
    // An arc of 9 across about (1, -2), known by its ends: (0, root of 19.25 less 2) and (1 + root of 16.25, 0). Worked out from
    // them in doubles it is 9 less 2e-15.
    const a: [number, number] = [0, Math.sqrt(19.25) - 2];
    const b: [number, number] = [1 + Math.sqrt(16.25), 0];
    const proposal = propose(
      parseAim({
        ...plate,
        blank: { rectangle: [60, 40] },
        thickness: 4,
        finished: {
          edges: [
            { kind: 'line', a: b, b: [60, 0] },
            { kind: 'line', a: [60, 0], b: [60, 40] },
            { kind: 'line', a: [60, 40], b: [0, 40] },
            { kind: 'line', a: [0, 40], b: a },
            { kind: 'arc', a, b, center: [1, -2], ccw: false },
          ],
        },
        drawer: [{ ...head, ...range, bar: 10 }],
      }),
    );
    expect(proposal.refusals).toEqual([]);
    expect(proposal.ways.length).toBeGreaterThan(0);
    for (const { report } of proposal.ways) {
      expect(report.findings.map(({ code }) => code)).not.toContain('head-does-not-reach-size');
    }
  },
);
