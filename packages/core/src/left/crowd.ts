import type { Point } from '../geometry/point.js';

/** Where boundary lies thick, so that a large disc has no room. */
export interface Crowd {
  /** Smaller discs are not worth asking about: they would seldom hold a whole cell. */
  readonly least: number;
  /** Whether some of the boundary surely lies within a disc; it may not see all that does. */
  readonly isWithin: (center: Point, radius: number) => boolean;
}

/** Cells across the radius of the smallest disc that is worth asking about. */
const LEAST_CELLS = 2;

/** How many cells to each side of a disc's centre are looked at. */
const LOOK = 2;

/** Most cells to a side: a long thin part has few places in each of them. */
const MOST_CELLS = 1000;

/** Which cell a place at the edge of one is in is rounding; a disc that just holds the cell does not count. */
const EDGE_SHARE = 1e-6;

/** A crowd of places, counted in a grid that has a cell for each of them on average. */
export function crowdOf(places: readonly Point[]): Crowd {
  const low = { x: Infinity, y: Infinity };
  const high = { x: -Infinity, y: -Infinity };
  for (const { x, y } of places) {
    low.x = Math.min(low.x, x);
    low.y = Math.min(low.y, y);
    high.x = Math.max(high.x, x);
    high.y = Math.max(high.y, y);
  }
  const [width, height] = [high.x - low.x, high.y - low.y];
  const cell = Math.max(
    Math.sqrt((width * height) / places.length),
    width / MOST_CELLS,
    height / MOST_CELLS,
    Number.MIN_VALUE,
  );
  const columns = Math.floor(width / cell) + 1;
  const rows = Math.floor(height / cell) + 1;
  const isTaken = new Uint8Array(columns * rows);
  const columnOf = (x: number) => Math.floor((x - low.x) / cell);
  const rowOf = (y: number) => Math.floor((y - low.y) / cell);
  for (const { x, y } of places) isTaken[rowOf(y) * columns + columnOf(x)] = 1;
  const isWithin = (center: Point, radius: number) => {
    const reach = radius - cell * EDGE_SHARE;
    const column = columnOf(center.x);
    const row = rowOf(center.y);
    for (let r = Math.max(0, row - LOOK); r <= Math.min(rows - 1, row + LOOK); r++) {
      const bottom = low.y + r * cell - center.y;
      const dy = Math.max(Math.abs(bottom), Math.abs(bottom + cell));
      for (let c = Math.max(0, column - LOOK); c <= Math.min(columns - 1, column + LOOK); c++) {
        if (isTaken[r * columns + c] === 0) continue;
        const left = low.x + c * cell - center.x;
        const dx = Math.max(Math.abs(left), Math.abs(left + cell));
        if (reach > 0 && dx * dx + dy * dy < reach * reach) return true;
      }
    }
    return false;
  };
  return { least: LEAST_CELLS * cell, isWithin };
}
