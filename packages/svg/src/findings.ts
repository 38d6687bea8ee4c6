import type { Report } from '@edgebite/core';
import { moreText } from './table.js';
import { fitted, wrapped } from './text.js';
import { gravestFirst } from './words.js';

/**
 * The findings in so many lines of a width, gravest first. What does not fit is cut short with a mark, and the
 * last line says how many are left out.
 */
export function findingLines(report: Report, count: number, width: number, size: number): readonly string[] {
  const findings = gravestFirst(report);
  const lines: string[] = [];
  for (const [i, { level, message }] of findings.entries()) {
    const own = wrapped(`${level.toUpperCase()}: ${message}`, width, size);
    const after = findings.length - i - 1;
    const room = count - lines.length - (after > 0 ? 1 : 0);
    if (own.length <= room) {
      lines.push(...own);
      continue;
    }
    lines.push(...cutShort(own, room, width, size));
    const left = after + (room > 0 ? 0 : 1);
    if (left > 0 && lines.length < count) lines.push(moreText(left));
    break;
  }
  return lines;
}

function cutShort(own: readonly string[], room: number, width: number, size: number): readonly string[] {
  if (room <= 0) return [];
  const last = fitted(own.slice(room - 1).join(' '), width, size);
  return [...own.slice(0, room - 1), last];
}
