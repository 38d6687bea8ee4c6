import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../packages/previewer/src/sheet/text.js';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { findingsOf, plate, setup, stepOf, told } from './told.js';

describe('a path in two runs', () => {
  // A tool of 6 goes round the plate and round a hole of radius 10 in it, on the side away from the metal, without
  // leads: 3 off the edges with arcs of radius 3 about the corners, and on a circle of radius 10 - 3 = 7.
  const job = {
    ...plate([]),
    part: {
      outline: { rectangle: [80, 30] as const, holes: [{ circle: 20, at: [40, 15] as const }] },
      thickness: 12,
    },
    setups: [setup('one', ['round'])],
    cuts: [
      {
        id: 'round',
        kind: 'swept',
        diameter: 6,
        depth: 2,
        path: { along: { loop: 'all', side: 'outside', lead: 'none' } },
      },
    ],
  } as never;
  const { stands } = stepOf(told(job), 0);

  it('starts twice, and is lifted before the second start', () => {
    const starts = stands.filter(({ what }) => what === 'start');
    expect(starts).toHaveLength(2);
    expect(starts[1]?.lifted).toBe(true);
    expect(stands.filter(({ lifted, what }) => lifted && what !== 'start')).toEqual([]);
  });

  it('has its arcs with centre, radius and sense', () => {
    // Half a tip of 10 from left and front face: the corners of the plate read 5 or 85 and 5 or 35, the hole 45 and 20.
    const arcs = stands.flatMap(({ arc }) => (arc === null ? [] : [arc]));
    const corners = arcs.filter(({ radius }) => Math.abs(radius - 3) < 1e-9);
    const inner = arcs.filter(({ radius }) => Math.abs(radius - 7) < 1e-9);
    expect(corners).toHaveLength(4);
    expect(corners.length + inner.length).toBe(arcs.length);
    expect(corners.map(({ center }) => center.join(' ')).sort()).toEqual(['5 35', '5 5', '85 35', '85 5']);
    for (const { center } of inner) expect(center).toEqual([45, 20]);
    // Conventional, as jobs have it without saying so: a clockwise spindle then has the metal at its left as it goes, so
    // it goes round a part counter-clockwise and round a hole clockwise. Common practice, no source.
    for (const { sense } of corners) expect(sense).toBe('counter-clockwise');
    for (const { sense } of inner) expect(sense).toBe('clockwise');
  });

  it('is on the sheet with each start and the lift', () => {
    const sheet = sheetText(sheetOf(examine(parseJob(job))));
    expect(sheet).toMatch(/lift/i);
    for (const { what, readout } of stands) {
      if (what !== 'start') continue;
      for (const value of readout) expect(sheet).toContain(value.toFixed(3));
    }
  });
});

describe('a keep-out in the way of a pass', () => {
  it('is told of the pass that runs into it, though the last one is clear of it', () => {
    // A bore of radius 10 about (40, 2) steps in from the front by 4: it touches the plate at y = -10, so its passes stand
    // at -6, -2 and 2, and reach to -16, -12 and -8. The jaw begins at -14.
    const cut: CutDocument = {
      id: 'seat',
      kind: 'bore',
      center: [40, 2],
      diameter: 20,
      passes: { kind: 'step in', bite: 4, approach: 90 },
    };
    const jaw = { id: 'vice', kind: 'jaw', shape: { rectangle: [60, 16], at: [10, -30] }, from: -20, to: 10 };
    const report = told(plate([cut], { keepOut: [jaw], setups: [setup('one', ['seat'])] }));
    expect(report.steps.map(({ center }) => center)).toEqual([
      [40, -6],
      [40, -2],
      [40, 2],
    ]);
    const hits = report.steps.map((_, k) => findingsOf(report, k).some(({ code }) => code === 'hits-jaw'));
    expect(hits).toEqual([true, false, false]);
  });

  it('is told of the pass that reaches it, and not of those before', () => {
    // A hole of radius 5 about (40, 15) is opened out by 2.5 to radius 10, through the plate. Under it a parallel begins
    // at x = 49: the passes, of radius 7.5 and 10, reach to 47.5 and 50. What comes out below a hole of 5 reaches to 45.
    const cuts: CutDocument[] = [
      { id: 'hole', kind: 'bore', center: [40, 15], diameter: 10 },
      {
        id: 'seat',
        kind: 'bore',
        center: [40, 15],
        diameter: 20,
        passes: { kind: 'open out', bite: 2.5, smallest: 8 },
      },
    ];
    const parallel = {
      id: 'p',
      kind: 'parallel',
      shape: { rectangle: [10, 30], at: [49, 0] },
      from: -20,
      to: 0,
    };
    const report = told(plate(cuts, { keepOut: [parallel] }));
    expect(report.steps.map(({ diameter }) => diameter)).toEqual([10, 15, 20]);
    const hits = report.steps.map((_, k) =>
      findingsOf(report, k).some(({ code }) => code === 'hits-parallel'),
    );
    expect(hits).toEqual([false, false, true]);
  });
});

