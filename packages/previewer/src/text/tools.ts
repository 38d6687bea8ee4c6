import type { Report, ReportCut, Running } from '@edgebite/core';
import { tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { rangeText } from './figures.js';
import { left, right } from './tables.js';

/** Whether a tool is named for any of the cuts, with figures for it. */
export function hasTools(report: Report): boolean {
  return rowsOf(report).length > 0;
}

interface Row {
  readonly cut: ReportCut;
  readonly running: Running;
}

function rowsOf(report: Report): Row[] {
  return report.cuts.flatMap((cut) => (cut.running === null ? [] : [{ cut, running: cut.running }]));
}

/** Speeds and feeds of the cuts that have a tool, and where they are from. */
export function toolsText(report: Report): string {
  const rows = rowsOf(report);
  const table = tableText<Row>(
    [
      left('cut', ({ cut }) => cut.id),
      left('tool', ({ running }) => running.tool),
      right(rows[0]?.running.surfaceSpeedUnit ?? '', ({ running }) => rangeText(running.surfaceSpeed)),
      right('turns/min', ({ running }) => rangeText(running.set)),
      right(rows[0]?.running.feedUnit ?? '', ({ running }) => rangeText(running.feed)),
      right('min', ({ running }) => rangeText(running.minutes)),
    ],
    rows,
  );
  const sources = rows.flatMap(({ running: { source, feedSource } }) => [source ?? '', feedSource ?? '']);
  const named = [...new Set(sources)].filter((source) => source !== '');
  return named.length === 0 ? table : `${table}\n${hanging('From: ', named.join('; '))}`;
}
