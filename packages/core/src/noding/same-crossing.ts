import { ROW } from '../geometry/curves.js';

/**
 * Whether two places in which two pieces come together, both on both pieces to within the tolerance, are one: the pieces
 * stay within the tolerance of each other from the one to the other. Where they cross at a shallow angle, a place can be
 * far along both and still be no other crossing.
 */
export function isSameCrossing(
  rows: Float64Array,
  i: number,
  j: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
  tolerance: number,
): boolean {
  const o = i * ROW;
  const mx = (px + qx) / 2;
  const my = (py + qy) / 2;
  if (rows[o + 7] === 0) {
    const ax = rows[o] as number;
    const ay = rows[o + 1] as number;
    const dx = (rows[o + 2] as number) - ax;
    const dy = (rows[o + 3] as number) - ay;
    const t = ((mx - ax) * dx + (my - ay) * dy) / (dx * dx + dy * dy);
    return awayFrom(rows, j, ax + t * dx, ay + t * dy) <= tolerance;
  }
  const cx = rows[o + 4] as number;
  const cy = rows[o + 5] as number;
  const stretch = (rows[o + 6] as number) / Math.hypot(mx - cx, my - cy);
  return awayFrom(rows, j, cx + stretch * (mx - cx), cy + stretch * (my - cy)) <= tolerance;
}

/** Distance of a place from the line or circle that carries a piece. */
export function awayFrom(rows: Float64Array, piece: number, x: number, y: number): number {
  const o = piece * ROW;
  if (rows[o + 7] !== 0) {
    const away = Math.hypot(x - (rows[o + 4] as number), y - (rows[o + 5] as number));
    return Math.abs(away - (rows[o + 6] as number));
  }
  const ax = rows[o] as number;
  const ay = rows[o + 1] as number;
  const dx = (rows[o + 2] as number) - ax;
  const dy = (rows[o + 3] as number) - ay;
  return Math.abs(dx * (y - ay) - dy * (x - ax)) / Math.hypot(dx, dy);
}
