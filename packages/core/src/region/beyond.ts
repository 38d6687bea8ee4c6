import { withinTurn } from '../geometry/angle.js';
import type { ArcEdge, LineEdge } from '../geometry/edge.js';
import { sineExcess, sweep } from '../geometry/measure.js';
import type { Point, Vector } from '../geometry/point.js';
import { loopsOf } from './measure.js';
import type { Region } from './region.js';

/** A line, as a unit vector square to it and how far along that it lies. */
interface Border {
  readonly axis: Vector;
  readonly at: number;
}

/**
 * Area of what of a region lies beyond a straight line: further than `at` along a unit vector. The integral of the distance
 * from the line over the boundary (Green's theorem): what closes the part along the line adds nothing to it.
 */
export function areaBeyond(region: Region, axis: Vector, at: number): number {
  const border = { axis, at };
  let sum = 0;
  for (const loop of loopsOf(region)) {
    for (const edge of loop) sum += edge.kind === 'line' ? underLine(edge, border) : underArc(edge, border);
  }
  return Math.max(0, sum);
}

function outOf({ x, y }: Point, { axis, at }: Border): number {
  return x * axis.dx + y * axis.dy - at;
}

/** The integral over the chord from one place to another, both beyond the line or on it. */
function underChord(p: Point, q: Point, border: Border): number {
  const { dx, dy } = border.axis;
  const along = (q.y - p.y) * dx - (q.x - p.x) * dy;
  return ((outOf(p, border) + outOf(q, border)) / 2) * along;
}

function underLine({ a, b }: LineEdge, border: Border): number {
  const [from, to] = [outOf(a, border), outOf(b, border)];
  if (from <= 0 && to <= 0) return 0;
  if (from >= 0 && to >= 0) return underChord(a, b, border);
  const share = from / (from - to);
  const on = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
  return from > 0 ? underChord(a, on, border) : underChord(on, b, border);
}

/** The chords of the parts of an arc beyond the line, and the circular segments on them. */
function underArc(arc: ArcEdge, border: Border): number {
  const { center, radius, ccw, a, b } = arc;
  const sign = ccw ? 1 : -1;
  const start = Math.atan2(a.y - center.y, a.x - center.x);
  const whole = sweep(arc);
  const out = outOf(center, border);
  const isWhole = Math.abs(out) >= radius;
  const cuts = isWhole ? [] : crossings(border.axis, -out / radius, start, sign);
  const ends = [0, ...cuts.filter((t) => t < whole), whole];
  const placeAt = (t: number): Point => ({
    x: center.x + radius * Math.cos(start + sign * t),
    y: center.y + radius * Math.sin(start + sign * t),
  });
  let sum = 0;
  for (let k = 1; k < ends.length; k++) {
    const [from, to] = [ends[k - 1] as number, ends[k] as number];
    if (outOf(isWhole ? center : placeAt((from + to) / 2), border) <= 0) continue;
    sum += underChord(from === 0 ? a : placeAt(from), to === whole ? b : placeAt(to), border);
    sum += (sign * radius * radius * sineExcess(to - from)) / 2;
  }
  return sum;
}

/** How far along its circle, in radians from its start, an arc crosses a line so many radii out from its centre. */
function crossings({ dx, dy }: Vector, radii: number, start: number, sign: 1 | -1): number[] {
  const [middle, half] = [Math.atan2(dy, dx), Math.acos(radii)];
  return [middle - half, middle + half]
    .map((angle) => withinTurn(sign * (angle - start)))
    .sort((one, other) => one - other);
}
