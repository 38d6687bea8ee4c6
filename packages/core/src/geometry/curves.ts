import type { Edge } from './edge.js';

/**
 * Edges as rows of plain numbers, for the loops that must be fast:
 * start x, y; end x, y; centre x, y; radius; turn (+1 counter-clockwise, -1 clockwise, 0 for a line).
 */
export const ROW = 8;

/** Puts an edge, moved by (-originX, -originY), into row `index`. */
export function writeRow(
  rows: Float64Array,
  index: number,
  edge: Edge,
  originX: number,
  originY: number,
): void {
  const o = index * ROW;
  const { kind, a, b } = edge;
  rows[o] = a.x - originX;
  rows[o + 1] = a.y - originY;
  rows[o + 2] = b.x - originX;
  rows[o + 3] = b.y - originY;
  if (kind === 'arc') {
    const { center } = edge;
    rows[o + 4] = center.x - originX;
    rows[o + 5] = center.y - originY;
    rows[o + 6] = edge.radius;
    rows[o + 7] = edge.ccw ? 1 : -1;
  } else {
    rows[o + 4] = 0;
    rows[o + 5] = 0;
    rows[o + 6] = 0;
    rows[o + 7] = 0;
  }
}

/**
 * Whether a place belongs to the arc from a to b round c as seen from c: it lies between the directions of the ends,
 * or on one of them. For places on the circle or near it; where they lie past an end by no more than rounding the
 * answer is chance.
 */
export function isWithinTurn(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  turn: number,
  x: number,
  y: number,
): boolean {
  const ux = ax - cx;
  const uy = ay - cy;
  const vx = bx - cx;
  const vy = by - cy;
  const px = x - cx;
  const py = y - cy;
  const fromStart = turn * (ux * py - uy * px);
  const toEnd = turn * (px * vy - py * vx);
  // Over half a turn is what the shorter way round leaves.
  const isLarge = turn * (ux * vy - uy * vx) < 0;
  return isLarge ? fromStart >= 0 || toEnd >= 0 : fromStart >= 0 && toEnd >= 0;
}
