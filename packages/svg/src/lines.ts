import type { Element } from '@svgdotjs/svg.js';

/** Width of visible edges, mm. 0.7 with 0.35 is the pair of ISO 128 in general use. */
export const WIDE = 0.7;

/** Width of every other line, mm: half the wide one, as ISO 128 has it. */
export const NARROW = 0.35;

// Dash modules of ISO 128 in line widths: long dash 24, dash 12, short gap 3, dot 0.5 (from memory).
const d = NARROW;

/** Lengths of the dashes and gaps of the chain line for centres and paths, mm. */
export const CHAIN: readonly number[] = [24 * d, 3 * d, 0.5 * d, 3 * d];

/** The same for the double-dash chain line: the part before it was cut. */
export const DOUBLE_DASH_CHAIN: readonly number[] = [24 * d, 3 * d, 6 * d, 3 * d, 6 * d, 3 * d];

/** The same for the dashed line of hidden edges. */
export const HIDDEN: readonly number[] = [12 * d, 3 * d];

/** Gives a shape a line: its width and dashes, and nothing inside. */
export function lined<T extends Element>(shape: T, width: number, dashes: readonly number[] = []): T {
  shape.attr({
    fill: 'none',
    stroke: '#000',
    'stroke-width': width,
    'stroke-linejoin': 'round',
    'stroke-linecap': dashes.length === 0 ? 'round' : 'butt',
  });
  if (dashes.length > 0) shape.attr('stroke-dasharray', dashes.map((n) => Number(n.toFixed(3))).join(' '));
  return shape;
}
