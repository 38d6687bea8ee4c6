import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import type { Place } from './edges.js';
import { hatchFill } from './hatch.js';
import { arrowhead } from './label.js';
import type { Layout } from './layout.js';
import { CHAIN, DOUBLE_DASH_CHAIN, lined, NARROW, WIDE } from './lines.js';
import { dimensionText } from './numbers.js';
import { outstandOf } from './outstand.js';
import { INK, type Room } from './room.js';
import { boundsOfRegion, type Stretch, stretchesAt } from './scan.js';
import { TYPE, write } from './text.js';
import { type Box, onSheet } from './view.js';

/** Least distance of two depths written beside the section, mm. */
const APART = 4;

/** How far the cutting line goes past the part, and how long its wide ends are, mm. */
const PAST = 7;
const WIDE_END = 4;

/** Draws the line on the plan at which the part is cut in thought, and notes it in the room for labels. */
export function drawCuttingLine(parent: Container, report: Report, layout: Layout, room: Room): void {
  const level = layout.section === null ? null : sectionLevel(report);
  const bounds = boundsOfRegion(report.outline);
  const outstand = outstandOf(report, layout);
  if (level === null || bounds === null || outstand === null) return;
  const group = parent.group();
  const left = onSheet(layout.view, [bounds.minX, level])[0] - outstand.left - PAST;
  const right = onSheet(layout.view, [bounds.maxX, level])[0] + outstand.right + PAST;
  const y = onSheet(layout.view, [0, level])[1];
  lined(group.line(left, y, right, y), NARROW, CHAIN);
  const ends: readonly (readonly [number, number])[] = [
    [left, 1],
    [right, -1],
  ];
  for (const [x, inward] of ends) {
    lined(group.line(x, y, x + inward * WIDE_END, y), WIDE);
    lined(group.line(x, y, x, y + 6), NARROW);
    arrowhead(group, [x, y], [x, y + 6]);
    const at: Place = [x + inward * 2.6, y + 5];
    write(group, 'A', at[0], at[1], { size: TYPE.label, anchor: 'middle', bold: true });
    room.markBox({ x: x - 4, y: y - 1, width: 8, height: 8 }, INK.taken);
  }
  room.markLine([left, y], [right, y], INK.line);
}

/** Draws the section under the plan: what is left in every slab, and how deep each slab begins. */
export function drawSection(parent: Container, report: Report, layout: Layout, prefix: string): void {
  const level = sectionLevel(report);
  const bounds = boundsOfRegion(report.outline);
  if (layout.section === null || level === null || bounds === null) return;
  const group = parent.group().attr('id', `${prefix}section`);
  const { section, view } = layout;
  const top = section.y + 9;
  const across = (x: number): number => onSheet(view, [x, level])[0];
  const up = (height: number): number => top + (report.thickness - height) * view.factor;
  const title = 'A–A  section, seen from the front, top face up';
  write(group, title, across(bounds.minX), section.y + 5, { size: TYPE.small, bold: true });

  drawFaces(group, report, level, { across, up }, prefix);
  for (const stretch of stretchesAt(report.outline, level)) {
    const box = boxOf(stretch, { from: 0, to: report.thickness }, { across, up });
    lined(group.rect(box.width, box.height), NARROW, DOUBLE_DASH_CHAIN).attr({ x: box.x, y: box.y });
  }
  drawDepths(group, report, across(bounds.maxX) + 4, up);
}

interface Axes {
  readonly across: (x: number) => number;
  readonly up: (height: number) => number;
}

function drawFaces(parent: Container, report: Report, level: number, axes: Axes, prefix: string): void {
  const whole: { height: number; stretches: readonly Stretch[] }[] = [{ height: 0, stretches: [] }];
  for (const slab of report.slabs) {
    const all: Stretch[] = [];
    for (const piece of report.pieces) {
      const here = piece.sections.find(({ from, to }) => from <= slab.from && to >= slab.to);
      for (const stretch of stretchesAt(here?.region ?? [], level)) {
        const box = boxOf(stretch, slab, axes);
        const face = parent.rect(box.width, box.height).attr({ x: box.x, y: box.y, stroke: 'none' });
        face.attr('fill', hatchFill(prefix, piece.role, false));
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
  parent: Container,
  slabs: readonly { height: number; stretches: readonly Stretch[] }[],
  { across, up }: Axes,
): void {
  for (let i = 0; i + 1 < slabs.length; i++) {
    const below = slabs[i] as (typeof slabs)[number];
    const above = slabs[i + 1] as (typeof slabs)[number];
    const y = up(below.height);
    for (const [from, to] of onOneSideOnly(below.stretches, above.stretches)) {
      lined(parent.line(across(from), y, across(to), y), WIDE);
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

function drawDepths(parent: Container, report: Report, x: number, up: Axes['up']): void {
  const heights = [...new Set([0, ...report.slabs.map((slab) => slab.to)])].sort((a, b) => b - a);
  let last = Number.NEGATIVE_INFINITY;
  for (const height of heights) {
    const y = up(height);
    const textY = Math.max(y, last + APART);
    lined(parent.path(`M${x - 2} ${y}H${x + 3}L${x + 6} ${textY}H${x + 8}`), NARROW);
    const depth = dimensionText(report.thickness - height, report.units);
    write(parent, depth, x + 8.6, textY + 1, { size: TYPE.small });
    last = textY;
  }
}

function boxOf([from, to]: Stretch, slab: { from: number; to: number }, { across, up }: Axes): Box {
  const x = across(from);
  const y = up(slab.to);
  return { x, y, width: across(to) - x, height: up(slab.from) - y };
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
