import { type Report, type ReportCut, sourceText } from '@edgebite/core';
import { angleText, numberText } from '@edgebite/svg';
import { tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { left, right } from './tables.js';

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

/** The cuts whose centre follows from something else, and where teeth come in and go out; null if there are none. */
export function placingText(report: Report): string | null {
  const rows = report.cuts.flatMap((cut): Row[] =>
    cut.placement === null ? [] : [{ cut, placement: cut.placement }],
  );
  if (rows.length === 0) return null;
  const ends = rows.filter(({ placement }) => placement.entry !== null);
  const several = rows.filter(({ placement }) => placement.bites > 1).map(({ cut }) => cut.id);
  return [
    givenTable(report, rows),
    ...(ends.length === 0 ? [] : [endsTable(report, ends)]),
    ...(several.length === 0
      ? []
      : [hanging('', `Of ${several.join(', ')} several arcs run through the part; told is the longest.`)]),
  ].join('\n\n');
}

function givenTable({ names }: Report, rows: readonly Row[]): string {
  return tableText<Row>(
    [
      left('cut', ({ cut }) => cut.id),
      left('given by', ({ placement: { form, pick } }) => FORMS[form] + (pick === null ? '' : `, ${pick}`)),
      left('on', ({ placement }) => placement.about.map((one) => sourceText(one, names)).join(', ') || '-'),
    ],
    rows,
  );
}

/** The widest name of a face in a table of many columns. */
const WIDEST_FACE = 16;

/** What each cut does to each face that it opens, on the part as drawn; null where none opens one. */
export function bitesText({ units, names, cuts }: Report): string | null {
  const rows = cuts.flatMap(({ id, bites }) => bites.map((bite) => ({ id, bite })));
  if (rows.length === 0) return null;
  const number = (value: number | null) => (value === null ? '-' : numberText(value, units));
  return tableText<(typeof rows)[number]>(
    [
      left('cut', ({ id }) => id),
      left('from', ({ bite }) => sourceText(bite.face, names), WIDEST_FACE),
      right('deep', ({ bite }) => number(bite.depth)),
      right('opens', ({ bite }) => `${number(bite.opening)}${bite.whole ? ', all' : ''}`),
      right('leaves', ({ bite }) => number(bite.left)),
      left('to', ({ bite }) => (bite.far === null ? '-' : sourceText(bite.far, names)), WIDEST_FACE),
      right('arc °', ({ bite }) => angleText(bite.includedAngle)),
      right('arc long', ({ bite }) => number(bite.arcLength)),
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
