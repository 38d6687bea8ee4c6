import Flatbush from 'flatbush';
import type { AnnularCut, Cut } from '../cut/cut.js';
import { type Bounds, boxAround, boxesMeet } from '../geometry/bounds.js';
import { edgeBounds } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import type { Removal } from '../left/cells.js';
import { contains } from '../region/contains.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';
import { subtract } from '../region/subtract.js';
import { boxRegion, Tiles } from './tiles.js';

/** A layer of the metal that a cut goes through: the same at all its heights. */
export interface Layer {
  /** Right within reach of the cut; further away there may be more or less. */
  readonly metal: Region;
  readonly height: number;
  /** Whether there is nothing but metal, or none, within reach; null where an edge runs through it. */
  readonly plain: 'metal' | 'air' | null;
}

/** The metal near a cut when its turn comes, from where it starts on down. */
export interface NearMetal {
  /** The part before any cut. */
  readonly part: Region;
  readonly layers: readonly Layer[];
}

/** A cut with a round footprint. */
export type RoundCut = Exclude<Cut, { kind: 'swept' }>;

/** Tells of each round cut the metal near it. */
export type MetalFinder = (number: number, cut: RoundCut, reach: number) => NearMetal;

/**
 * The metal near each cut when its turn comes: the part, less what the cuts before it have taken. A core that a
 * ring has cut free is taken to be lifted out, unless it is the piece that is kept. Each answer costs what is near
 * the cut, not what is in the part.
 * @param held a place on the piece that is kept; null if none is left
 */
export function metalFinder(
  outline: Region,
  thickness: number,
  cuts: readonly Cut[],
  removals: readonly Removal[],
  held: Point | null,
): MetalFinder {
  const tiles = new Tiles(outline);
  const taken = removals.map((removal, k) => takenBy(cuts[k] as Cut, removal, held));
  const boxes = cuts.map((cut, k) =>
    cut.kind === 'swept' ? (boundsOf(taken[k] as Region) as Bounds) : boxAround(cut.center, cut.diameter / 2),
  );
  const index = boxes.length === 0 ? null : indexOf(boxes);
  return (number, cut, reach) => {
    const box = boxAround(cut.center, cut.diameter / 2 + reach);
    const part = tiles.around(box);
    const earlier =
      index === null
        ? []
        : index
            .search(
              box.minX,
              box.minY,
              box.maxX,
              box.maxY,
              (k) => k < number && meets(cuts[k] as Cut, cut, reach),
            )
            .sort((a, b) => a - b);
    const start = plainPart(part, box, cut.center);
    const own = removals[number] as Removal;
    if (earlier.length === 0) {
      return { part: start.metal, layers: [{ ...start, height: own.high - own.low }] };
    }
    const layers = heightsOf(own, cut.from, earlier, removals, thickness).map(({ middle, height }) => {
      const before = earlier.filter((k) => reaches(removals[k] as Removal, middle));
      if (start.plain === 'air' || before.length === 0) return { ...start, height };
      const regions = before.map((k) => taken[k] as Region);
      return { metal: subtract(start.metal, regions), height, plain: null };
    });
    return { part: start.metal, layers: alike(layers) };
  };
}

/** What is gone after a cut: with a ring, its core too, where that falls out. */
function takenBy(cut: Cut, removal: Removal, held: Point | null): Region {
  if (cut.kind !== 'annular' || !cut.through || isKept(cut, held)) return removal.footprint;
  return disc(cut.center, cut.diameter / 2, `cut:${cut.id}`);
}

/** A kept piece lies all inside of a ring or all outside: the middle of the ring tells which. */
function isKept({ center, diameter, wall }: AnnularCut, held: Point | null): boolean {
  return held !== null && distance(center, held) < diameter / 2 - wall / 2;
}

function meets(other: Cut, cut: RoundCut, reach: number): boolean {
  if (other.kind === 'swept') return true;
  return distance(other.center, cut.center) <= (other.diameter + cut.diameter) / 2 + reach;
}

/** The part within a box: nothing but metal where no edge comes near, so that no overlay is needed. */
function plainPart(part: Region, box: Bounds, center: Point): Omit<Layer, 'height'> {
  const isNear = loopsOf(part).some((loop) => loop.some((edge) => boxesMeet(edgeBounds(edge), box)));
  if (isNear) return { metal: part, plain: null };
  if (contains(part, center) === 'outside') return { metal: [], plain: 'air' };
  return { metal: boxRegion(box), plain: 'metal' };
}

/** Layers of a cut between the heights at which earlier cuts near it begin and end, from where it starts. */
function heightsOf(
  { low, high }: Removal,
  from: Cut['from'],
  earlier: readonly number[],
  removals: readonly Removal[],
  thickness: number,
): { middle: number; height: number }[] {
  const least = weldTolerance(thickness);
  const between = earlier.flatMap((k) => {
    const removal = removals[k] as Removal;
    return [removal.low, removal.high].filter((height) => height > low + least && height < high - least);
  });
  const heights = [low, ...new Set(between.sort((a, b) => a - b)), high];
  const layers = heights.slice(1).flatMap((top, k) => {
    const bottom = heights[k] as number;
    return top - bottom > least ? [{ middle: (bottom + top) / 2, height: top - bottom }] : [];
  });
  return from === 'top' ? layers.reverse() : layers;
}

function reaches({ low, high }: Removal, height: number): boolean {
  return low < height && height < high;
}

/** Neighbouring layers without an edge in them are one. */
function alike(layers: readonly Layer[]): Layer[] {
  const made: Layer[] = [];
  for (const layer of layers) {
    const last = made[made.length - 1];
    if (last !== undefined && last.plain !== null && last.plain === layer.plain) {
      made[made.length - 1] = { ...last, height: last.height + layer.height };
    } else made.push(layer);
  }
  return made;
}

function indexOf(boxes: readonly Bounds[]): Flatbush {
  const index = new Flatbush(boxes.length);
  for (const { minX, minY, maxX, maxY } of boxes) index.add(minX, minY, maxX, maxY);
  index.finish();
  return index;
}
