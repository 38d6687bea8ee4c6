import {
  area,
  contains,
  nearestOnEdge,
  type Point,
  perimeter,
  pointAlong,
  type Region,
} from '@edgebite/core';
import { boxOf, edgesOf, extentOf, regionFaults } from '@edgebite/core/testing';
import type { OffsetCase } from './offset-cases.js';

/** Places along every edge of a result at which the distance is taken. */
const SHARES = [0, 0.29, 0.5, 0.83];

/** Four weld tolerances, as shares of the size: welding may move the ends of an edge, and each pulls its curve. */
const OFF = 4e-9;

/** Parts of a mean thickness under this share of the size look like touching edges to a check at that size. */
const THIN = 1e-8;

/** Closer to the boundary than this share of the size, a probe does not tell inside from outside. */
const UNSURE = 1e-7;

/** Probes each way. */
const GRID = 7;

/** What the check has measured, as shares of the size. */
export interface OffsetMeasures {
  /** How far the boundary is at most from where it belongs. */
  readonly off: number;
  readonly probes: number;
}

/**
 * Puts the definition to the test, with nothing but distances to the given region's edges: the result is a valid
 * region; every place of its boundary lies at the distance from the outline, and on the right side of it; probes on
 * a grid are in it just when they should be.
 * @throws Error that says what is wrong.
 */
export function checkOffset({ region, distance }: OffsetCase, got: Region): OffsetMeasures {
  const size = extentOf(region) + 2 * Math.max(0, distance);
  const faults = regionFaults(
    got.filter((part) => thickness(part) > THIN * size),
    { extent: size },
  );
  if (faults.length > 0) throw new Error(`the result is not valid: ${faults.join('; ')}`);
  const edges = edgesOf(region);
  const away = (p: Point): number => Math.min(...edges.map((edge) => nearestOnEdge(edge, p).distance));
  const wanted = (p: Point, distanceAway: number): boolean => {
    const inside = contains(region, p) === 'inside';
    return distance > 0 ? inside || distanceAway < distance : inside && distanceAway > -distance;
  };
  const tellsSides = Math.abs(distance) > UNSURE * size;
  let off = 0;
  for (const edge of edgesOf(got)) {
    for (const share of SHARES) {
      const p = pointAlong(edge, share);
      const error = Math.abs(away(p) - Math.abs(distance)) / size;
      off = Math.max(off, error);
      if (error > OFF) throw new Error(`(${p.x}, ${p.y}) of the boundary is off by ${error} of the size`);
      if (tellsSides && (contains(region, p) === 'inside') !== distance < 0) {
        throw new Error(`(${p.x}, ${p.y}) of the boundary is on the wrong side of the outline`);
      }
    }
  }
  let probes = 0;
  for (const p of grid(region, Math.max(0, distance))) {
    const distanceAway = away(p);
    if (Math.abs(distanceAway - Math.abs(distance)) < UNSURE * size || distanceAway < UNSURE * size) continue;
    probes += 1;
    const is = contains(got, p) === 'inside';
    if (is !== wanted(p, distanceAway)) {
      throw new Error(
        `(${p.x}, ${p.y}) is ${is ? 'in' : 'not in'} the result, ${distanceAway} from the outline`,
      );
    }
  }
  return { off, probes };
}

/** Twice the area over the perimeter: that of a long strip is its width. */
function thickness(part: Region[number]): number {
  return (2 * area([part])) / perimeter([part]);
}

/** A grid over the box round a region and a margin, its lines at no round places. */
function* grid(region: Region, margin: number): Generator<Point> {
  const { minX, minY, maxX, maxY } = boxOf(edgesOf(region));
  const reach = 1.1 * margin;
  for (let i = 0; i < GRID; i += 1) {
    for (let j = 0; j < GRID; j += 1) {
      const x = (i + 0.37 + 0.05 * j) / (GRID + 0.1);
      const y = (j + 0.41 + 0.04 * i) / (GRID + 0.1);
      yield {
        x: minX - reach + x * (maxX - minX + 2 * reach),
        y: minY - reach + y * (maxY - minY + 2 * reach),
      };
    }
  }
}
