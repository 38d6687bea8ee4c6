/*
 * Room: one picture for each step, as the part lies then.
 * In: a report and its steps.
 * Out: pictures with tool, metal and readout numbers.
 */

import type { Bounds, Report, ReportStep } from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { clean, fitted, TYPE, textWidth, wrapped, write } from '../pen/text.js';
import { axesOfStep } from '../plan/lie.js';
import { type StepBand, shownBounds } from '../sheet/layout.js';
import { type Picture, picturesIn } from '../sheet/pictures.js';
import type { Box } from '../view/view.js';
import { drawPicture, factorIn, type PictureFrame, SMALL_TYPE } from './step-picture.js';
import { headText, linesOf, placeText, type StepLine, setupText, toolText } from './step-words.js';

/** Room round what a frame holds, and for a line over or under its picture, mm. */
const PAD = 1.6;
const LINE = 3.1;

/** The picture keeps at least this share of what the lines over it leave. */
const PICTURE_SHARE = 0.45;

/** A frame with all that goes into it. */
interface Frame extends PictureFrame {
  readonly picture: Picture;
  readonly cell: Box;
  /** Over the picture, and under it. */
  readonly head: readonly HeadRow[];
  readonly lines: readonly StepLine[];
}

/**
 * Draws the steps that there is room for, each as the part lies in its setup: what stands after it, what it takes, what it
 * lets go, the tool, its push and its way off the wall; says which steps have no frame.
 */
export function drawSteps(
  parent: SvgNode,
  report: Report,
  { box, way, frames: count, most }: StepBand,
  pen: Pen,
  fills: Fills,
): void {
  const { shown, leftOut } = picturesIn(report, count);
  const bounds = shownBounds(report, true);
  const group = parent.group().attr({ id: `${pen.prefix}steps`, role: 'group', 'aria-label': 'Steps' });
  const note = leftOut.length > 0 ? LINE + 1.5 : 0;
  const length = Math.min(most, (way === 'down' ? box.height - note : box.width) / shown.length);
  const frames = shown.map((picture, i) => {
    const cell: Box =
      way === 'down'
        ? { ...box, y: box.y + length * i, height: length }
        : { ...box, x: box.x + length * i, width: length, height: box.height - note };
    return frameIn(report, picture, cell, bounds);
  });
  const factor = Math.min(...frames.map(factorIn));
  frames.forEach((frame, i) => {
    drawFrame(group, report, frame, factor, pen, fills);
    if (i > 0) rule(group, frame.cell, way, pen);
  });
  if (note > 0) {
    const names = leftOut.map((picture) => headText(report, picture)).join('; ');
    const at = box.y + box.height - 1.6;
    write(group, fitted(`no frame: ${names}`, box.width - 2 * PAD, SMALL_TYPE), box.x + PAD, at, {
      size: SMALL_TYPE,
    });
  }
  const edge = tinted(group.group(), pen.theme.soft);
  if (way === 'down')
    lined(edge.line(box.x + box.width, box.y, box.x + box.width, box.y + box.height), NARROW);
  else lined(edge.line(box.x, box.y + box.height, box.x + box.width, box.y + box.height), NARROW);
}

function rule(group: SvgNode, { x, y, width, height }: Box, way: StepBand['way'], { theme }: Pen): void {
  const soft = tinted(group.group(), theme.soft);
  const [at, end] = way === 'down' ? [x + PAD, x + width - PAD] : [y + PAD, y + height - PAD];
  const line =
    way === 'down'
      ? soft.line(at, toMicron(y), end, toMicron(y))
      : soft.line(toMicron(x), at, toMicron(x), end);
  lined(line, NARROW * 0.6);
}

function frameIn(report: Report, picture: Picture, cell: Box, shown: Bounds): Frame {
  const width = cell.width - 2 * PAD;
  const head = headOf(report, picture, width);
  const over = head.length * LINE + 1.2;
  const room = cell.height - 2 * PAD - over;
  const most = Math.max(Math.floor((room * (1 - PICTURE_SHARE)) / LINE), 0);
  const lines: StepLine[] = [];
  for (const { text, grave } of linesOf(report, picture)) {
    const own = wrapped(text, width, SMALL_TYPE, grave);
    if (lines.length + own.length <= most) lines.push(...own.map((line) => ({ text: line, grave })));
  }
  const height = Math.max(room - lines.length * LINE, 1);
  const step = report.steps[picture.steps[0] as number] as ReportStep;
  return {
    picture,
    cell,
    head,
    lines,
    box: { x: cell.x + PAD, y: cell.y + PAD + over, width, height },
    shown,
    axes: axesOfStep(report, step),
  };
}

function drawFrame(
  parent: SvgNode,
  report: Report,
  { picture, cell, box, head, lines, shown, axes }: Frame,
  factor: number,
  pen: Pen,
  fills: Fills,
): void {
  const first = picture.steps[0] as number;
  const name = headText(report, picture);
  const group = parent.group().attr({
    id: `${pen.prefix}step-${first}`,
    role: 'group',
    'aria-label': clean([name, ...lines.map(({ text }) => text)].join('; ')),
    'data-about': `step:${first}`,
  });
  drawHead(group, head, cell, pen);
  drawLines(group, lines, { ...box, y: box.y + box.height }, pen);

  drawPicture(group, report, picture, { box, shown, axes, factor }, pen, fills);
}

/** A row over a picture: what stands at its left, and at its right. */
interface HeadRow {
  readonly text: string;
  readonly aside: string;
}

/** The step and its setup; the tool; where the readout is to stand; how the part lies, beside the tool if both fit. */
function headOf(report: Report, picture: Picture, width: number): readonly HeadRow[] {
  const { name, lie } = setupText(report, picture);
  const tool = toolText(report, picture);
  const isBeside = textWidth(tool, SMALL_TYPE) + textWidth(lie, SMALL_TYPE) + 2 <= width;
  return [
    { text: headText(report, picture), aside: name },
    { text: tool, aside: isBeside ? lie : '' },
    { text: placeText(report, picture), aside: '' },
    ...(isBeside ? [] : [{ text: '', aside: lie }]),
  ];
}

function drawHead(group: SvgNode, rows: readonly HeadRow[], cell: Box, { theme }: Pen): void {
  const [left, width] = [cell.x + PAD, cell.width - 2 * PAD];
  const soft = tinted(group.group(), theme.soft);
  rows.forEach(({ text, aside }, i) => {
    const [size, bold] = i === 0 ? [TYPE.small, true] : [SMALL_TYPE, false];
    const base = cell.y + PAD + 2.2 + LINE * i;
    const wanted = textWidth(text, size, bold) + 2;
    const own =
      text === '' ? width : Math.min(textWidth(aside, SMALL_TYPE), Math.max(width - wanted, width * 0.4));
    if (aside !== '') {
      const at = { size: SMALL_TYPE, anchor: 'end' } as const;
      write(soft, fitted(aside, own + 0.01, SMALL_TYPE), left + width, base, at);
    }
    const room = aside === '' ? width : width - own - 2;
    if (text !== '') write(group, fitted(text, room, size, bold), left, base, { size, bold });
  });
}

function drawLines(parent: SvgNode, lines: readonly StepLine[], { x, y }: Box, { theme }: Pen): void {
  const warning = tinted(parent.group(), theme.warning);
  lines.forEach(({ text, grave }, i) => {
    write(grave ? warning : parent, text, x, y + LINE * (i + 1) - 0.5, { size: SMALL_TYPE, bold: grave });
  });
}
