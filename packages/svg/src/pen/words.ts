import type { Finding, Report, ReportCut, ReportPiece } from '@edgebite/core';
import { numberText, type Units, unitText } from './numbers.js';

/** What a piece is, in the words of the shop. */
export function roleText(role: ReportPiece['role']): string {
  const words = {
    kept: 'kept',
    slug: 'loose slug',
    'held slug': 'held slug',
    hanging: 'hanging by thin metal',
    offcut: 'loose offcut',
  };
  return words[role];
}

/** A name of the report read: what kind of thing it names, and which. The kind is empty in what is no name. */
export function readName(name: string): { readonly kind: string; readonly which: string } {
  const colon = name.indexOf(':');
  return { kind: name.slice(0, Math.max(colon, 0)), which: name.slice(colon + 1) };
}

/** How deep a cut goes: `through`, `4.000`, or `4.000 from below`. */
export function depthText(cut: ReportCut, units: Units): string {
  if (cut.through) return 'through';
  const depth = numberText(cut.depth, units);
  return cut.from === 'bottom' ? `${depth} from below` : depth;
}

/**
 * Depths under the top face that slabs take up: `all` for the whole thickness, else `0 to 4.000`; stretches
 * that do not join are set apart by commas.
 */
export function depthsText(report: Report, slabs: readonly number[]): string {
  if (slabs.length === report.slabs.length) return 'all';
  const runs: { from: number; to: number }[] = [];
  for (const index of slabs) {
    const slab = report.slabs[index];
    if (slab === undefined) continue;
    const last = runs[runs.length - 1];
    if (last !== undefined && last.to === slab.from) last.to = slab.to;
    else runs.push({ from: slab.from, to: slab.to });
  }
  const text = (height: number): string => numberText(report.thickness - height, report.units);
  return runs
    .reverse()
    .map(({ from, to }) => `${text(to)} to ${text(from)}`)
    .join(', ');
}

/** A length with its unit: `12.000 mm`. */
export function lengthText(value: number, units: Units): string {
  return `${numberText(value, units)} ${unitText(units)}`;
}

/** `1 web`, `2 webs`: a number with its noun. */
export function countText(count: number, noun: string, plural = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : plural}`;
}

/** The levels of findings, gravest first. */
export const LEVELS = ['danger', 'check', 'note'] as const satisfies readonly Finding['level'][];

/** How many findings there are of each level: `1 danger, 2 checks, no notes`. */
export function levelsText(report: Report): string {
  return LEVELS.map((level) => {
    const count = report.findings.filter((finding) => finding.level === level).length;
    return count === 0 ? `no ${level}s` : countText(count, level);
  }).join(', ');
}

/** The findings, gravest first; within a level as the report has them. */
export function gravestFirst(report: Report): readonly Finding[] {
  return LEVELS.flatMap((level) => report.findings.filter((finding) => finding.level === level));
}
