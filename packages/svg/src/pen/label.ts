import type { Place } from '../view/edges.js';
import { nearest, type Room } from '../view/room.js';
import type { Box } from '../view/view.js';
import { lined, NARROW, tinted } from './lines.js';
import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';
import { CAPITALS, clean, fitted, haloed, TYPE, textWidth, write } from './text.js';
import type { Theme } from './theme.js';

/** What a leader has at the end where it points: a dot inside an area, an arrow at an edge, or nothing. */
export type LeaderEnd = 'dot' | 'arrow' | 'none';

/** A label: a bold line, perhaps smaller ones under it, and what it points at. */
export interface Label {
  readonly text: string;
  readonly more?: readonly string[];
  readonly at: Place;
  readonly end: LeaderEnd;
  /** What it speaks of, in the names of the report: `cut:seat`, `web:0`. */
  readonly about: readonly string[];
  /** Findings that speak of the same: their numbers stand after it in rings. */
  readonly findings?: readonly FindingMark[];
  /** Whether it is left out rather than set far off, where its leader would cross much. */
  readonly near?: boolean;
  /** Its colour; that of visible edges without it. */
  readonly colour?: string;
}

/** A finding as it is marked: its index in the report, its number in the list, and whether it is a danger. */
export interface FindingMark {
  readonly index: number;
  readonly number: number;
  readonly grave: boolean;
}

/** Widest label, mm. A longer name is cut short; the tables have room for more of it. */
const WIDEST = 46;

/** How far off a label is at most that is to be near, mm. */
const NEAR = 17;

/** Diameter of a leader's dot, mm. */
const DOT = 1.1;

/** Length of an arrowhead, mm; it is a third as wide. */
export const ARROW = 2.4;

/** Diameter of the ring round a number, and what it takes in a row of them, mm. */
export const RING = 4.2;
const RING_PITCH = 4.7;

/** Most rings after a label; more findings are told of in the list alone. */
const MOST_RINGS = 6;

/** Draws a label with its leader where there is room for it, if need be its name alone; returns whether there was. */
export function drawLabel(parent: SvgNode, room: Room, label: Label, theme: Theme): boolean {
  if (drawWhole(parent, room, label, theme)) return true;
  const isLong = (label.more ?? []).length > 0;
  return isLong && drawWhole(parent, room, { ...label, more: [] }, theme);
}

function drawWhole(parent: SvgNode, room: Room, label: Label, theme: Theme): boolean {
  const text = fitted(clean(label.text), WIDEST, TYPE.label, true);
  const more = (label.more ?? []).map((line) => fitted(clean(line), WIDEST, TYPE.small));
  const rings = (label.findings ?? []).slice(0, MOST_RINGS);
  const set = settingOf(text, more, rings.length);
  const box = room.find(label.at, set.width + 1, set.height + 0.8, label.near ? NEAR : undefined);
  if (box === null) return false;
  room.take(label.at, box);
  const colour = label.colour ?? theme.ink;
  const group = tinted(parent.group(), colour);
  if (label.about[0] !== undefined) group.attr({ 'data-about': clean(label.about[0]) });
  drawLeader(group, box, label);
  const [x, y] = [box.x + 0.5, box.y + 0.4];
  if (text !== '') haloed(write(group, text, x, y + set.base, { size: TYPE.label, bold: true }), theme);
  more.forEach((line, i) => {
    haloed(write(group, line, x, y + set.base + NEXT * (i + 1), { size: TYPE.small }), theme);
  });
  rings.forEach((ring, i) => {
    drawRing(group, x + set.ringX + RING_PITCH * (i + 0.5), y + set.ringY, ring, theme);
  });
  for (const rest of (label.findings ?? []).slice(MOST_RINGS)) drawBareMark(group, label.at, rest, theme);
  return true;
}

/** From one base line of a label to the next, mm. */
const NEXT = TYPE.small * 1.2;

/** Where the parts of a label go in its box, mm: its base line, and the middle of its rings, the first of which starts at ringX. */
interface Setting {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly ringX: number;
  readonly ringY: number;
}

