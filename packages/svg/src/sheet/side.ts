import type { Report } from '@edgebite/core';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { moreText } from '../pen/table.js';
import { fitted, TYPE, wrapped, write } from '../pen/text.js';
import type { Theme } from '../pen/theme.js';
import { countText, LEVELS } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import { cautionsOf, type FindingEntry, findingLines } from './findings.js';
import type { SideBox } from './layout.js';

const PAD = 3;

/** Line height of the findings, and what sets one off from the next, mm. */
export const LINE = 3.6;
export const BETWEEN = 1.4;

/** How far the words of a finding stand in from its number, mm. */
export const INDENT = 5;

/** What the side of a drawing has room for: findings gravest first, and cautions, each as the lines of its words. */
export interface SideText {
  readonly findings: readonly FindingEntry[];
  readonly cautions: readonly (readonly string[])[];
  /** What is said in place of the cautions that do not fit. */
  readonly last: string | null;
}

/** What goes into the column at the side. */
export function sideText(report: Report, side: SideBox): SideText {
  const width = side.width - 2 * PAD;
  const bottom = side.y + side.height - 2;
  const top = side.y + 7;
  const findings = findingLines(
    report,
    bottom - top,
    { line: LINE, gap: BETWEEN },
    width - INDENT,
    TYPE.small,
  );
  const end = findings.reduce((sum, { lines }) => sum + BETWEEN + lines.length * LINE, top);
  const all = cautionsOf(report).map((message) => wrapped(message, width, TYPE.small));
  const cautions: (readonly string[])[] = [];
  // A caution of which no line fits is left to the next sheet.
  if (all.length === 0 || end + 3 * LINE + 3 > bottom) return { findings, cautions, last: null };
  let y = end + LINE + 3;
  for (const [i, lines] of all.entries()) {
    const after = all.length - i - 1;
    if (y + lines.length * LINE + BETWEEN + (after > 0 ? LINE : 0) > bottom) {
      const last = y + LINE <= bottom ? fitted(moreText(after + 1), width, TYPE.small) : null;
      return { findings, cautions, last };
    }
    cautions.push(lines);
    y += BETWEEN + lines.length * LINE;
  }
  return { findings, cautions, last: null };
}

/** Draws the column at the side: the findings in words, numbered as on the plan, gravest first. Returns where it ends. */
export function drawSide(
  parent: SvgNode,
  report: Report,
  side: SideBox,
  { findings, cautions, last }: SideText,
  { prefix, theme }: Pen,
): number {
  const group = parent.group().attr({ id: `${prefix}side`, role: 'group', 'aria-label': 'Findings' });
  const edge = tinted(group.group(), theme.soft);
  const end: Place = side.at === 'right' ? [side.x, side.y + side.height] : [side.x + side.width, side.y];
  lined(edge.line(side.x, side.y, ...end), NARROW);
  const width = side.width - 2 * PAD;
  const top = side.y + 6;
  const heading = fitted(levelsFound(report), width, TYPE.small, true);
  write(group, heading, side.x + PAD, top, { size: TYPE.small, bold: true });
  let y = top + 1;
  for (const entry of findings) y = drawEntry(group, entry, [side.x + PAD, y], theme);
  if (cautions.length === 0 && last === null) return y + 1;
  y += LINE + 3;
  write(group, 'Cautions', side.x + PAD, y, { size: TYPE.small, bold: true });
  for (const lines of [...cautions, ...(last === null ? [] : [[last]])]) {
    if (lines[0] !== last) y += BETWEEN;
    for (const line of lines) {
      y += LINE;
      write(group, line, side.x + PAD, y, { size: TYPE.small });
    }
  }
  return y + 1;
}

/** Writes a finding with its number under a place; returns where it ends. */
export function drawEntry(
  parent: SvgNode,
  { index, level, lines, number }: FindingEntry,
  [x, top]: Place,
  theme: Theme,
): number {
  const own = tinted(parent.group(), level === 'danger' ? theme.warning : theme.ink);
  if (index !== null) own.attr('data-about', `finding:${index}`);
  let y = top + BETWEEN;
  lines.forEach((line, i) => {
    y += LINE;
    if (i === 0 && number !== null) {
      write(own, String(number), x, y, { size: TYPE.small, bold: true });
    }
    write(own, line, x + INDENT, y, { size: TYPE.small });
  });
  return y;
}

/** How many findings there are of each level that has any: `1 danger, 2 checks`. */
function levelsFound(report: Report): string {
  if (report.findings.length === 0) return 'no findings';
  return LEVELS.map((level) => ({
    level,
    count: report.findings.filter((one) => one.level === level).length,
  }))
    .filter(({ count }) => count > 0)
    .map(({ level, count }) => countText(count, level))
    .join(', ');
}
