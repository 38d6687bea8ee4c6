import type { Point } from '@edgebite/core';

/**
 * Readings of an arc taken the way a hand takes them, from its points alone: pins are pushed in until they touch one.
 * No formula of the library is used; the error is that of the sampling, R (step)² / 2.
 */
export interface SampledArc {
  readonly points: readonly Point[];
}

/** An arc from one angle to another, counter-clockwise, as points. */
export function sampledArc(
  center: Point,
  radius: number,
  from: number,
  to: number,
  count: number,
): SampledArc {
  const points = Array.from({ length: count + 1 }, (_, k) => {
    const angle = from + ((to - from) * k) / count;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
  return { points };
}

/** How deep the arc goes below the line y = top, which the metal lies under. */
export function deepest({ points }: SampledArc, top: number): number {
  return Math.max(...points.map(({ y }) => top - y));
}

/**
 * How far below the line y = top the topmost place of pins is that lie in the arc, one or a touching pair. They are put in
 * at its middle, as one stands pins in a bore, and pushed down from there.
 */
export function pinsBelow(
  { points }: SampledArc,
  top: number,
  middle: Point,
  pin: number,
  pins: 1 | 2,
): number {
  const r = pin / 2;
  const sides = pins === 1 ? [0] : [-r, r];
  const hits = (y: number) =>
    sides.some((side) => points.some((p) => (p.x - middle.x - side) ** 2 + (p.y - y) ** 2 < r * r));
  let [free, met] = [middle.y, Math.min(...points.map(({ y }) => y))];
  for (let k = 0; k < 60; k++) {
    const y = (free + met) / 2;
    if (hits(y)) met = y;
    else free = y;
  }
  return top - (free + r);
}

/** Width of the arc at a depth below the line y = top, where its two sides cross that height. */
export function widthAt({ points }: SampledArc, top: number, under: number): number {
  const y = top - under;
  const crossings: number[] = [];
  for (let k = 1; k < points.length; k++) {
    const [a, b] = [points[k - 1] as Point, points[k] as Point];
    if (a.y > y === b.y > y) continue;
    crossings.push(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
  }
  return Math.max(...crossings) - Math.min(...crossings);
}

/** How deep the middle of the arc is under a chord of a length between two of its points, equally far from the middle. */
export function heightOver({ points }: SampledArc, chord: number): number {
  const middle = (points.length - 1) / 2;
  const at = (k: number) => [points[middle - k] as Point, points[middle + k] as Point] as const;
  const lengthOf = (k: number) => {
    const [a, b] = at(k);
    return Math.hypot(a.x - b.x, a.y - b.y);
  };
  const heightOf = (k: number) => {
    const [a, b] = at(k);
    const m = points[middle] as Point;
    return Math.hypot(m.x - (a.x + b.x) / 2, m.y - (a.y + b.y) / 2);
  };
  let k = 1;
  while (k < middle && lengthOf(k) < chord) k++;
  const share = (chord - lengthOf(k - 1)) / (lengthOf(k) - lengthOf(k - 1));
  return heightOf(k - 1) + share * (heightOf(k) - heightOf(k - 1));
}
