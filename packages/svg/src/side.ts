import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { findingLines } from './findings.js';
import { arrowhead } from './label.js';
import type { Layout } from './layout.js';
import { drawLegend } from './legend.js';
import { lined, NARROW, WIDE } from './lines.js';
import { dimensionText, unitText } from './numbers.js';
import { roundLength } from './scale.js';
import { fitted, TYPE, write } from './text.js';
import { levelsText } from './words.js';

const PAD = 3;

/** Height of the block at the foot of the column: axes, scale bar, bar to check a print with. */
const FOOT = 36;

/** Line height of the findings, mm. */
const LINE = 3.6;

/** Length of the bar by which a print is checked, mm. */
const CHECK_BAR = 50;

/** Draws the column at the side: legend, the gravest findings in words, axes, scale bar. */
export function drawSide(parent: Container, report: Report, layout: Layout, prefix: string): void {
  const { side } = layout;
  const group = parent.group().attr('id', `${prefix}side`);
  lined(group.line(side.x, side.y, side.x, side.y + side.height), NARROW);
  const legend = drawLegend(group, report, side.x + PAD, side.y + 2, prefix);
  const foot = side.y + side.height - FOOT;
  drawFindings(group, report, layout, side.y + 2 + legend + 5, foot);
  drawAxes(group, side.x + PAD + 2, foot + 14);
  drawScaleBar(group, report, layout, side.x + PAD, foot + 22.5);
}

function drawFindings(
  parent: Container,
  report: Report,
  { side }: Layout,
  top: number,
  bottom: number,
): void {
  const width = side.width - 2 * PAD;
  const rows = Math.floor((bottom - top) / LINE);
  if (rows < 1) return;
  const heading = fitted(levelsText(report), width, TYPE.small, true);
  write(parent, heading, side.x + PAD, top, { size: TYPE.small, bold: true });
  findingLines(report, rows - 1, width, TYPE.small).forEach((line, i) => {
    write(parent, line, side.x + PAD, top + (i + 1) * LINE, { size: TYPE.small });
  });
}

function drawAxes(parent: Container, x: number, y: number): void {
  const group = parent.group();
  lined(group.circle(2.6), NARROW).attr({ cx: x, cy: y });
  group.circle(0.9).attr({ cx: x, cy: y, fill: '#000' });
  lined(group.path(`M${x} ${y}H${x + 9}M${x} ${y}V${y - 9}`), NARROW);
  arrowhead(group, [x + 11, y], [x, y]);
  arrowhead(group, [x, y - 11], [x, y]);
  write(group, 'X', x + 12.5, y + 1.2, { size: TYPE.label });
  write(group, 'Y', x + 1.8, y - 9, { size: TYPE.label });
  write(group, 'zero of the coordinates', x + 18, y + 1, { size: TYPE.small });
}

function drawScaleBar(parent: Container, report: Report, { view }: Layout, x: number, y: number): void {
  const length = roundLength(42 / view.factor);
  const end = x + length * view.factor;
  const text = (share: number): string => dimensionText(length * share, report.units);
  lined(parent.line(x, y, end, y), NARROW);
  lined(parent.line(x, y, (x + end) / 2, y), WIDE * 1.5).attr('stroke-linecap', 'butt');
  for (const share of [0, 0.5, 1]) {
    const at = x + (end - x) * share;
    lined(parent.line(at, y - 1.4, at, y + 1.4), NARROW);
    write(parent, share === 0 ? '0' : text(share), at, y - 2.1, {
      size: TYPE.small,
      anchor: share === 0 ? 'start' : 'middle',
    });
  }
  write(parent, unitText(report.units), end + 2.5, y + 1, { size: TYPE.small });
  const low = y + 6.5;
  lined(parent.path(`M${x} ${low - 1.4}V${low + 1.4}M${x} ${low}H${x + CHECK_BAR}m0 -1.4v2.8`), NARROW);
  const check = `${CHECK_BAR} mm on paper: check your print`;
  write(parent, check, x, low + 3.6, { size: TYPE.small * 0.9 });
}
