import Flatbush from 'flatbush';
import { subtract } from '../combine/subtract.js';
import type { Cut, Side } from '../cut/cut.js';
import { type Bounds, boxAround, grown, joined } from '../geometry/bounds.js';
import { distance, type Point } from '../geometry/point.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { plainIn } from '../load/near-tool.js';
import { forgetful, type Memory } from '../memory/memory.js';
import { boundsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import { boxRegion, Tiles } from './tiles.js';

/** Metal that is gone from some step on: what a step took, or a body that came loose in it and was lifted out. */
export interface Gone {
  /** It is gone at every later moment: there are two to a step, what its tool takes and what is lifted out then. */
  readonly moment: number;
  readonly region: Region;
  /** Heights over the bottom of the part as drawn. */
  readonly low: number;
  readonly high: number;
  /** The circle round it, where it is one, so that what it misses is told at once. */
  readonly round: { readonly center: Point; readonly radius: number } | null;
}

/** A layer of the metal that a tool goes through: the same at all its heights. */
export interface MetalLayer {
  /** Right within reach of the tool; further away there may be more or less. */
  readonly metal: Region;
  /** Heights over the bottom of the part as drawn. */
  readonly low: number;
  readonly high: number;
  /** Whether there is nothing but metal, or none, within reach; null where an edge runs through it. */
  readonly plain: 'metal' | 'air' | null;
}

/** The metal near a tool when its turn comes, from where it starts on down. */
export interface NearMetal {
  /** The part before any cut. */
  readonly part: Region;
  readonly layers: readonly MetalLayer[];
}

/** A cut with a round footprint. */
export type RoundCut = Exclude<Cut, { kind: 'swept' }>;

/** The moment at which a step begins, and the one between what its tool takes and what is lifted out. */
export const beforeStep = (step: number): number => 2 * step;
export const afterCut = (step: number): number => 2 * step + 1;

/** Where metal is asked about: at a moment, round a place, between two heights, from the side that the tool starts. */
export interface Asked {
  readonly moment: number;
  readonly center: Point;
  /** How far from its centre metal matters. */
  readonly reach: number;
  readonly low: number;
  readonly high: number;
  readonly from: Side;
}

/** Tells of each tool the metal near it. */
export type MetalFinder = (asked: Asked) => NearMetal;

/**
 * The metal near a tool when its turn comes: the part, less what earlier steps have taken and what has come loose
 * and was lifted out. Each answer costs what is near the tool, not what is in the part.
 */
export function metalFinder(
  outline: Region,
  thickness: number,
  gone: readonly Gone[],
  memory: Memory = forgetful,
): MetalFinder {
  const tiles = memory.of('tiles', [outline], () => new Tiles(outline));
  const index = indexOf(gone.map(({ region }) => boundsOf(region)));
  return (asked) => {
    const { moment, center, reach, low, high, from } = asked;
    const box = boxAround(center, reach);
    const earlier = (
      index?.search(box.minX, box.minY, box.maxX, box.maxY, (k) =>
        isBefore(gone[k] as Gone, moment, center, reach),
      ) ?? []
    )
      .sort((a, b) => a - b)
      .map((k) => gone[k] as Gone);
    const place = `metal ${moment} ${center.x} ${center.y} ${reach} ${low} ${high} ${from}`;
    return memory.of(place, [outline, thickness, ...earlier], () =>
      metalLess(tiles.around(box), box, earlier, thickness, asked),
    );
  };
}

/** The part near a tool, less what is gone there. */
function metalLess(
  part: Region,
  box: Bounds,
  earlier: readonly Gone[],
  thickness: number,
  { low, high, from }: Asked,
): NearMetal {
  const start = plainPart(part, box);
  if (start.plain === 'air' || earlier.length === 0) {
    return { part: start.metal, layers: [{ ...start, low, high }] };
  }
  const layers = heightsOf(low, high, earlier, thickness).map((layer): MetalLayer => {
    const middle = (layer.low + layer.high) / 2;
    const before = earlier.filter((one) => one.low < middle && middle < one.high);
    if (before.length === 0) return { ...start, ...layer };
    const regions = before.map(({ region }) => region);
    // A block round all that is taken from it: nothing of that meets its sides, so that most often no overlay is needed.
    const block = start.plain === 'metal' ? blockRound(box, regions) : start.metal;
    return { metal: subtract(block, regions), ...layer, plain: null };
  });
  return { part: start.metal, layers: alike(from === 'top' ? layers.reverse() : layers) };
}

function isBefore({ moment, round }: Gone, now: number, center: Point, reach: number): boolean {
  return moment < now && (round === null || distance(round.center, center) <= round.radius + reach);
}

/** The part within a box: nothing but metal where no edge comes near, so that no overlay is needed. */
function plainPart(part: Region, box: Bounds): Pick<MetalLayer, 'metal' | 'plain'> {
  const plain = plainIn(part, box);
  if (plain === null) return { metal: part, plain };
  return { metal: plain === 'air' ? [] : boxRegion(box), plain };
}

/** A block that holds a box and some regions, with room to spare. */
function blockRound(box: Bounds, regions: readonly Region[]): Region {
  const whole = regions.reduce((sum, region) => joined(sum, boundsOf(region) ?? box), box);
  return boxRegion(grown(whole, (box.maxX - box.minX) / 2));
}

/** Layers between the heights at which what is gone near a tool begins and ends, from the bottom up. */
function heightsOf(
  low: number,
  high: number,
  earlier: readonly Gone[],
  thickness: number,
): { low: number; high: number }[] {
  const least = weldTolerance(thickness);
  const between = earlier
    .flatMap((one) => [one.low, one.high])
    .filter((height) => height > low + least && height < high - least);
  const heights = [low, ...new Set(between.sort((a, b) => a - b)), high];
  return heights.slice(1).flatMap((top, k) => {
    const bottom = heights[k] as number;
    return top - bottom > least ? [{ low: bottom, high: top }] : [];
  });
}

/** Neighbouring layers without an edge in them are one. */
function alike(layers: readonly MetalLayer[]): MetalLayer[] {
  const made: MetalLayer[] = [];
  for (const layer of layers) {
    const last = made[made.length - 1];
    if (last !== undefined && last.plain !== null && last.plain === layer.plain) {
      made[made.length - 1] = {
        ...last,
        low: Math.min(last.low, layer.low),
        high: Math.max(last.high, layer.high),
      };
    } else made.push(layer);
  }
  return made;
}

function indexOf(boxes: readonly (Bounds | null)[]): Flatbush | null {
  if (boxes.length === 0) return null;
  const index = new Flatbush(boxes.length);
  for (const box of boxes) {
    // What is empty lies nowhere: a box that no search meets.
    const { minX, minY, maxX, maxY } = box ?? {
      minX: Infinity,
      minY: Infinity,
      maxX: Infinity,
      maxY: Infinity,
    };
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return index;
}
