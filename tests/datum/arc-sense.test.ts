import { describe, expect, it } from 'vitest';
import { laid } from '../outside/machine/sim/lie.js';
import { reportOn, setup } from './setup-jobs.js';

/*
 * The sense of an arc as the part lies, told from three places on it that are placed on the table one by one, and not
 * from the flip.
 */

type Place = readonly [number, number];

/** Start, middle, end and centre of an arc as drawn. */
const ARCS = {
  'counter-clockwise': {
    path: 'M50 20 A10 10 0 0 1 30 20',
    places: [
      [50, 20],
      [40, 30],
      [30, 20],
    ],
  },
  clockwise: {
    path: 'M30 20 A10 10 0 0 0 50 20',
    places: [
      [30, 20],
      [40, 30],
      [50, 20],
    ],
  },
} as const satisfies Record<string, { path: string; places: readonly [Place, Place, Place] }>;

/** Over 0 where three places follow each other counter-clockwise. */
function turn([a, m, b]: readonly [Place, Place, Place]): number {
  return (m[0] - a[0]) * (b[1] - m[1]) - (m[1] - a[1]) * (b[0] - m[0]);
}

const LIES = ([null, 'x', 'y'] as const).flatMap((flip) =>
  [0, 90, 180, 37].map((by) => ({ flip, turn: by })),
);

describe.each(LIES)('arcs of a path in a setup, flip $flip, turn $turn', (lie) => {
  it.each(Object.entries(ARCS))('drawn %s', (drawn, { path, places }) => {
    // SVG's sweep flag is that of the drawing with y down; here y is up, so the drawn sense is checked by places too.
    const cut = { id: 'g', kind: 'swept', diameter: 5, depth: 3, path: { svgPath: path } };
    const over = lie.flip === null ? { turn: lie.turn } : lie;
    const { setups, cuts } = reportOn(
      [{ ...cut, from: lie.flip === null ? 'top' : 'bottom' }],
      [setup(['g'], over)],
    );
    const [edge] = cuts[0]?.path ?? [];
    expect(edge?.kind === 'arc' && edge.ccw).toBe(turn(places) > 0);
    expect(turn(places) > 0).toBe(drawn === 'counter-clockwise');
    const [a, m, b] = places.map((place) => laid(lie, place)) as [Place, Place, Place];
    const arc = setups[0]?.targets.at(-1)?.path?.arc;
    expect(arc?.ccw).toBe(turn([a, m, b]) > 0);
    expect(arc?.radius).toBeCloseTo(10, 12);
  });
});
