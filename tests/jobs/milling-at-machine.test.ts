import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { laid } from '../outside/machine/sim/lie.js';

/*
 * Climb or conventional, told from the places of a path put on the table: a spindle that turns clockwise, seen from
 * above, climbs where the metal lies to the right of its travel, since its teeth go back there as it goes on
 * (common practice, no source).
 */

type Place = readonly [number, number];

/** Middle of the part, and so on the side of the metal of a path round its outside. */
const MIDDLE: Place = [40, 15];

function sideOf(a: Place, b: Place, p: Place): 'left' | 'right' {
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0 ? 'left' : 'right';
}

const CASES = (['climb', 'conventional'] as const).flatMap((milling) =>
  [
    { flip: null, from: 'top', depth: 4 },
    { flip: 'x', from: 'bottom', depth: 4 },
    { flip: 'y', from: 'bottom', depth: 4 },
    // Through, so that it may be made from either side.
    { flip: null, from: 'top', depth: undefined },
    { flip: 'x', from: 'top', depth: undefined },
    { flip: 'y', from: 'bottom', depth: undefined },
    { flip: null, from: 'bottom', depth: undefined },
  ].flatMap((one) => [0, 90, 200].map((turn) => ({ ...one, milling, turn }))),
);

describe('a path round the part', () => {
  it.each(CASES)(
    '$milling from $from, depth $depth, flip $flip, turn $turn',
    ({ milling, flip, from, depth, turn }) => {
      const report = examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: { outline: { rectangle: [80, 30] }, thickness: 12 },
          setups: [
            {
              id: 's',
              ...(flip === null ? {} : { flip }),
              turn,
              zero: {
                x: [{ 'dial in': [0, 0], reads: 0, tolerance: 0.01 }],
                y: [{ 'dial in': [0, 0], reads: 0, tolerance: 0.01 }],
              },
              cuts: ['round'],
            },
          ],
          cuts: [
            {
              id: 'round',
              kind: 'swept',
              diameter: 6,
              from,
              ...(depth === undefined ? {} : { depth }),
              path: { along: { side: 'outside', milling, lead: 'none' } },
            },
          ],
        } as never),
      );
      const lie = { flip: flip as 'x' | 'y' | null, turn };
      const [edge] = report.cuts[0]?.path ?? [];
      if (edge === undefined) throw new Error('there is no path');
      const [a, b, metal] = [edge.a, edge.b, MIDDLE].map((place) => laid(lie, place)) as [
        Place,
        Place,
        Place,
      ];
      const really = sideOf(a, b, metal) === 'right' ? 'climb' : 'conventional';
      expect(report.steps[0]?.milling).toBe(really);
    },
  );
});
