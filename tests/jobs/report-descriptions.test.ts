import { type Report, reportJsonSchema } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { OWN_JOBS, reportOf } from '../whole/corpus.js';

/*
 * The schema of a report is read by those who write programs that read reports. What it says of signs, orders and sides
 * is held here beside reports in which that is so: neither can be turned round alone.
 */

const SCHEMA = JSON.stringify(reportJsonSchema());
const reports = OWN_JOBS.map(({ document }) => reportOf(document));

/** A sentence of the schema, and whether it is true of each row that it speaks of. */
type Saying = readonly [sentence: string, holds: (report: Report) => readonly boolean[]];

const rising = (values: readonly number[]): boolean[] =>
  values.slice(1).map((value, k) => value >= (values[k] as number) - 1e-9);

const falling = (values: readonly number[]): boolean[] => rising(values.map((value) => -value));

const isNear = (a: number | undefined, b: number | undefined): boolean =>
  a !== undefined && b !== undefined && Math.abs(a - b) < 1e-9;

/** Of all steps whose tool has metal at its rim somewhere: one that takes the part whole has it within only. */
const loadsOf = ({ steps }: Report) =>
  steps.flatMap(({ load }) => (load?.heights.some(({ share }) => share > 0) ? [load] : []));

/** A target's two axes: what is shown, what should be, and the difference. */
const axesOf = ({ steps }: Report) =>
  steps.flatMap(({ targets, stands }) =>
    targets.flatMap(({ readout, exact, roundingError }, k) =>
      [0, 1].map((axis) => ({
        shown: readout[axis],
        exact: exact[axis] as number,
        off: roundingError[axis] as number,
        stand: stands[k],
        axis,
      })),
    ),
  );

const SAYINGS: readonly Saying[] = [
  ['Going up from the bottom.', ({ slabs }) => rising(slabs.map(({ from }) => from))],
  ['Thinnest first.', ({ webs }) => rising(webs.map(({ thickness }) => thickness))],
  ['Sharpest first.', ({ knifeEdges }) => rising(knifeEdges.map(({ angle }) => angle))],
  [
    'Kept first, then by volume, largest first.',
    ({ pieces: [first, ...others] }) =>
      first === undefined ? [] : [first.role === 'kept', ...falling(others.map(({ volume }) => volume))],
  ],
  [
    'The first with metal; null if there is none.',
    (report) =>
      loadsOf(report).map(({ heights, entry }) =>
        isNear(entry?.from ?? -1, heights.find(({ share }) => share > 0)?.from ?? -1),
      ),
  ],
  [
    'The last with metal, where the tool comes out below it; null if it stops in metal.',
    (report) =>
      loadsOf(report).flatMap(({ heights, breakThrough }) =>
        breakThrough === null
          ? []
          : [isNear(breakThrough.from, heights.findLast(({ share }) => share > 0)?.from)],
      ),
  ],
  [
    'The one with the largest side load.',
    (report) =>
      loadsOf(report).flatMap(({ heights, worst }) =>
        worst === null ? [] : [isNear(worst.sideLoad, Math.max(...heights.map(({ sideLoad }) => sideLoad)))],
      ),
  ],
  [
    'Target less exact.',
    (report) => axesOf(report).map(({ shown, exact, off }) => isNear(off, (shown as number) - exact)),
  ],
  [
    'That less the exact place.',
    (report) =>
      axesOf(report).flatMap(({ stand, exact, axis }) =>
        stand?.what === 'center'
          ? [isNear(stand.rounding[axis], (stand.readout[axis] as number) - exact)]
          : [],
      ),
  ],
];

describe('what the schema says of a report', () => {
  it.each(SAYINGS)('%s', (sentence, holds) => {
    expect(SCHEMA).toContain(JSON.stringify(sentence));
    const rows = reports.flatMap(holds);
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter((isTrue) => !isTrue)).toEqual([]);
  });
});
