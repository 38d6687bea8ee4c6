import { expect, it } from 'vitest';
import { arcEdge, lineEdge } from '../geometry/edge.js';
import type { Region } from '../region/region.js';
import { outermost, outermostStretch } from './outermost.js';

const P = (x: number, y: number) => ({ x, y });

/** Half a disc of radius 10 about (3, 2): flat below, from x = -7 to 13, its round up to y = 12. */
const half: Region = [
  {
    outer: [lineEdge(P(-7, 2), P(13, 2)), arcEdge(P(13, 2), P(-7, 2), P(3, 2), true)],
    holes: [],
  },
];

it('a round reaches as far as its radius where its tangent stands across, and no further than its ends elsewhere', () => {
  expect(outermost(half, { dx: 1, dy: 0 })).toEqual([-7, 13]);
  expect(outermost(half, { dx: 0, dy: 1 })).toEqual([2, 12]);
  expect(outermost(half, { dx: -1, dy: 0 })).toEqual([-13, 7]);
  expect(outermost(half, { dx: 0, dy: -1 })).toEqual([-12, -2]);
  // Along 3, 4, 5: the middle lies 0.6 * 3 + 0.8 * 2 = 3.4 out, the round 10 beyond; the end (-7, 2) at -4.2 + 1.6.
  const [low, high] = outermost(half, { dx: 0.6, dy: 0.8 });
  expect(high).toBeCloseTo(13.4, 12);
  expect(low).toBeCloseTo(-2.6, 12);
});

it('the hollow of an arc that runs clockwise is not the outermost', () => {
  // A block 20 by 12 with a bite of radius 6 into its top: the circle goes up to 18, the metal to 12.
  const bitten: Region = [
    {
      outer: [
        lineEdge(P(0, 0), P(20, 0)),
        lineEdge(P(20, 0), P(20, 12)),
        lineEdge(P(20, 12), P(16, 12)),
        arcEdge(P(16, 12), P(4, 12), P(10, 12), false),
        lineEdge(P(4, 12), P(0, 12)),
        lineEdge(P(0, 12), P(0, 0)),
      ],
      holes: [],
    },
  ];
  expect(outermost(bitten, { dx: 0, dy: 1 })).toEqual([0, 12]);
  // The face stands from end to end of what is left of it, bite or no bite.
  expect(outermostStretch(bitten, { dx: 0, dy: 1 }, 12, { dx: 1, dy: 0 })).toEqual([0, 20]);
  expect(outermostStretch(half, { dx: 0, dy: 1 }, 12, { dx: 1, dy: 0 })).toEqual([3, 3]);
  expect(outermostStretch(half, { dx: 0, dy: -1 }, -2, { dx: 1, dy: 0 })).toEqual([-7, 13]);
});
