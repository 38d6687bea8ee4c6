import type { RangeReport } from '@edgebite/core';
import { lined, NARROW } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { numberText, toMicron } from '../pen/numbers.js';
import { roomFor, spread } from '../pen/range-spread.js';
import { TYPE, textWidth, wrapped, write } from '../pen/text.js';
import { lengthText } from '../pen/words.js';
import type { Box } from '../view/view.js';
import { changesText, intervalText } from './range-words.js';

/** From one base line to the next, mm. */
export const LINE = 3.6;

/** Least room between two labels, mm. */
const GAP = 1.6;

/** How far the level of a label's first line, half its capitals up, lies under its top, mm. */
const LEVEL = LINE / 2;

/** Room between a value and what changes there, mm. */
const AFTER_VALUE = 2;

/** A label beside the strip: what it tells, and the value that it belongs to. */
export interface StripLabel {
  readonly at: number;
  /** Told in bold type. */
  readonly head: string;
  readonly text: string;
  /** Whether the text is in bold type too. */
  readonly bold: boolean;
}

/** A column of labels beside the strip; those at the left have their heads on a line of their own. */
export interface LabelColumn {
  readonly side: 'left' | 'right';
  /** Where their text begins, and how wide it may get, mm. */
  readonly x: number;
  readonly width: number;
  /** From the top of the drawing down. */
  readonly labels: readonly StripLabel[];
}

/** The labels of the intervals, the highest first: whether each is safe, and what it comes to. */
export function intervalLabels({ intervals, cut, names }: RangeReport): StripLabel[] {
  return intervals
    .map((interval) => ({
      at: interval.from + (interval.to - interval.from) / 2,
      head: interval.safe ? 'SAFE' : 'not safe',
      text: intervalText(interval, cut, names),
      bold: false,
    }))
    .reverse();
}

/** The labels of the events, the highest first, and that of the present value among them. */
export function eventLabels(answer: RangeReport): StripLabel[] {
  const { events, cut, units, names } = answer;
  const labels = events.map(({ at, changes }) => ({
    at,
    head: numberText(at, units),
    text: changesText(changes, cut, names),
    bold: false,
  }));
  const place = labels.filter(({ at }) => at < answer.now).length;
  return labels.toSpliced(place, 0, presentLabel(answer)).reverse();
}

function presentLabel({ now, from, to, present, units, intervals }: RangeReport): StripLabel {
  const label = (at: number, text: string) => ({ at, head: numberText(now, units), text, bold: true });
  if (now < from) return label(from, `NOW, under the range by ${lengthText(from - now, units)}`);
  if (now > to) return label(to, `NOW, over the range by ${lengthText(now - to, units)}`);
  const verdict =
    present.interval === null ? 'at a change' : intervals[present.interval]?.safe ? 'safe' : 'not safe';
  const steps = [
    ...(present.below === null ? [] : [`${lengthText(present.below, units)} down`]),
    ...(present.above === null ? [] : [`${lengthText(present.above, units)} up`]),
  ];
  return label(now, `NOW, ${verdict}; next change: ${steps.length === 0 ? 'none' : steps.join(', ')}`);
}

/** A label as it is set: its lines, and how wide its head is. */
interface SetLabel extends StripLabel {
  readonly lines: readonly string[];
  readonly height: number;
}

/** How high a strip has to be for a column of labels, mm. */
export function columnHeight(column: LabelColumn): number {
  return roomFor(
    setLabels(column).map(({ height }) => ({ top: 0, height })),
    GAP,
  );
}

function setLabels(column: LabelColumn): SetLabel[] {
  const { side, width, labels } = column;
  const indent = side === 'left' ? 0 : headWidth(column);
  return labels.map((label) => {
    const lines = wrapped(kept(label.text), width - indent, TYPE.small, label.bold);
    return { ...label, lines, height: (lines.length + (side === 'left' ? 1 : 0)) * LINE };
  });
}

/** The text with numbers kept together with their units and names, so that no line ends between them. */
function kept(text: string): string {
  return text.replace(/(\d) (?=×|mm\b|in\b)/g, '$1\u00a0').replace(/\b(outline|hole) (?=\d)/g, '$1\u00a0');
}

function headWidth({ labels }: LabelColumn): number {
  return Math.max(...labels.map(({ head }) => textWidth(head, TYPE.small, true))) + AFTER_VALUE;
}

/** Draws a column of labels, each tied by a line to its place on the edge of the strip at `edge`. */
export function drawLabels(
  parent: SvgNode,
  column: LabelColumn,
  strip: Box,
  edge: number,
  heightOf: (value: number) => number,
): void {
  const { side, x, width } = column;
  const labels = setLabels(column);
  const indent = side === 'left' ? 0 : headWidth(column);
  const tops = spread(
    labels.map(({ at, height }) => ({ top: heightOf(at) - LEVEL, height })),
    strip.y,
    strip.y + strip.height,
    GAP,
  );
  labels.forEach(({ at, head, lines, bold }, k) => {
    const top = tops[k] as number;
    const group = parent.group();
    const anchor = side === 'left' ? 'end' : 'start';
    const start = side === 'left' ? x + width : x;
    write(group, head, start, top + BASE, { size: TYPE.small, bold: true, anchor });
    lines.forEach((line, n) => {
      const y = top + BASE + (side === 'left' ? n + 1 : n) * LINE;
      write(group, line, start + indent, y, { size: TYPE.small, anchor, bold });
    });
    const end = side === 'left' ? start + 1 : start - 1;
    lined(group.line(toMicron(edge), toMicron(heightOf(at)), toMicron(end), toMicron(top + LEVEL)), NARROW);
  });
}

/** How far the base line of a line lies under its top, mm: its capitals stand in the middle of it. */
const BASE = LEVEL + 0.36 * TYPE.small;
