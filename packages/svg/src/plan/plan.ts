/*
 * Room: the plan: metal, cuts, marks, details, dimensions.
 * In: a report and a view.
 * Out: the drawing from above, and what its labels take up.
 */

import type { Report, ReportCut } from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { drawBareMarks, drawLabel, type Label } from '../pen/label.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { TYPE, textWidth, write } from '../pen/text.js';
import { countText } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import { outstandOf } from '../view/outstand.js';
import { INK, nearest, type Room } from '../view/room.js';
import { type Box, holds, onSheet, shrunk, type View } from '../view/view.js';
import { drawCentres, drawFootprints, drawKerf } from './cuts.js';
import { drawBefore, drawMetal } from './metal.js';
import { withFindings } from './numbered.js';
import { drawOverall } from './overall.js';
import { drawKnives, drawWebs, pieceLabels } from './pointers.js';
import { drawRunning } from './running.js';
import { drawKeepOuts, drawWorking, keepOutLabels, namedKeepOuts } from './working.js';

/** Height of the note that names were left out, mm. */
const NOTE = 4.6;

/** Diameter of the ring at the zero of the coordinates, mm. */
const ZERO = 2.2;

/** Half the side of the square round a named place that labels keep clear of if they can, mm. */
const NAMED = 2;

/** How far from its rim places on the plan are named at least, mm. */
const RIM = 2;

/** Where a plan goes, and how places of the part come to it. */
export interface PlanPlace {
  readonly plan: Box;
  readonly view: View;
}

/** Draws the part from the top and the cuts in it; returns labels for all that is to be named, the gravest first. */
export function drawTop(
  parent: SvgNode,
  report: Report,
  { plan, view }: PlanPlace,
  pen: Pen,
  fills: Fills,
): readonly Label[] {
  const { theme, prefix } = pen;
  const clip = `${prefix}plan-clip`;
  parent.clip().attr('id', clip).rect(plan.width, plan.height).attr({ x: plan.x, y: plan.y });
  const inside = parent.group().attr('clip-path', `url(#${clip})`);
  const cuts = report.cuts.filter(
    (cut) => cut.relation !== 'clear' || holds(plan, onSheet(view, labelPoint(cut))),
  );
  drawKerf(inside, report, report.cuts, view, pen);
  // Under the metal: it shows where the part has lost its edge.
  drawBefore(tinted(inside.group(), theme.soft), report, view, prefix);
  drawMetal(inside, report, view, pen, fills);
  const tool = tinted(inside.group(), theme.tool).attr('id', `${prefix}cuts`);
  drawFootprints(tool, report, cuts, view, prefix);
  drawWorking(tool, report, cuts, view, theme);
  const centres = drawCentres(tool, report, cuts, view, plan);
  const near = namedKeepOuts(report);
  drawKeepOuts(tinted(inside.group(), theme.soft), near, view);
  const marks = tinted(inside.group(), theme.warning).attr('id', `${prefix}marks`);
  const webs = drawWebs(marks, report, view, theme);
  const knives = drawKnives(marks, report, view, theme);
  const named = [...webs, ...knives, ...pieceLabels(report, view), ...centres, ...keepOutLabels(near, view)];
  // What lies off the plan is pointed at from its rim if there is something found, and else not named.
  const rim = shrunk(plan, RIM);
  return withFindings(named, report, view, theme)
    .filter(({ at, findings }) => holds(plan, at) || findings !== undefined)
    .map((label) => (holds(rim, label.at) ? label : { ...label, at: nearest(rim, label.at) }));
}

/** Draws the overall size and the places from the zero round the part. */
export function drawMeasures(
  parent: SvgNode,
  report: Report,
  { plan, view }: PlanPlace,
  room: Room,
  { theme, prefix }: Pen,
): void {
  const outstand = outstandOf(report, plan, view);
  if (outstand === null) return;
  const group = tinted(parent.group(), theme.soft).attr('id', `${prefix}dimensions`);
  drawRunning(group, report, view, plan, outstand, room, theme);
  drawOverall(group, report, view, outstand, room, theme);
  const zero = onSheet(view, [0, 0]);
  if (!holds(plan, zero)) return;
  lined(group.circle(ZERO), NARROW).attr({ cx: toMicron(zero[0]), cy: toMicron(zero[1]) });
  room.markBox({ x: zero[0] - ZERO / 2, y: zero[1] - ZERO / 2, width: ZERO, height: ZERO }, INK.line);
  group.circle(0.8).attr({ cx: toMicron(zero[0]), cy: toMicron(zero[1]) });
}

/** Sets all labels for which there is room, and says how many there was none for. */
export function setLabels(
  parent: SvgNode,
  all: readonly Label[],
  { plan }: PlanPlace,
  room: Room,
  { theme, prefix }: Pen,
): void {
  const labels = parent.group().attr('id', `${prefix}labels`);
  for (const label of all) room.markBox(boxAround(label.at), INK.named);
  let left = 0;
  for (const label of all) {
    if (drawLabel(labels, room, label, theme)) continue;
    // What is found there keeps a mark even without room for its number.
    drawBareMarks(labels, label, theme);
    if (label.text !== '') left++;
  }
  if (left > 0) noteLeftOut(parent, left, plan, room);
}

/** Says how many names are left out, as near to the upper left corner as it can without hiding any. */
function noteLeftOut(parent: SvgNode, left: number, plan: Box, room: Room): void {
  const names = countText(left, 'name');
  for (const words of [
    `${names} left out here for want of room; a larger sheet has more.`,
    `${names} left out`,
  ]) {
    const width = textWidth(words, TYPE.small) + 2;
    const box = room.clearing([plan.x, plan.y], width, NOTE);
    if (box === null) continue;
    write(parent, words, box.x + 1, box.y + 3.4, { size: TYPE.small });
    return;
  }
}

function labelPoint(cut: ReportCut): Place {
  return cut.center ?? cut.path?.[0]?.a ?? [0, 0];
}

/** The surroundings of a named place, which no label should hide. */
function boxAround([x, y]: Place): Box {
  return { x: x - NAMED, y: y - NAMED, width: 2 * NAMED, height: 2 * NAMED };
}