describe('a ring that goes through over the front edge', () => {
  // Radii 10 and 7 about (40, -8): it goes 2 deep into the plate, has no core in it, and could come off to the front.
  const ring: CutDocument = { id: 'ring', kind: 'annular', center: [40, -8], diameter: 20, wall: 3 };
  const under = (to: number) => ({
    id: 'p',
    kind: 'parallel',
    shape: { rectangle: [10, 60], at: [35, -30] },
    from: -20,
    to,
  });

  it('has no way off over a parallel that the part lies on, as little as it may stand there', () => {
    // It ends level with the face that the part lies on, right where the parallel begins.
    const { backOff } = stepOf(told(plate([ring], { keepOut: [under(0)] })), 0);
    expect(backOff.by).toBeNull();
    expect(backOff.why).toMatch(/parallel p is in the way/);
  });

  it('has one over a parallel that lies lower', () => {
    const { backOff } = stepOf(told(plate([ring], { keepOut: [under(-1)] })), 0);
    expect(backOff.by).toBeGreaterThan(0);
    expect(backOff.machine?.words).toBe('towards you');
  });
});

describe('a path with leads', () => {
  // A tool of 6 goes round the plate, 80 by 30 at (0, 0), with leads of a quarter turn of radius 2: it goes down and is
  // lifted 2 off its path, which lies 3 off the edges: where it goes along an edge, 5 off it.
  const round = {
    id: 'round',
    kind: 'swept',
    diameter: 6,
    depth: 2,
    path: { along: { loop: 'all', side: 'outside', lead: 2 } },
  };
  const { stands } = stepOf(
    told({ ...plate([]), setups: [setup('one', ['round'])], cuts: [round] } as never),
    0,
  );

  it('goes down, along the one, round, and along the other off the path', () => {
    expect(stands.map(({ what }) => what).filter((what) => what !== 'path')).toEqual([
      'start',
      'lead in',
      'lead out',
    ]);
    const [first, last] = [stands[0], stands.at(-1)];
    expect(last?.what).toBe('lead out');
    for (const stand of [first, last]) {
      // The readout is 5 at the left and the front face.
      const [x, y] = (stand?.readout ?? [0, 0]).map((value) => value - 5) as [number, number];
      const off = Math.hypot(Math.max(0, -x, x - 80), Math.max(0, -y, y - 30));
      expect(off).toBeCloseTo(5, 2);
    }
    for (const { what, arc } of stands) {
      if (what === 'lead in' || what === 'lead out') expect(arc?.radius).toBeCloseTo(2, 9);
    }
  });
});

it('counts the passes of a cut from 1, and has no number where there is one only', () => {
  const opened = {
    id: 'a',
    kind: 'bore',
    center: [40, 15],
    diameter: 8,
    passes: { kind: 'open out', bite: 1 },
  };
  const { steps } = told(
    plate([opened, { id: 'b', kind: 'bore', center: [20, 15], diameter: 8 }] as never),
  ) as unknown as { steps: { pass: number | null; passes: number }[] };
  // A hole of radius 4 opened out from nothing by 1 at a time.
  expect(steps.map(({ pass, passes }) => [pass, passes])).toEqual([
    [1, 4],
    [2, 4],
    [3, 4],
    [4, 4],
    [null, 1],
  ]);
});
