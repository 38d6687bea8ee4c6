import { type Bounds, extentOf, joined, middleOf } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import { samePoint } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOfOperands } from '../noding/gather.js';
import { arrange } from '../overlay/arrange.js';
import { collect } from '../overlay/stitch.js';
import { windings } from '../overlay/windings.js';
import { boundsOf, loopBounds, loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';
import { rawBand, rawLoop } from './offset-raw.js';

/**
 * A region grown by a distance (over 0) or shrunk by one (under 0): all places within the distance of it, or all
 * that are as far as the distance from what lies outside. Of lines and arcs, exact; where it grows round a corner
 * there is an arc. Each edge has the source of the edge that it runs beside, an arc round a corner that of the edge
 * that arrives there. Nothing may be left. A distance under the weld tolerance changes nothing.
 *
 * The curves beside all loops are overlaid at once, and what they go round more often counter-clockwise than
 * clockwise is kept. For any place that number is the Euler characteristic of what a disc of the distance round the
 * place has in common with the region (pieces less holes; when shrinking, one less that of the outside), so it is
 * over 0 where it should be, unless the disc swallows a hole (a part, when shrinking). Of holes and parts narrow
 * enough for that nothing remains, so they are left out first.
 * Source: Guibas, Ramshaw and Stolfi, "A kinetic framework for computational geometry" (1983), on convolution.
 * @param distance in the unit of the region
 * @throws RangeError if the distance is not a finite number.
 */
export function offset(region: Region, distance: number): Region {
  if (!Number.isFinite(distance)) {
    throw new RangeError(`offset: the distance is ${distance}; it must be a finite number`);
  }
  const box = boundsOf(region);
  if (box === null) return [];
  const weld = weldFor(box, Math.max(0, distance));
  if (Math.abs(distance) <= weld) return region;
  const loops = distance > 0 ? loopsToGrow(region, distance) : loopsToShrink(region, -distance);
  const raw = loops.map((loop) => rawLoop(loop, distance, weld));
  // However little is left of a region that shrinks, what is nothing depends on the size that it had.
  return goneRound(raw, distance > 0 ? raw : loopsOf(region));
}

/**
 * All places within a distance of a path, which may close, cross itself, or be in pieces. Of lines and arcs, exact;
 * each edge has the source of the edge that it runs beside.
 * @param distance in the unit of the path, over 0
 * @throws RangeError if the distance is not a finite number over 0.
 */
export function offsetPath(path: readonly Edge[], distance: number): Region {
  if (!(distance > 0) || !Number.isFinite(distance)) {
    throw new RangeError(`offsetPath: the distance is ${distance}; it must be a finite number over 0`);
  }
  if (path.length === 0) return [];
  const raw = rawBands(path, distance);
  return goneRound(raw, raw);
}

/** The loops that `offsetPath` overlays: one round each chain of the path, with all their crossings. */
export function rawBands(path: readonly Edge[], distance: number): Loop[] {
  const weld = weldFor(path.map(edgeBounds).reduce(joined), distance);
  return chainsOf(path).map((chain) => rawBand(chain, distance, weld));
}

/** The weld tolerance of an overlay of all that lies within a distance of a box. */
function weldFor(box: Bounds, distance: number): number {
  const middle = middleOf(box);
  const far = Math.max(Math.abs(middle.x), Math.abs(middle.y)) / 100;
  const extent = extentOf(box) + 2 * distance;
  return weldTolerance(extent, Math.max(extent, far));
}

/** Holes that no disc of the radius fits in are filled: every place of them is within the radius of the region. */
function loopsToGrow(region: Region, radius: number): Loop[] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes.filter((hole) => mayHold(hole, radius))]);
}

/** Of parts that no disc of the radius fits in nothing is left. */
function loopsToShrink(region: Region, radius: number): Loop[] {
  return region.flatMap(({ outer, holes }) => (mayHold(outer, radius) ? [outer, ...holes] : []));
}

function mayHold(loop: Loop, radius: number): boolean {
  const { minX, minY, maxX, maxY } = loopBounds(loop);
  return Math.min(maxX - minX, maxY - minY) > 2 * radius;
}

/** A path cut where an edge does not start at the end of the one before. */
function chainsOf(path: readonly Edge[]): Edge[][] {
  const chains: Edge[][] = [];
  let before: Edge | null = null;
  for (const edge of path) {
    if (before !== null && samePoint(before.b, edge.a)) chains[chains.length - 1]?.push(edge);
    else chains.push([edge]);
    before = edge;
  }
  return chains;
}

/**
 * What loops go round more often counter-clockwise than clockwise.
 * @param frame loops that say how large the work is
 */
function goneRound(loops: readonly Loop[], frame: readonly Loop[]): Region {
  if (loops.length === 0) return [];
  const subdivision = arrange([loops], boundsOfOperands([frame]));
  const count = windings(subdivision, () => true);
  const kept = new Uint8Array(subdivision.faceCount);
  for (let face = 1; face < kept.length; face++) if ((count[face] as number) > 0) kept[face] = 1;
  return collect(subdivision, kept).map(({ outer, holes }) => ({ outer, holes }));
}
