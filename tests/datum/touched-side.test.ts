import { JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* Tip, stop, block and part laid along an axis as stretches, which must not lie in each other. The tip stands at 0. */

type Stretch = readonly [number, number];

const FAR = 1000;
const TIP: Stretch = [-5, 5];

const overlap = (a: Stretch, b: Stretch) => Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > 1e-9;

const LEAST = ['left', 'front'];

const issuesOf = (axis: 'x' | 'y', chain: object[]): readonly string[] => {
  const other = axis === 'x' ? 'y' : 'x';
  const point = { kind: 'offset', from: 'zero', to: [0, 0], length: 1, way: '+' };
  try {
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 30] }, thickness: 12 },
      setups: [{ id: 'one', zero: { [axis]: chain, [other]: [point] }, cuts: ['eye'] }],
      cuts: [{ id: 'eye', kind: 'bore', center: [60, 10], diameter: 8 }],
    });
    return [];
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    return error.issues.map(({ path }) => path);
  }
};

const cases = (['left', 'right', 'front', 'back'] as const).flatMap((face) =>
  (['+', '-'] as const).map((way) => ({ face, way })),
);

describe('a touch', () => {
  it.each(cases)(
    'of the $face face with the way $way is refused if the tip is in the part',
    ({ face, way }) => {
      const axis = face === 'left' || face === 'right' ? 'x' : 'y';
      const at = way === '+' ? 5 : -5;
      const part: Stretch = LEAST.includes(face) ? [at, at + 80] : [at - 80, at];
      const chain = [{ kind: 'edge finder', from: 'zero', to: face, diameter: 10, way }];
      expect(issuesOf(axis, chain)).toEqual(overlap(TIP, part) ? [`/setups/0/zero/${axis}/0/way`] : []);
      // Written from the part to the zero, the same chain has the other sign.
      const back = [
        { kind: 'edge finder', from: face, to: 'zero', diameter: 10, way: way === '+' ? '-' : '+' },
      ];
      expect(issuesOf(axis, back)).toEqual(issuesOf(axis, chain));
    },
  );

  it.each(cases)(
    'of a stop on which the $face bears with the way $way is refused if the tip is in the stop',
    ({ face, way }) => {
      const axis = face === 'left' || face === 'right' ? 'x' : 'y';
      const at = way === '+' ? 5 : -5;
      // A stop lies beyond the face of the part that bears on it.
      const stop: Stretch = LEAST.includes(face) ? [at - FAR, at] : [at, at + FAR];
      for (const block of ['+', '-'] as const) {
        const end = at + (block === '+' ? 25 : -25);
        const between: Stretch = [Math.min(at, end), Math.max(at, end)];
        const chain = [
          { kind: 'edge finder', from: 'zero', to: 'stop face', diameter: 10, way },
          { kind: 'block', to: 'block end', length: 25, way: block },
          { kind: 'stop', to: face },
        ];
        expect(issuesOf(axis, chain)).toEqual([
          ...(overlap(TIP, stop) ? [`/setups/0/zero/${axis}/0/way`] : []),
          ...(overlap(between, stop) ? [`/setups/0/zero/${axis}/1/way`] : []),
        ]);
      }
    },
  );
});
