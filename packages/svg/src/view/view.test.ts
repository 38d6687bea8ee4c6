import { axesOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { pathArea } from '../../fixtures/path-area.js';
import { circle, polygon, region } from '../../fixtures/shapes.js';
import { regionPath } from '../pen/path.js';
import { onSheet, type View } from './view.js';

/** One millimetre for one, the middle of the part at (100, 100) of the sheet. */
function viewOf(flip: 'x' | 'y' | null, turn: number): View {
  return { middle: [10, 5], at: [100, 100], factor: 1, axes: axesOf({ flip, turn }) };
}

describe('a part as it lies', () => {
  // The place 3 right of the middle and 1 behind it. On the sheet y runs down: behind is less y.
  it.each([
    [null, 0, [103, 99]],
    // A quarter turn counter-clockwise: what was right is behind, what was behind is left.
    [null, 90, [99, 97]],
    [null, 180, [97, 101]],
    [null, 270, [101, 103]],
    // Over about the x axis right stays right; over about the y axis behind stays behind.
    ['x', 0, [103, 101]],
    ['y', 0, [97, 99]],
    // First turned over, then turned: from 3 left and 1 behind to 1 left and 3 in front.
    ['y', 90, [99, 103]],
  ] as const)('turned over about %s and turned by %i', (flip, turn, place) => {
    expect(onSheet(viewOf(flip, turn), [13, 6])).toEqual(place);
  });

  it.each([null, 'x', 'y'] as const)(
    'has arcs that bulge as they do on the part: turned over about %s',
    (flip) => {
      const plate = region(polygon([0, 0], [20, 0], [20, 10], [0, 10]), circle([8, 5], 3, false, 'cut:a'));
      for (const turn of [0, 90, 33]) {
        expect(Math.abs(pathArea(regionPath(plate, viewOf(flip, turn))))).toBeCloseTo(200 - 9 * Math.PI, 2);
      }
    },
  );
});
