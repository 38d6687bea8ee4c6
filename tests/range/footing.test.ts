import { examine, parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * An end mill that does not cut to its centre goes down where holes of the part are: safe with its centre over one of
 * them, a danger on the metal between. The holes lie where the centre is in the middle and at both ends of the range, so
 * that only what is between tells. That such an end mill must not be plunged is common practice, no source.
 */
const holes = [45, 50, 55].map((x) => ({ circle: 4, at: [x, 30] }));

const job = (x: number, cutsToCenter: boolean) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [100, 60], holes }, thickness: 12, material: 'mild steel' },
  cuts: [{ id: 'well', kind: 'bore', center: [x, 30], diameter: 40 }],
  tools: [
    {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 40,
      teeth: 4,
      centerCutting: cutsToCenter,
      cuts: ['well'],
    },
  ],
});

const dangersAt = (x: number, cutsToCenter = false) =>
  examine(parseJob(job(x, cutsToCenter)))
    .findings.filter(({ level }) => level === 'danger')
    .map(({ code }) => code);

const asked = (cutsToCenter: boolean) =>
  rangeOf(parseJob(job(50, cutsToCenter)), { cut: 'well', along: 'x', from: 44.5, to: 55.5 });

describe('a danger of a tool between the middle and the ends of a stretch', () => {
  it('is there, where the centre is on metal', () => {
    const metal = [47.5, 52.5].map((x) => dangersAt(x));
    const over = [44.6, 50, 55.4].map((x) => dangersAt(x));
    expect(over).not.toContainEqual(expect.arrayContaining(['plunges-on-center']));
    for (const codes of metal) expect(codes).toContain('plunges-on-center');
  });

  it('makes it unsafe', () => {
    const { intervals } = asked(false);
    expect(intervals.filter(({ safe }) => safe)).toEqual([]);
    expect(intervals.flatMap(({ adds }) => adds.map(({ code }) => code))).toContain('plunges-on-center');
  });

  it('and only that: with a mill that cuts to its centre all is safe', () => {
    expect(dangersAt(47.5, true)).toEqual([]);
    expect(asked(true).intervals.every(({ safe }) => safe)).toBe(true);
  });
});
