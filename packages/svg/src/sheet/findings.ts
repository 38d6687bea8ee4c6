import type { Finding, Report } from '@edgebite/core';
import { moreText } from '../pen/table.js';
import { fitted, wrapped } from '../pen/text.js';
import { gravestFirst } from '../pen/words.js';

/** A finding in the list beside the drawing, or the line that says how many are left out. */
export interface FindingEntry {
  /** Its number there and on the plan; null for the last line. */
  readonly number: number | null;
  /** Its index in the report; null for the last line. */
  readonly index: number | null;
  readonly level: Finding['level'] | null;
  readonly lines: readonly string[];
  /** Whether all of its words are there. */
  readonly whole: boolean;
}

/**
 * The findings in a height and width, gravest first, with a gap over each and so much a line. What does not fit is cut
 * short with a mark, and the last line says how many are left out.
 */
export function findingLines(
  report: Report,
  height: number,
  { line, gap }: { readonly line: number; readonly gap: number },
  width: number,
  size: number,
): readonly FindingEntry[] {
  const findings = gravestFirst(report);
  const entries: FindingEntry[] = [];
  let left = height;
  for (const [i, finding] of findings.entries()) {
    const { level } = finding;
    const own = wrapped(findingText(finding), width, size);
    const after = findings.length - i - 1;
    const room = Math.floor((left - gap - (after > 0 ? line + gap : 0)) / line + 1e-9);
    const shown = own.length <= room ? own : cutShort(own, room, width, size);
    if (shown.length > 0) {
      const index = report.findings.indexOf(finding);
      entries.push({ number: i + 1, index, level, lines: shown, whole: shown.length === own.length });
      left -= gap + shown.length * line;
    }
    if (shown.length === own.length) continue;
    const out = after + (shown.length > 0 ? 0 : 1);
    if (out > 0 && left >= line + gap - 1e-9) {
      const lines = [fitted(moreText(out), width, size)];
      entries.push({ number: null, index: null, level: null, lines, whole: true });
    }
    break;
  }
  return entries;
}

/** A finding in words, its level first. */
export function findingText({ level, message }: Finding): string {
  return `${level.toUpperCase()}: ${message}`;
}

function cutShort(own: readonly string[], room: number, width: number, size: number): readonly string[] {
  if (room <= 0) return [];
  const last = fitted(own.slice(room - 1).join(' '), width, size);
  return [...own.slice(0, room - 1), last];
}

/** All cautions but the standing one, which the foot of the sheet has. */
export function cautionsOf({ cautions }: Report): readonly string[] {
  return cautions.slice(0, -1).map(({ message }) => message);
}
