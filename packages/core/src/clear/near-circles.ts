import { boxAround } from '../geometry/bounds.js';
import { BoxTree } from '../geometry/box-tree.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { mayMeet } from '../geometry/near.js';

/** Up to so many circles, or so few curves in all, boxes are compared one by one. */
const FEW_CIRCLES = 4;
const FEW_CURVES = 48;

/** Numbers of curves that may meet, two by two; the second is a circle. */
export function nearPairs(edges: readonly Edge[], circles: readonly ArcEdge[], by: number): number[] {
  const base = edges.length;
  const pairs: number[] = [];
  if (circles.length > FEW_CIRCLES && base + circles.length > FEW_CURVES) {
    const boxes = boxesOf(edges, circles);
    new BoxTree(boxes, base + circles.length).eachPair(by, (one, other) => {
      if (one < base && other < base) return;
      if (one < other) pairs.push(one, other);
      else pairs.push(other, one);
    });
    return pairs;
  }
  for (let i = 0; i < circles.length; i++) {
    const { center, radius } = circles[i] as ArcEdge;
    const box = boxAround(center, radius + by);
    for (let e = 0; e < base; e++) if (mayMeet(edges[e] as Edge, box)) pairs.push(e, base + i);
    for (let j = 0; j < i; j++) if (mayMeet(circles[j] as ArcEdge, box)) pairs.push(base + j, base + i);
  }
  return pairs;
}

function boxesOf(edges: readonly Edge[], circles: readonly ArcEdge[]): Float64Array {
  const boxes = new Float64Array(4 * (edges.length + circles.length));
  let o = 0;
  for (const edge of edges) {
    const { minX, minY, maxX, maxY } = edgeBounds(edge);
    boxes[o++] = minX;
    boxes[o++] = minY;
    boxes[o++] = maxX;
    boxes[o++] = maxY;
  }
  for (const { center, radius } of circles) {
    boxes[o++] = center.x - radius;
    boxes[o++] = center.y - radius;
    boxes[o++] = center.x + radius;
    boxes[o++] = center.y + radius;
  }
  return boxes;
}
