import { type BreakOff, type Report, webMarks } from '@edgebite/core';
import { numberText } from '@edgebite/svg';
import { tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { roughText } from './figures.js';
import { left, right } from './tables.js';

/** Whether any floor or web has an estimate of what breaks it. */
export function hasBreakOff(report: Report): boolean {
  return rowsOf(report).length > 0;
}

interface Row {
  readonly what: string;
  /** In each slab that it goes through. */
  readonly slabs: readonly BreakOff[];
}

function rowsOf(report: Report): Row[] {
  const row = (what: string, all: readonly (BreakOff | null | undefined)[]): Row[] => {
    // Where metal only touches itself there is nothing to break.
    const slabs = all.flatMap((one) => (one === null || one === undefined || one.area === 0 ? [] : [one]));
    return slabs.length === 0 ? [] : [{ what, slabs }];
  };
  return [
    ...report.floors.flatMap(({ holds, breakOff }) => row(`floor under ${holds ?? ''}`, [breakOff])),
    ...webMarks(report).flatMap(({ id, members }) =>
      row(
        `web ${id}`,
        members.map((k) => report.webs[k]?.breakOff),
      ),
    ),
  ];
}

/** Of all slabs together: force, moment and area grow with the height. */
function sum(slabs: readonly BreakOff[], key: 'force' | 'moment'): [number, number] {
  return [0, 1].map((end) => slabs.reduce((all, slab) => all + (slab[key][end] as number), 0)) as [
    number,
    number,
  ];
}

/** How deep the saw goes: the area of a broken face over the length of the saw cut. */
function depthOf(slabs: readonly BreakOff[]): number {
  return slabs.reduce((all, { area, sawLength }) => all + area / sawLength, 0);
}

const CAUTION =
  'An estimate over usual grades, not a hold to count on: a notch, heat or a blow breaks it sooner. A ring all round takes more than one bent line. Never hold it by hand or break it off with it.';

/** Force to shear, moment to bend over, and the saw cut instead, for held slugs and thin webs. */
export function breakOffText(report: Report): string {
  const rows = rowsOf(report);
  const { forceUnit, momentUnit } = (rows[0] as Row).slabs[0] as BreakOff;
  const table = tableText<Row>(
    [
      left('what', ({ what }) => what),
      right(`shear ${forceUnit}`, ({ slabs }) => roughText(sum(slabs, 'force'))),
      right(`bend ${momentUnit}`, ({ slabs }) => roughText(sum(slabs, 'moment'))),
      right('saw cut', ({ slabs }) => numberText((slabs[0] as BreakOff).sawLength, report.units)),
      right('through', ({ slabs }) => numberText(depthOf(slabs), report.units)),
    ],
    rows,
  );
  return `${table}\n${hanging('', CAUTION)}`;
}
