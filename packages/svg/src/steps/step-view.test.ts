import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { drawStep } from '../index.js';

const JOB = {
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12 },
  setups: [
    {
      id: 'turned',
      turn: 180,
      zero: { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] },
      cuts: ['seat', 'pin'],
    },
  ],
  cuts: [
    { id: 'seat', kind: 'annular', center: [78, 15], diameter: 26, wall: 4 },
    { id: 'pin', kind: 'bore', center: [20, 15], diameter: 8 },
  ],
};
const report = examine(parseJob(JOB));

/** All circles of a drawing: centre and radius in its own coordinates. */
function circlesIn(svg: string): { r: number; x: number; y: number }[] {
  return [...svg.matchAll(/<circle r="([\d.]+)" cx="([\d.-]+)" cy="([\d.-]+)"/g)].map(([, r, x, y]) => ({
    r: Number(r),
    x: Number(x),
    y: Number(y),
  }));
}

describe('one step drawn for a screen', () => {
  it('has the tool where it stands as the part lies, all of it in the picture', () => {
    const svg = drawStep(report, 0, { size: [120, 80] });
    const outer = Math.max(...circlesIn(svg).map(({ r }) => r));
    const tool = circlesIn(svg).find(({ r }) => r === outer);
    expect(tool).toBeDefined();
    const { r = 0, x = 0, y = 0 } = tool ?? {};
    // The ring stands at the right end of the drawing; turned by half a turn it is at the left.
    expect(x).toBeLessThan(60);
    expect(x - r).toBeGreaterThanOrEqual(0);
    expect(y).toBeCloseTo(40, 6);
    // Ring and core have the diameters of the cut: 26 outside, 18 inside.
    const inner = circlesIn(svg).find((one) => Math.abs(one.r - (outer * 18) / 26) < 1e-3 && one.x === x);
    expect(inner).toBeDefined();
  });

  it('says in its words what happens, and has no id twice', () => {
    const svg = drawStep(report, 0);
    expect(svg).toMatch(/<title[^>]*>Step 1 seat<\/title>/);
    expect(svg).toMatch(/<desc[^>]*>[^<]*slug-1/);
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id?.startsWith('edgebite-step-'))).toBe(true);
    expect(drawStep(report, 0)).toBe(svg);
  });

  it('refuses a step that is none, and a size that is none', () => {
    expect(() => drawStep(report, 2)).toThrow('drawStep: there is no step 2; the report has 2, from 0');
    expect(() => drawStep(report, 0, { size: [10, 80] })).toThrow('each side must be from 40 to 2000');
    expect(() => drawStep(report, 0, { idPrefix: '1' })).toThrow(RangeError);
    const bare = { ...report, steps: report.steps.map((step) => ({ ...step, after: null })) };
    expect(() => drawStep(bare, 0)).toThrow('too large');
  });
});
