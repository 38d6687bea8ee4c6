import type { Report } from '@edgebite/core';
import { arrowhead } from '../pen/label.js';
import { lined, NARROW } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import { spread } from '../pen/range-spread.js';
import { CAPITALS, haloed, TYPE, textWidth, write } from '../pen/text.js';
import type { Theme } from '../pen/theme.js';
import type { Place } from '../view/edges.js';
import type { Sides } from '../view/outstand.js';
import { INK, type Room } from '../view/room.js';
import { boundsOfRegion } from '../view/scan.js';
import { type Box, onSheet, type View } from '../view/view.js';

/** How far the dimension line stands off what stands out, and the figures off the line, mm. */
const OFF = { level: 6, upright: 8 } as const;
const TO_TEXT = 5;

/** Longest figure, and the room for one along the line, mm. */
const LONGEST = 14.4;
const PITCH = 3.5;
const SIZE = TYPE.small;

/** The mark of the origin: a ring, mm (ISO 129-1, superimposed running dimensions, from memory). */
const ORIGIN = 1.6;

/** One figure of a row: how far from the zero, and where it is on the sheet. */
interface Step {
  readonly text: string;
  readonly at: number;
}

/**
 * Draws the places of the part's ends and of the cuts' centres from the zero of the coordinates: level under the part
 * and upright at its left, each as one line with an arrowhead at every place and a ring at the zero (ISO 129-1, running
 * dimensions). Returns how many centres have no figure for want of room; the table has them.
 */
export function drawRunning(
  parent: SvgNode,
  report: Report,
  view: View,
  plan: Box,
  outstand: Sides,
  room: Room,
  theme: Theme,
): number {
  const bounds = boundsOfRegion(report.outline);
  if (bounds === null) return 0;
  const [left, bottom] = onSheet(view, [bounds.minX, bounds.minY]);
  const centres = report.cuts
    .filter((cut) => cut.relation !== 'clear')
    .flatMap((cut) => (cut.center === null ? [] : [cut.center]));
  // The figures of both rows over the lines of both.
  const group = { lines: parent.group(), figures: parent.group() };
  const ends = [bounds.minX, bounds.maxX];
  const level = stepsOf(
    report,
    ends,
    centres.map(([x]) => x),
    (x) => onSheet(view, [x, 0])[0],
  );
  const upright = stepsOf(
    report,
    [bounds.minY, bounds.maxY],
    centres.map(([, y]) => y),
    (y) => -onSheet(view, [0, y])[1],
  );
  const zero = onSheet(view, [0, 0]);

  const y = bottom + outstand.bottom + OFF.level;
  const spanX = [plan.x + 2, plan.x + plan.width - 2] as const;
  const outX = drawRow(
    group,
    level,
    { zero: zero[0], from: bottom, line: y, span: spanX },
    room,
    (a, b) => [a, b],
    theme,
  );
  // The same, turned a quarter: along is up the sheet, across is to the left.
  const x = left - outstand.left - OFF.upright;
  const spanY = [-(plan.y + plan.height - 2), -(plan.y + 2)] as const;
  const outY = drawRow(
    group,
    upright,
    { zero: -zero[1], from: -left, line: -x, span: spanY },
    room,
    (a, b) => [-b, -a],
    theme,
  );
  return outX + outY;
}

function stepsOf(
  report: Report,
  ends: readonly number[],
  centres: readonly number[],
  at: (value: number) => number,
): { readonly ends: readonly Step[]; readonly centres: readonly Step[] } {
  const step = (value: number): Step => ({ text: dimensionText(value, report.units), at: at(value) });
  const own = ends.map(step);
  const seen = new Set(own.map(({ text }) => text));
  const others = centres.map(step).filter(({ text }) => !seen.has(text) && seen.add(text));
  return { ends: own, centres: others };
}

interface Row {
  readonly zero: number;
  /** Where what is measured ends, across the row. */
  readonly from: number;
  readonly line: number;
  readonly span: readonly [number, number];
}

