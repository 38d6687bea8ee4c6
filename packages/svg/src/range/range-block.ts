import { EdgebiteError, type RangeReport, type Report, type ReportCut } from '@edgebite/core';
import { addSafeHatch, drawSafe } from '../pen/hatch-range.js';
import { ARROW, arrowhead } from '../pen/label.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { numberText, toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { fitted, TYPE, textWidth, write } from '../pen/text.js';
import { countText, lengthText } from '../pen/words.js';
import type { Place } from '../view/edges.js';
import { INK, type Room } from '../view/room.js';
import type { Box } from '../view/view.js';
import { alongText, changesText } from './range-words.js';

/** Widths that are tried, the first that leaves most to read, mm. */
const WIDTHS = [110, 84, 64];

/** Most events that are told in words; `drawRange` tells them all. */
const MOST_EVENTS = 8;

/** From one base line to the next, the height of the strip, and room in the frame, mm. */
export const LINE = 3.6;
export const STRIP = 4.4;
const PAD = 1.8;

/** From the strip's ends to what is beside it, so that an arrow at an end stays clear of it, mm. */
export const INSET = 3;

/** Between two numbers under the strip, mm. */
const APART = 1;

/** Heights over the strip and under it, down to the lines of words, mm. */
const OVER = PAD + LINE + LINE + ARROW;
const UNDER = 2 * LINE + 1;

/**
 * Checks that a range is one of a report.
 * @throws EdgebiteError if it is in another unit, of a cut that the report does not have, or was asked for before the cut
 * was changed.
 */
export function checkRange(where: string, answer: RangeReport, report: Report): void {
  const { cut: id, along, units, now } = answer;
  const cut = report.cuts.find((one) => one.id === id);
  if (cut === undefined || units !== report.units) {
    throw refused(where, `range is of cut ${id} in ${units}, which the report does not have`);
  }
  const stands = standing(cut, along);
  if (Math.abs(stands - now) > SAME * Math.max(Math.abs(stands), cut.diameter)) {
    throw refused(
      where,
      `range was found with the ${alongText(answer)} of cut ${id} at ${now}; it is ${stands} in the report, so find it anew`,
    );
  }
}

function refused(where: string, what: string): EdgebiteError {
  const remedy = 'give what rangeOf says of the job of this report';
  return new EdgebiteError(`${where}: ${what}`, {
    code: 'argument',
    place: `${where}: options.range`,
    remedy,
  });
}

/** Values closer than this share of them are one: rounding. */
const SAME = 1e-9;

function standing({ center, path, diameter }: ReportCut, along: RangeReport['along']): number {
  if (along === 'diameter') return diameter;
  const place = center ?? path?.[0]?.a ?? [Number.NaN, Number.NaN];
  return place[along === 'x' ? 0 : 1];
}

/** Most of the events of a range that are told in words on a sheet. */
export function eventsTold({ events }: RangeReport): number {
  return Math.min(events.length, MOST_EVENTS);
}

/**
 * Draws a range as a block in clear room, the nearest to a place, with as many of its events in words as go there.
 * Returns how many that were; null if there was no room for it at all.
 */
export function drawRangeBlock(
  parent: SvgNode,
  answer: RangeReport,
  near: Place,
  rooms: readonly Room[],
  pen: Pen,
): number | null {
  for (let events = eventsTold(answer); events >= 0; events--) {
    const lines = wordsOf(answer, events);
    const height = OVER + STRIP + UNDER + lines.length * LINE + PAD;
    for (const width of WIDTHS) {
      for (const room of rooms) {
        const box = room.clearing(near, width, height);
        if (box === null) continue;
        room.markBox(box, INK.taken);
        drawBlock(parent, answer, lines, box, pen);
        return events;
      }
    }
  }
  return null;
}

/** What changes at the first events, each after its number if they have some; the last line says how many more there are. */
export function wordsOf(
  { events, cut, units, names }: RangeReport,
  count: number,
  numbered = true,
): readonly string[] {
  const lines = events
    .slice(0, count)
    .map(
      ({ at, changes }, k) =>
        `${numbered ? `${k + 1}  ` : ''}${numberText(at, units)}: ${changesText(changes, cut, names)}`,
    );
  const more = events.length - lines.length;
  if (more === 0) return lines;
  const rest =
    lines.length === 0
      ? `something changes at ${countText(more, 'value')}`
      : `and ${countText(more, 'more value')}`;
  return [...lines, rest];
}

/** What a strip is of. */
function rangeLabel(answer: RangeReport): string {
  return `Safe values of cut ${answer.cut}, ${alongText(answer)}`;
}

/** A group for a strip and its words, with a frame round them. */
export function rangeGroup(parent: SvgNode, answer: RangeReport, box: Box, { prefix, theme }: Pen): SvgNode {
  const group = tinted(parent.group(), theme.ink).attr({
    id: `${prefix}range`,
    role: 'group',
    'aria-label': rangeLabel(answer),
  });
  lined(group.rect(toMicron(box.width), toMicron(box.height)), NARROW).attr({
    x: toMicron(box.x),
    y: toMicron(box.y),
  });
  return group;
}

