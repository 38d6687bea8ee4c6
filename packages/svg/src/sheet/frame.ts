import type { Report } from '@edgebite/core';
import { lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron, unitText } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, TYPE, textWidth, wrapped, write } from '../pen/text.js';
import type { Box } from '../view/view.js';

/** What every drawing defers to. */
export const DEFERENCE =
  "Follow the machine's and the cutter's instructions, local rules and qualified people before this drawing.";

/** Sizes of type for the name of the job, mm: the largest that fits. */
const TITLES = [TYPE.title, 4.2, TYPE.label];

/** Length of the bar by which a print is checked, mm. */
const CHECK_BAR = 50;

/** The frame of a sheet, and what of it is in every drawing. */
export interface SheetFrame {
  readonly frame: Box;
  readonly heading: Box;
  readonly footing: Box;
  /** Heights of further rules from side to side. */
  readonly rules: readonly number[];
  /** What is said over the thickness and the limits: the scale, the size of the sheet. */
  readonly words: string;
}

/** Draws the frame, the heading at its top and the line at its foot. */
export function drawFrame(parent: SvgNode, report: Report, sheet: SheetFrame, { prefix, theme }: Pen): void {
  const { frame, heading, footing, rules, words } = sheet;
  const group = parent.group().attr({ id: `${prefix}frame`, role: 'group', 'aria-label': 'Title block' });
  lined(group.rect(frame.width, frame.height), WIDE).attr({ x: frame.x, y: frame.y });
  const lines = tinted(group.group(), theme.soft);
  for (const y of [heading.y + heading.height, footing.y, ...rules]) {
    lined(lines.line(frame.x, toMicron(y), frame.x + frame.width, toMicron(y)), NARROW);
  }
  drawHeading(group, report, heading, words);
  const deference = wrapped(DEFERENCE, frame.width - CHECK_BAR - 38, TYPE.small);
  deference.forEach((line, i) => {
    write(group, line, footing.x + 3, footing.y + 5 + (i - (deference.length - 1) / 2) * 3.3, {
      size: TYPE.small,
    });
  });
  drawCheckBar(group, footing.x + footing.width - CHECK_BAR - 4, footing.y + 4);
}

/** A bar of a known length, by which a print shows whether it has its true scale. */
function drawCheckBar(parent: SvgNode, x: number, y: number): void {
  const bar = parent.path(`M${toMicron(x)} ${toMicron(y - 1.6)}v3.2m0 -1.6h${CHECK_BAR}m0 -1.6v3.2`);
  lined(bar, NARROW).attr('data-check', CHECK_BAR);
  const words = `${CHECK_BAR} mm on paper`;
  write(parent, words, x - 2.5, y + 1, { size: TYPE.small, anchor: 'end' });
}

function drawHeading(parent: SvgNode, report: Report, heading: Box, first: string): void {
  const length = (value: number): string => `${dimensionText(value, report.units)} ${unitText(report.units)}`;
  const second = [
    `thickness ${length(report.thickness)}`,
    ...(report.material === null ? [] : [clean(report.material)]),
    `limits: web ${length(report.limits.web)}, edge ${dimensionText(report.limits.knifeEdge, report.units)}°`,
  ].join(' · ');
  const right = heading.x + heading.width - 3;
  const room = heading.width * 0.55;
  write(parent, first, right, heading.y + 5, { size: TYPE.small, anchor: 'end', bold: true });
  write(parent, fitted(second, room, TYPE.small), right, heading.y + 9.6, {
    size: TYPE.small,
    anchor: 'end',
  });
  const used = Math.max(textWidth(first, TYPE.small, true), Math.min(textWidth(second, TYPE.small), room));
  const name = report.name === '' ? 'Job without a name' : report.name;
  const own = heading.width - used - 10;
  // Rather smaller than cut short.
  const size = TITLES.find((one) => textWidth(clean(name), one, true) <= own) ?? (TITLES.at(-1) as number);
  const title = fitted(clean(name), own, size, true);
  write(parent, title, heading.x + 3, heading.y + 6 + size * 0.38, { size, bold: true });
}
