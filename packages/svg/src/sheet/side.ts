import type { Report } from '@edgebite/core';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { moreText } from '../pen/table.js';
import { fitted, TYPE, wrapped, write } from '../pen/text.js';
import { countText, LEVELS } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import type { Box } from '../view/view.js';
import { findingLines } from './findings.js';
import type { SideBox } from './layout.js';

const PAD = 3;

/** Line height of the findings, and what sets one off from the next, mm. */
const LINE = 3.6;
const BETWEEN = 1.4;

/** How far the words of a finding stand in from its number, mm. */
const INDENT = 5;

/** Draws the column at the side: the findings in words, numbered as on the plan, gravest first. Returns where they end. */
export function drawSide(parent: SvgNode, report: Report, side: SideBox, { prefix, theme }: Pen): number {
  const group = parent.group().attr({ id: `${prefix}side`, role: 'group', 'aria-label': 'Findings' });
  const edge = tinted(group.group(), theme.soft);
  const end: Place = side.at === 'right' ? [side.x, side.y + side.height] : [side.x + side.width, side.y];
  lined(edge.line(side.x, side.y, ...end), NARROW);
  const width = side.width - 2 * PAD;
  const top = side.y + 6;
  const heading = fitted(levelsFound(report), width, TYPE.small, true);
  write(group, heading, side.x + PAD, top, { size: TYPE.small, bold: true });
  let y = top + 1;
  const bottom = side.y + side.height - 2;
  for (const entry of findingLines(
    report,
    bottom - y,
    { line: LINE, gap: BETWEEN },
    width - INDENT,
    TYPE.small,
  )) {
    y += BETWEEN;
    const own = tinted(group.group(), entry.level === 'danger' ? theme.warning : theme.ink);
    if (entry.index !== null) own.attr('data-about', `finding:${entry.index}`);
    entry.lines.forEach((line, i) => {
      y += LINE;
      if (i === 0 && entry.number !== null) {
        write(own, String(entry.number), side.x + PAD, y, { size: TYPE.small, bold: true });
      }
      write(own, line, side.x + PAD + INDENT, y, { size: TYPE.small });
    });
  }
  return drawCautions(group, report, side, y) + 1;
}

/** Draws the cautions but the standing one, which the foot of the sheet has; returns where they end. */
function drawCautions(parent: SvgNode, report: Report, side: Box, top: number): number {
  const bottom = side.y + side.height - 2;
  const entries = report.cautions.slice(0, -1).map(({ message }) => message);
  // A caution of which no line fits is left to the report.
  if (entries.length === 0 || top + 3 * LINE + 3 > bottom) return top;
  let y = top + LINE + 3;
  write(parent, 'Cautions', side.x + PAD, y, { size: TYPE.small, bold: true });
  const line = (text: string): void => {
    y += LINE;
    write(parent, text, side.x + PAD, y, { size: TYPE.small });
  };
  for (const [i, message] of entries.entries()) {
    const lines = wrapped(message, side.width - 2 * PAD, TYPE.small);
    const after = entries.length - i - 1;
    if (y + lines.length * LINE + BETWEEN + (after > 0 ? LINE : 0) > bottom) {
      if (y + LINE <= bottom) line(fitted(moreText(after + 1), side.width - 2 * PAD, TYPE.small));
      return y;
    }
    y += BETWEEN;
    lines.forEach(line);
  }
  return y;
}

/** How many findings there are of each level that has any: `1 danger, 2 checks`. */
function levelsFound(report: Report): string {
  return LEVELS.map((level) => ({
    level,
    count: report.findings.filter((one) => one.level === level).length,
  }))
    .filter(({ count }) => count > 0)
    .map(({ level, count }) => countText(count, level))
    .join(', ');
}
