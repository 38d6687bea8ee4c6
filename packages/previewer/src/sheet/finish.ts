import type { Report } from '@edgebite/core';
import { countText } from '@edgebite/svg';
import { breakLines } from '../step/breaks.js';
import { freeLines } from '../step/ways-out.js';

/** Most lines: more of them are not read at the machine. */
const MOST = 9;

/** What is left to do by hand once a block is cut: bodies that it leaves held, and knife edges of cuts whose last step is in it. */
export function finishOf(report: Report, indices: readonly number[]): string[] {
  const last = new Map(report.steps.map(({ cut }, k) => [`cut:${cut}`, k]));
  const own = new Set(indices);
  // An edge is as it stays from the later of its two cuts on.
  const madeIn = (between: readonly string[]) => Math.max(...between.map((source) => last.get(source) ?? -1));
  const lines = [
    ...freeLines(report)
      .filter(({ step }) => own.has(step))
      .map(({ line }) => `Free ${line}`),
    ...breakLines(report, false)
      .filter(({ between }) => own.has(madeIn(between)))
      .map(({ line }) => `Break ${line}`),
  ];
  if (lines.length <= MOST) return lines;
  return [...lines.slice(0, MOST), `And ${countText(lines.length - MOST, 'more thing')}: see the report.`];
}
