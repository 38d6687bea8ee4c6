import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../packages/previewer/src/sheet/text.js';
import { longRun } from '../../tools/runs.js';
import { jobNumber } from './made/generate.js';
import { turnedOn, writtenOut } from './made/turn.js';
import { drawn, laid } from './sim/lie.js';

/*
 * The drawing turned by a quarter and each setup turned back lie the same on the table: whatever is told in the axes of
 * the machine is the same to the last digit that is printed.
 */

/** In the fast suite the first few, and one in which two bodies let go at once. */
const JOBS = longRun() ? Array.from({ length: 500 }, (_, k) => k) : [0, 1, 2, 3, 9, 57];

/** What a report tells in the axes of the machine, and what does not hang on axes at all. */
function atTheMachine(report: Report) {
  return report.steps.map((step) => ({
    setup: step.setup,
    cut: step.cut,
    pass: step.pass,
    up: step.up,
    figures: [step.diameter, step.reaches, step.area, step.volume, ...Object.values(step.volumes)].map(
      printed,
    ),
    frees: step.frees.map(({ body, volume, atDepth }) => [body, printed(volume), printed(atDepth)]),
    hangs: step.hangs.map(({ body, volume, thickness }) => [body, printed(volume), printed(thickness)]),
    meets: step.meets.map(({ body, volume }) => [body, printed(volume)]),
    starts: step.starts,
    load: step.load && loadsOf(step.load).map(load),
    backOff: [
      step.backOff.by === null ? null : printed(step.backOff.by),
      step.backOff.machine,
      step.backOff.readout,
      step.backOff.gap === null ? null : printed(step.backOff.gap),
      step.backOff.why,
    ],
    stands: step.stands.map(({ what, readout, lifted, arc }) => ({
      what,
      readout,
      lifted,
      arc: arc && { ...arc, radius: printed(arc.radius) },
    })),
    targets: step.targets.map(({ readout, worst, rss }) => [readout, worst.map(printed), rss.map(printed)]),
    findings: step.findings.map((k) => report.findings[k]?.message),
  }));
}

type Load = NonNullable<Report['steps'][number]['load']>;

const loadsOf = ({ heights, entry, worst, breakThrough }: Load) => [...heights, entry, worst, breakThrough];

function load(one: Load['entry']) {
  if (one === null) return null;
  const { from, to, share, strikes, sideLoad, push } = one;
  // Degrees are told in steps of a millionth, and printed in whole ones.
  return [
    ...[from, to, share, sideLoad].map(printed),
    strikes,
    push?.words,
    push && Math.round(push.degrees * 1e3) / 1e3,
  ];
}

/** As the text has it at its finest: areas and volumes have no more than four places. */
function printed(value: number): string {
  return (Math.round(value * 1e4) / 1e4 + 0).toFixed(4);
}

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
    // The sheet is for the machine, but for how far the part is turned from its drawing.
    const lines = (report: Report) =>
      sheetText(sheetOf(report))
        .split('\n')
        .filter((line) => !/turned|as drawn|face up/.test(line));
    expect(lines(other)).toEqual(lines(one));
  });
});
