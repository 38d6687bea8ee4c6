import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';
import { textReport } from '../../packages/previewer/src/text/report.js';
import { printedRows, printedSteps } from './follow.js';

/* What a person acts on at the machine is told as the part lies there. Values are worked out by hand. */

const axis = (to: string) => [{ touch: to, tip: 10, then: 'move half the tip and set 0', tolerance: 0 }];

function reportOf(cuts: readonly object[], lie: object | null, more: object = {}): Report {
  const ids = cuts.map((cut) => (cut as { readonly id: string }).id);
  const setup = { id: 'one', zero: { x: axis('left'), y: axis('front') }, cuts: ids };
  return examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [100, 60] }, thickness: 10 },
      readout: { units: 'mm', resolution: 0.001 },
      limits: { web: 1, hold: 1 },
      cuts,
      ...(lie === null ? {} : { setups: [{ ...setup, ...lie }] }),
      ...more,
    }),
  );
}

const under = (report: Report) => printedSteps(sheetHtml(sheetOf(report))).map((step) => step.under);

describe('pushes and ways off', () => {
  // Half a circle of 10 in metal, at the right end of the part as drawn. A tooth of a clockwise tool comes up through metal that
  // is on the tool's left, and goes down through metal on its right. Off by sqrt(10.2^2 - 10^2) = 2.010 (Pythagoras).
  const seat = { id: 'seat', kind: 'bore', center: [100, 30], diameter: 20 };
  const cases = [
    { lie: null, push: 'away from you (90°)', off: 'to the right (0°)', to: 'X 102.010 Y 30.000' },
    { lie: {}, push: 'away from you (90°)', off: 'to the right (0°)', to: 'X 102.010 Y 30.000' },
    { lie: { turn: 90 }, push: 'to the left (180°)', off: 'away from you (90°)', to: 'X 30.000 Y 102.010' },
    { lie: { turn: 180 }, push: 'towards you (270°)', off: 'to the left (180°)', to: 'X -2.010 Y 30.000' },
    { lie: { turn: 270 }, push: 'to the right (0°)', off: 'towards you (270°)', to: 'X 30.000 Y -2.010' },
    { lie: { flip: 'x' }, push: 'away from you (90°)', off: 'to the right (0°)', to: 'X 102.010 Y 30.000' },
    { lie: { flip: 'y' }, push: 'towards you (270°)', off: 'to the left (180°)', to: 'X -2.010 Y 30.000' },
  ];

  it.each(cases)('are as the part lies: $lie', ({ lie, push, off, to }) => {
    const report = reportOf([seat], lie);
    const load = `Pushes the part ${push}, side load 0.64, in metal 50.0 % of a turn, 1 strike a turn.`;
    const way = `Before you lift, back off ${off} by 2.010 mm, to ${to}, 0.200 mm clear of the wall.`;
    const [lines = []] = under(report);
    expect(lines).toContain(load);
    expect(lines).toContain(way);
    for (const text of [textReport(report), sheetText(sheetOf(report))]) {
      const flat = text.replaceAll(/\s+/g, ' ');
      expect(flat).toContain(load);
      expect(flat).toContain(way);
    }
  });

  it('are told at the heights where they differ', () => {
    // A pocket 4 deep at the end takes the upper half of the way of the hole away from it on the one side.
    const pocket = { id: 'pocket', kind: 'bore', center: [100, 40], diameter: 40, depth: 4 };
    const hole = { id: 'hole', kind: 'bore', center: [80, 40], diameter: 20 };
    const [, lines = []] = under(reportOf([pocket, hole], { turn: 180 }));
    // The pocket's circle of 20 about (100, 40) cuts the hole's of 10 about (80, 40) at 75.5° from the line of centres
    // (law of cosines: cos a = (10^2 + 20^2 - 20^2) / (2 * 10 * 20) = 1/4): 151 of 360 are gone.
    const share = ((360 - (2 * Math.acos(0.25) * 180) / Math.PI) / 3.6).toFixed(1);
    expect(lines[0]).toMatch(/^At entry and at worst, from the top: pushes the part towards you \(270°\)/);
    expect(lines[0]).toContain(`in metal ${share} % of a turn, 1 strike a turn`);
    expect(lines[1]).toBe('Breaking through, from 4.000 mm deep: in metal all round, no push to one side.');
  });
});

