import { intersect } from '../combine/boolean.js';
import type { Bounds } from '../geometry/bounds.js';
import { type Edge, lineEdge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';

/** A tile of a region, halved when something asks for less of it. */
interface Tile {
  readonly region: Region;
  readonly box: Bounds;
  readonly count: number;
  halves: readonly [Tile, Tile] | null;
}

/** A tile of so few edges is small enough to work with. */
const FEW_EDGES = 32;

/** A halving that leaves a half with more than this share of the edges has not been worth it. */
const WORTH = 0.75;

/**
 * Pieces of a region: whoever asks for what is in a box gets a piece that holds it all, and not much more. Pieces are
 * halved as they are asked for, so that a thousand questions about a region of a thousand edges cost little more than
 * the halving.
 */
export class Tiles {
  private readonly root: Tile | null;

  constructor(region: Region) {
    const box = boundsOf(region);
    this.root = box === null ? null : tileOf(region, box);
  }

  /** A region that is the same as the whole one within the box. */
  around(box: Bounds): Region {
    let tile = this.root;
    if (tile === null) return [];
    for (;;) {
      if (tile.count <= FEW_EDGES) return tile.region;
      const { axis, at } = halvingLine(tile.box);
      const side = axis === 'x' ? sideOf(box.minX, box.maxX, at) : sideOf(box.minY, box.maxY, at);
      if (side === null) return tile.region;
      tile.halves ??= halved(tile);
      const half: Tile = tile.halves[side];
      if (half === tile) return tile.region;
      tile = half;
    }
  }
}

function tileOf(region: Region, box: Bounds): Tile {
  const count = loopsOf(region).reduce((sum, loop) => sum + loop.length, 0);
  return { region, box, count, halves: null };
}

function halvingLine({ minX, minY, maxX, maxY }: Bounds): { axis: 'x' | 'y'; at: number } {
  return maxX - minX >= maxY - minY
    ? { axis: 'x', at: minX + (maxX - minX) / 2 }
    : { axis: 'y', at: minY + (maxY - minY) / 2 };
}

function sideOf(low: number, high: number, at: number): 0 | 1 | null {
  if (high < at) return 0;
  return low > at ? 1 : null;
}

/** Both halves; the tile itself where halving it does not make it less. */
function halved(tile: Tile): readonly [Tile, Tile] {
  const { box, region, count } = tile;
  const { axis, at } = halvingLine(box);
  const boxes: readonly [Bounds, Bounds] =
    axis === 'x'
      ? [
          { ...box, maxX: at },
          { ...box, minX: at },
        ]
      : [
          { ...box, maxY: at },
          { ...box, minY: at },
        ];
  const [low, high] = boxes.map((half) => tileOf(intersect([region, boxRegion(half)]), half)) as [Tile, Tile];
  return Math.max(low.count, high.count) > WORTH * count ? [tile, tile] : [low, high];
}

/** All of a box as a region. */
export function boxRegion({ minX, minY, maxX, maxY }: Bounds): Region {
  const corners: Point[] = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  const outer = corners.map((p, k): Edge => lineEdge(p, corners[(k + 1) % 4] as Point));
  return [{ outer, holes: [] }];
}
