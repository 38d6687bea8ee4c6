import { arcEdge, type Edge, offset, type Point, type Region } from '@edgebite/core';
import { boxRegion, extentOf, filleted, validateRegion } from '@edgebite/core/testing';
import { expect } from 'vitest';

export const P = (x: number, y: number): Point => ({ x, y });
export const O = P(0, 0);
/** The polygon through some points. */
export const polygon = (...points: readonly Point[]): Region => [{ outer: filleted(points, 0), holes: [] }];
export const square = boxRegion(0, 0, 100, 100);
export const triangle345 = polygon(P(0, 0), P(4, 0), P(0, 3));

/** Expects a value to within a share of the wanted one. */
export function near(value: number, wanted: number, relative: number): void {
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted));
}

/** The offset of a region, validated at the size that the weld tolerance goes by. */
export function grown(region: Region, distance: number): Region {
  const result = offset(region, distance);
  validateRegion(result, { extent: extentOf(region) + 2 * Math.max(0, distance) });
  return result;
}

/** Numbers of parts and of holes. */
export const partsAndHoles = (region: Region): number[] => [
  region.length,
  region.reduce((sum, part) => sum + part.holes.length, 0),
];

/** The shorter counter-clockwise arc of a radius from one point to another. */
export function bowed(a: Point, b: Point, radius: number): Edge {
  const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
  const toCenter = Math.sqrt((radius - half) * (radius + half)) / (2 * half);
  const center = P((a.x + b.x) / 2 - (b.y - a.y) * toCenter, (a.y + b.y) / 2 + (b.x - a.x) * toCenter);
  return arcEdge(a, b, center, true);
}