/** Draws a row of figures as if it were level and downwards; `turn` brings it to where it belongs. */
function drawRow(
  { lines, figures }: { readonly lines: SvgNode; readonly figures: SvgNode },
  { ends, centres }: { readonly ends: readonly Step[]; readonly centres: readonly Step[] },
  { zero, from, line, span }: Row,
  room: Room,
  turn: (along: number, across: number) => Place,
  theme: Theme,
): number {
  const inSight = (step: Step): boolean =>
    step.at >= span[0] && step.at <= span[1] && textWidth(step.text, SIZE) <= LONGEST;
  const most = Math.max(Math.floor((span[1] - span[0]) / PITCH), 0);
  const wanted = centres.filter(inSight);
  const shown = wanted.length + ends.length <= most ? wanted : [];
  const steps = [...ends.filter(inSight), ...shown].sort((a, b) => a.at - b.at);
  if (steps.length === 0) return centres.length;
  const places = spread(
    steps.map(({ at }) => ({ top: at - PITCH / 2, height: PITCH })),
    span[0],
    span[1],
    0,
  ).map((top) => top + PITCH / 2);

  const point = (along: number, across: number): string => turn(along, across).map(toMicron).join(' ');
  const lows = [...steps.map(({ at }) => at), ...(inSight({ text: '', at: zero }) ? [zero] : [])];
  const [low, high] = [Math.min(...lows), Math.max(...lows)];
  lined(lines.path(`M${point(low, line)}L${point(high, line)}`), NARROW);
  if (inSight({ text: '', at: zero })) {
    const [cx, cy] = turn(zero, line);
    lined(lines.circle(ORIGIN), NARROW).attr({ cx: toMicron(cx), cy: toMicron(cy) });
  }
  steps.forEach(({ text, at }, i) => {
    const place = places[i] as number;
    lined(
      lines.path(
        `M${point(at, from + 1)}L${point(at, line + 1.5)}L${point(place, line + TO_TEXT - 1)}L${point(place, line + TO_TEXT)}`,
      ),
      NARROW,
    );
    if (at !== zero) arrowhead(lines, turn(at, line), turn(at < zero ? at + 1 : at - 1, line));
    const figure = line + TO_TEXT + 0.6;
    drawFigure(figures, text, place, figure, turn, theme);
    markArea(
      room,
      [place - PITCH / 2, place + PITCH / 2],
      [figure, figure + textWidth(text, SIZE)],
      INK.taken,
      turn,
    );
  });
  // No label among the lines of the row, but a leader may cross them.
  const [a, b] = [places[0] as number, places[places.length - 1] as number];
  markArea(room, [Math.min(low, a) - 1, Math.max(high, b) + 1], [from, line + TO_TEXT], INK.named, turn);
  return centres.length - shown.length;
}

// Beyond the end of its line and in its direction, to be read from below or from the right. It breaks a rim that comes so far.
function drawFigure(
  group: SvgNode,
  text: string,
  along: number,
  across: number,
  turn: (along: number, across: number) => Place,
  theme: Theme,
): void {
  const [x, y] = turn(along, across);
  const [dx] = turn(0, 1);
  const drop = (SIZE * CAPITALS) / 2;
  if (dx < 0) {
    haloed(write(group, text, x, y + drop, { size: SIZE, anchor: 'end' }), theme);
    return;
  }
  const turned = group.group().attr('transform', `rotate(-90 ${toMicron(x)} ${toMicron(y)})`);
  haloed(write(turned, text, x, y + drop, { size: SIZE, anchor: 'end' }), theme);
}

/** Notes ink on what a row has along and across it. */
function markArea(
  room: Room,
  along: readonly [number, number],
  across: readonly [number, number],
  ink: number,
  turn: (along: number, across: number) => Place,
): void {
  const corners = [turn(along[0], across[0]), turn(along[1], across[1])];
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  room.markBox({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }, ink);
}
