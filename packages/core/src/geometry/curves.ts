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

/** Below this share of the radius the chord of an arc is too short for its direction to be relied on. */
const SHORT_CHORD = 0.1;

/**
 * Whether a place on (or very near) a circle belongs to the arc from a to b round c, ends included.
 *
 * A chord cuts its circle in two, and a counter-clockwise arc is what lies to its right. Of a very short chord the
 * direction is rounding, but all that lies abreast of it is then the arc, as the rest of the circle is far away.
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
  const along = (x - ax) * dx + (y - ay) * dy;
  const isAbreast = along >= 0 && along <= square;
  const isShort = square < SHORT_CHORD * SHORT_CHORD * radius * radius;
  const isLarge = turn * (dx * (cy - ay) - dy * (cx - ax)) < 0;
  if (!isShort) return side <= 0 && (isLarge || isAbreast);
  const isNearChord = Math.abs(side) <= square;
  return isLarge ? !(isAbreast && isNearChord) : isAbreast && isNearChord;
}
