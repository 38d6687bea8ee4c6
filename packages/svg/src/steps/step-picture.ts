import type { Axes, Bounds, Report, ReportStep } from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, haloed, textWidth, write } from '../pen/text.js';
import { boundsAsLies } from '../plan/lie.js';
import { drawKeepOuts, keepOutsFor } from '../plan/working.js';
import { middleOf } from '../sheet/layout.js';
import type { Picture } from '../sheet/pictures.js';
import { emptyRoom, nearest } from '../view/room.js';
import { placeInside } from '../view/scan.js';
import { type Box, onSheet, shrunk, type View } from '../view/view.js';
import { bodiesIn, drawStepMetal, type ShownBody } from './step-metal.js';
import { drawTools, type PicturePlace } from './step-tool.js';

/** Size of the lesser lettering, mm. */
export const SMALL_TYPE = 2.5;

/** Where a picture stands, and what of the part it shows. */
export interface PictureFrame {
  readonly box: Box;
  /** What is shown, as drawn. */
  readonly shown: Bounds;
  /** The machine's axes on the part. */
  readonly axes: Axes;
}

/** The largest factor with which what is shown fits its box as it lies. */
export function factorIn({ box: { width, height }, shown, axes }: PictureFrame): number {
  const { minX, minY, maxX, maxY } = boundsAsLies(shown, axes);
  return Math.min((width - 1) / (maxX - minX), (height - 1) / (maxY - minY));
}

/** Draws some steps as the part lies then: what stands, what they take, the tool, its push, its way off the wall. */
export function drawPicture(
  group: SvgNode,
  report: Report,
  picture: Picture,
  { box, shown, axes, factor }: PictureFrame & { readonly factor: number },
  pen: Pen,
  fills: Fills,
): void {
  const first = picture.steps[0] as number;
  const id = `step-${first}-`;
  const clip = `${pen.prefix}${id}clip`;
  const [x, y, width, height] = [box.x, box.y, box.width, box.height].map(toMicron);
  group
    .clip()
    .attr('id', clip)
    .rect(width as number, height as number)
    .attr({ x, y });
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  const step = report.steps[first] as ReportStep;
  const view: View = {
    middle: middleOf(shown),
    at: [box.x + box.width / 2, box.y + box.height / 2],
    factor,
    axes,
  };
  const bodies = bodiesIn(report, picture);
  drawStepMetal(inside, report, picture, bodies, view, pen, fills, id);
  drawKeepOuts(tinted(inside.group(), pen.theme.soft), keepOutsFor(report, step.setup), view);
  const place = { box, view, room: emptyRoom(shrunk(box, 0.2)) };
  drawTools(inside, report, picture, place, pen);
  drawNames(group, [...bodies.met, ...bodies.freed, ...bodies.hanging], place, pen);
}

/** How far off a body its name stands at most, mm. */
const NAME_REACH = 23;

/** Writes the name of every body beside it, with a line to it. */
function drawNames(
  parent: SvgNode,
  bodies: readonly ShownBody[],
  { box, view, room }: PicturePlace,
  { theme }: Pen,
): void {
  if (bodies.length === 0) return;
  const group = tinted(parent.group(), theme.warning);
  for (const { id, view: region } of bodies) {
    const place = placeInside(region);
    if (place === null) continue;
    const at = onSheet(view, place);
    const text = fitted(clean(id), box.width * 0.6, SMALL_TYPE, true);
    const own = room.find(at, textWidth(text, SMALL_TYPE, true) + 0.8, SMALL_TYPE + 0.6, NAME_REACH);
    if (own === null) continue;
    room.take(at, own);
    const end = nearest(own, at);
    group.circle(0.9).attr({ cx: toMicron(at[0]), cy: toMicron(at[1]) });
    lined(group.line(...([...at, ...end].map(toMicron) as [number, number, number, number])), NARROW);
    const name = write(group, text, own.x + 0.4, own.y + SMALL_TYPE * 0.9, { size: SMALL_TYPE, bold: true });
    haloed(name, theme).attr('data-about', clean(`body:${id}`));
  }
}
