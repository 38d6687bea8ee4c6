import { examine, parseJob, rangeOf } from '@edgebite/core';
import { expect, it } from 'vitest';

/* A bore that walks from whole metal through a window into the thin wall between two windows. */

const windows = [40, 51].map((x) => ({ rectangle: [10, 30], at: [x, 15] }));
const written = (x: number) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 60], holes: windows }, thickness: 12 },
  limits: { web: 2, knifeEdge: 30 },
  resolution: 0.1,
  cuts: [{ id: 'hole', kind: 'bore', center: [x, 30], diameter: 16 }],
});

const answer = rangeOf(parseJob(written(80)), { cut: 'hole', along: 'x', from: 52, to: 80 });
const at = answer.events.map((event) => event.at);

// The second window ends at 61, the wall stands from 50 to 51, and the rim is 8 before the centre: the web to the window is
// 2 thick at 71 and gone at 69; the rim comes to the wall at 59 and is through it at 58; its corners leave the window's
// height of 30 nowhere. With the web limit of 2 the wall itself, 1 thick, is a web throughout.
it.each([71, 69, 59, 58])('has an event at %d', (x) => {
  expect(Math.min(...at.map((value) => Math.abs(value - x)))).toBeLessThan(28e-9);
});

it('says of each stretch what the job in the middle of it comes to', () => {
  expect(answer.intervals.length).toBeGreaterThan(4);
  for (const { from, to, outcome } of answer.intervals) {
    const report = examine(parseJob(written((from + to) / 2)));
    const [cut] = report.cuts;
    expect(outcome.relation).toBe(cut?.relation);
    expect(outcome.findings.map(({ code }) => code).sort()).toEqual(
      report.findings.flatMap(({ code, level }) => (level === 'note' ? [] : [code])).sort(),
    );
  }
});
