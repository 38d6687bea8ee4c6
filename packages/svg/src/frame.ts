import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import type { Layout } from './layout.js';
import { lined, NARROW, WIDE } from './lines.js';
import { dimensionText, unitText } from './numbers.js';
import { scaleText } from './scale.js';
import type { SheetSize } from './sheet.js';
import { clean, fitted, TYPE, textWidth, write } from './text.js';

/** What every drawing defers to. */
const DEFERENCE =
  "Follow the machine's and the cutter's instructions, local rules and qualified people before this drawing.";

/** Draws the frame, the heading over it and the line at its foot. */
export function drawFrame(
  parent: Container,
  report: Report,
  layout: Layout,
  size: SheetSize,
  prefix: string,
): void {
  const { frame, heading, footing } = layout;
  const group = parent.group().attr('id', `${prefix}frame`);
  lined(group.rect(frame.width, frame.height), WIDE).attr({ x: frame.x, y: frame.y });
  const under = heading.y + heading.height;
  lined(group.line(frame.x, under, frame.x + frame.width, under), NARROW);
  lined(group.line(frame.x, footing.y, frame.x + frame.width, footing.y), NARROW);
  const tablesTop = layout.side.y + layout.side.height;
  if (layout.tables.length > 0) {
    lined(group.line(frame.x, tablesTop, frame.x + frame.width, tablesTop), NARROW);
  }
  drawHeading(group, report, layout, size);
  const words = fitted(DEFERENCE, frame.width - 6, TYPE.small);
  write(group, words, footing.x + 3, footing.y + 4.1, { size: TYPE.small });
}

function drawHeading(parent: Container, report: Report, { heading, scale }: Layout, size: SheetSize): void {
  const length = (value: number): string => `${dimensionText(value, report.units)} ${unitText(report.units)}`;
  const first = `SCALE ${scaleText(scale)} · ${size} · lengths in ${report.units}`;
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
  write(
    parent,
    fitted(clean(name), heading.width - used - 10, TYPE.title, true),
    heading.x + 3,
    heading.y + 7.9,
    {
      size: TYPE.title,
      bold: true,
    },
  );
}
