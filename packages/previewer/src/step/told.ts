/*
 * Room: a step in words, for text, sheet and page alike.
 * In: a report and the number of a step.
 * Out: lines of text with the step's figures.
 */

import type { Report, ReportStep } from '@edgebite/core';
import { biteLines } from './bites.js';
import { bodyLines, takeOutLines } from './bodies.js';
import { burrLines } from './burrs.js';
import { clearLines } from './clear.js';
import { loadLines } from './load.js';
import { shownIn } from './readout.js';
import { seamLines } from './seams.js';
import { underLines } from './under.js';
import { wayOffLines } from './way-off.js';

/** What to say of a step, one line each; all directions and places as they are at the machine. */
export interface Told {
  /** What to do first, with the spindle stopped. */
  readonly before: readonly string[];
  /** What it meets, what comes off in it, and how the tool comes away again. */
  readonly lines: readonly string[];
}

/**
 * What to say of a step.
 * @param index of the step in the report
 */
export function toldOf(report: Report, index: number): Told {
  const step = report.steps[index] as ReportStep;
  return {
    before: [...takeOutLines(report, step), ...clearLines(report, step, shownIn(report, step.setup))],
    lines: [
      ...loadLines(report, step),
      ...biteLines(report, step),
      ...seamLines(report, index),
      ...bodyLines(report, step, index),
      ...underLines(report, step),
      ...burrLines(report, step),
      ...wayOffLines(report, step, shownIn(report, step.setup)),
    ],
  };
}
