import type { Point } from './point.js';

/** A box with sides along the axes. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The smallest box round both. */
export function joined(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** The box moved outward by `by` on all four sides. */
export function grown(box: Bounds, by: number): Bounds {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

/** The box round a place, out to `by` on all four sides. */
export function boxAround({ x, y }: Point, by = 0): Bounds {
  return { minX: x - by, minY: y - by, maxX: x + by, maxY: y + by };
}

/** Whether two boxes share a point; touching sides count. */
export function boxesMeet(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

/** The longer side. */
export function extentOf(box: Bounds): number {
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

/** The middle of a box. */
export function middleOf(box: Bounds): Point {
  return { x: box.minX + (box.maxX - box.minX) / 2, y: box.minY + (box.maxY - box.minY) / 2 };
}
