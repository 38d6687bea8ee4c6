import type { Report, ReportCut, ReportStep } from '@edgebite/core';
import { HIDDEN, lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import { regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { clean } from '../pen/text.js';
import { drawCross, drawPath } from '../plan/cuts.js';
import { ARROW_LENGTH, drawArrow } from '../plan/working.js';
import type { Picture } from '../sheet/pictures.js';
import type { Place } from '../view/edges.js';
import { INK, type Room } from '../view/room.js';
import { type Box, onSheet, type View } from '../view/view.js';
import { lastOfCuts, pushesOf, stepsIn } from './step-words.js';

/** Half the length of a centre's cross, and by how much the circle of a pass differs at least to be drawn, mm. */
const CROSS = 2.2;
const TELLING = 0.6;

/** Where a picture goes, how places of the part come to it, and the room that names find in it. */
export interface PicturePlace {
  readonly box: Box;
  readonly view: View;
  readonly room: Room;
}

/**
 * Draws the tool of each cut of a picture where it stands last, with its passes before, its push and its way off; notes
 * the arrows in the room for names.
 */
export function drawTools(
  parent: SvgNode,
  report: Report,
  picture: Picture,
  { box, view, room }: PicturePlace,
  { theme }: Pen,
): void {
  const arrow = (group: SvgNode, from: Place, degrees: number, wanted: number): void => {
    const length = Math.min(wanted, lengthIn(box, from, degrees));
    markArrow(room, drawArrow(group, from, degrees, length));
  };
  for (const step of lastOfCuts(report, picture)) {
    const cut = report.cuts.find(({ id }) => id === step.cut);
    if (cut === undefined) continue;
    const tool = tinted(parent.group(), theme.tool).attr('data-about', clean(`cut:${cut.id}`));
    if (step.center === null) drawSwept(tool, cut, view, room);
    else {
      drawPassesBefore(tool, report, picture, step, view);
      drawRound(tool, step, view);
    }
    if (step.center === null || step.backOff.machine === null) continue;
    arrow(tool, onSheet(view, step.center), step.backOff.machine.degrees, ARROW_LENGTH.backOff);
  }
  const pushes = tinted(parent.group(), theme.ink).attr('data-role', 'push');
  for (const { load, center } of pushesOf(stepsIn(report, picture)).values()) {
    const worst = load?.worst;
    if (center === null || worst?.push == null) continue;
    arrow(pushes, onSheet(view, center), worst.push.degrees, ARROW_LENGTH.load * worst.sideLoad);
  }
}

/** An arrow is at least as long as its head, mm. */
const SHORTEST = 2.4;

/** How long an arrow from a place can be without leaving a box. */
function lengthIn({ x, y, width, height }: Box, [px, py]: Place, degrees: number): number {
  const angle = (degrees * Math.PI) / 180;
  const way = (step: number, before: number, after: number): number =>
    Math.abs(step) < 1e-9
      ? Number.POSITIVE_INFINITY
      : Math.max(step > 0 ? after : before, 0) / Math.abs(step);
  const across = way(Math.cos(angle), px - x, x + width - px);
  const upright = way(-Math.sin(angle), py - y, y + height - py);
  return Math.max(Math.min(across, upright), SHORTEST);
}

function markArrow(room: Room, [from, tip]: readonly [Place, Place]): void {
  const steps = [0, 0.25, 0.5, 0.75, 1];
  for (const share of steps) {
    const [x, y] = [from[0] + (tip[0] - from[0]) * share, from[1] + (tip[1] - from[1]) * share];
    room.markBox({ x: x - 0.6, y: y - 0.6, width: 1.2, height: 1.2 }, INK.taken);
  }
}

/** The circle of a round tool, and of one with a ring of teeth the circle inside of it. */
function drawRound(group: SvgNode, { center, diameter, wall }: ReportStep, view: View): void {
  if (center === null) return;
  const at = onSheet(view, center);
  const circles = wall === null ? [diameter] : [diameter, diameter - 2 * wall];
  for (const size of circles.filter((one) => one > 0)) lined(circleAt(group, at, size * view.factor), NARROW);
  drawCross(group, at, CROSS, []);
}

function drawPassesBefore(
  group: SvgNode,
  report: Report,
  picture: Picture,
  last: ReportStep,
  view: View,
): void {
  let shown = last;
  for (const step of stepsIn(report, picture).toReversed()) {
    if (step.cut !== last.cut || step.center === null || shown.center === null) continue;
    const moved = Math.hypot(step.center[0] - shown.center[0], step.center[1] - shown.center[1]);
    const differs = (moved + Math.abs(step.diameter - shown.diameter) / 2) * view.factor;
    if (differs < TELLING) continue;
    const circle = circleAt(group, onSheet(view, step.center), step.diameter * view.factor);
    lined(circle, NARROW * 0.8, HIDDEN);
    shown = step;
  }
}

function circleAt(group: SvgNode, [x, y]: Place, size: number): SvgNode {
  return group.circle(toMicron(size)).attr({ cx: toMicron(x), cy: toMicron(y) });
}

function drawSwept(group: SvgNode, cut: ReportCut, view: View, room: Room): void {
  lined(group.path(regionPath(cut.footprint, view)), NARROW);
  if (cut.path === null) return;
  drawPath(group, cut, view);
  for (const { a, b } of cut.path) room.markLine(onSheet(view, a), onSheet(view, b), INK.named);
  const start = cut.path[0]?.a;
  if (start !== undefined) drawCross(group, onSheet(view, start), CROSS, []);
}
