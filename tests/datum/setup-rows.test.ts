import { readFileSync } from 'node:fs';
import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { bore, codes, finder, messageOf, reportOn, setup } from './setup-jobs.js';

const example = (name: string): Report =>
  examine(parseJob(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8')));

describe('the rows of a report', () => {
  it('have zero, targets and errors of a setup, by hand', () => {
    // 5 outside of the left face and 5 outside of the front one; 60.0013 + 5 = 65.0013, rounded to 65.000.
    const { setups } = reportOn([bore('a', [60.0013, 20], 8)], [setup(['a'])]);
    expect(setups).toHaveLength(1);
    expect(setups[0]).toMatchObject({ id: 's', name: null, turn: 0, flip: null, up: 'top', cuts: ['a'] });
    expect(setups[0]?.readout).toEqual({ units: 'mm', resolution: 0.005 });
    expect(setups[0]?.zero.at).toEqual([-5, -5]);
    expect(setups[0]?.zero.x).toEqual({
      place: 'left',
      at: 5,
      links: [
        {
          kind: 'touch',
          action: 0,
          name: null,
          of: 'left',
          side: 'left',
          length: 10,
          units: 'mm',
          offset: 5,
          at: null,
          tolerance: 0.02,
          basis: 'given',
        },
        {
          kind: 'set',
          action: 0,
          name: null,
          of: 'left',
          side: null,
          length: 0,
          units: 'mm',
          offset: 0,
          at: 5,
          tolerance: 0,
          basis: 'none',
        },
      ],
      worst: 0.02,
      rss: 0.02,
    });
    const [target] = setups[0]?.targets ?? [];
    expect(target).toMatchObject({
      cut: 'a',
      pass: null,
      point: null,
      center: [60.0013, 20],
      readout: [65, 25],
    });
    expect(target?.exact[0]).toBeCloseTo(65.0013, 12);
    expect(target?.roundingError[0]).toBeCloseTo(-0.0013, 12);
    expect(target?.worst[0]).toBeCloseTo(0.0225, 12);
    expect(target?.rss[0]).toBeCloseTo(Math.hypot(0.02, 0.0025), 12);
  });

  it('say in the text how far each axis may be off, each in its column', () => {
    // By hand: 0.1 and 0.01 of the zeros, and half a step.
    const zero = {
      x: [finder('left', { tolerance: 0.1 })],
      y: [finder('front', { tolerance: 0.01 })],
    };
    const text = textReport(reportOn([bore('a', [60, 20], 8)], [setup(['a'], { zero })]), { all: true });
    expect(text).toMatch(/±x +±y\n/);
    expect(text).toMatch(/ a +65\.000 +25\.000 +0, 0 +0\.1025 +0\.0125\n/);
  });

  it('name the points of a swept cut along its path', () => {
    const groove = { id: 'g', kind: 'swept', diameter: 5, path: { svgPath: 'M10 10 H30 V25' } };
    const [row] = reportOn([groove], [setup(['g'])]).setups;
    expect(row?.targets.map(({ point, readout }) => [point, ...readout])).toEqual([
      [0, 15, 15],
      [1, 35, 15],
      [2, 35, 30],
    ]);
  });

  it('have a target for each pass that steps in, the last at the centre', () => {
    const report = reportOn(
      [bore('a', [40, 42], 20, { passes: { kind: 'step in', bite: 2, approach: 270 } })],
      [setup(['a'])],
    );
    const list = report.cuts[0]?.passes?.list ?? [];
    expect(list.length).toBeGreaterThan(2);
    const targets = report.setups[0]?.targets ?? [];
    expect(targets.map(({ pass }) => pass)).toEqual(list.map((_, k) => k + 1));
    expect(targets.map(({ center }) => center)).toEqual(list.map(({ center }) => center));
    expect(targets.at(-1)?.readout).toEqual([45, 47]);
  });

  it('take the outermost places of the part as it lies', () => {
    // Turned by 90 degrees the drawn front (y = 0) is at the right and the drawn left end (x = 0) in front:
    // x of the machine is -y, from -40 to 0; y is x. A hole at (10, 30) is 10 from the left one, 40 - 30, and 10 up.
    const [row] = reportOn([bore('a', [10, 30], 8)], [setup(['a'], { turn: 90 })]).setups;
    expect(row?.targets[0]?.readout).toEqual([15, 15]);
    expect(row?.zero.at[0]).toBeCloseTo(-5, 12);
    expect(row?.zero.at[1]).toBeCloseTo(45, 12);
    // Turned by 45 degrees the plate's outermost places are its corners: (0, 40) at the left, 40 cos 45 from zero.
    const [askew] = reportOn([bore('a', [0, 40], 8)], [setup(['a'], { turn: 45 })]).setups;
    expect(askew?.targets[0]?.exact[0]).toBeCloseTo(5, 12);
    expect(askew?.targets[0]?.exact[1]).toBeCloseTo(5 + 40 * Math.SQRT1_2, 12);
  });

  it('take the outermost places of a round part wherever it is turned to', () => {
    // 40 across about (50, 30): the middle is 20 in from each side, and 20 + 5 from the zero.
    const part = { outline: { circle: 40, at: [50, 30] }, thickness: 10 };
    for (const turn of [0, 30, 90, 200]) {
      const [row] = reportOn([bore('a', [50, 30], 8)], [setup(['a'], { turn })], { part }).setups;
      expect(row?.targets[0]?.readout).toEqual([25, 25]);
      const zero = { x: [finder('right')], y: [finder('back')] };
      const [far] = reportOn([bore('a', [50, 30], 8)], [setup(['a'], { turn, zero })], { part }).setups;
      expect(far?.targets[0]?.readout).toEqual([-25, -25]);
    }
  });

  it('are nothing where a job has no setups', () => {
    const report = reportOn([bore('a', [40, 5], 8)], null);
    expect(report.setups).toEqual([]);
    expect(report.keepOut).toEqual([]);
    expect(report.webs.map(({ interval }) => interval)).toEqual([null]);
    expect(codes(report)).not.toContain('cut-in-no-setup');
  });

  it('hold no interval for a cut that is in no setup', () => {
    const report = reportOn([bore('a', [40, 5], 8), bore('b', [60, 20], 8)], [setup(['b'])]);
    expect(report.webs.map(({ interval }) => interval)).toEqual([null]);
    expect(messageOf(report, 'cut-in-no-setup')).toMatch(/^Cut a is in no setup/);
  });
});

describe('intervals', () => {
  it('of a web between two holes of one setup leave the zero out', () => {
    // Both targets are whole steps: only half a step of reading is left, 0.0025 for each along x.
    const { webs } = reportOn([bore('a', [30, 20], 8), bore('b', [39, 20], 8)], [setup(['a', 'b'])]);
    const [low, high] = webs[0]?.interval?.worst ?? [0, 0];
    expect(webs[0]?.thickness).toBeCloseTo(1, 12);
    expect(low).toBeCloseTo(0.995, 9);
    // Both may be off sideways by half a step too: sqrt(9.005² + 0.005²) - 8.
    expect(high).toBeCloseTo(Math.hypot(9.005, 0.005) - 8, 9);
  });

  it('of a web to the face that the zero is taken from hold the chain', () => {
    const { webs } = reportOn([bore('a', [40, 5], 8)], [setup(['a'])]);
    expect(webs[0]?.interval?.worst[0]).toBeCloseTo(1 - 0.0225, 9);
    expect(webs[0]?.interval?.worst[1]).toBeCloseTo(1 + 0.0225, 9);
  });

  it('of a web to the far face hold the general tolerance of the part between', () => {
    // ISO 2768-1 m: 40 mm are off by 0.3 at most.
    const part = { outline: { rectangle: [80, 40] }, thickness: 10, tolerances: 'm' };
    const { webs } = reportOn([bore('a', [40, 35], 8)], [setup(['a'])], { part });
    expect(webs[0]?.interval?.worst[0]).toBeCloseTo(1 - 0.3225, 9);
    expect(webs[0]?.interval?.rss[1]).toBeCloseTo(1 + Math.hypot(0.3, 0.02, 0.0025), 9);
  });

  it('of a web to a corner that points into metal go by the distance from it', () => {
    // A square hole from (30, 10) to (50, 30) and a bore beside its corner (50, 30), towards 45 degrees.
    const part = {
      outline: { rectangle: [80, 60], holes: [{ rectangle: [20, 20], at: [30, 10] }] },
      thickness: 10,
    };
    const { webs } = reportOn([bore('a', [54, 34], 9)], [setup(['a'])], { part });
    const web = webs.find(({ between }) => between[0] === 'cut:a');
    expect(web?.thickness).toBeCloseTo(Math.hypot(4, 4) - 4.5, 9);
    const reach = Math.hypot(4 - 0.0225, 4 - 0.0225) - 4.5;
    expect(web?.interval?.worst[0]).toBeCloseTo(reach, 9);
  });

  it('of a wall between two circles about one centre go by how far those part', () => {
    // A core of 20 across with a hole of 17 in it: 1.5 all round, and never more at its thinnest. Both targets are
    // whole steps, so the centres part by half a step each along both axes at most.
    const ring = { id: 'r', kind: 'annular', center: [40, 20], diameter: 30, wall: 5 };
    const cuts = [ring, bore('a', [40, 20], 17)];
    const { webs } = reportOn(cuts, [setup(['r', 'a'])], { limits: { web: 2, knifeEdge: 30 } });
    const web = webs.find(({ thickness }) => Math.abs(thickness - 1.5) < 1e-9);
    // Centres apart by less than any rounding are one centre, to whichever side.
    for (const x of [39.99999999999, 40.00000000001]) {
      const nearly = reportOn([ring, bore('a', [x, 20], 17)], [setup(['r', 'a'])], {
        limits: { web: 2, knifeEdge: 30 },
      });
      const wall = nearly.webs.find(({ thickness }) => Math.abs(thickness - 1.5) < 1e-9);
      expect(wall?.interval?.worst[1]).toBeCloseTo(1.5, 9);
    }
    expect(web?.interval?.worst[0]).toBeCloseTo(1.5 - Math.hypot(0.005, 0.005), 9);
    expect(web?.interval?.worst[1]).toBeCloseTo(1.5, 12);
  });

  it('of a bite are those of its depth and its opening', () => {
    // The circle of radius 10 goes in from the front, its centre 6 outside: 4 deep, 2 sqrt(100 - 36) = 16 wide.
    const { cuts } = reportOn([bore('a', [40, -6], 20)], [setup(['a'])]);
    const [bite] = cuts[0]?.bites ?? [];
    expect(bite).toMatchObject({ face: 'outline:0', depth: 4, opening: 16 });
    expect(bite?.depthInterval?.worst[0]).toBeCloseTo(4 - 0.0225, 9);
    expect(bite?.openingInterval?.worst[0]).toBeCloseTo(2 * Math.sqrt(100 - 6.0225 ** 2), 9);
    expect(bite?.openingInterval?.worst[1]).toBeCloseTo(2 * Math.sqrt(100 - 5.9775 ** 2), 9);
    // Its centre on the face it is as wide as can be: 20, and less to either side.
    const half = reportOn([bore('a', [40, 0], 20)], [setup(['a'])]).cuts[0]?.bites[0];
    expect(half?.openingInterval?.worst[1]).toBe(20);
    expect(half?.openingInterval?.worst[0]).toBeCloseTo(2 * Math.sqrt(100 - 0.0225 ** 2), 9);
  });

  it('of a cut made in two setups are those of both together', () => {
    const far = setup(['a'], { id: 't', turn: 180 });
    const part = { outline: { rectangle: [80, 40] }, thickness: 10, tolerances: 'm' };
    const { webs } = reportOn([bore('a', [40, 5], 8)], [setup(['a']), far], { part });
    // From the front 0.0225; turned round, from the back, 0.3 more.
    expect(webs[0]?.interval?.worst[0]).toBeCloseTo(1 - 0.3225, 9);
  });
});

describe('the guide', () => {
  it('shows setups and keep-outs that a job can have', () => {
    const guide = readFileSync(new URL('../../docs/datums.md', import.meta.url), 'utf8');
    const [setups, keepOut] = [...guide.matchAll(/```json\n([\s\S]*?)```/g)].map(([, json]) => json ?? '');
    const document = {
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [90, 40] }, thickness: 16 },
      ...JSON.parse(setups ?? ''),
      ...JSON.parse(`{${keepOut}}`),
      cuts: [
        { id: 'seat-ring', kind: 'annular', center: [92, 20], diameter: 36, wall: 4.5 },
        { id: 'pin', kind: 'bore', center: [60, 6], diameter: 8 },
      ],
    };
    const [row] = examine(parseJob(document)).setups;
    // As the guide says: the left end at 20, and a hole 60 in from it at 80.
    expect(row?.zero.x.at).toBe(20);
    expect(row?.targets.find(({ cut }) => cut === 'pin')?.readout).toEqual([80, 11]);
  });
});

