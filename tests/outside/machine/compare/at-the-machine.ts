import type { Report } from '@edgebite/core';
import { sheetOf } from '../../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../../packages/previewer/src/sheet/text.js';

/** What a report tells in the axes of the machine, and what does not hang on axes at all. */
export function atTheMachine(report: Report) {
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

/** The sheet of a report without how far the part is turned from its drawing: all the rest is for the machine. */
export function sheetAtTheMachine(report: Report): string[] {
  return sheetText(sheetOf(report))
    .split('\n')
    .filter((line) => !/turned|as drawn|face up/.test(line));
}
