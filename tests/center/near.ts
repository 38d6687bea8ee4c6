import { type Point, type Region, rectangle } from '@edgebite/core';
import { expect } from 'vitest';

/** A number as near to another as a share of a size allows; of the number itself unless a size is given. */
export function near(value: number, wanted: number, share = 1e-12, size = Math.abs(wanted)): void {
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(share * size);
}

/** A place as near to another as a share of a size allows. */
export function nearPlace(value: Point, wanted: Point, size: number, share = 1e-12): void {
  const away = Math.hypot(value.x - wanted.x, value.y - wanted.y);
  expect(away, `(${value.x}, ${value.y}) against (${wanted.x}, ${wanted.y})`).toBeLessThanOrEqual(
    share * size,
  );
}

/** A block with its lower left corner at the origin: edge 0 below, 1 right, 2 above, 3 left. */
export function block(width: number, height: number): Region {
  return [{ outer: rectangle(width, height), holes: [] }];
}

/** A long block whose upper face is the x axis: as good as a half plane for cuts near the origin. */
export function underXAxis(size: number): Region {
  return [{ outer: rectangle(2 * size, size, { at: { x: -size, y: -size } }), holes: [] }];
}

/** Whole numbers from 0 on, the same ones every time; for cases that are swept through, not drawn. */
export function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, k) => k);
}
