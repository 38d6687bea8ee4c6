import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { longRun } from '../../tools/runs.js';
import { atTheMachine, sheetAtTheMachine } from './compare/at-the-machine.js';
import { jobNumber } from './made/generate.js';
import { turnedOn, writtenOut } from './made/turn.js';
import { drawn, laid } from './sim/lie.js';

/*
 * The drawing turned by a quarter and each setup turned back lie the same on the table: whatever is told in the axes of
 * the machine is the same to the last digit that is printed.
 */

/** In the fast suite the first few, one in which two bodies let go at once, and two with pairs of knife edges of one angle. */
const JOBS = longRun() ? Array.from({ length: 500 }, (_, k) => k) : [0, 1, 2, 3, 9, 20, 57, 175];

describe('a drawing turned by a quarter, with its setups turned back', () => {
  it('puts each place where it lay', () => {
    // Worked out by hand: (3, 1) drawn a quarter on is (-1, 3). Turned by 30 before, it is turned by -60 after.
    const [x, y] = laid({ flip: null, turn: 30 }, [3, 1]);
    const [u, v] = laid({ flip: null, turn: -60 }, [-1, 3]);
    expect([u, v]).toEqual([expect.closeTo(x, 12), expect.closeTo(y, 12)]);
    const [p, q] = laid({ flip: 'x', turn: 30 }, [3, 1]);
    const [r, s] = laid({ flip: 'x', turn: 120 }, [-1, 3]);
    expect([r, s]).toEqual([expect.closeTo(p, 12), expect.closeTo(q, 12)]);
    expect(drawn({ flip: 'x', turn: 120 }, [r, s])).toEqual([expect.closeTo(-1, 12), expect.closeTo(3, 12)]);
  });

  it.each(JOBS)('is the same at the machine: job %i', (k) => {
    const job = writtenOut(jobNumber(k));
    const [one, other] = [job, turnedOn(job)].map((each) => examine(parseJob(each))) as [Report, Report];
    expect(atTheMachine(other)).toEqual(atTheMachine(one));
    expect(sheetAtTheMachine(other)).toEqual(sheetAtTheMachine(one));
  });
});
