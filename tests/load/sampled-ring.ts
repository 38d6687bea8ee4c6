/* A ring of teeth by many radii, with geometry of its own: nothing here uses the code under test. */
import type { Point, Region } from '@edgebite/core';
import { metalAlong } from '../center/sample.js';

/** What is found of a ring of teeth by looking along many radii. */
export interface SampledRing {
  readonly share: number;
  readonly strikes: number;
  /** Integral of the length of metal on the radius over all angles. */
  readonly width: number;
  /** Mean of the clockwise unit directions, weighted by that length. */
  readonly load: Point;
}

export function sampledRing(
  region: Region,
  center: Point,
  outer: number,
  inner: number,
  count: number,
): SampledRing {
  const step = (2 * Math.PI) / count;
  const rows = Array.from({ length: count }, (_, k) => {
    const angle = step * (k + 0.5);
    return { angle, w: metalAlong(region, center, outer, angle) - metalAlong(region, center, inner, angle) };
  });
  const hit = rows.map(({ w }) => w > 1e-9 * outer);
  const sum = rows.reduce((all, { w }) => all + w, 0);
  const mean = (of: (angle: number) => number): number =>
    sum === 0 ? 0 : rows.reduce((all, { angle, w }) => all + w * of(angle), 0) / sum;
  return {
    share: hit.filter(Boolean).length / count,
    strikes: hit.filter((yes, k) => yes && !hit[(k + count - 1) % count]).length,
    width: sum * step,
    load: { x: mean(Math.sin), y: mean((angle) => -Math.cos(angle)) },
  };
}
