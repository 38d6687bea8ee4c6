import type { Report } from '@edgebite/core';
import { drawDimension } from '../pen/dimension.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import type { Theme } from '../pen/theme.js';
import type { Place } from '../view/edges.js';
import type { Sides } from '../view/outstand.js';
import type { Room } from '../view/room.js';
import { boundsOfRegion } from '../view/scan.js';
import { onSheet, type View } from '../view/view.js';

/** How far the overall dimensions stand off what they measure, mm; ISO 129 wants at least 10 (from memory). */
const OFF = 12;

/**
 * Draws the part's overall width over it and its height at its right; places from the zero have the other sides. Figures
 * for which there is no room between arrows go to the left and up: they would meet over the corner between the two.
 */
export function drawOverall(
  parent: SvgNode,
  report: Report,
  view: View,
  outstand: Sides,
  room: Room,
  theme: Theme,
): void {
  const bounds = boundsOfRegion(report.outline);
  if (bounds === null) return;
  const group = parent.group();
  const [left, bottom] = onSheet(view, [bounds.minX, bounds.minY]);
  const [right, top] = onSheet(view, [bounds.maxX, bounds.maxY]);
  const text = (length: number): string => dimensionText(length, report.units);

  const y = top - outstand.top - OFF;
  drawDimension(group, [left, right], y, top, text(bounds.maxX - bounds.minX), room, theme, 'start');

  // Upright: drawn level about a lower corner, then turned to be read from the right.
  const off = outstand.right + OFF;
  const upright = group.group().attr('transform', `rotate(-90 ${toMicron(right)} ${toMicron(bottom)})`);
  const turned = turnedRoom(room, [right, bottom]);
  const height = text(bounds.maxY - bounds.minY);
  drawDimension(upright, [right, right + bottom - top], bottom + off, bottom, height, turned, theme);
}

// Boxes as they are before the turn are noted where they come to lie after it.
function turnedRoom(room: Room, [cx, cy]: Place): Pick<Room, 'markBox'> {
  return {
    markBox: ({ x, y, width, height }, ink) =>
      room.markBox({ x: cx + (y - cy), y: cy - (x + width - cx), width: height, height: width }, ink),
  };
}
