import type { RangeReport, Report } from '@edgebite/core';
import { ARROW } from '../pen/label.js';
import type { SvgNode } from '../pen/node.js';
import { numberText } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { fitted, TYPE, textWidth, write } from '../pen/text.js';
import { lengthText } from '../pen/words.js';
import { bandWidth, type Layout, layOut } from '../sheet/layout.js';
import { factorOf } from '../view/scale.js';
import type { Box } from '../view/view.js';
import {
  drawNowArrow,
  drawStrip,
  drawUnderTicks,
  eventsTold,
  INSET,
  LINE,
  nowText,
  rangeGroup,
  STRIP,
  wordsOf,
} from './range-block.js';
import { alongText } from './range-words.js';

/** A layout with a band that is kept free for the strip of a range, and how many of its events in words fit it. */
export interface Banded {
  readonly layout: Layout;
  readonly events: number;
}

/** Room in the frame of the band, and between its columns of words, mm. */
const PAD = 1.4;
const GUTTER = 4;

/** The words of a band at least as wide as this stand in two columns, mm. */
const TWO_COLUMNS = 180;

/** The greatest share of the band that its title takes. */
const TITLE_SHARE = 0.34;

/** Keeps as high a band free as costs the drawing no more of its scale than the strip alone. */
export function bandedLayout(report: Report, frame: Box, prefix: string, range: RangeReport): Banded {
  const withEvents = (events: number): Banded => ({
    layout: layOut(report, frame, prefix, range, bandHeight(range, events, bandWidth(frame))),
    events,
  });
  const bare = withEvents(0);
  for (let events = eventsTold(range); events > 0; events--) {
    const one = withEvents(events);
    if (factorOf(one.layout.scale) === factorOf(bare.layout.scale)) return one;
  }
  return bare;
}

function bandHeight(range: RangeReport, events: number, width: number): number {
  return 2 * PAD + ARROW + STRIP + LINE + rowsFor(range, events, width) * LINE;
}

// Where not all events are told, their values stand under the ticks, and the words need no numbers.
function isNumbered(range: RangeReport, events: number): boolean {
  return events === range.events.length;
}

function bandWords(range: RangeReport, events: number): readonly string[] {
  return wordsOf(range, events, isNumbered(range, events));
}

function rowsFor(range: RangeReport, events: number, width: number): number {
  return events === 0 ? 0 : Math.ceil(bandWords(range, events).length / columnsIn(width));
}

function columnsIn(width: number): number {
  return width >= TWO_COLUMNS ? 2 : 1;
}

/**
 * Draws a range in a band: its title and the present value before the strip, the ends of the range beside it, and so many
 * of its events in words under it. Returns how many these are.
 */
export function drawRangeBand(
  parent: SvgNode,
  answer: RangeReport,
  events: number,
  box: Box,
  pen: Pen,
): number {
  const group = rangeGroup(parent, answer, box, pen);
  const left = box.x + PAD;
  const room = box.width - 2 * PAD;
  const title = [`Safe values of cut ${answer.cut}`, `${alongText(answer)}, ${nowText(answer)}`];
  const most = room * TITLE_SHARE;
  const widest = Math.min(Math.max(...title.map((line) => textWidth(line, TYPE.small, true))), most);
  title.forEach((line, k) => {
    const style = { size: TYPE.small, bold: k === 0 };
    write(group, fitted(line, widest, TYPE.small, k === 0), left, box.y + PAD + (k + 1) * LINE, style);
  });
  const { from, to, units } = answer;
  const [first, last] = [lengthText(from, units), lengthText(to, units)];
  const start = left + widest + 2 * INSET + textWidth(first, TYPE.small) + INSET;
  const end = left + room - textWidth(last, TYPE.small) - INSET;
  const strip = { x: start, y: box.y + PAD + ARROW, width: end - start, height: STRIP };
  const level = strip.y + STRIP * 0.75;
  write(group, first, start - INSET, level, { size: TYPE.small, anchor: 'end' });
  write(group, last, end + INSET, level, { size: TYPE.small });
  drawStrip(group, answer, strip, pen);
  drawNowArrow(group, answer, strip);
  const numbered = isNumbered(answer, events);
  drawUnderTicks(group, answer, strip, (at, k) => (numbered ? String(k + 1) : numberText(at, units)));
  if (events > 0) drawWords(group, bandWords(answer, events), strip.y + STRIP + LINE, box);
  return events;
}

function drawWords(group: SvgNode, lines: readonly string[], top: number, box: Box): void {
  const columns = columnsIn(box.width);
  const rows = Math.ceil(lines.length / columns);
  const wide = (box.width - 2 * PAD - (columns - 1) * GUTTER) / columns;
  lines.forEach((line, k) => {
    const x = box.x + PAD + Math.floor(k / rows) * (wide + GUTTER);
    write(group, fitted(line, wide, TYPE.small), x, top + ((k % rows) + 0.8) * LINE, { size: TYPE.small });
  });
}
