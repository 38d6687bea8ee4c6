import type { Report, ReportCut } from '@edgebite/core';
import { angleText, numberText, sourceText } from '@edgebite/svg';
import { tableText } from './table.js';
import { left, right } from './tables.js';
import { hanging } from './wrap.js';

type Placement = NonNullable<ReportCut['placement']>;

interface Row {
  readonly cut: ReportCut;
  readonly placement: Placement;
}

/** What a drawing gives in place of a centre, in the words of the shop. */
const FORMS: Readonly<Record<Placement['form'], string>> = {
  depth: 'depth',
  opening: 'opening',
  through: '3 points',
  tangent: 'tangent',
  distances: 'distances',
};

/** The cuts whose centre follows from something else, with all dimensions of the hole; null if there are none. */
export function placingText(report: Report): string | null {
  const rows = report.cuts.flatMap((cut): Row[] =>
    cut.placement === null ? [] : [{ cut, placement: cut.placement }],
  );
  if (rows.length === 0) return null;
  const ends = rows.filter(({ placement }) => placement.entry !== null);
  const several = rows.filter(({ placement }) => placement.bites > 1).map(({ cut }) => cut.id);
  return [
    sizesTable(report, rows),
    ...(ends.length === 0 ? [] : [endsTable(report, ends)]),
    ...(several.length === 0
      ? []
      : [
          hanging(
            '',
            `Of ${several.join(', ')} several arcs run through the part; the sizes are those of the longest.`,
          ),
        ]),
  ].join('\n\n');
}

function sizesTable({ units, names }: Report, rows: readonly Row[]): string {
  const number = (value: number | null) => (value === null ? '-' : numberText(value, units));
  return tableText<Row>(
    [
      left('cut', ({ cut }) => cut.id),
      left('given by', ({ placement: { form, pick } }) => FORMS[form] + (pick === null ? '' : `, ${pick}`)),
      left('on', ({ placement }) => placement.about.map((one) => sourceText(one, names)).join(', ') || '-'),
      right('deep', ({ placement }) => number(placement.depth)),
      right('opens', ({ placement }) => number(placement.opening)),
      right('arc °', ({ placement }) => angleText(placement.includedAngle)),
      right('arc long', ({ placement }) => number(placement.arcLength)),
    ],
    rows,
  );
}

function endsTable({ units }: Report, rows: readonly Row[]): string {
  const place = (pick: 'entry' | 'exit', axis: 0 | 1) => (row: Row) =>
    numberText(row.placement[pick]?.at[axis] ?? 0, units);
  const angle = (pick: 'entry' | 'exit') => (row: Row) => angleText(row.placement[pick]?.angle ?? 0);
  return tableText<Row>(
    [
      left('cut', ({ cut }) => cut.id),
      right('teeth in: x', place('entry', 0)),
      right('y', place('entry', 1)),
      right('corner °', angle('entry')),
      right('out: x', place('exit', 0)),
      right('y', place('exit', 1)),
      right('corner °', angle('exit')),
    ],
    rows,
  );
}
