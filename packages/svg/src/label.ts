import type { Container } from '@svgdotjs/svg.js';
import type { Place } from './edges.js';
import { lined, NARROW } from './lines.js';
import { nearest, type Room } from './room.js';
import { clean, fitted, TYPE, textWidth, write } from './text.js';
import type { Box } from './view.js';

/** What a leader has at the end where it points: a dot inside an area, an arrow at an edge, or nothing. */
export type LeaderEnd = 'dot' | 'arrow' | 'none';

/** A label: a bold line, perhaps a smaller one under it, and what it points at. */
export interface Label {
  readonly text: string;
  readonly more?: string;
  readonly at: Place;
  readonly end: LeaderEnd;
  /** Drawn even where it must hide another label. */
  readonly must?: boolean;
}

/** Widest label, mm. A longer name is cut short; the tables have room for more of it. */
const WIDEST = 46;

/** Diameter of a leader's dot, mm: as ASME Y14.2 has it. */
const DOT = 1.5;

/** Length of an arrowhead, mm; it is a third as wide. */
export const ARROW = 2.8;

/** Draws a label with its leader where there is room for it; returns whether there was. */
export function drawLabel(parent: Container, room: Room, label: Label): boolean {
  const text = fitted(clean(label.text), WIDEST, TYPE.label, true);
  const more = label.more === undefined ? null : fitted(clean(label.more), WIDEST, TYPE.small);
  const width = Math.max(textWidth(text, TYPE.label, true), more === null ? 0 : textWidth(more, TYPE.small));
  const height = TYPE.label * 1.1 + (more === null ? 0 : TYPE.small * 1.2);
  const found = room.find(label.at, width + 1, height + 0.8);
  if (found === null || !(found.free || label.must)) return false;
  const { box } = found;
  room.take(label.at, box);
  const group = parent.group();
  drawLeader(group, box, label);
  group.rect(box.width, box.height).attr({ x: num(box.x), y: num(box.y), fill: '#fff' });
  write(group, text, box.x + 0.5, box.y + TYPE.label * 0.95, { size: TYPE.label, bold: true });
  if (more !== null) {
    write(group, more, box.x + 0.5, box.y + TYPE.label * 1.1 + TYPE.small, { size: TYPE.small });
  }
  return true;
}

/** A filled arrowhead with its tip at `tip`, coming from the side of `from`. */
export function arrowhead(parent: Container, tip: Place, from: Place): void {
  const length = Math.hypot(from[0] - tip[0], from[1] - tip[1]);
  if (length === 0) return;
  const ux = ((from[0] - tip[0]) / length) * ARROW;
  const uy = ((from[1] - tip[1]) / length) * ARROW;
  const corners = [
    tip,
    [tip[0] + ux - uy / 6, tip[1] + uy + ux / 6],
    [tip[0] + ux + uy / 6, tip[1] + uy - ux / 6],
  ];
  const d = corners.map(([x, y]) => `${num(x as number)} ${num(y as number)}`).join('L');
  parent.path(`M${d}Z`).attr({ fill: '#000', stroke: 'none' });
}

function drawLeader(group: Container, box: Box, { at, end }: Label): void {
  const to = nearest(box, at);
  if (end === 'dot') group.circle(DOT).attr({ cx: num(at[0]), cy: num(at[1]), fill: '#000' });
  if (end === 'arrow') arrowhead(group, at, to);
  lined(group.line(num(at[0]), num(at[1]), num(to[0]), num(to[1])), NARROW);
}

function num(value: number): number {
  return Number(value.toFixed(3));
}
