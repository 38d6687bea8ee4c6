/*
 * Room: the section through the part.
 * In: a report and a box.
 * Out: the cut through the part with the edges behind it, and the cutting line on the plan.
 */

import type { Report } from '@edgebite/core';
import { type Fills, turnsOf } from '../pen/fills.js';
import { arrowhead } from '../pen/label.js';
import { CHAIN, DOUBLE_DASH_CHAIN, lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, haloed, TYPE, textWidth, write } from '../pen/text.js';
import type { Layout } from '../sheet/layout.js';
import type { Place } from '../view/edges.js';
import { outstandOf } from '../view/outstand.js';
import { INK, type Room } from '../view/room.js';
import { boundsOfRegion, type Stretch, stretchesAt } from '../view/scan.js';
import { type Box, onSheet } from '../view/view.js';
import { type Axes, drawBeyond } from './beyond-lines.js';
import { drawFloors } from './floors.js';
import { sectionIn } from './section-in.js';

/** Least distance of two depths written beside the section, mm. */
const APART = 4;

/** How far the cutting line goes past the part, and how long its wide ends are, mm. */
const PAST = 3;
const WIDE_END = 4;

/** Draws the line on the plan at which the part is cut in thought, and notes it in the room for labels. */
export function drawCuttingLine(
  parent: SvgNode,
  report: Report,
  layout: Layout,
  room: Room,
  { theme }: Pen,
): void {
  const level = layout.section === null ? null : sectionLevel(report);
  const bounds = boundsOfRegion(report.outline);
  const outstand = outstandOf(report, layout.plan, layout.view);
  if (level === null || bounds === null || outstand === null) return;
  const group = tinted(parent.group(), theme.ink);
  const left = onSheet(layout.view, [bounds.minX, level])[0] - outstand.left - PAST;
  const right = onSheet(layout.view, [bounds.maxX, level])[0] + outstand.right + PAST;
  const y = onSheet(layout.view, [0, level])[1];
  lined(tinted(group.group(), theme.soft).line(left, y, right, y), NARROW, CHAIN);
  const ends: readonly (readonly [number, number])[] = [
    [left, 1],
    [right, -1],
  ];
  for (const [x, inward] of ends) {
    lined(group.line(x, y, x + inward * WIDE_END, y), WIDE);
    lined(group.line(x, y, x, y + 6), NARROW);
    arrowhead(group, [x, y], [x, y + 6]);
    const letter = letterAt([x, y], inward, room);
    haloed(write(group, 'A', ...letter.at, { size: TYPE.label, anchor: 'middle', bold: true }), theme);
    room.markBox(letter.box, INK.taken);
    room.markLine([x, y], [x, y + 6], INK.named);
  }
  room.markLine([left, y], [right, y], INK.line);
}

/** Beside the arrow at an end of the cutting line: outside, inside, or off its tip; the first on no other line. */
function letterAt([x, y]: Place, inward: number, room: Room): { readonly at: Place; readonly box: Box } {
  const places: readonly Place[] = [
    [x - inward * 2.4, y + 5],
    [x + inward * 2.4, y + 5.4],
    [x, y + 10.4],
    [x - inward * 4.6, y + 1.2],
  ];
  const boxes = places.map((at) => ({ at, box: { x: at[0] - 1.5, y: at[1] - 3, width: 3, height: 3.4 } }));
  return boxes.find(({ box }) => room.isBare(box)) ?? (boxes[0] as (typeof boxes)[number]);
}

/** Draws the section under the plan: what is left in every slab, how deep each slab begins, and what ends there. */
export function drawSection(
  parent: SvgNode,
  report: Report,
  layout: Layout,
  room: Room,
  pen: Pen,
  fills: Fills,
): void {
  const level = sectionLevel(report);
  const bounds = boundsOfRegion(report.outline);
  if (layout.section === null || level === null || bounds === null) return;
  const group = parent.group().attr({ id: `${pen.prefix}section`, role: 'group', 'aria-label': 'Section' });
  const { section, view } = layout;
  const top = section.y + 9;
  const across = (x: number): number => onSheet(view, [x, level])[0];
  const up = (height: number): number => top + (report.thickness - height) * view.factor;
  const title = 'A–A section, seen from the front, top face up';
  const [left, right] = [across(bounds.minX), across(bounds.maxX)];
  const words = fitted(title, section.width - 4, TYPE.small, true);
  const own = textWidth(words, TYPE.small, true);
  const start = Math.max(section.x + 2, Math.min(left, section.x + section.width - 2 - own));
  write(group, words, start, section.y + 5, { size: TYPE.small, bold: true });

  for (const stretch of stretchesAt(report.outline, level)) {
    const box = boxOf(stretch, { from: 0, to: report.thickness }, { across, up });
    const before = tinted(group.group(), pen.theme.soft).rect(box.width, box.height);
    lined(before, NARROW, DOUBLE_DASH_CHAIN).attr({ x: box.x, y: box.y });
  }
  drawBeyond(group, report, level, { across, up }, pen);
  drawFaces(group, report, level, { across, up }, fills);
  drawFloors(group, report, level, { across, up }, pen);
  const soft = tinted(group.group(), pen.theme.soft);
  const widest = drawDepths(soft, report, right + 4, up, section.x + section.width - right - 14);
  const from = Math.min(left, start);
  const width = Math.max(right + 14 + widest, start + own) - from;
  room.markBox({ x: from - 2, y: section.y, width: width + 4, height: up(0) - section.y + 4 }, INK.taken);
}

