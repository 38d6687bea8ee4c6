import type { Edge } from './edge.js';

/**
 * Edges as rows of plain numbers, for the loops that must be fast:
 * start x, y; end x, y; centre x, y; radius; turn (+1 counter-clockwise, -1 clockwise, 0 for a line).
 */
export const ROW = 8;

/** What stands for the turn of a run of edges that are left as they are. */
export const CHAIN_TURN = 2;

/** Puts an edge, moved by (-originX, -originY), into row `index`. */
export function writeRow(
  rows: Float64Array,
  index: number,
  edge: Edge,
  originX: number,
  originY: number,
): void {
  const o = index * ROW;
  rows[o] = edge.a.x - originX;
  rows[o + 1] = edge.a.y - originY;
  rows[o + 2] = edge.b.x - originX;
  rows[o + 3] = edge.b.y - originY;
  if (edge.kind === 'arc') {
    rows[o + 4] = edge.center.x - originX;
    rows[o + 5] = edge.center.y - originY;
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
 * Whether a place on (or very near) a circle belongs to the arc from a to b round c, ends included.
 *
 * A chord cuts its circle in two, and a counter-clockwise arc is what lies to its right. That tells well near the
 * ends of a wide arc, which leave the chord at a steep angle. A narrow arc runs along its chord, whose direction
 * may even be rounding: there what lies abreast of the chord, on the near side of the circle, is the arc.
 */
export function isWithinTurn(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  radius: number,
  turn: number,
  x: number,
  y: number,
): boolean {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  // Left of the chord is over 0; turned round for clockwise arcs, so that the arc itself is below 0.
  const side = turn * (dx * (y - ay) - dy * (x - ax));
  // A chord of a quarter turn squared is 2 r².
  if (square >= 2 * radius * radius) return side <= 0;
  const along = (x - ax) * dx + (y - ay) * dy;
  const isBeside = along >= 0 && along <= square && Math.abs(side) <= square / 2;
  const isLarge = turn * (dx * (cy - ay) - dy * (cx - ax)) < 0;
  return isLarge ? !isBeside : isBeside;
}
