/*
 * Room: the drawing of a safe interval.
 * In: the answer of `rangeOf`.
 * Out: a strip with intervals, events and the present value.
 */

import type { RangeReport } from '@edgebite/core';
import { addSafeHatch, drawSafe } from '../pen/hatch-range.js';
import { ARROW, arrowhead } from '../pen/label.js';
import { lined, NARROW, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { toMicron } from '../pen/numbers.js';
import { rootOf } from '../pen/root.js';
import { fitted, TYPE, wrapped, write } from '../pen/text.js';
import { lengthText } from '../pen/words.js';
import { DEFERENCE } from '../sheet/frame.js';
import type { Box } from '../view/view.js';
import { rangeDescription, rangeFacts, rangeTitle } from './range-describe.js';
import {
  columnHeight,
  drawLabels,
  eventLabels,
  intervalLabels,
  type LabelColumn,
  LINE,
} from './range-labels.js';

/** How a range is drawn. */
export interface RangeDrawOptions {
  /** Width of the drawing, mm: 180, which goes between the margins of an A4 sheet, without it. */
  readonly width?: number | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` without it. */
  readonly idPrefix?: string | undefined;
}

/** Narrower, there is no room for words; wider, none would be needed. */
export const RANGE_WIDTHS = [120, 1000] as const;

/** Room round everything, and across the strip, mm. */
const MARGIN = 5;
const STRIP = 14;

/** Least height of the strip, mm. */
const LEAST_HEIGHT = 90;

/** From the strip to the labels beside it, mm: room for lines from one to the other. */
const ASIDE = 16;

/** Where the labels of intervals end, as a share of the width; those of events have more to tell. */
const LEFT_SHARE = 0.36;

/** How far ticks go on beyond the strip, mm: at its right those of events, at its left those of intervals. */
const TICK = ARROW + 0.6;

const SAFE =
  'safe: the cut bites, and leaves nothing dangerous and nothing to check that is not there without it; the cutter meets nothing in the way';

/** The drawing of a range as a strip. */
export function rangeSheetOf(answer: RangeReport, options: RangeDrawOptions): SvgNode {
  const { width = 180, idPrefix = 'edgebite-' } = options;
  const [left, right] = columnsOf(answer, width);
  const facts = wrapped(rangeFacts(answer), width - 2 * MARGIN, TYPE.small);
  const strip: Box = {
    x: left.x + left.width + ASIDE,
    y: MARGIN + TYPE.title + (facts.length + 3) * LINE,
    width: STRIP,
    height: Math.max(LEAST_HEIGHT, columnHeight(left), columnHeight(right)),
  };
  const legend = legendLines(answer, width);
  const legendTop = strip.y + strip.height + 3 * LINE;
  const height = Math.ceil(legendTop + legend.length * LINE + MARGIN);
  const words = { title: rangeTitle(answer), description: rangeDescription(answer) };
  const root = rootOf([width, height], words, idPrefix);
  addSafeHatch(root, idPrefix, '#000000');
  root.rect(width, height).attr('fill', '#ffffff');
  drawHead(root, answer, width, facts);
  drawStrip(root, answer, strip, idPrefix);
  const heightOf = heights(answer, strip);
  const [before, after] = [strip.x - TICK, strip.x + strip.width + TICK];
  drawLabels(root.group().attr('id', `${idPrefix}intervals`), left, strip, before, heightOf);
  drawLabels(root.group().attr('id', `${idPrefix}events`), right, strip, after, heightOf);
  drawPresent(root.group().attr('id', `${idPrefix}present`), answer, strip);
  drawLegend(root.group().attr('id', `${idPrefix}legend`), legend, legendTop, idPrefix);
  return root;
}

/** From a value to its height on the sheet: the number grows upwards. */
function heights({ from, to }: RangeReport, strip: Box): (value: number) => number {
  return (value) => strip.y + (strip.height * (to - value)) / (to - from);
}

function columnsOf(answer: RangeReport, width: number): readonly [LabelColumn, LabelColumn] {
  const leftWidth = width * LEFT_SHARE - MARGIN;
  const x = MARGIN + leftWidth + 2 * ASIDE + STRIP;
  return [
    { side: 'left', x: MARGIN, width: leftWidth, labels: intervalLabels(answer) },
    { side: 'right', x, width: width - MARGIN - x, labels: eventLabels(answer) },
  ];
}

function drawHead(parent: SvgNode, { name }: RangeReport, width: number, facts: readonly string[]): void {
  const shown = name === '' ? 'Job without a name' : name;
  const y = MARGIN + TYPE.title * 0.8;
  const size = { size: TYPE.title, bold: true };
  write(parent, fitted(shown, width - 2 * MARGIN, TYPE.title, true), MARGIN, y, size);
  facts.forEach((line, k) => {
    write(parent, line, MARGIN, y + (k + 1.3) * LINE, { size: TYPE.small });
  });
}

function drawStrip(parent: SvgNode, answer: RangeReport, strip: Box, prefix: string): void {
  const { from, to, units, intervals, events } = answer;
  const group = parent.group().attr('id', `${prefix}strip`);
  const heightOf = heights(answer, strip);
  for (const interval of intervals) {
    const [top, bottom] = [heightOf(interval.to), heightOf(interval.from)];
    if (interval.safe) drawSafe(group, { ...strip, y: top, height: bottom - top }, 'stands', prefix);
    const middle = toMicron((top + bottom) / 2);
    lined(group.line(toMicron(strip.x - TICK), middle, toMicron(strip.x), middle), NARROW);
  }
  clearPresent(group, answer, strip);
  lined(group.rect(strip.width, toMicron(strip.height)), NARROW).attr({
    x: toMicron(strip.x),
    y: toMicron(strip.y),
  });
  for (const { at } of events) {
    const y = toMicron(heightOf(at));
    lined(group.line(toMicron(strip.x), y, toMicron(strip.x + strip.width + TICK), y), NARROW);
  }
  // Long numbers reach to the left, away from the arrowhead of a value outside of the range.
  const right = strip.x + strip.width;
  const style = { size: TYPE.small, anchor: 'end' } as const;
  write(group, lengthText(to, units), right, strip.y - LINE * 0.6, style);
  write(group, lengthText(from, units), right, strip.y + strip.height + LINE * 1.1, style);
}

/** Width of the line across the strip at the present value, and of the clear stretch that it stands in, mm. */
const PRESENT = 1.4 * WIDE;
const CLEAR = 3 * WIDE;

function isWithin({ now, from, to }: RangeReport): boolean {
  return now >= from && now <= to;
}

/** Takes the hatching away from behind the mark of the present value. */
function clearPresent(parent: SvgNode, answer: RangeReport, strip: Box): void {
  if (!isWithin(answer)) return;
  const y = heights(answer, strip)(answer.now);
  const top = Math.max(strip.y, y - CLEAR / 2);
  const bottom = Math.min(strip.y + strip.height, y + CLEAR / 2);
  parent
    .rect(strip.width, toMicron(bottom - top))
    .attr({ x: toMicron(strip.x), y: toMicron(top), fill: '#ffffff' });
}

/** A wide line across the strip with an arrowhead at it; only an arrowhead where the value lies outside. */
function drawPresent(parent: SvgNode, answer: RangeReport, strip: Box): void {
  const right = strip.x + strip.width;
  if (!isWithin(answer)) {
    const isOver = answer.now > answer.to;
    const end = isOver ? strip.y : strip.y + strip.height;
    arrowhead(parent, [right + TICK / 2, end + (isOver ? -ARROW : ARROW)], [right + TICK / 2, end]);
    lined(parent.line(toMicron(right), toMicron(end), toMicron(right + TICK), toMicron(end)), NARROW);
    return;
  }
  const y = toMicron(heights(answer, strip)(answer.now));
  lined(parent.line(toMicron(strip.x), y, toMicron(right), y), PRESENT).attr('stroke-linecap', 'butt');
  arrowhead(parent, [right, y], [right + ARROW, y]);
  lined(parent.line(toMicron(right + ARROW), y, toMicron(right + TICK), y), NARROW);
}

/** A line of the legend; the first of an entry has its sign before it. */
interface LegendLine {
  readonly text: string;
  readonly sign: 'safe' | 'open' | 'present' | null;
}

/** Width of a sign in the legend, mm. */
const SIGN = 9;

function legendLines(answer: RangeReport, width: number): readonly LegendLine[] {
  const room = width - 2 * MARGIN;
  const entry = (sign: LegendLine['sign'], text: string): LegendLine[] =>
    wrapped(text, sign === null ? room : room - SIGN - 2, TYPE.small).map((line, k) => ({
      text: line,
      sign: k === 0 ? sign : null,
    }));
  return [
    ...entry(null, `Not asked: ${answer.notAsked.join(', ')}. Check the job with the value that you choose.`),
    ...entry('safe', SAFE),
    ...entry('open', 'not safe'),
    ...entry('present', 'the value in the job as it is'),
    ...entry(null, 'At the very values where something changes two edges touch: stay off them.'),
    ...entry(null, DEFERENCE),
  ];
}

function drawLegend(parent: SvgNode, lines: readonly LegendLine[], top: number, prefix: string): void {
  lines.forEach(({ text, sign }, k) => {
    const y = top + k * LINE;
    const box = { x: MARGIN, y: y + 0.5, width: SIGN, height: LINE - 1 };
    if (sign === 'safe') drawSafe(parent, box, 'stands', prefix);
    if (sign === 'safe' || sign === 'open') {
      lined(parent.rect(box.width, toMicron(box.height)), NARROW).attr({ x: box.x, y: toMicron(box.y) });
    }
    if (sign === 'present') {
      const middle = toMicron(y + LINE / 2);
      lined(parent.line(MARGIN, middle, MARGIN + SIGN - ARROW, middle), PRESENT);
      arrowhead(parent, [MARGIN + SIGN - ARROW, middle], [MARGIN + SIGN, middle]);
    }
    write(parent, text, sign === null ? MARGIN : MARGIN + SIGN + 2, y + 2.8, { size: TYPE.small });
  });
}
