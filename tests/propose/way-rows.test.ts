import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { type RowOptions, tolerancesOf, wayRowOf } from '../../packages/core/src/propose/row.js';

/*
 * What a way comes to, counted by hand from its job: which tools, how often they change, how often the part is clamped,
 * what has to be sawn, and how far the worst wall may be off.
 */

const PLATE = { outline: { rectangle: [100, 60] }, thickness: 10, material: 'mild steel' };

type Given = Readonly<Record<string, unknown>>;

function rowOf(given: Given, options: Partial<RowOptions> = {}) {
  const job = parseJob({ edgebite: 1, units: 'mm', part: PLATE, keep: [3, 3], ...given });
  const report = examine(job);
  const row = wayRowOf(report, { toolChange: 0, turning: 0, tolerances: tolerancesOf(job), ...options });
  return { report, row };
}

const bore = (id: string, x: number, more: Given = {}) => ({
  id,
  kind: 'bore',
  center: [x, 30],
  diameter: 10,
  ...more,
});

const touch = (side: string, tolerance: number) => [
  { touch: side, tip: 10, then: 'move half the tip and set 0', tolerance },
];

const setup = (id: string, cuts: readonly string[], tolerance = 0.01) => ({
  id,
  zero: { x: touch('left', tolerance), y: touch('front', tolerance) },
  readout: { resolution: 0.005 },
  cuts,
});

const DRILL = { id: 'drill', kind: 'drill', diameter: 10, toolMaterial: 'HSS', teeth: 2 };
const MILL = { id: 'mill', kind: 'end mill', diameter: 10, toolMaterial: 'HSS', teeth: 4 };

/** Minutes of all steps, without changes. */
const cutting = ({ steps }: Report) =>
  [0, 1].map((k) => steps.reduce((sum, { minutes }) => sum + (minutes?.[k] as number), 0));

describe('what a way comes to', () => {
  it('counts tools once, a change whenever another one is put in, and each clamping', () => {
    const { report, row } = rowOf(
      {
        tools: [
          { ...DRILL, cuts: ['a', 'b', 'd'] },
          { ...MILL, cuts: ['c'] },
        ],
        setups: [setup('one', ['a', 'b', 'c']), setup('two', ['d'])],
        cuts: [bore('a', 15), bore('b', 35), bore('c', 55), bore('d', 75)],
      },
      { toolChange: 2, turning: 7 },
    );
    expect([...row.tools].sort()).toEqual(['drill', 'mill']);
    // drill, drill, mill, drill: two changes; and one new setup.
    expect([row.steps, row.toolChanges, row.setups]).toEqual([4, 2, 2]);
    const [least, most] = cutting(report) as [number, number];
    expect(least).toBeGreaterThan(0);
    expect(most).toBeGreaterThan(least);
    expect(row.minutes).toEqual([expect.closeTo(least + 2 * 2 + 7, 9), expect.closeTo(most + 2 * 2 + 7, 9)]);
  });

  it('knows no time where one feed is not known', () => {
    const { row } = rowOf({
      tools: [{ ...DRILL, cuts: ['a'] }],
      cuts: [bore('a', 15), bore('b', 35)],
    });
    expect(row.minutes).toBeNull();
  });

  it('names the step that is loaded most to one side, wherever it stands in the order', () => {
    // A hole through the left edge by half is loaded far more to one side than one through it by a little of it.
    const half = bore('half', 0, { center: [0, 30] });
    const grazes = bore('grazes', 100, { center: [96, 30] });
    for (const cuts of [
      [half, grazes],
      [grazes, half],
    ]) {
      const { row } = rowOf({ cuts: [bore('full', 50), ...cuts] });
      expect(row.worstLoad?.cut).toBe('half');
      // Half a circle: its chord over its arc, 2 / pi.
      expect(row.worstLoad?.size).toBeCloseTo(2 / Math.PI, 9);
    }
  });

  it('saws off what a floor holds round its core, and nothing that falls', () => {
    const ring = { id: 'ring', kind: 'annular', center: [30, 30], diameter: 30, wall: 2 };
    const held = rowOf({ cuts: [{ ...ring, depth: 7, reach: 20 }] });
    // Its core of 30 - 2 * 2 across, on a floor of 3: the saw goes round it.
    expect(held.row.saw).toEqual([{ body: 'slug-1', length: expect.closeTo(26 * Math.PI, 9) }]);
    expect(held.row.slugs).toBe(0);
    const free = rowOf({ cuts: [{ ...ring, reach: 20 }] });
    expect(free.row.saw).toEqual([]);
    expect(free.row.slugs).toBe(1);
  });

  it('saws off what hangs by a floor too thin to hold it', () => {
    const ring = { id: 'ring', kind: 'annular', center: [30, 30], diameter: 30, wall: 2 };
    const { report, row } = rowOf({ limits: { web: 1 }, cuts: [{ ...ring, depth: 9.5, reach: 20 }] });
    expect(report.pieces.map(({ role }) => role)).toContain('hanging');
    expect(row.saw).toEqual([{ body: 'slug-1', length: expect.closeTo(26 * Math.PI, 9) }]);
  });

  it('tells how far the worst wall may be off: half of what its tool is over size, and the place', () => {
    const wall = (tolerance: number) =>
      rowOf({
        tools: [
          { ...DRILL, cuts: ['rough'], diameterTolerance: 0.8 },
          {
            ...MILL,
            id: 'fine',
            diameter: 12,
            cuts: ['a'],
            diameterTolerance: 0.03,

            runOut: 0.01,
          },
        ],
        setups: [setup('one', ['rough', 'a'], tolerance)],
        cuts: [bore('rough', 50), bore('a', 50, { diameter: 12 })],
      });
    // The rough hole is gone in the end, and its tool with it. A zero at a place of two axes: each off by its tolerance and
    // half a step of the readout, as the targets tell; 0.04 / 2 of the tool.
    const { report, row } = wall(0.05);
    const worst = report.steps.map(({ targets }) => targets[0]?.worst);
    expect(worst[1]?.[0]).toBeGreaterThanOrEqual(0.05);
    expect(row.uncertainty).toBeCloseTo(0.02 + Math.max(...(worst[1] as readonly number[])), 9);
    expect(row.uncertainty).toBeLessThan(0.2);
    expect(wall(0.15).row.uncertainty - row.uncertainty).toBeCloseTo(0.1, 9);
  });

  it('tells the dangers, the checks, and pushes only where they were asked for', () => {
    const { report, row } = rowOf({ cuts: [bore('a', 50), bore('b', 60.4)] });
    expect(row.dangers.map(({ level }) => level)).toEqual(row.dangers.map(() => 'danger'));
    expect(row.dangers.length + row.checks.length).toBe(
      report.findings.filter(({ level }) => level === 'danger' || level === 'check').length,
    );
    expect(row.pushes).toBeNull();
    expect(rowOf({ cuts: [bore('a', 50)] }, { pushes: 2 }).row.pushes).toBe(2);
  });
});
