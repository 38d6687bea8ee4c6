import { areNear } from '../geometry/box-tree.js';
import { ROW } from '../geometry/curves.js';
import type { Curves } from './gather.js';
import { indexOf, type RunIndex } from './runs.js';

/** Up to this many pieces comparing all boxes beats building an index. */
const INDEX_FROM = 48;

/** Boxes round the pieces: minX, minY, maxX, maxY each. */
export function boxesOf(rows: Float64Array, count: number): Float64Array {
  const boxes = new Float64Array(count * 4);
  for (let i = 0; i < count; i++) {
    const o = i * ROW;
    const ax = rows[o] as number;
    const ay = rows[o + 1] as number;
    const bx = rows[o + 2] as number;
    const by = rows[o + 3] as number;
    let minX = Math.min(ax, bx);
    let maxX = Math.max(ax, bx);
    const turn = rows[o + 7] as number;
    if (turn !== 0) {
      // A piece runs up or down all the way, so only its left or right extreme can leave the box of its ends.
      const cx = rows[o + 4] as number;
      const cy = rows[o + 5] as number;
      const r = rows[o + 6] as number;
      if (cy > ay !== cy > by || cy === ay || cy === by) {
        // Going up counter-clockwise is the right half of a circle.
        if (by > ay === turn > 0) maxX = Math.max(maxX, cx + r);
        else minX = Math.min(minX, cx - r);
      }
    }
    boxes[i * 4] = minX;
    boxes[i * 4 + 1] = Math.min(ay, by);
    boxes[i * 4 + 2] = maxX;
    boxes[i * 4 + 3] = Math.max(ay, by);
  }
  return boxes;
}

/**
 * Calls `visit` once for each two pieces whose boxes come within the tolerance of each other.
 * @returns what the pieces were looked up in; null if they are too few for that
 */
export function eachPair(
  curves: Pick<Curves, 'count' | 'tolerance' | 'from' | 'to'>,
  boxes: Float64Array,
  visit: (i: number, j: number) => void,
): RunIndex | null {
  const { count, tolerance } = curves;
  if (count < INDEX_FROM) {
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) if (areNear(boxes, i, j, tolerance)) visit(i, j);
    }
    return null;
  }
  const index = indexOf(boxes, count, curves.from, curves.to);
  const { runs, tree } = index;
  const { start } = runs;
  for (let r = 0; r < runs.count; r++) {
    const to = start[r + 1] as number;
    for (let i = start[r] as number; i < to; i++) {
      for (let j = i + 1; j < to; j++) if (areNear(boxes, i, j, tolerance)) visit(i, j);
    }
  }
  tree.eachPair(tolerance, (one, other) => {
    const end = start[other + 1] as number;
    for (let i = start[one] as number; i < (start[one + 1] as number); i++) {
      for (let j = start[other] as number; j < end; j++) if (areNear(boxes, i, j, tolerance)) visit(i, j);
    }
  });
  return index;
}
