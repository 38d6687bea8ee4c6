import type { Box } from '../view/view.js';
import { lined, NARROW, WIDE } from './lines.js';
import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';

/** From one line of the hatching to the next, mm. */
const PITCH = 1.5;

/** The id of the hatching of safe stretches. */
export function safeHatch(prefix: string): string {
  return `${prefix}hatch-safe`;
}

/** Adds the hatching of safe stretches. */
export function addSafeHatch(parent: SvgNode, prefix: string, ink: string): void {
  parent
    .pattern(PITCH, PITCH, (tile) => {
      tile.line(PITCH / 2, 0, PITCH / 2, PITCH).attr({ stroke: ink, 'stroke-width': NARROW });
    })
    .attr({ id: safeHatch(prefix), patternTransform: 'rotate(45)' });
}

/**
 * A safe stretch of a strip that lies or stands: hatched, with wide lines along the strip, so that it is told from an
 * open one in any copy. The hatching was added before.
 */
export function drawSafe(parent: SvgNode, box: Box, strip: 'lies' | 'stands', prefix: string): void {
  const { x, y, width, height } = box;
  parent
    .rect(toMicron(width), toMicron(height))
    .attr({ x: toMicron(x), y: toMicron(y), fill: `url(#${safeHatch(prefix)})`, stroke: 'none' });
  const sides =
    strip === 'lies'
      ? [y, y + height].map((level) => [x, level, x + width, level] as const)
      : [x, x + width].map((side) => [side, y, side, y + height] as const);
  for (const [x1, y1, x2, y2] of sides) {
    lined(parent.line(toMicron(x1), toMicron(y1), toMicron(x2), toMicron(y2)), 2 * WIDE).attr(
      'stroke-linecap',
      'butt',
    );
  }
}
