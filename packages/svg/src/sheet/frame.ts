import type { Report } from '@edgebite/core';
import { lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron, unitText } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, TYPE, textWidth, wrapped, write } from '../pen/text.js';
import { scaleText } from '../view/scale.js';
import type { Layout } from './layout.js';
import type { SheetSize } from './sheet.js';

/** What every drawing defers to. */
export const DEFERENCE =
  "Follow the machine's and the cutter's instructions, local rules and qualified people before this drawing.";

/** Sizes of type for the name of the job, mm: the largest that fits. */
const TITLES = [TYPE.title, 4.2, TYPE.label];

/** Length of the bar by which a print is checked, mm. */
const CHECK_BAR = 50;

/** Draws the frame, the heading at its top and the line at its foot. */
export function drawFrame(
  parent: SvgNode,
  report: Report,
  layout: Layout,
  size: SheetSize,
  { prefix, theme }: Pen,
): void {
  const { frame, heading, footing, legend } = layout;
  const group = parent.group().attr({ id: `${prefix}frame`, role: 'group', 'aria-label': 'Title block' });
  lined(group.rect(frame.width, frame.height), WIDE).attr({ x: frame.x, y: frame.y });
  const rules = tinted(group.group(), theme.soft);
  const tablesTop = Math.min(layout.band?.y ?? legend.y, ...layout.tables.map(({ y }) => y - 3));
  for (const y of [heading.y + heading.height, footing.y, legend.y, tablesTop]) {
    lined(rules.line(frame.x, toMicron(y), frame.x + frame.width, toMicron(y)), NARROW);
  }
  drawHeading(group, report, layout, size);
  const lines = wrapped(DEFERENCE, frame.width - CHECK_BAR - 38, TYPE.small);
  lines.forEach((line, i) => {
    write(group, line, footing.x + 3, footing.y + 5 + (i - (lines.length - 1) / 2) * 3.3, {
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

function drawHeading(parent: SvgNode, report: Report, { heading, scale }: Layout, sheet: SheetSize): void {
  const length = (value: number): string => `${dimensionText(value, report.units)} ${unitText(report.units)}`;
  const first = `SCALE ${scaleText(scale)} · ${sheet} · lengths in ${report.units}`;
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
