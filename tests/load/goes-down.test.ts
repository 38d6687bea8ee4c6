import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** Remarks on footing in a plate of 100 by 60 with one cut by one end mill. */
function told(cut: object, tool: object): string[] {
  const job = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [100, 60] }, thickness: 12, material: 'mild steel' },
    cuts: [cut],
    tools: [
      { id: 'mill', kind: 'end mill', toolMaterial: 'HSS', teeth: 4, diameter: 8, cuts: ['c'], ...tool },
    ],
  };
  return examine(parseJob(job))
    .findings.filter(
      ({ code }) =>
        code === 'plunges-on-center' || code === 'cuts-to-center-unknown' || code === 'tool-enters-badly',
    )
    .map(({ level, code }) => `${level} ${code}`);
}

const path = (from: number, to: number) => ({
  id: 'c',
  kind: 'swept',
  diameter: 8,
  depth: 3,
  path: { svgPath: `M ${from} 30 L ${to} 30` },
});

describe('an end mill that goes down', () => {
  it('at the start of a path, in metal: whether it cuts to its centre matters', () => {
    expect(told(path(20, 80), { centerCutting: false })).toEqual(['danger plunges-on-center']);
    expect(told(path(20, 80), {})).toEqual(['check cuts-to-center-unknown']);
    expect(told(path(20, 80), { centerCutting: true })).toEqual([]);
  });

  it('beside the part it goes down in air', () => {
    for (const centerCutting of [true, false, undefined]) {
      expect(told(path(-10, 80), centerCutting === undefined ? {} : { centerCutting })).toEqual([]);
    }
  });

  it('inside of a bore that is metal all over it goes down in metal, wherever that is', () => {
    const bore = { id: 'c', kind: 'bore', center: [50, 30], diameter: 20 };
    expect(told(bore, { centerCutting: false })).toEqual(['danger plunges-on-center']);
    expect(told(bore, { centerCutting: true })).toEqual([]);
    expect(told({ ...bore, center: [95, 30] }, { centerCutting: false })).toEqual([]);
  });
});
