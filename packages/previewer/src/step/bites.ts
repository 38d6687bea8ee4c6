import { type Report, type ReportCut, type ReportStep, sourceText } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';

/** What the last pass of a cut does to each face that it opens, one line each. */
export function biteLines(report: Report, { cut, pass, passes }: ReportStep): string[] {
  if (pass !== null && pass < passes) return [];
  const { bites = [] } = report.cuts.find(({ id }) => id === cut) ?? {};
  return bites.map((bite) => biteText(report, bite));
}

function biteText({ units, names }: Report, bite: ReportCut['bites'][number]): string {
  const { face, depth, opening, whole } = bite;
  const width = lengthText(opening, units);
  const opens = whole ? `takes all of it, ${width}` : `opens ${width} of it`;
  return `Goes ${lengthText(depth, units)} deep from ${sourceText(face, names)}, ${opens}${leftText({ units, names }, bite)}.`;
}

function leftText(
  { units, names }: Pick<Report, 'units' | 'names'>,
  { face, left, far }: ReportCut['bites'][number],
): string {
  if (left === 0) return ', comes out at its far side';
  if (left === null || far === null) return '';
  const to = far === face ? 'its far side' : sourceText(far, names);
  return `, leaves ${lengthText(left, units)} to ${to} as drawn`;
}
