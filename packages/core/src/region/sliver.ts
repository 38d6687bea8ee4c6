import { loopLength } from './measure.js';
import type { Loop } from './region.js';

/** Mean thickness, in weld tolerances, up to which a part or hole is nothing: each side may have been moved by one. */
const SLIVER = 4;

/** Whether a loop round an area of a size is so thin that it is nothing. */
export function isSliver(loop: Loop, size: number, tolerance: number): boolean {
  // Most loops are far from it, and then a length that is no shorter than theirs says as much and costs less.
  let atMost = 0;
  for (const edge of loop) {
    if (edge.kind === 'arc') atMost += 2 * Math.PI * edge.radius;
    else atMost += Math.abs(edge.b.x - edge.a.x) + Math.abs(edge.b.y - edge.a.y);
  }
  const thickness = (SLIVER * tolerance) / 2;
  return size <= thickness * atMost && size <= thickness * loopLength(loop);
}