function drawFaces(parent: SvgNode, report: Report, level: number, axes: Axes, fills: Fills): void {
  const turns = turnsOf(report.pieces);
  const whole: { height: number; stretches: readonly Stretch[] }[] = [{ height: 0, stretches: [] }];
  for (const slab of report.slabs) {
    const all: Stretch[] = [];
    for (const [p, piece] of report.pieces.entries()) {
      for (const stretch of stretchesAt(sectionIn(piece, slab), level)) {
        const box = boxOf(stretch, slab, axes);
        const face = parent.rect(box.width, box.height).attr({ x: box.x, y: box.y, stroke: 'none' });
        face.attr('fill', fills.cut(piece.role, turns[p] ?? 0));
        face.attr('data-about', clean(`piece:${piece.id}`));
        for (const x of [box.x, box.x + box.width]) {
          lined(parent.line(x, box.y, x, box.y + box.height), WIDE);
        }
        all.push(stretch);
      }
    }
    whole.push({ height: slab.to, stretches: all.sort((a, b) => a[0] - b[0]) });
  }
  whole.push({ height: report.thickness, stretches: [] });
  drawLevels(parent, whole, axes);
}

// A level face shows where there is metal on one side of a slab's boundary only.
function drawLevels(
  parent: SvgNode,
  slabs: readonly { height: number; stretches: readonly Stretch[] }[],
  { across, up }: Axes,
): void {
  for (let i = 0; i + 1 < slabs.length; i++) {
    const below = slabs[i] as (typeof slabs)[number];
    const above = slabs[i + 1] as (typeof slabs)[number];
    const y = up(below.height);
    for (const [from, to] of onOneSideOnly(below.stretches, above.stretches)) {
      lined(parent.line(toMicron(across(from)), toMicron(y), toMicron(across(to)), toMicron(y)), WIDE);
    }
  }
}

/** Where just one of two rows of stretches is. */
export function onOneSideOnly(a: readonly Stretch[], b: readonly Stretch[]): readonly Stretch[] {
  const ends = [...a, ...b].flat().sort((x, y) => x - y);
  const result: Stretch[] = [];
  for (let i = 0; i + 1 < ends.length; i += 2) {
    // Each end turns "one side only" on or off, so they pair up as they come.
    const [from, to] = [ends[i] as number, ends[i + 1] as number];
    if (to > from) result.push([from, to]);
  }
  return result;
}

/** Draws the depth of every level with the cuts that end there; returns how wide the widest words are, mm. */
function drawDepths(parent: SvgNode, report: Report, x: number, up: Axes['up'], width: number): number {
  const heights = [...new Set([0, ...report.slabs.map((slab) => slab.to)])].sort((a, b) => b - a);
  const most = Math.max(Math.floor((up(0) - up(report.thickness)) / APART) + 2, 2);
  let last = Number.NEGATIVE_INFINITY;
  let widest = 0;
  for (const height of heights.length <= most
    ? heights
    : heights.filter((h) => h === 0 || h === report.thickness)) {
    const y = up(height);
    const textY = Math.max(y, last + APART);
    lined(
      parent.path(
        `M${toMicron(x - 2)} ${toMicron(y)}H${toMicron(x + 3)}L${toMicron(x + 6)} ${toMicron(textY)}h2`,
      ),
      NARROW,
    );
    const depth = dimensionText(report.thickness - height, report.units);
    const whole = [depth, ...endingAt(report, height)].join(' ');
    // A number cut short would be another number: rather the depth alone.
    const text = textWidth(depth, TYPE.small) + 4 < width ? fitted(whole, width, TYPE.small) : depth;
    write(parent, text, x + 8.6, textY + 1, { size: TYPE.small });
    widest = Math.max(widest, textWidth(text, TYPE.small));
    last = textY;
  }
  return widest;
}

/** The cuts that stop short at a height. */
function endingAt(report: Report, height: number): readonly string[] {
  const near = (value: number): boolean => Math.abs(value - height) <= report.resolution / 100;
  const ending = report.cuts.filter(
    (cut) => !cut.through && near(cut.from === 'top' ? report.thickness - cut.depth : cut.depth),
  );
  return ending.map(({ id }) => id);
}

function boxOf([from, to]: Stretch, slab: { from: number; to: number }, { across, up }: Axes): Box {
  const x = across(from);
  const y = up(slab.to);
  return {
    x: toMicron(x),
    y: toMicron(y),
    width: toMicron(across(to) - x),
    height: toMicron(up(slab.from) - y),
  };
}

/**
 * The level (a y of the part) that goes through the most of the cuts that stop short; null if none does.
 * A touch off the middle of each cut, where corners of the outline so often lie.
 */
export function sectionLevel(report: Report): number | null {
  const bounds = boundsOfRegion(report.outline);
  if (bounds === null) return null;
  const floors = report.cuts.filter((cut) => !cut.through).map((cut) => cut.footprint);
  const height = bounds.maxY - bounds.minY;
  let best: { level: number; cuts: number } | null = null;
  for (const region of floors) {
    const box = boundsOfRegion(region);
    if (box === null) continue;
    const middle = (box.minY + box.maxY) / 2 + (box.maxY - box.minY) * 1e-3;
    const level = Math.min(Math.max(middle, bounds.minY + height * 0.07), bounds.maxY - height * 0.07);
    const cuts = floors.filter((floor) => stretchesAt(floor, level).length > 0).length;
    if (best === null || cuts > best.cuts) best = { level, cuts };
  }
  return best?.level ?? null;
}
