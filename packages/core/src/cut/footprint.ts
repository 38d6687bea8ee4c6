import { type Bounds, boxAround } from '../geometry/bounds.js';
import { cutSource } from '../geometry/source.js';
import { boundsOf } from '../region/measure.js';
import { disc, type Region, ring } from '../region/region.js';
import type { AnnularCut, Cut } from './cut.js';
import { sweptRegion } from './swept.js';

/**
 * What a cut takes out of a plate without edges, seen from above; its edges are named `cut:ID`.
 * @throws RangeError if a size is not a finite number over 0, or an annular cut's wall is not under its radius.
 */
export function footprint(cut: Cut): Region {
  const source = cutSource(cut.id);
  switch (cut.kind) {
    case 'bore':
      return disc(cut.center, cut.diameter / 2, source);
    case 'annular':
      return ring(cut.center, cut.diameter / 2, coreRadius(cut), source);
    case 'swept':
      return sweptRegion(cut.path, cut.diameter / 2, source);
  }
}

/**
 * The disc inside the teeth of an annular cut, where a slug comes from; its edge is named `cut:ID`.
 * @throws RangeError if the wall is not under the radius.
 */
export function coreOf(cut: AnnularCut): Region {
  return disc(cut.center, coreRadius(cut), cutSource(cut.id));
}

function coreRadius(cut: AnnularCut): number {
  return cut.diameter / 2 - cut.wall;
}

/** The box round what a cut can cut. */
export function boxOfCut(cut: Cut): Bounds {
  if (cut.kind === 'swept') return boundsOf(footprint(cut)) as Bounds;
  return boxAround(cut.center, cut.diameter / 2);
}
