import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { BODY_AREA, block, SLUG_AREA } from '../../fixtures/block.js';
import { stepsOf } from './states.js';

describe('the steps of a job', () => {
  it('are before, after each cut and at the end, where what is drawn is the report itself', () => {
    const { states, leftOut } = stepsOf(block, 9);
    expect(states.map(({ after, cut }) => [after, cut?.id ?? null])).toEqual([
      [0, null],
      [1, 'rough'],
      [2, 'eye'],
      [3, 'near'],
      [4, 'groove'],
    ]);
    expect(states[4]?.report).toBe(block);
    expect(leftOut).toEqual([]);
  });

  it('have the areas that follow from right triangles and circle segments', () => {
    const { states } = stepsOf(block, 9);
    const areas = states.map(({ report }) => report.pieces.map(({ area }) => area));
    const bare = BODY_AREA + Math.PI * 41;
    [[2400], [bare, SLUG_AREA], [bare - Math.PI * 25, SLUG_AREA], [BODY_AREA, SLUG_AREA]].forEach(
      (expected, i) => {
        expect(areas[i]).toHaveLength(expected.length);
        for (const [k, area] of expected.entries()) expect(areas[i]?.[k]).toBeCloseTo(area, 9);
      },
    );
  });

  it('are the same as those of a job of so many cuts', () => {
    const job = (cuts: number) => ({
      edgebite: 1,
      units: 'mm',
      part: { outline: { slot: [100, 44], holes: [{ circle: 8, at: [0, 0] }] }, thickness: 20 },
      keep: [-10, 12],
      cuts: [
        { id: 'drum', kind: 'annular', center: [34, 0], diameter: 38, wall: 5, reach: 17 },
        { id: 'under', kind: 'bore', center: [-32, 0], diameter: 12, depth: 6, from: 'bottom' },
        {
          id: 'way',
          kind: 'swept',
          diameter: 4,
          depth: 3,
          path: { svgPath: 'M-20 -10 A10 10 0 0 1 0 -10 L10 -10' },
        },
      ].slice(0, cuts),
    });
    const { states } = stepsOf(examine(parseJob(job(3))), 9);
    for (const { after, report } of states.slice(0, 3)) {
      const own = examine(parseJob(job(after)));
      expect(report.pieces.map(({ role, volume }) => [role, volume.toFixed(9)])).toEqual(
        own.pieces.map(({ role, volume }) => [role, volume.toFixed(9)]),
      );
    }
  });

  it('leave out the least telling cuts where there is no room, and never what sets something loose or the last', () => {
    const { states, leftOut } = stepsOf(block, 3);
    expect(states.map(({ cut }) => cut?.id ?? null)).toEqual([null, 'rough', 'groove']);
    expect(leftOut.map((k) => block.cuts[k]?.id)).toEqual(['eye', 'near']);
  });
});