function drawBlock(parent: SvgNode, answer: RangeReport, lines: readonly string[], box: Box, pen: Pen): void {
  const group = rangeGroup(parent, answer, box, pen);
  const label = rangeLabel(answer);
  const room = box.width - 2 * PAD;
  const left = box.x + PAD;
  write(group, fitted(label, room, TYPE.small, true), left, box.y + PAD + 0.7 * LINE, {
    size: TYPE.small,
    bold: true,
  });
  const strip = { x: left + INSET, y: box.y + OVER, width: room - 2 * INSET, height: STRIP };
  drawStrip(group, answer, strip, pen);
  drawNow(group, answer, strip, { left, room });
  drawUnderTicks(group, answer, strip, (_, k) => String(k + 1));
  drawEnds(group, answer, { left, room, y: strip.y + STRIP + 2 * LINE });
  lines.forEach((line, k) => {
    const y = strip.y + STRIP + UNDER + (k + 0.8) * LINE;
    write(group, fitted(line, room, TYPE.small), left, y, { size: TYPE.small });
  });
}

/** From a value to its place across the sheet: the number grows to the right. */
function placeOn({ from, to }: RangeReport, strip: Box): (value: number) => number {
  return (value) => strip.x + (strip.width * (value - from)) / (to - from);
}

/** Safe stretches hatched with wide lines over and under them, so that they are told from others in any copy. */
export function drawStrip(group: SvgNode, answer: RangeReport, strip: Box, { prefix, theme }: Pen): void {
  const place = placeOn(answer, strip);
  addSafeHatch(group, prefix, theme.ink);
  for (const { from, to } of answer.intervals.filter(({ safe }) => safe)) {
    drawSafe(group, { ...strip, x: place(from), width: place(to) - place(from) }, 'lies', prefix);
  }
  lined(group.rect(toMicron(strip.width), STRIP), NARROW).attr({
    x: toMicron(strip.x),
    y: toMicron(strip.y),
  });
  for (const { at } of answer.events) {
    const x = toMicron(place(at));
    lined(group.line(x, toMicron(strip.y), x, toMicron(strip.y + STRIP + 0.8)), NARROW);
  }
}

/** An arrow down to the present value with its number over it; where it lies outside, the number only. */
function drawNow(
  group: SvgNode,
  answer: RangeReport,
  strip: Box,
  { left, room }: { readonly left: number; readonly room: number },
): void {
  const text = nowText(answer);
  const width = textWidth(text, TYPE.small);
  const x = Math.min(Math.max(placeOn(answer, strip)(answer.now), strip.x), strip.x + strip.width);
  const start = Math.min(Math.max(x - width / 2, left), left + room - width);
  const level = strip.y - ARROW - 0.8;
  write(group, text, start, level, { size: TYPE.small });
  drawNowArrow(group, answer, strip);
}

function isOutside({ now, from, to }: RangeReport): boolean {
  return now < from || now > to;
}

/** The present value in words. */
export function nowText(answer: RangeReport): string {
  return `now ${numberText(answer.now, answer.units)}${isOutside(answer) ? ', outside' : ''}`;
}

/** An arrow down to the present value; none where it lies outside. */
export function drawNowArrow(group: SvgNode, answer: RangeReport, strip: Box): void {
  if (isOutside(answer)) return;
  const x = toMicron(placeOn(answer, strip)(answer.now));
  arrowhead(group, [x, toMicron(strip.y)], [x, toMicron(strip.y - ARROW)]);
}

/** What stands under the ticks of events; what would lie on the one before it is left to the reader. */
export function drawUnderTicks(
  group: SvgNode,
  answer: RangeReport,
  strip: Box,
  textOf: (at: number, index: number) => string,
): void {
  let free = Number.NEGATIVE_INFINITY;
  answer.events.forEach(({ at }, k) => {
    const text = textOf(at, k);
    const width = textWidth(text, TYPE.small);
    const x = placeOn(answer, strip)(at);
    if (x - width / 2 < free) return;
    free = x + width / 2 + APART;
    write(group, text, x, strip.y + STRIP + LINE, { size: TYPE.small, anchor: 'middle' });
  });
}

function drawEnds(
  group: SvgNode,
  { from, to, units }: RangeReport,
  { left, room, y }: { readonly left: number; readonly room: number; readonly y: number },
): void {
  const style = { size: TYPE.small } as const;
  write(group, fitted(lengthText(from, units), room / 2 - 1, TYPE.small), left, y, style);
  write(group, fitted(lengthText(to, units), room / 2 - 1, TYPE.small), left + room, y, {
    ...style,
    anchor: 'end',
  });
}
