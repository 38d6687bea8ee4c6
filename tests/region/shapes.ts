import { type Loop, lineEdge, type Point } from '@edgebite/core';

export const p = (x: number, y: number): Point => ({ x, y });

/** A polygon. */
export const closed = (...points: readonly Point[]): Loop =>
  points.map((a, k) => lineEdge(a, points[(k + 1) % points.length] as Point));

/** A rectangle, from its lower left corner. */
export const box = (x: number, y: number, width: number, height: number): Loop =>
  closed(p(x, y), p(x + width, y), p(x + width, y + height), p(x, y + height));
