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

describe('a zero at a stop', () => {
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
