import {
  arcEdge,
  checkRegion,
  lineEdge,
  parseWkt,
  placeTangent,
  rectangle,
  regionFromGeoJson,
  regionFromJson,
  regionFromWkt,
  repairRegion,
  reversed,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* What a refusal says is amiss and what to do: from the input, by hand. */

const P = (x: number, y: number) => ({ x, y });
const line = (ax: number, ay: number, bx: number, by: number) => ({
  kind: 'line',
  a: [ax, ay],
  b: [bx, by],
});

describe('a text or value that is refused', () => {
  it.each<readonly [string, () => unknown, string]>([
    ['one point is no line', () => parseWkt('LINESTRING (1 2)'), 'a line string has at least two points'],
    [
      'a height',
      () => parseWkt('LINESTRING (1 2 3, 4 5 6)'),
      'a point has more than two numbers; only plane outlines are read',
    ],
    [
      'a ring from (0, 0) that ends 3 from there',
      () => parseWkt('POLYGON ((0 0, 4 0, 4 3, 0 3))'),
      'the ring does not close: its last point is 3 from its first',
    ],
    [
      'an open line where an area is asked for',
      () => regionFromWkt('LINESTRING (0 0, 4 0, 4 3)'),
      'the curve does not close, so that it encloses nothing; end it where it starts',
    ],
    [
      'an arc whose second place lies past its third',
      () => parseWkt('CIRCULARSTRING (0 0, 9 0, 4 0)'),
      'the middle point is in line with the ends but not between them',
    ],
    [
      'an arc whose second place is its first',
      () => parseWkt('CIRCULARSTRING (0 0, 0 0, 4 0)'),
      'the middle point lies on an end of the arc',
    ],
    [
      'a ring of a triangle without its first place again',
      () =>
        regionFromGeoJson({
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [4, 0],
              [4, 3],
            ],
          ],
        }),
      'has 3 positions; a ring has four at least',
    ],
    [
      'a ring that ends elsewhere',
      () =>
        regionFromGeoJson({
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [4, 0],
              [4, 3],
              [0, 3],
            ],
          ],
        }),
      'does not end where it starts; a ring is closed',
    ],
    [
      'a loop whose second edge ends 2 under its third',
      () =>
        regionFromJson([
          { outer: [line(0, 0, 4, 0), line(4, 0, 4, 1), line(4, 3, 0, 3), line(0, 3, 0, 0)], holes: [] },
        ]),
      'ends 2 short of where the next edge starts',
    ],
    [
      'the same, to be mended',
      () =>
        repairRegion([
          {
            outer: [
              lineEdge(P(0, 0), P(4, 0)),
              lineEdge(P(4, 0), P(4, 1)),
              lineEdge(P(4, 3), P(0, 3)),
              lineEdge(P(0, 3), P(0, 0)),
            ],
            holes: [],
          },
        ]),
      'ends 2 from where [2] starts; only smaller gaps are closed',
    ],
    [
      // Both circles run round (0, 0), of 10 and of 6: what touches both from within the ring has radius 2 or 8.
      'a circle between two rounds of one middle',
      () =>
        placeTangent(
          3,
          arcEdge(P(10, 0), P(-10, 0), P(0, 0), true),
          arcEdge(P(6, 0), P(-6, 0), P(0, 0), true),
        ),
      'no circle of radius 3 touches both edges; the nearest radius that does is 2',
    ],
  ])('%s', (_, go, words) => {
    expect(go).toThrow(words);
  });

  it('a hole beside its loop, and a hole in a hole', () => {
    const square = (x: number, y: number, side: number) => rectangle(side, side, { at: P(x, y) });
    const hole = (x: number, y: number, side: number) => square(x, y, side).map(reversed).reverse();
    const faults = checkRegion([{ outer: square(0, 0, 20), holes: [hole(30, 0, 5)] }]);
    expect(faults.map(({ message, remedy }) => [message, remedy])).toContainEqual([
      'lies outside its outer loop',
      'make it a part of its own',
    ]);
    const nested = checkRegion([{ outer: square(0, 0, 20), holes: [hole(2, 2, 9), hole(4, 4, 3)] }]);
    expect(nested.map(({ place, message, remedy }) => [place, message, remedy])).toContainEqual([
      '[0].holes[1]',
      'lies in hole 0',
      'leave it out, or make it a part',
    ]);
  });
});
