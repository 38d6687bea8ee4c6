import type { Container } from '@svgdotjs/svg.js';
import { arrowhead } from './label.js';
import { lined, NARROW } from './lines.js';
import { TYPE, textWidth, write } from './text.js';

/** How far extension lines go past their dimension line, mm. */
const PAST = 2;

/** How far they stay off what is measured, mm. */
const OFF = 1;

/** The shortest dimension line with its arrowheads inside, mm. */
const SHORTEST_INSIDE = 9;

/**
 * A level dimension line at `y` between two places, with extension lines that come from `fromY`, and its text
 * over it (ISO 129). Where it is too short for that, arrowheads and text stand outside.
 */
export function drawDimension(
  parent: Container,
  [left, right]: readonly [number, number],
  y: number,
  fromY: number,
  text: string,
): void {
  const way = Math.sign(y - fromY);
  for (const x of [left, right]) {
    lined(parent.line(x, fromY + way * OFF, x, y + way * PAST), NARROW);
  }
  const inside = right - left >= SHORTEST_INSIDE;
  const out = inside ? 0 : 6;
  lined(parent.line(left - out, y, right + out, y), NARROW);
  const middle = (left + right) / 2;
  arrowhead(parent, [left, y], [inside ? middle : left - 1, y]);
  arrowhead(parent, [right, y], [inside ? middle : right + 1, y]);
  const fits = inside && textWidth(text, TYPE.label) <= right - left - 2;
  write(parent, text, fits ? middle : right + 7, fits ? y - 1 : y + 1, {
    size: TYPE.label,
    anchor: fits ? 'middle' : 'start',
  });
}
