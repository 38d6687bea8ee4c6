import { parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate, told } from './told.js';

const WIDE = { part: { outline: { rectangle: [120, 60] }, thickness: 12 } };

const two = (x: number): CutDocument[] => [
  { id: 'a', kind: 'bore', center: [40, 30], diameter: 14 },
  { id: 'b', kind: 'bore', center: [x, 30], diameter: 14 },
];

describe('two bites that merge', () => {
  it('do so in the report, at the step that takes the last land between them', () => {
    // Centres 12 apart, radii of 7: they overlap by 2.
    const { merges } = told(plate(two(52), WIDE));
    expect(merges).toHaveLength(1);
    expect(merges[0]).toMatchObject({ step: 1 });
    expect([...(merges[0]?.cuts ?? [])].sort()).toEqual(['a', 'b']);
    expect(told(plate(two(56), WIDE)).merges).toEqual([]);
  });

  it('are an event of a range, and nothing is safe beyond it', () => {
    // Two radii of 7 meet where the centres are 14 apart, at 54.
    const job = parseJob(plate(two(60), WIDE));
    const { events, intervals } = rangeOf(job, { cut: 'b', along: 'x', from: 46, to: 64 });
    expect(events.some(({ at }) => Math.abs(at - 54) < 1e-6)).toBe(true);
    for (const { to, safe } of intervals) if (to <= 54 + 1e-6) expect(safe).toBe(false);
    expect(intervals.at(-1)?.safe).toBe(true);
  });

  it('touch as a web of thickness 0', () => {
    // 14 apart they have one place in common, in the middle: (47, 30).
    const { webs } = told(plate(two(54), WIDE));
    expect(webs).toHaveLength(1);
    expect(webs[0]?.thickness).toBeCloseTo(0, 9);
    expect(webs[0]?.at[0]).toBeCloseTo(47, 6);
    expect(webs[0]?.at[1]).toBeCloseTo(30, 6);
  });
});

describe('a hole through a reflex corner', () => {
  it('is a web of thickness 0 there, and there is a word about it', () => {
    // The corner (60, 40) lies 6 right of and 8 behind the centre of a circle of radius 10.
    const outline = { svgPath: 'M0 0 H100 V40 H60 V80 H0 Z' };
    const hole: CutDocument = { id: 'hole', kind: 'bore', center: [54, 32], diameter: 20 };
    const report = told(plate([hole], { part: { outline, thickness: 12 } }));
    const touch = report.webs.find(({ at: [x, y] }) => Math.hypot(x - 60, y - 40) < 1e-6);
    expect(touch?.thickness).toBeCloseTo(0, 9);
    expect(touch?.between).toContain('cut:hole');
    const index = touch === undefined ? -1 : report.webs.indexOf(touch);
    expect(report.findings.some(({ about }) => about.includes(`web:${index}`))).toBe(true);
  });
});