// A single ring stands after the bold line; several have a row of their own under it all.
function settingOf(text: string, more: readonly string[], rings: number): Setting {
  const own = text === '' ? 0 : textWidth(text, TYPE.label, true);
  const beside = rings <= 1 || text === '';
  const row = rings * RING_PITCH;
  const first = beside ? own + row : own;
  const width = Math.max(first, ...more.map((line) => textWidth(line, TYPE.small)), beside ? 0 : row);
  const top = beside && rings > 0 ? Math.max(TYPE.label * 0.9, RING) : TYPE.label * 0.9;
  const base = top - (beside && rings > 0 ? (RING - TYPE.label * CAPITALS) / 2 : 0);
  const words = (text === '' ? top : base + TYPE.label * 0.2) + more.length * NEXT;
  if (beside)
    return {
      width,
      height: Math.max(words, top),
      base,
      ringX: own,
      ringY: base - (TYPE.label * CAPITALS) / 2,
    };
  return { width, height: words + RING + 0.6, base, ringX: 0, ringY: words + 0.5 + RING / 2 };
}

/** Marks the findings of a label that could not be set: a small cross at their place each. */
export function drawBareMarks(parent: SvgNode, label: Label, theme: Theme): void {
  for (const finding of label.findings ?? []) drawBareMark(parent, label.at, finding, theme);
}

function drawBareMark(parent: SvgNode, [x, y]: Place, { index, grave }: FindingMark, theme: Theme): void {
  const colour = grave ? theme.warning : theme.ink;
  const group = parent.group().attr({ 'data-about': `finding:${index}`, color: colour });
  lined(group.path(`M${toMicron(x - 0.7)} ${toMicron(y - 0.7)}l1.4 1.4m0 -1.4l-1.4 1.4`), NARROW);
}

/** A number in a ring: filled for a danger, so that it is told apart without colour. */
function drawRing(
  parent: SvgNode,
  x: number,
  y: number,
  { index, number, grave }: FindingMark,
  theme: Theme,
): void {
  const colour = grave ? theme.warning : theme.ink;
  const group = parent.group().attr({ 'data-about': `finding:${index}`, color: colour });
  lined(group.circle(RING), NARROW).attr({
    cx: toMicron(x),
    cy: toMicron(y),
    fill: grave ? colour : theme.paper,
  });
  const size = TYPE.small * (number > 99 ? 0.62 : number > 9 ? 0.85 : 0.95);
  const figure = write(group, String(number), x, y + size * 0.36, { size, bold: true, anchor: 'middle' });
  figure.attr('fill', grave ? theme.paper : colour);
}

/** A filled arrowhead with its tip at `tip`, coming from the side of `from`. */
export function arrowhead(parent: SvgNode, tip: Place, from: Place): void {
  const length = Math.hypot(from[0] - tip[0], from[1] - tip[1]);
  if (length === 0) return;
  const ux = ((from[0] - tip[0]) / length) * ARROW;
  const uy = ((from[1] - tip[1]) / length) * ARROW;
  const corners = [
    tip,
    [tip[0] + ux - uy / 6, tip[1] + uy + ux / 6],
    [tip[0] + ux + uy / 6, tip[1] + uy - ux / 6],
  ];
  const d = corners.map(([x, y]) => `${toMicron(x as number)} ${toMicron(y as number)}`).join('L');
  parent.path(`M${d}Z`).attr({ fill: 'currentColor', stroke: 'none' });
}

function drawLeader(group: SvgNode, box: Box, { at, end }: Label): void {
  const to = nearest(box, at);
  if (end === 'dot')
    group.circle(DOT).attr({ cx: toMicron(at[0]), cy: toMicron(at[1]), fill: 'currentColor' });
  if (end === 'arrow') arrowhead(group, at, to);
  lined(group.line(toMicron(at[0]), toMicron(at[1]), toMicron(to[0]), toMicron(to[1])), NARROW);
}
