import { examine, JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * A stop whose face looks to the right, on which the left end of the part bears. A tip of 10 touches it from outside, and
 * the readout is set to 0: the face is at -5. So the left end is at -5, or at 20 with a block of 25 between.
 */

const EYE = { id: 'eye', kind: 'bore', center: [60, 10], diameter: 8 };
const TOUCH = { touch: 'end', tip: 10, reads: 0 };
const Y = [{ touch: 'front', tip: 10, reads: 0 }];

const job = (x: object[]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12 },
  setups: [{ id: 'one', stops: [{ id: 'end', face: 'left' }], zero: { x, y: Y }, cuts: ['eye'] }],
  cuts: [EYE],
});

describe('a zero at a stop', () => {
  it('has the tip outside of the stop', () => {
    const at = (block: object) =>
      examine(parseJob(job([TOUCH, { bears: 'left', on: 'end', ...block }]))).setups[0]?.targets[0]?.readout;
    expect(at({})).toEqual([55, 15]);
    expect(at({ block: 25 })).toEqual([80, 15]);
  });

  it('is not taken where the part would bear on the side that the stop looks away from', () => {
    expect(() => parseJob(job([TOUCH, { bears: 'right', on: 'end' }]))).toThrow(JobError);
  });
});
