import type { Report } from '@edgebite/core';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { edgesBeyond } from './beyond.js';

/** Where an x and a height of the part come to in the section, mm of the sheet. */
export interface Axes {
  readonly across: (x: number) => number;
  readonly up: (height: number) => number;
}

/**
 * Draws the edges behind the cutting plane that metal does not hide: narrow, so that what is cut stands out. Hidden
 * ones are left out (ISO 128-50, from memory).
 */
export function drawBeyond(
  parent: SvgNode,
  report: Report,
  level: number,
  { across, up }: Axes,
  pen: Pen,
): void {
  const group = tinted(parent.group(), pen.theme.ink).attr('id', `${pen.prefix}beyond`);
  for (const edge of edgesBeyond(report, level)) {
    const isUpright = edge.kind === 'upright';
    const [x1, x2] = isUpright ? [edge.x, edge.x] : [edge.from, edge.to];
    const [low, high] = isUpright ? [edge.from, edge.to] : [edge.height, edge.height];
    const ends = [across(x1), up(low), across(x2), up(high)].map(toMicron);
    const [ax = 0, ay = 0, bx = 0, by = 0] = ends;
    if (ax !== bx || ay !== by) lined(group.line(ax, ay, bx, by), NARROW);
  }
}
