import { type AimDocument, compareJobs, JobError, parseAim, parseJob, propose } from '@edgebite/core';
import { describe, expect, test } from 'vitest';

/** A bar of 100 by 40 with a seat of 20 in each end, a hole, and a stop at its left. */
const bar: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [100, 40] },
  finished: {
    svgPath: 'M0 0 H100 V10 A10 10 0 0 0 100 30 V40 H0 V30 A10 10 0 0 0 0 10 Z',
    holes: [{ circle: 8, at: [50, 20] }],
  },
  thickness: 12,
  material: 'mild steel',
  stops: ['left'],
  tip: 10,
  drawer: [
    { id: 'drill 8', kind: 'drill', toolMaterial: 'HSS', diameter: 8, reach: 60 },
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      smallest: 10,
      largest: 40,
      bar: 40,
      maxSpeed: 900,
    },
  ],
};

const waysOf = (change: Partial<AimDocument> = {}) => propose(parseAim({ ...bar, ...change })).ways;

describe('setups of a bar against a stop', () => {
  test('both ends are cut off the stop, at one and the same reading', () => {
    const [way, other] = waysOf();
    expect(way?.row).toMatchObject({ pushes: 0, setups: 2 });
    expect(way?.job.setups?.map(({ turn = 0 }) => turn).sort()).toEqual([0, 180]);
    // The end that bears is at 0 each time, so the other one is at the length of the bar, 100 (by hand).
    const last = new Map(way?.report.steps.map(({ cut, targets }) => [cut, targets.at(-1)?.readout[0]]));
    expect(last.get('arc-1 bore')).toBeCloseTo(100, 9);
    expect(last.get('arc-2 bore')).toBeCloseTo(100, 9);
    // Without a turn the tool comes out where the stop is, in less time.
    expect(other?.row).toMatchObject({ pushes: 1, setups: 1 });
  });

  test('a corner between two stops is cut with the part turned a quarter', () => {
    // By hand: as drawn the corner at 0,0 lies at the left and in front, turned round at the right and at the back. With stops
    // at the left and at the back only a quarter turn counter-clockwise brings it off both, to the front and the right.
    const corner: Partial<AimDocument> = {
      finished: { svgPath: 'M10 0 H100 V40 H0 V10 A10 10 0 0 0 10 0 Z' },
      stops: ['left', 'back'],
      drawer: bar.drawer.filter(({ kind }) => kind === 'boring head'),
    };
    const [way, plain] = waysOf(corner);
    expect(way?.job.setups?.map(({ turn = 0 }) => turn)).toEqual([90]);
    expect(way?.row).toMatchObject({ pushes: 0, setups: 1 });
    expect(plain?.job.setups?.map(({ turn = 0 }) => turn)).toEqual([0]);
    expect(plain?.row.pushes).toBe(1);
    // Turned so, the bar is 40 wide and 100 deep: the corner is 40 from the stop at the left and 100 from the one at the back.
    expect(way?.report.steps.at(-1)?.targets.at(-1)?.readout).toEqual([
      expect.closeTo(40, 9),
      expect.closeTo(-100, 9),
    ]);
  });

  test('a corner that is cut from below is turned over and a quarter round', () => {
    // By hand: the corner at 100,0 lies at the right and in front as drawn, bottom up (about y) at the left and in front, and
    // turned round then at the right and at the back: with stops at the left and at the back it bears on one of them each
    // time. A quarter turn counter-clockwise, seen from above as it lies, brings it from left and front to right and front.
    const corner: Partial<AimDocument> = {
      finished: { rectangle: [100, 40] },
      pockets: [{ circle: 12, at: [100, 0], depth: 4, from: 'bottom' }],
      stops: ['left', 'back'],
      drawer: [
        {
          id: 'mill',
          kind: 'end mill',
          toolMaterial: 'HSS',
          diameter: 12,
          reach: 20,
          teeth: 2,
          centerCutting: true,
        },
      ],
    };
    const [way, plain] = waysOf(corner);
    expect(way?.job.setups?.map(({ flip, turn = 0 }) => [flip, turn])).toEqual([['y', 90]]);
    expect(way?.row).toMatchObject({ pushes: 0, setups: 1 });
    expect(plain?.job.setups?.map(({ flip, turn = 0 }) => [flip, turn])).toEqual([['y', 0]]);
    expect(plain?.row.pushes).toBe(1);
    // It is 40 wide then and 100 deep: the corner is 40 from the stop at the left and 100 in front of the one at the back.
    expect(way?.report.steps.at(-1)?.targets.at(-1)?.readout).toEqual([
      expect.closeTo(40, 9),
      expect.closeTo(-100, 9),
    ]);
    expect(way?.report.steps.map(({ up }) => up)).toEqual(['bottom']);
  });

  test('the part that comes out is the same', () => {
    const [plain] = waysOf({ tip: undefined, stops: undefined });
    for (const { job } of waysOf()) {
      expect(
        plain === undefined ? null : compareJobs(parseJob(job), parseJob(plain.job)).differences,
      ).toEqual([]);
    }
  });

  test('what is cut from below lies bottom up', () => {
    const pockets: AimDocument['pockets'] = [{ circle: 12, at: [25, 20], depth: 4, from: 'bottom' }];
    const mill = {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 12,
      reach: 20,
      teeth: 2,
      centerCutting: true,
    } as const;
    const [way] = waysOf({ pockets, drawer: [...bar.drawer, mill] });
    const below = way?.job.setups?.filter(({ flip }) => flip !== undefined) ?? [];
    expect(below.flatMap(({ cuts }) => cuts)).toEqual([expect.stringContaining('plunge')]);
    expect(way?.row.setups).toBe(3);
  });

  test('a drill that reaches half way comes from both sides', () => {
    const [drill, head] = bar.drawer;
    const short = { ...drill, reach: 7 } as AimDocument['drawer'][number];
    const [way] = waysOf({ drawer: [short, head as AimDocument['drawer'][number]], stops: undefined });
    const halves = way?.job.cuts
      .filter(({ tool }) => tool === 'drill 8')
      .map(({ from, depth }) => [from, depth]);
    // Half of 12 and a twentieth of it more (by hand).
    expect(halves?.sort()).toEqual([
      ['bottom', expect.closeTo(6.6, 9)],
      ['top', expect.closeTo(6.6, 9)],
    ]);
    expect(way?.row.setups).toBe(2);
  });

  test('without a tip there is no zero, and no setup is written', () => {
    for (const { job } of waysOf({ tip: undefined })) expect(job.setups).toBeUndefined();
  });
});

describe('stops that a part cannot bear on at once are refused', () => {
  const issuesOf = (change: Partial<AimDocument>) => {
    try {
      parseAim({ ...bar, ...change });
    } catch (error) {
      if (error instanceof JobError) return error.issues.map(({ path }) => path);
      throw error;
    }
    return [];
  };

  test.each<{ readonly change: Partial<AimDocument>; readonly paths: string[] }>([
    { change: { stops: ['left', 'right'] }, paths: ['/stops'] },
    { change: { stops: ['left', 'right'], tip: undefined }, paths: [] },
    { change: { stops: ['left', 'back'] }, paths: [] },
    { change: { tip: 0 }, paths: ['/tip'] },
  ])('$paths', ({ change, paths }) => {
    expect(issuesOf(change)).toEqual(paths);
  });
});
