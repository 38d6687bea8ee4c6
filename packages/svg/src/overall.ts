import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { drawDimension } from './dimension.js';
import type { Layout } from './layout.js';
import { dimensionText } from './numbers.js';
import { outstandOf } from './outstand.js';
import { INK, type Room } from './room.js';
import { boundsOfRegion } from './scan.js';
import { onSheet } from './view.js';

/** How far the overall dimensions stand off what they measure, mm; ISO 129 and ASME Y14.5 want at least 10. */
const OFF = 12;

/** Draws the part's overall width and height, each at the side where less stands out. */
export function drawOverall(parent: Container, report: Report, layout: Layout, room: Room): void {
  const bounds = boundsOfRegion(report.outline);
  const outstand = outstandOf(report, layout);
  if (bounds === null || outstand === null) return;
  const group = parent.group();
  const [left, bottom] = onSheet(layout.view, [bounds.minX, bounds.minY]);
  const [right, top] = onSheet(layout.view, [bounds.maxX, bounds.maxY]);
  const text = (length: number): string => dimensionText(length, report.units);

  const below = outstand.bottom <= outstand.top;
  const from = below ? bottom : top;
  const y = below ? bottom + outstand.bottom + OFF : top - outstand.top - OFF;
  drawDimension(group, [left, right], y, from, text(bounds.maxX - bounds.minX));
  room.markBox({ x: left - 3, y: y - 5, width: right - left + 6, height: 8 }, INK.taken);

  // Upright: drawn level about a lower corner, then turned to be read from the right.
  const beside = outstand.left <= outstand.right;
  const corner = beside ? left : right;
  const off = beside ? -outstand.left - OFF : outstand.right + OFF;
  const upright = group.group().attr('transform', `rotate(-90 ${corner} ${bottom})`);
  const ends = [corner, corner + bottom - top] as const;
  drawDimension(upright, ends, bottom + off, bottom, text(bounds.maxY - bounds.minY));
  room.markBox({ x: corner + off - 5, y: top - 3, width: 8, height: bottom - top + 6 }, INK.taken);
}
