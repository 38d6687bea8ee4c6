import type { Report, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';

/** How far a tool comes out below the part, and how near it comes to what lies there; nothing where it does not. */
export function underLines({ units, keepOut }: Report, { under, tool }: ReportStep): string[] {
  const { below, over, margin } = under;
  if (below === 0 && over === null) return [];
  // Where no tool is named only a drill's point is reckoned with.
  const drilled = tool === null ? ' if drilled' : '';
  const out =
    below === 0 ? 'Comes through' : `Comes out ${lengthText(below, units)} below the part${drilled}`;
  if (over === null || margin === null) return [`${out}.`];
  const kind = keepOut.find(({ id }) => id === over)?.kind ?? 'keep-out';
  if (margin <= 0) return [`${out}, into ${kind} ${over}: do not start.`];
  return [`${out}, ${lengthText(margin, units)} over ${kind} ${over}.`];
}
