import type { Caution, Report } from '@edgebite/core';
import { countText } from '@edgebite/svg';
import { hanging } from '../columns/wrap.js';

/** Most cautions printed: more than these are not read. */
const MOST = 6;

/** Cautions for print, the gravest first and no more than fit, and how many more there are. */
export function fewCautions(
  cautions: readonly Caution[],
  most: number,
): { readonly shown: readonly Caution[]; readonly more: string | null } {
  if (cautions.length <= most) return { shown: cautions, more: null };
  const rest = cautions.length - most;
  return { shown: cautions.slice(0, most), more: `And ${countText(rest, 'more caution')} in the report.` };
}

/** The cautions of a report but for the standing one, with which the text ends: numbered, in the order of danger. */
export function cautionsText(report: Report): string {
  const { shown, more } = fewCautions(report.cautions.slice(0, -1), MOST);
  const lines = shown.map(({ message }, k) => hanging(`${k + 1}. `, message));
  return [...lines, ...(more === null ? [] : [more])].join('\n');
}
