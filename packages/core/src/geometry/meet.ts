import { isWithinTurn, ROW, writeRow } from './curves.js';
import type { Edge } from './edge.js';
import { onArcSide, pointAlong } from './measure.js';
import { distance, type Point } from './point.js';

/** A place where two edges meet; `touch` where they come together without being seen to cross. */
export interface MeetingPoint {
  readonly at: Point;
  readonly touch: boolean;
}

/** How two edges meet: not at all, in single points, or along whole stretches (given by their ends). */
export type Meeting =
  | { readonly kind: 'apart' }
  | { readonly kind: 'points'; readonly points: readonly MeetingPoint[] }
  | { readonly kind: 'overlap'; readonly ends: readonly (readonly [Point, Point])[] };

/**
 * Where two edges meet, where a gap closer than `tolerance` counts as touching. Tangency is decided by the gap
 * between the two curves, a length; the sign of a rounded discriminant would answer by chance there.
 * @param tolerance a length over 0 in the unit of the edges; see `weldTolerance`
 */
export function meet(e: Edge, f: Edge, tolerance: number): Meeting {
  const found: MeetingPoint[] = [];
  const add = (at: Point, touch: boolean) => {
    if (!found.some((known) => distance(known.at, at) <= tolerance)) found.push({ at, touch });
  };
  for (const p of [e.a, e.b]) if (distanceTo(f, p) <= tolerance) add(p, true);
  for (const p of [f.a, f.b]) if (distanceTo(e, p) <= tolerance) add(p, true);
  const origin = e.a;
  writeRow(pair, 0, e, origin.x, origin.y);
  writeRow(pair, 1, f, origin.x, origin.y);
  const count = meetRows(pair, 0, 1, tolerance, roots);
  for (let k = 0; k < count; k++) {
    const at = { x: (roots[2 * k] as number) + origin.x, y: (roots[2 * k + 1] as number) + origin.y };
    add(at, roots[4] === 1);
  }
  if (found.length === 0) return { kind: 'apart' };
  const ends = stretches(e, f, found, tolerance);
  return ends.length > 0 ? { kind: 'overlap', ends } : { kind: 'points', points: found };
}

const pair = new Float64Array(2 * ROW);
const roots = new Float64Array(5);

function distanceTo(edge: Edge, p: Point): number {
  const ends = Math.min(distance(edge.a, p), distance(edge.b, p));
  if (edge.kind === 'arc') {
    return onArcSide(edge, p) ? Math.min(ends, Math.abs(distance(edge.center, p) - edge.radius)) : ends;
  }
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  const length = Math.hypot(dx, dy);
  const along = ((p.x - edge.a.x) * dx + (p.y - edge.a.y) * dy) / length;
  if (along <= 0 || along >= length) return ends;
  return Math.abs((p.x - edge.a.x) * dy - (p.y - edge.a.y) * dx) / length;
}

/** The stretches between neighbouring meeting points along `e` on which `f` runs within the tolerance. */
function stretches(e: Edge, f: Edge, found: readonly MeetingPoint[], tolerance: number): [Point, Point][] {
  const along = (p: Point) =>
    distance(e.a, p) <= distance(e.b, p) ? [0, distance(e.a, p)] : [1, -distance(e.b, p)];
  const sorted = found
    .map(({ at }) => ({ at, key: along(at) as [number, number] }))
    .sort((p, q) => p.key[0] - q.key[0] || p.key[1] - q.key[1]);
  const ends: [Point, Point][] = [];
  for (let i = 0; i + 1 < sorted.length; i++) {
    const a = (sorted[i] as { at: Point }).at;
    const b = (sorted[i + 1] as { at: Point }).at;
    const halfway = pointAlong({ ...e, a, b }, 0.5);
    if (distanceTo(f, halfway) <= tolerance) ends.push([a, b]);
  }
  return ends;
}

/**
 * The places where the curves of rows `i` and `j` cross or touch, strictly between their ends; ends that lie on
 * the other curve are the caller's to test, and so is running along each other. Writes x, y of up to two
 * places into `out`. Where the curves touch, be it past an end, that place comes first and `out[4]` is 1. Returns how
 * many places lie on both.
 *
 * Two roots closer than tangency can tell apart are given as the one place between them. The foot of the
 * perpendicular and the line of centres are well conditioned there, the roots are not.
 */
export function meetRows(
  rows: Float64Array,
  i: number,
  j: number,
  tolerance: number,
  out: Float64Array,
): number {
  const turnI = rows[i * ROW + 7] as number;
  const turnJ = rows[j * ROW + 7] as number;
  out[4] = 0;
  if (turnI === 0)
    return turnJ === 0 ? lineLine(rows, i, j, tolerance, out) : lineArc(rows, i, j, tolerance, out);
  return turnJ === 0 ? lineArc(rows, j, i, tolerance, out) : arcArc(rows, i, j, tolerance, out);
}

