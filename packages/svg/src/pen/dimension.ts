import { INK, type Room } from '../view/room.js';
import { arrowhead } from './label.js';
import { lined, NARROW } from './lines.js';
import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';
import { haloed, TYPE, textWidth, write } from './text.js';
import type { Theme } from './theme.js';

/** How far extension lines go past their dimension line, mm. */
const PAST = 2;

/** How far they stay off what is measured, mm. */
const OFF = 1;

/** The shortest dimension line with its arrowheads inside, mm. */
const SHORTEST_INSIDE = 9;

/**
 * A level dimension line at `y` between two places, with extension lines that come from `fromY`, and its text
 * over it (ISO 129). Where it is too short for that, arrowheads and text stand outside.
 * @param spill the end of the line at which the text stands then
 */
export function drawDimension(
  parent: SvgNode,
  [left, right]: readonly [number, number],
  y: number,
  fromY: number,
  text: string,
  room: Pick<Room, 'markBox'>,
  theme: Theme,
  spill: 'start' | 'end' = 'end',
): void {
  const way = Math.sign(y - fromY);
  for (const x of [left, right].map(toMicron)) {
    lined(parent.line(x, toMicron(fromY + way * OFF), x, toMicron(y + way * PAST)), NARROW);
  }
  const inside = right - left >= SHORTEST_INSIDE;
  const out = inside ? 0 : 6;
  lined(parent.line(toMicron(left - out), toMicron(y), toMicron(right + out), toMicron(y)), NARROW).attr(
    'data-dimension',
    text,
  );
  const middle = (left + right) / 2;
  arrowhead(parent, [left, y], [inside ? middle : left - 1, y]);
  arrowhead(parent, [right, y], [inside ? middle : right + 1, y]);
  const width = textWidth(text, TYPE.label);
  const fits = inside && width <= right - left - 2;
  const beside = spill === 'end' ? right + out + 1 : left - out - 1 - width;
  const start = fits ? middle - width / 2 : beside;
  const figure = fits
    ? write(parent, text, middle, y - 1, { size: TYPE.label, anchor: 'middle' })
    : write(parent, text, beside, y + 1, { size: TYPE.label, anchor: 'start' });
  haloed(figure, theme);
  const [top, bottom] = [Math.min(y - 5, fromY), Math.max(y + 2, fromY)];
  for (const x of [left, right]) {
    room.markBox({ x: x - 0.5, y: top, width: 1, height: bottom - top }, INK.line);
  }
  // No label on the line, but a leader may cross it.
  const [low, high] = [Math.min(left - out, start), Math.max(right + out, start + width)];
  room.markBox({ x: low - 1, y: y - 1.5, width: high - low + 2, height: 3 }, INK.named);
  room.markBox({ x: start - 1, y: y - 4.5, width: width + 2, height: 6 }, INK.taken);
}
