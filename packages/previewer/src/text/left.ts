import type { FINDING_LEVELS, Finding, Report, ReportPiece } from '@edgebite/core';
import { clean, countText, roleText } from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';
import { figureText, volumeText } from './figures.js';

/** Said where a job takes all of the part, and where it cuts nothing. */
export const NOTHING_LEFT = 'Nothing is left of the part.';

/** Most pieces told one by one; a job that leaves more has a table. */
const MOST = 6;

/** What is left, a line for each piece. */
export function leftText(report: Report): string {
  const { pieces } = report;
  if (pieces.length === 0) return NOTHING_LEFT;
  const lines = pieces.slice(0, MOST).map((piece) => hanging('', pieceText(report, piece)));
  const more = pieces.length - MOST;
  return [...lines, ...(more > 0 ? [`And ${countText(more, 'more piece')}.`] : [])].join('\n');
}

function pieceText({ units, massUnit }: Report, { id, role, volume, mass, freedBy }: ReportPiece): string {
  const size = [
    volumeText(volume, units),
    ...(mass === null || massUnit === null ? [] : [`${figureText(mass)} ${massUnit}`]),
  ].join(', ');
  const what = role === 'kept' ? '' : `, ${roleText(role)}${freedBy === null ? '' : ` from cut ${freedBy}`}`;
  return `${clean(id)}${clean(what)}: ${size}.`;
}

/** Notes that the steps say again of each cut: a partial hole, blows, the push. */
const TOLD_BY_STEPS: ReadonlySet<string> = new Set<keyof typeof FINDING_LEVELS>([
  'partial-hole',
  'interrupted-cut',
  'one-sided-load',
]);

/** Whether a finding says nothing that its steps do not. */
export function isToldByStep({ code }: Finding): boolean {
  return TOLD_BY_STEPS.has(code);
}
