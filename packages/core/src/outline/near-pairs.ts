import Flatbush from 'flatbush';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';

/**
 * Most pairs of edges with boxes that meet, counted from both sides. An outline has a few for each edge, hatching
 * run as one line has millions; beyond this the work would take many seconds.
 */
const MOST_PAIRS = 3e7;

/**
 * Calls `visit` with the indices of each two edges whose boxes come within `gap` of each other, until it returns
 * false. Returns whether it got through: false if there are too many pairs.
 */
export function eachNearPair(
  edges: readonly Edge[],
  gap: number,
  visit: (i: number, j: number) => boolean,
): boolean {
  if (edges.length < 2) return true;
  const boxes = edges.map(edgeBounds);
  const index = new Flatbush(edges.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  let goOn = true;
  let count = 0;
  for (let i = 0; goOn && count <= MOST_PAIRS && i < edges.length; i++) {
    const { minX, minY, maxX, maxY } = boxes[i] as (typeof boxes)[number];
    index.search(minX - gap, minY - gap, maxX + gap, maxY + gap, (j) => {
      count++;
      if (goOn && j > i) goOn = visit(i, j);
      return false;
    });
  }
  return count <= MOST_PAIRS;
}
