import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* A plate 80 by 30 with a bore near each end; which side is which in a lie is worked out by hand. */

const plate = { rectangle: [80, 30] };

const zero = { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] };

const report = (setups: readonly object[], outline: object = plate) =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline, thickness: 10 },
      ...(setups.length === 0 ? {} : { setups: setups.map((setup) => ({ zero, ...setup })) }),
      cuts: [
        { id: 'near left', kind: 'bore', center: [10, 15], diameter: 8 },
        { id: 'near right', kind: 'bore', center: [70, 15], diameter: 8 },
      ],
    }),
  );

const BOTH = ['near left', 'near right'];

/** The names of the edges that lie at the left, right, front and back of the drawing. */
function named(setups: readonly object[], outline?: object) {
  const { outline: region, names } = report(setups, outline);
  const at = (isThere: (p: readonly [number, number]) => boolean) => {
    const edge = region.flatMap(({ outer }) => outer).find(({ a, b }) => [a, b].every(isThere));
    return names.find(({ of }) => of === edge?.source)?.name ?? null;
  };
  return [at(([x]) => x === 0), at(([x]) => x === 80), at(([, y]) => y === 0), at(([, y]) => y === 30)];
}

describe('the sides of a part are called as they lie', () => {
  it.each<[string, object[], (string | null)[]]>([
    ['no setup: as drawn', [], ['the left end', 'the right end', 'the front', 'the back']],
    [
      'turned a quarter counter-clockwise: what was at the right is at the back',
      [{ id: 's', turn: 90, cuts: BOTH }],
      ['the front as it lies', 'the back as it lies', 'the right end as it lies', 'the left end as it lies'],
    ],
    [
      'turned over about y: right and left change places',
      [{ id: 's', flip: 'y', cuts: BOTH }],
      ['the right end as it lies', 'the left end as it lies', 'the front as it lies', 'the back as it lies'],
    ],
    [
      'turned over about x and half round is turned over about y, so that all lie in one way',
      [
        { id: 's', flip: 'x', turn: 180, cuts: ['near left'] },
        { id: 't', flip: 'y', cuts: ['near right'] },
      ],
      ['the right end as it lies', 'the left end as it lies', 'the front as it lies', 'the back as it lies'],
    ],
    ['turned by no quarter', [{ id: 's', turn: 30, cuts: BOTH }], [null, null, null, null]],
  ])('%s', (_, setups, names) => {
    expect(named(setups)).toEqual(names);
  });

  it('in several lies: as in the setup of the nearest cut', () => {
    const [left, right] = named([
      { id: 'one', turn: 180, cuts: ['near left'] },
      { id: 'two', cuts: ['near right'] },
    ]);
    // Turned round, the end that is drawn at the left lies at the right.
    expect([left, right]).toEqual(['the right end in setup one', 'the right end in setup two']);
  });

  it('but not edges that are only a part of a side, or do not reach as far as a round', () => {
    const notched = {
      edges: [
        [0, 0],
        [80, 0],
        [80, 10],
        [76, 10],
        [76, 20],
        [80, 20],
        [80, 30],
        [0, 30],
      ].map((a, k, all) => ({ kind: 'line', a, b: all[(k + 1) % all.length] })),
    };
    const { names } = report([], notched);
    expect(names.map(({ name }) => name).sort()).toEqual(['the back', 'the front', 'the left end']);
    // An end that is rounded out to 90: the straight stretches above and below it stop at 80.
    const rounded = { svgPath: 'M0 0 H80 V5 A10 10 0 0 1 80 25 V30 H0 Z' };
    expect(
      report([], rounded)
        .names.map(({ name }) => name)
        .sort(),
    ).toEqual(['the back', 'the front', 'the left end']);
  });

  it('and what the job names keeps its name', () => {
    const edges = [
      [0, 0],
      [80, 0],
      [80, 30],
      [0, 30],
    ].map((a, k, all) => ({
      kind: 'line',
      a,
      b: all[(k + 1) % all.length],
      ...(k === 1 ? { name: 'seat' } : {}),
    }));
    expect(named([], { edges })).toEqual(['the left end', 'seat', 'the front', 'the back']);
  });
});
