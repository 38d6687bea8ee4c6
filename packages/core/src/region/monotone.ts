import { ROW, writeRow } from '../geometry/curves.js';
import type { ArcEdge } from '../geometry/edge.js';
import { onSide } from '../geometry/meet.js';

/** An arc cut at the lowest and the highest point of its circle, where these lie inside it and not at an end. */
export function monotone(arc: ArcEdge, tolerance: number): readonly ArcEdge[] {
  const row = new Float64Array(ROW);
  writeRow(row, 0, arc, 0, 0);
  const heights = new Float64Array(2);
  const count = turnsOf(row, 0, tolerance, heights);
  if (count === 0) return [arc];
  const parts: ArcEdge[] = [];
  let a = arc.a;
  for (let k = 0; k < count; k++) {
    const b = { x: arc.center.x, y: heights[k] as number };
    parts.push({ ...arc, a, b });
    a = b;
  }
  parts.push({ ...arc, a, b: arc.b });
  return parts;
}

/** So close to an end, as a share of the radius, the rest of the arc rises by nothing that a number can hold. */
const SAME_HEIGHT = 1e-9;

/** Writes at which heights the arc of a row turns up or down, in their order along it, and returns how many there are. */
export function turnsOf(rows: Float64Array, o: number, tolerance: number, heights: Float64Array): number {
  const ax = rows[o] as number;
  const ay = rows[o + 1] as number;
  const bx = rows[o + 2] as number;
  const by = rows[o + 3] as number;
  const x = rows[o + 4] as number;
  const radius = rows[o + 6] as number;
  const turn = rows[o + 7] as number;
  const near = Math.max(tolerance, SAME_HEIGHT * radius);
  // Counter-clockwise from a start on the right half the highest point comes first, on the left half the lowest.
  const isHighFirst = ax > x === turn > 0;
  let count = 0;
  for (let k = 0; k < 2; k++) {
    const y = (rows[o + 5] as number) + ((k === 0) === isHighFirst ? radius : -radius);
    const isEnd = isWithin(ax - x, ay - y, near) || isWithin(bx - x, by - y, near);
    if (isEnd || !onSide(rows, o, x, y)) continue;
    heights[count] = y;
    count++;
  }
  return count;
}

function isWithin(dx: number, dy: number, reach: number): boolean {
  return dx * dx + dy * dy <= reach * reach;
}
