import { type Finding, knifeMarks, type Report, webMarks } from '@edgebite/core';
import { gravestFirst, LEVELS } from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';

/** How grave a finding is. */
export type Level = Finding['level'];

/** Whether a finding is as grave as a level, or graver. */
export function isAtLeast(finding: Finding, level: Level): boolean {
  return LEVELS.indexOf(finding.level) <= LEVELS.indexOf(level);
}

/**
 * Findings, gravest first, each with the marks under which the drawing and the tables show it.
 * @param isWanted which of them
 */
export function findingsText(report: Report, isWanted: (finding: Finding) => boolean = () => true): string {
  if (report.findings.length === 0) return 'No findings.';
  const marks = markNames(report);
  return gravestFirst(report)
    .filter(isWanted)
    .map((finding) => findingText(finding, marks))
    .join('\n');
}

/** Columns before a finding's sentence: the longest level, and spaces. */
const LEAD = 8;

function findingText(finding: Finding, marks: ReadonlyMap<string, string>): string {
  const named = [...new Set(finding.about.map((name) => marks.get(name)).filter((m) => m !== undefined))];
  const mark = named.length === 0 ? '' : ` [${named.join(', ')}]`;
  return hanging(finding.level.toUpperCase().padEnd(LEAD), `${finding.message}${mark}`);
}

// From the report's names (web:0) to the marks of the drawing (W1): one web in several slabs is one mark.
function markNames(report: Report): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { id, members } of webMarks(report)) for (const i of members) names.set(`web:${i}`, id);
  for (const { id, members } of knifeMarks(report)) for (const i of members) names.set(`knifeEdge:${i}`, id);
  return names;
}
