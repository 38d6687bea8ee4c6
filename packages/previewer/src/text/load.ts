import type { Report, ReportCut } from '@edgebite/core';
import { angleText, fixed, numberText } from '@edgebite/svg';
import { tableText } from './table.js';
import { left, right } from './tables.js';
import { hanging } from './wrap.js';

type Load = NonNullable<ReportCut['load']>;
type BackOff = NonNullable<ReportCut['backOff']>;

/** A side load, from 0 to 1. */
export function loadText({ sideLoad: { size } }: Load): string {
  return fixed(size, 2);
}

/** How much of each circle is in metal when its cut starts; null where no cut is round. */
export function loadsText(report: Report): string | null {
  const rows = report.cuts.flatMap((cut) => (cut.load === null ? [] : [{ cut, load: cut.load }]));
  if (rows.length === 0) return null;
  const partial = rows.filter(({ load }) => load.interrupted);
  const whole = rows.filter(({ load }) => load.angle > 0 && !load.interrupted);
  const none = rows.filter(({ load }) => load.angle === 0);
  const table = tableText<(typeof rows)[number]>(
    [
      left('cut', ({ cut }) => cut.id),
      right('in metal °', ({ load }) => angleText(load.angle)),
      right('share %', ({ load }) => fixed(100 * load.share, 1)),
      right('strikes a turn', ({ load }) => String(load.entries)),
      right('side load', ({ load }) => loadText(load)),
      right('pushes to °', ({ load }) => headingText(load.sideLoad.direction)),
    ],
    partial,
  );
  return [
    ...(partial.length === 0 ? [] : [table]),
    ...named('All round in metal, side load 0: ', whole),
    ...named('Starts in no metal: ', none),
    ...(partial.length === 0 ? [] : [hanging('', LOAD_NOTE)]),
  ].join('\n');
}

const LOAD_NOTE =
  'Side load: 0 where the teeth push evenly all round, 1 where all push one way. It pushes the part that way. Directions: 0° to the right, 90° away from you.';

/** How to come off the wall before lifting; null where no cut is round. */
export function backOffsText(report: Report): string | null {
  const round = report.cuts.flatMap((cut) => (cut.load === null ? [] : [{ cut, backOff: cut.backOff }]));
  if (round.length === 0) return null;
  const rows = round.flatMap(({ cut, backOff }) =>
    backOff === null || backOff.direction === null ? [] : [{ cut, backOff }],
  );
  const table = tableText<{ readonly cut: ReportCut; readonly backOff: BackOff }>(
    [
      left('cut', ({ cut }) => cut.id),
      right('towards °', ({ backOff }) => headingText(backOff.direction)),
      right('by', ({ backOff }) => numberText(backOff.distance, report.units)),
      right('centre x', ({ backOff }) => numberText(backOff.center[0], report.units)),
      right('centre y', ({ backOff }) => numberText(backOff.center[1], report.units)),
      right('gap then', ({ backOff }) =>
        backOff.gap === null ? '-' : numberText(backOff.gap, report.units),
      ),
    ],
    rows,
  );
  return [
    ...(rows.length === 0 ? [] : [table]),
    ...named(
      'No way off the wall, lift where it stands: ',
      round.filter(({ backOff }) => backOff === null),
    ),
    ...named(
      'At no wall, lift as it is: ',
      round.filter(({ backOff }) => backOff !== null && backOff.direction === null),
    ),
  ].join('\n');
}

function headingText(degrees: number | null): string {
  return degrees === null ? '-' : angleText(degrees);
}

function named(lead: string, rows: readonly { readonly cut: ReportCut }[]): string[] {
  return rows.length === 0 ? [] : [hanging('', `${lead}${rows.map(({ cut }) => cut.id).join(', ')}.`)];
}
