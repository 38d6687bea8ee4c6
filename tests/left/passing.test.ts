import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** The report on a plate 80 by 30, 12 thick, held on its left; and the bodies of which nothing is left in the end. */
function report(cuts: readonly object[]) {
  const whole = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 30] }, thickness: 12 },
      keep: [5, 15],
      cuts,
    }),
  );
  const passing = whole.bodies
    .filter(({ pieces }) => pieces.length === 0)
    .map(({ step, ...body }) => ({ ...body, freedBy: whole.steps[step]?.cut }));
  return { ...whole, passing };
}

const rough = { id: 'rough', kind: 'annular', center: [83, 15], diameter: 24, wall: 4 };
const seat = { id: 'seat', kind: 'bore', center: [83, 15], diameter: 26 };

/** Area of the part of a disc of radius r that lies beyond a line at distance e from its centre. */
const segment = (r: number, e: number) => r * r * Math.acos(e / r) - e * Math.sqrt(r * r - e * e);

describe('bodies that come loose and are cut away later', () => {
  it('are told of, with their volume (circular segment, Machinery’s Handbook, 31st ed.)', () => {
    const { passing, pieces, findings } = report([rough, seat]);
    expect(pieces.map(({ role }) => role)).toEqual(['kept']);
    expect(passing).toHaveLength(1);
    expect(passing[0]).toMatchObject({ freedBy: 'rough', role: 'slug' });
    expect(passing[0]?.volume).toBeCloseTo(segment(8, 3) * 12, 8);
    expect(findings[0]).toMatchObject({
      level: 'danger',
      code: 'loose-slug',
      about: ['body:slug-1', 'cut:rough', 'step:0'],
    });
    expect(passing[0]).toMatchObject({ atDepth: 12, end: 'cut into', endStep: 1 });
  });

  it('are none where the slug is left', () => {
    const { passing, pieces } = report([rough]);
    expect(passing).toEqual([]);
    expect(pieces.map(({ role }) => role)).toEqual(['kept', 'slug']);
  });

  it('are none where some of the slug is left', () => {
    const { passing, pieces } = report([rough, { ...seat, diameter: 8 }]);
    expect(passing).toEqual([]);
    expect(pieces.map(({ role }) => role)).toEqual(['kept', 'slug']);
  });

  it('are none where the ring comes after the bore', () => {
    expect(report([seat, rough]).passing).toEqual([]);
  });

  it('name the cut that breaks the floor, not the one that left it', () => {
    const under = { id: 'under', kind: 'bore', center: [83, 15], diameter: 26, from: 'bottom', depth: 4 };
    const { passing } = report([{ ...rough, reach: 9 }, under, seat]);
    expect(passing).toHaveLength(1);
    expect(passing[0]).toMatchObject({ freedBy: 'under', role: 'slug' });
    // The floor of 3 is gone when the tool is 3 deep: the slug lets go 9 high, and the same tool cuts 1 more off it.
    expect(passing[0]).toMatchObject({ atDepth: 3 });
    expect(passing[0]?.volume).toBeCloseTo(segment(8, 3) * 9, 8);
  });

  it('may be offcuts', () => {
    const slot = { id: 'slot', kind: 'swept', diameter: 2, path: { svgPath: 'M70 -2 V32' } };
    const away = { id: 'away', kind: 'swept', diameter: 30, path: { svgPath: 'M84 -10 V40' } };
    const { passing, pieces } = report([slot, away]);
    expect(pieces.map(({ role }) => role)).toEqual(['kept']);
    expect(passing).toHaveLength(1);
    expect(passing[0]).toMatchObject({ freedBy: 'slot', role: 'offcut' });
    expect(passing[0]?.volume).toBeCloseTo(9 * 30 * 12, 8);
  });

  it('are told of one by one', () => {
    const cuts = [1, 2, 3].flatMap((k) => [
      { ...rough, id: `ring-${k}`, center: [20 * k, 15], diameter: 10, wall: 2 },
      { ...seat, id: `bore-${k}`, center: [20 * k, 15], diameter: 10 },
    ]);
    expect(report(cuts).passing.map(({ freedBy }) => freedBy)).toEqual(['ring-1', 'ring-2', 'ring-3']);
    const ringsFirst = [...cuts].sort((a, b) => b.id.localeCompare(a.id));
    expect(report(ringsFirst).passing.map(({ freedBy }) => freedBy)).toEqual(['ring-3', 'ring-2', 'ring-1']);
  });
});
