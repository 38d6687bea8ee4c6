import type { Report, ReportBody } from '@edgebite/core';
import { numberText, roleText, unitText } from '@edgebite/svg';
import { type Column, tableText } from '../columns/table.js';
import { joinedBy } from '../step/bodies.js';
import { left, right } from './tables.js';

/** Every body that comes loose, hangs or is held, with the step in which that begins, and its size then. */
export function bodiesTable(report: Report): string {
  const { units, massUnit } = report;
  const number = (value: number | null) => (value === null ? '-' : numberText(value, units));
  const mass: Column<ReportBody>[] =
    massUnit === null ? [] : [right(`mass ${massUnit}`, (body) => number(body.mass))];
  return tableText<ReportBody>(
    [
      left('body', ({ id }) => id),
      left('what', ({ role }) => roleText(role)),
      right('step', ({ step }) => String(step + 1)),
      right('at depth', ({ atDepth }) => number(atDepth)),
      right(`volume ${unitText(units)}³`, ({ volume }) => number(volume)),
      ...mass,
      right('joined by', (body) => number(joinedBy(report, body))),
      left('then', endText),
    ],
    report.bodies,
  );
}

function endText({ end, endStep }: ReportBody): string {
  return endStep === null ? end : `${end} in step ${endStep + 1}`;
}