describe('a report as text', () => {
  it.each(['saddle-block', 'treadle-bracket-inch', 'batten-cap-inch-readout'])(
    'of %s shows its setups',
    (name) => {
      const report = example(name);
      const text = textReport(report, { all: true });
      expect(report.setups.length).toBeGreaterThan(0);
      for (const { id, targets, readout } of report.setups) {
        expect(text).toContain(`. ${id}`);
        for (const { readout: at } of targets) {
          for (const shown of at) expect(text).toContain(shown.toFixed(readout.units === 'mm' ? 3 : 4));
        }
      }
      const own = text.slice(text.indexOf('SETUPS:'));
      for (const line of own.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
    },
  );

  it('tells what is done for the zero, and says what a job in two units is off by', () => {
    const text = textReport(example('batten-cap-inch-readout'), { all: true });
    expect(text).toContain('a block of 20 mm between');
    expect(text).toContain('touch stop A from the right, 0.2 in across');
    expect(text).toMatch(/the left end bears +0\.6874 /);
    expect(text).toMatch(/pin +2\.8135 +0\.3360 +0\.00011, -0\.00022/);
  });
});

it('a setup turned over makes the cuts that start from below', () => {
  const pocket = bore('a', [40, 20], 8, { from: 'bottom', depth: 4 });
  expect(codes(reportOn([pocket], [setup(['a'], { flip: 'x' })]))).not.toContain('wrong-side-up');
  expect(messageOf(reportOn([pocket], [setup(['a'])]), 'wrong-side-up')).toContain('starts from the bottom');
});

it('a finder of one name pushes a part apart from both ends', () => {
  // Touched from the left and from the right: a tip that is wider by 0.02 moves one hole to the left and
  // the other to the right.
  const cuts = [bore('a', [30, 20], 8), bore('b', [39, 20], 8)];
  const y = [finder('front', { tolerance: 0 })];
  const setups = [
    { id: 's', zero: { x: [finder('left', { name: 'tip' })], y }, cuts: ['a'] },
    { id: 't', zero: { x: [finder('right', { name: 'tip' })], y }, cuts: ['b'] },
  ];
  const [low, high] = reportOn(cuts, setups).webs[0]?.interval?.rss ?? [0, 0];
  expect((high - low) / 2).toBeCloseTo(Math.hypot(0.04, 0.0025, 0.0025), 6);
  // Both touched from the left they move alike, and only reading is left.
  const alike = [
    setups[0],
    { ...setups[1], zero: { x: [finder('left', { name: 'tip' })], y } },
  ] as typeof setups;
  const [least, most] = reportOn(cuts, alike).webs[0]?.interval?.rss ?? [0, 0];
  expect((most - least) / 2).toBeCloseTo(Math.hypot(0.0025, 0.0025), 6);
});

it('a stop is off by the same in two setups, unless it is touched anew', () => {
  const stops = [{ id: 'end', face: 'left' }];
  const bears = { bears: 'left', on: 'end' };
  const y = [finder('front', { tolerance: 0 })];
  const zero = { x: [finder('end'), bears], y };
  const cuts = [bore('a', [30, 20], 8), bore('b', [39, 20], 8)];
  const turned = { id: 't', stops, zero, cuts: ['b'], turn: 180 };
  const one = reportOn(cuts, [{ id: 's', stops, zero, cuts: ['a'] }, turned]);
  // Turned half round the finder's error pushes both holes apart, or together: twice 0.02, also by squares.
  const [low, high] = one.webs[0]?.interval?.rss ?? [0, 0];
  expect((high - low) / 2).toBeCloseTo(Math.hypot(0.04, 0.0025, 0.0025), 6);
  const anew = (name: string) => ({ x: [finder('end', { name }), bears], y });
  const two = reportOn(cuts, [
    { id: 's', stops, zero: anew('first'), cuts: ['a'] },
    { ...turned, zero: anew('second') },
  ]);
  const [least, most] = two.webs[0]?.interval?.rss ?? [0, 0];
  expect((most - least) / 2).toBeCloseTo(Math.hypot(0.02, 0.02, 0.0025, 0.0025), 6);
});
