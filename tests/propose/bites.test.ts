import { type AimDocument, area, JobError, parseAim, propose } from '@edgebite/core';
import { expect, test } from 'vitest';

type Bites = Extract<AimDocument['finished'], { readonly bites: unknown }>['bites'];

const bitten = (bites: Bites): AimDocument => ({
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [60, 40] },
  finished: { bites },
  thickness: 10,
  material: 'mild steel',
  drawer: [
    { id: 'drill', kind: 'drill', toolMaterial: 'HSS', diameter: 10, reach: 60 },
    { id: 'ring', kind: 'annular cutter', toolMaterial: 'HSS', diameter: 16, wall: 4, reach: 25, teeth: 6 },
  ],
});

const HOLE = { circle: 10, at: [20, 20] } as const;
/** Half of it lies beyond the right end. */
const ARC = { circle: 16, at: [60, 20] } as const;

test('a blank without its bites is the same part as its outline', () => {
  const aim = bitten([HOLE, ARC]);
  // By hand: 60 by 40 less a round of 5 and half a round of 8.
  expect(area(parseAim(aim).finished)).toBeCloseTo(2400 - 25 * Math.PI - 32 * Math.PI, 9);
  const drawn = { svgPath: 'M0 0 H60 V12 A8 8 0 0 0 60 28 V40 H0 Z', holes: [HOLE] };
  const jobs = [aim, { ...aim, finished: drawn }].map((one) => propose(parseAim(one)).ways[0]?.job);
  expect(jobs[0]?.cuts.map((cut) => [cut.tool, 'center' in cut ? cut.center : null])).toEqual([
    ['ring', [60, 20]],
    ['drill', [20, 20]],
  ]);
  expect(jobs[0]?.cuts).toEqual(jobs[1]?.cuts);
});

const faultsOf = (aim: AimDocument) => {
  try {
    parseAim(aim);
  } catch (error) {
    if (error instanceof JobError) return error.issues.map(({ path, message }) => `${path} ${message}`);
    throw error;
  }
  return [];
};

// By hand: the plate is 60 long, so a slot of 80 along its middle parts it.
test.each<{ readonly what: string; readonly bites: Bites; readonly fault: RegExp }>([
  {
    what: 'beside the blank',
    bites: [HOLE, { circle: 5, at: [80, 20] }],
    fault: /^\/finished\/bites\/1 takes nothing/,
  },
  { what: 'of all of it', bites: [{ circle: 200 }], fault: /^\/finished\/bites leave nothing/ },
  {
    what: 'that part it',
    bites: [{ slot: [80, 10], at: [30, 20] }],
    fault: /^\/finished\/bites leave 2 pieces/,
  },
  { what: 'with a fault', bites: [HOLE, { circle: 0 }], fault: /^\/finished\/bites\/1\/circle must be/ },
  { what: 'without any', bites: [], fault: /^\/finished\/bites must have/ },
])('bites $what are refused in their place', ({ bites, fault }) => {
  const faults = faultsOf(bitten(bites));
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(fault);
});