function lineLine(rows: Float64Array, i: number, j: number, tolerance: number, out: Float64Array): number {
  const p = i * ROW;
  const q = j * ROW;
  const ax = rows[p] as number;
  const ay = rows[p + 1] as number;
  const dx = (rows[p + 2] as number) - ax;
  const dy = (rows[p + 3] as number) - ay;
  const cx = rows[q] as number;
  const cy = rows[q + 1] as number;
  const ex = (rows[q + 2] as number) - cx;
  const ey = (rows[q + 3] as number) - cy;
  const den = dx * ey - dy * ex;
  // Where the shorter line stays within tolerance of the longer one they run together, and only ends count.
  if (den * den <= tolerance * tolerance * Math.max(dx * dx + dy * dy, ex * ex + ey * ey)) return 0;
  const t = ((cx - ax) * ey - (cy - ay) * ex) / den;
  const u = ((cx - ax) * dy - (cy - ay) * dx) / den;
  if (!(t > 0 && t < 1 && u > 0 && u < 1)) return 0;
  out[0] = ax + t * dx;
  out[1] = ay + t * dy;
  return 1;
}

function lineArc(
  rows: Float64Array,
  line: number,
  arc: number,
  tolerance: number,
  out: Float64Array,
): number {
  const p = line * ROW;
  const q = arc * ROW;
  const ax = rows[p] as number;
  const ay = rows[p + 1] as number;
  const dx = (rows[p + 2] as number) - ax;
  const dy = (rows[p + 3] as number) - ay;
  const mx = (rows[q + 4] as number) - ax;
  const my = (rows[q + 5] as number) - ay;
  const radius = rows[q + 6] as number;
  const length = Math.sqrt(dx * dx + dy * dy);
  const ux = dx / length;
  const uy = dy / length;
  const away = Math.abs(mx * uy - my * ux);
  const gap = away - radius;
  if (gap > tolerance) return 0;
  const foot = mx * ux + my * uy;
  if (gap >= -tolerance) {
    const x = ax + foot * ux;
    const y = ay + foot * uy;
    setTouch(out, x, y);
    return foot > 0 && foot < length && onSide(rows, q, x, y) ? 1 : 0;
  }
  const half = Math.sqrt(-gap * (radius + away));
  let count = 0;
  for (let sign = -1; sign <= 1; sign += 2) {
    const s = foot + sign * half;
    if (!(s > 0 && s < length)) continue;
    const x = ax + s * ux;
    const y = ay + s * uy;
    if (!onSide(rows, q, x, y)) continue;
    out[2 * count] = x;
    out[2 * count + 1] = y;
    count++;
  }
  return count;
}

function arcArc(rows: Float64Array, i: number, j: number, tolerance: number, out: Float64Array): number {
  const p = i * ROW;
  const q = j * ROW;
  const cx = rows[p + 4] as number;
  const cy = rows[p + 5] as number;
  const r = rows[p + 6] as number;
  const s = rows[q + 6] as number;
  const dx = (rows[q + 4] as number) - cx;
  const dy = (rows[q + 5] as number) - cy;
  const d = Math.sqrt(dx * dx + dy * dy);
  const outside = d - (r + s);
  const inside = Math.abs(r - s) - d;
  if (outside > tolerance || inside > tolerance) return 0;
  // One circle and the same: what they share lies between ends, which the caller tests.
  if (d + Math.abs(r - s) <= tolerance) return 0;
  const ux = dx / d;
  const uy = dy / d;
  if (outside >= -tolerance || inside >= -tolerance) {
    // The touching place lies on the line of centres, on the far side of the centre of the larger circle
    // when one lies within the other; the mean of the two nearest places, so within tolerance of both.
    const reach = outside >= -tolerance ? r + outside / 2 : r > s ? (r + (d + s)) / 2 : -(r + (s - d)) / 2;
    const x = cx + ux * reach;
    const y = cy + uy * reach;
    setTouch(out, x, y);
    return onSide(rows, p, x, y) && onSide(rows, q, x, y) ? 1 : 0;
  }
  const along = (d + ((r - s) * (r + s)) / d) / 2;
  const half = Math.sqrt((d + r + s) * -outside * -inside * (d + Math.abs(r - s))) / (2 * d);
  let count = 0;
  for (let sign = -1; sign <= 1; sign += 2) {
    const x = cx + ux * along - sign * uy * half;
    const y = cy + uy * along + sign * ux * half;
    if (!onSide(rows, p, x, y) || !onSide(rows, q, x, y)) continue;
    out[2 * count] = x;
    out[2 * count + 1] = y;
    count++;
  }
  return count;
}

/** As `onArcSide`, for the arc in the row that starts at `o`. */
export function onSide(rows: Float64Array, o: number, x: number, y: number): boolean {
  return isWithinTurn(
    rows[o] as number,
    rows[o + 1] as number,
    rows[o + 2] as number,
    rows[o + 3] as number,
    rows[o + 4] as number,
    rows[o + 5] as number,
    rows[o + 7] as number,
    x,
    y,
  );
}

/** Notes the place in which two curves touch, whether or not both edges reach as far. */
function setTouch(out: Float64Array, x: number, y: number): void {
  out[0] = x;
  out[1] = y;
  out[4] = 1;
}
