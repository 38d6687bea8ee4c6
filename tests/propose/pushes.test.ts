import { type AimDocument, parseAim, propose } from '@edgebite/core';
import { expect, test } from 'vitest';

/*
 * Two holes of 12 that run into each other, 8 apart along x, each plunged by a mill of 12. The first is cut all the way
 * round; the second only on its far side. A tool that turns clockwise, seen from above, drags what is on its right towards
 * the person and what is on its left away from them (common practice, no source).
 */
const aim: AimDocument = {
  edgebite: 1,
  units: 'mm',
  blank: { rectangle: [80, 50] },
  finished: {
    rectangle: [80, 50],
    holes: [
      {
        svgPath: 'M34 29.47213595499958 A6 6 0 1 1 34 20.52786404500042 A6 6 0 1 1 34 29.47213595499958 Z',
      },
    ],
  },
  thickness: 8,
  material: 'mild steel',
  drawer: [
    {
      id: 'mill',
      kind: 'end mill',
      toolMaterial: 'HSS',
      diameter: 12,
      reach: 20,
      teeth: 2,
      centerCutting: true,
    },
  ],
};

const best = (more: Partial<AimDocument>) => {
  const [way] = propose(parseAim({ ...aim, ...more })).ways;
  const places = way?.report.steps.map(({ center }) => center?.[0]);
  return { places, pushes: way?.row.pushes, words: way?.report.steps.at(-1)?.load?.worst?.push?.words };
};

test('the hole that pushes off the stop is cut while it is whole', () => {
  const front = best({ stops: ['front'] });
  expect(front.places?.map((x) => Math.round(x ?? 0))).toEqual([30, 38]);
  expect(front).toMatchObject({ pushes: 0, words: 'towards you' });
  const back = best({ stops: ['back'] });
  expect(back.places?.map((x) => Math.round(x ?? 0))).toEqual([38, 30]);
  expect(back).toMatchObject({ pushes: 0, words: 'away from you' });
});

test('with stops on both sides one of them is left, and that is told', () => {
  expect(best({ stops: ['front', 'back'] }).pushes).toBe(1);
  expect(best({ stops: ['left'] }).pushes).toBe(0);
  expect(best({}).pushes).toBeNull();
});