describe('paths', () => {
  const rows = (report: Report) =>
    printedRows(sheetHtml(sheetOf(report))).map(({ words, at }) => `${words} @ ${at.join(' ')}`);
  const way = {
    id: 'way',
    kind: 'swept',
    diameter: 6,
    depth: 2,
    path: { svgPath: 'M10 20 H40 A12 12 0 0 1 52 32 V50' },
  };

  it('give each arc with its centre, radius and sense, as the part lies', () => {
    expect(rows(reportOf([way], { turn: 180 }))).toEqual([
      'go there lifted, then down @ 90 40',
      'straight there @ 60 40',
      'counter-clockwise arc there about X 60.000 Y 28.000, radius 12.000 @ 48 28',
      'straight there @ 48 10',
      'lift off the part @ 48 10',
    ]);
    expect(rows(reportOf([{ ...way, from: 'bottom' }], { flip: 'x' }))).toEqual([
      'go there lifted, then down @ 10 40',
      'straight there @ 40 40',
      'clockwise arc there about X 40.000 Y 28.000, radius 12.000 @ 52 28',
      'straight there @ 52 10',
      'lift off the part @ 52 10',
    ]);
    expect(sheetText(sheetOf(reportOf([way], {})))).toContain('Arcs: hand wheels cannot follow one.');
  });

  it('in several runs give where each starts, and a lift after each', () => {
    const part = {
      part: {
        outline: { svgPath: 'M0 0 H40 V25 H60 V0 H100 V60 H60 V35 H40 V60 H0 Z' },
        thickness: 10,
      },
    };
    // Down the right wall of the left room, and up the left wall of the right one: the neck of 10 between them is too
    // narrow for a tool of 8 with 2 left on either side. 6 from each wall.
    const along = {
      side: 'inside',
      allowance: 2,
      lead: 'none',
      from: { edge: 'outline:1', distance: 5 },
      to: { edge: 'outline:3', distance: 20 },
    };
    const wall = { id: 'wall', kind: 'swept', diameter: 8, depth: 2, path: { along } };
    const all = rows(reportOf([wall], {}, part));
    const starts = all.filter((row) => row.includes('go there lifted, then down'));
    const lifts = all.filter((row) => row.includes('lift off the part'));
    expect(starts.map((row) => row.split(':')[0])).toEqual(lifts.map((row) => row.split(':')[0]));
    expect(starts.length).toBeGreaterThan(1);
    expect(all.indexOf(lifts[0] as string) + 1).toBe(all.indexOf(starts[1] as string));
  });
});

describe('cuts in no setup', () => {
  it('have the numbers of the drawing, and are turned over for what is cut from the bottom', () => {
    const report = reportOf(
      [
        { id: 'over', kind: 'bore', center: [20, 10], diameter: 8, depth: 3 },
        { id: 'below', kind: 'bore', center: [100, 30], diameter: 20, depth: 4, from: 'bottom' },
      ],
      null,
    );
    const { blocks } = sheetOf(report);
    expect(blocks.map(({ setup, up }) => [setup, up])).toEqual([
      ['as drawn', 'top'],
      ['as drawn, turned over', 'bottom'],
    ]);
    // Turned over about the y axis, the right end lies at the left, and X counts the other way.
    expect(blocks.map(({ steps }) => steps[0]?.stands[0]?.target)).toEqual([
      [20, 10],
      [-100, 30],
    ]);
    expect(blocks[1]?.zero[0]?.result).toContain('X is that of the drawing with the other sign');
    expect(blocks[1]?.steps[0]?.tells[0]).toContain('Pushes the part towards you (270°)');
    expect(blocks[1]?.steps[0]?.tells.at(-1)).toContain('back off to the left (180°) by 2.010 mm');
  });
});

describe('bodies', () => {
  // Cores: half a disc of radius 8, 10 high, with the floor under it: 1005.310. The second ring meets the slug of the first.
  const ring = (id: string, x: number) => ({ id, kind: 'annular', center: [x, 60], diameter: 22, wall: 3 });

  it('are told with their size as they let go, and taken out before a step that meets them', () => {
    const report = reportOf([ring('one', 50), ring('two', 55)], { turn: 90 });
    const steps = printedSteps(sheetHtml(sheetOf(report)));
    const [slug] = report.bodies;
    expect(slug?.volume).toBeCloseTo(Math.PI * 320, 6);
    expect(steps[0]?.under.join(' ')).toContain(
      `Lets ${slug?.id} go 10.000 mm deep, 1005 mm³. Stop the spindle and take it out before you go on: step 2 (cut two) runs through where it lies.`,
    );
    expect(steps[1]?.over).toContain(
      `First stop the spindle and take out ${slug?.id}, loose since step 1 (cut one): it lies in the way.`,
    );
  });

  it('that hang by thin metal are said to, from the depth on at which they do', () => {
    const { under: lines } = printedSteps(
      sheetHtml(sheetOf(reportOf([{ ...ring('one', 50), depth: 9.6 }], {}))),
    )[0] as { under: readonly string[] };
    expect(lines.join(' ')).toMatch(
      /From 9\.600 mm deep on \S+, 1005 mm³, hangs by metal 0\.400 mm thick: it may let go at any moment\. Clamp it, never hold it by hand\./,
    );
    const held = under(reportOf([{ ...ring('one', 50), depth: 7 }], {}))[0] ?? [];
    expect(held.join(' ')).toMatch(/stays on metal 3\.000 mm thick\./);
  });
});
