import { samePoint } from '../geometry/point.js';
import { loopArea, loopsOf } from '../region/measure.js';
import type { Loop, RegionPart } from '../region/region.js';
import { areaUnder, OFF_CURVE } from './certify-edges.js';
import type { Border } from './keep.js';
import type { Subdivision } from './label.js';
import { endOf, startOf } from './rotate.js';

/**
 * What is wrong with a region that was made of the border of some faces, in words, or null: its loops are closed, outer ones
 * go round counter-clockwise and holes clockwise, and all in all they go round what the border goes round.
 * @param dropped what the loops go round that were left out because they are next to nothing
 * @param sizes areas of the loops of all parts, each outer loop before its holes, NaN for one that does not close, where they are known
 */
export function regionFault(
  { graph }: Subdivision,
  border: Border,
  parts: readonly RegionPart[],
  dropped: number,
  sizes: readonly number[] = loopsOf(parts).map((loop) => (isClosed(loop) ? loopArea(loop) : Number.NaN)),
): string | null {
  const { curves, start, member } = graph;
  const { x, y } = curves.points;
  let area = dropped;
  let at = 0;
  for (const { holes } of parts) {
    const size = sizes[at++] as number;
    if (!(size > 0)) return 'an outer loop that goes round nothing';
    area += size;
    for (let k = 0; k < holes.length; k++) {
      const taken = sizes[at++] as number;
      if (!(taken < 0)) return 'a hole that takes nothing';
      area += taken;
    }
  }
  let kept = 0;
  let length = 0;
  for (const half of border.halves) {
    const from = startOf(graph, half);
    const to = endOf(graph, half);
    const piece = member[start[half >> 1] as number] as number;
    // The first of an edge's members runs along it.
    kept += half & 1 ? -areaUnder(curves, piece, to, from) : areaUnder(curves, piece, from, to);
    length +=
      Math.abs((x[to] as number) - (x[from] as number)) + Math.abs((y[to] as number) - (y[from] as number));
  }
  // An arc is at most so much longer than the sides of its chord, and its circle may be the one that was given.
  const bound = 2 * OFF_CURVE * curves.tolerance * Math.PI * length;
  return Math.abs(area - kept) <= bound ? null : `an area of ${area} made of ${kept}`;
}

/** Whether each edge of a loop ends where the next one starts. */
export function isClosed(loop: Loop): boolean {
  let before = loop[loop.length - 1];
  for (const edge of loop) {
    if (before === undefined || !samePoint(before.b, edge.a)) return false;
    before = edge;
  }
  return loop.length > 1;
}
