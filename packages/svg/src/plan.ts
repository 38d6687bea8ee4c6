import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { drawCentres, drawFootprints } from './cuts.js';
import type { Place } from './edges.js';
import { inkedRoom } from './ink.js';
import { drawLabel, type Label } from './label.js';
import type { Layout } from './layout.js';
import { lined, NARROW } from './lines.js';
import { drawBefore, drawMetal } from './metal.js';
import { drawOverall } from './overall.js';
import { drawWebs, knifeLabels, pieceLabels } from './pointers.js';
import { INK } from './room.js';
import { drawCuttingLine } from './section.js';
import { TYPE, write } from './text.js';
import { type Box, holds, onSheet, type View } from './view.js';
import { countText } from './words.js';

/** The corner of the plan kept free for a note that names were left out, mm. */
const NOTE = { width: 105, height: 6 } as const;

/** Half the side of the square round a named place that labels keep clear of if they can, mm. */
const NAMED = 2;

/** Draws the plan: the part from the top, with everything that is to be named in it. */
export function drawPlan(parent: Container, report: Report, layout: Layout, prefix: string): void {
  const { plan, view } = layout;
  const group = parent.group().attr('id', `${prefix}plan`);
  const clip = `${prefix}plan-clip`;
  group.clip().attr('id', clip).rect(plan.width, plan.height).attr({ x: plan.x, y: plan.y });
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  drawMetal(inside, report, view, prefix);
  drawBefore(inside, report, view, prefix);
  drawFootprints(inside, report, view, prefix);

  const room = inkedRoom(report, layout);
  const centres = drawCentres(inside, report, view, plan);
  drawOverall(group, report, layout, room);
  drawCuttingLine(group, report, layout, room);
  const webs = drawWebs(inside, report, view);
  const labels = group.group().attr('id', `${prefix}labels`);
  const all: readonly Label[] = [
    ...knifeLabels(report, view),
    ...webs,
    ...pieceLabels(report, view),
    ...centres,
    ...originLabel(inside, view, plan),
  ];
  room.markBox({ ...plan, width: NOTE.width, height: NOTE.height }, INK.taken);
  for (const label of all) room.markBox(boxAround(label.at), INK.named);
  const left = all.filter((label) => !drawLabel(labels, room, label)).length;
  if (left > 0) {
    const words = `${countText(left, 'name')} left out here for want of room; a larger sheet has more.`;
    write(group, words, plan.x + 3, plan.y + 5, { size: TYPE.small });
  }
}

/** A ring at the part's zero, if it is in sight, and its label. */
function originLabel(parent: Container, view: View, plan: Box): readonly Label[] {
  const at = onSheet(view, [0, 0]);
  if (!holds(plan, at)) return [];
  lined(parent.circle(2.6), NARROW).attr({ cx: at[0], cy: at[1] });
  parent.circle(0.9).attr({ cx: at[0], cy: at[1], fill: '#000' });
  return [{ text: '0, 0', at, end: 'none' }];
}

/** The surroundings of a named place, which no label should hide. */
function boxAround([x, y]: Place): Box {
  return { x: x - NAMED, y: y - NAMED, width: 2 * NAMED, height: 2 * NAMED };
}
