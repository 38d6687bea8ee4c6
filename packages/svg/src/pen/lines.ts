import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';

/** Width of visible edges, mm: the wide line of the group 0.5 of ISO 128, for small sheets. */
export const WIDE = 0.5;

/** Width of every other line, mm: half the wide one, as ISO 128 has it. */
export const NARROW = 0.25;

// Dash modules of ISO 128 in line widths: long dash 24, dash 12, short gap 3, dot 0.5 (from memory).
const d = NARROW;

/** Lengths of the dashes and gaps of the chain line for centres and paths, mm. */
export const CHAIN: readonly number[] = [24 * d, 3 * d, 0.5 * d, 3 * d];

/** The same for the double-dash chain line: the part before it was cut. */
export const DOUBLE_DASH_CHAIN: readonly number[] = [24 * d, 3 * d, 6 * d, 3 * d, 6 * d, 3 * d];

/** The same for the dashed line of hidden edges. */
export const HIDDEN: readonly number[] = [12 * d, 3 * d];

/** Gives a shape a line: its width and dashes, and nothing inside. Its ends and corners are round, as the root has it. */
export function lined(shape: SvgNode, width: number, dashes: readonly number[] = []): SvgNode {
  // A straight line has no inside.
  if (shape.name !== 'line') shape.attr({ fill: 'none' });
  shape.attr({ stroke: 'currentColor', 'stroke-width': toMicron(width) });
  if (dashes.length === 0) return shape;
  return shape.attr({
    'stroke-linecap': 'butt',
    'stroke-dasharray': dashes.map((n) => toMicron(n)).join(' '),
  });
}

/** Gives all that a group holds a colour: lines take it as the current one, lettering and arrowheads as their fill. */
export function tinted(group: SvgNode, colour: string): SvgNode {
  return group.attr({ color: colour, fill: colour });
}
