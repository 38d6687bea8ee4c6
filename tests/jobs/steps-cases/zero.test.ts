import { examine, JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/*
 * A stop whose face looks to the right, on which the left end of the part bears. A tip of 10 touches it from outside, and
 * the readout is set to 0: the face is at -5. So the left end is at -5, or at 20 with a block of 25 between.
 */

const EYE = { id: 'eye', kind: 'bore', center: [60, 10], diameter: 8 };

const job = (setup: object, cuts: object[] = [EYE]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12 },
  setups: [{ id: 'one', ...setup, cuts: ['eye'] }],
  cuts,
});

const stop = {
  stops: [{ id: 's', face: 'left' }],
  zero: {
    x: [
      { touch: 's', tip: 10, reads: 0 },
      { bears: 'left', on: 's' },
    ],
    y: [{ touch: 'front', tip: 10, reads: 0 }],
    z: [{ touch: 'top', feeler: 0.1, reads: 0 }],
  },
};

describe('a zero at a stop', () => {
  it('is half a tip outside of its face, so that the part is half a tip the other side of the zero', () => {
    // The eye is 60 from the left end at -5, and 10 from the front face at 5: 55 and 15.
    const [target] = examine(parseJob(job(stop))).setups[0]?.targets ?? [];
    expect(target?.exact).toEqual([55, 15]);
  });

  it('counts a block between the stop and the part', () => {
    const { zero } = stop;
    const x = [zero.x[0], { bears: 'left', on: 's', block: 25 }];
    const [target] = examine(parseJob(job({ ...stop, zero: { ...zero, x } }))).setups[0]?.targets ?? [];
    expect(target?.exact).toEqual([80, 15]);
  });

  it('is not taken where the tip would stand within the stop', () => {
    // Written as a chain that grows from the zero to the face that the part lies beyond: 5 before a face that the stop
    // itself lies before, so that the tip would be inside of the stop.
    const chain = {
      zero: {
        x: [
          { kind: 'edge finder', from: 'zero', to: 'stop face', diameter: 10, way: '+' },
          { kind: 'stop', to: 'left' },
        ],
        y: [{ kind: 'edge finder', from: 'front', to: 'zero', diameter: 10, way: '-' }],
      },
    };
    const outcome = () => {
      try {
        return examine(parseJob(job(chain))).findings.some(({ level }) => level === 'danger');
      } catch (error) {
        return error instanceof JobError;
      }
    };
    expect(outcome()).toBe(true);
  });
});
