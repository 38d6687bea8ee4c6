import { loopsOf } from '@edgebite/core';
import { Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType, type Paths64 } from 'clipper2-ts';
import { chordArea, chordList } from './chord-list.js';
import type { Library } from './library.js';
import { SIZE } from './problems.js';

/** Its coordinates are whole numbers: 1e-8 mm. */
const GRID = 1e8;

/**
 * clipper2-ts at some chord tolerances, shares of the size. Points are scaled to its whole numbers on the way in, so
 * that nothing is scaled between cuts.
 */
export function clipperTs(tolerances: readonly number[]): Library<Paths64, Float64Array[]>[] {
  return tolerances.map((share) => ({
    name: `clipper2-ts@${share.toExponential()}`,
    take: (regions) => regions.flatMap(loopsOf).map((loop) => pointsOf(chordList(loop, share * SIZE, 2))),
    subtract: (from, cuts) => {
      const engine = new Clipper64();
      const left: Paths64 = [];
      engine.addSubject(from);
      engine.addClip(cuts);
      engine.execute(ClipType.Difference, FillRule.NonZero, left);
      return left;
    },
    grow: (region, distance) => {
      const engine = new ClipperOffset(2, share * SIZE * GRID);
      const grown: Paths64 = [];
      engine.addPaths(region, JoinType.Round, EndType.Polygon);
      engine.execute(distance * GRID, grown);
      return grown;
    },
    give: (result) =>
      result.map((loop) => {
        const list = new Float64Array(2 * loop.length);
        loop.forEach(({ x, y }, k) => {
          list[2 * k] = x / GRID;
          list[2 * k + 1] = y / GRID;
        });
        return list;
      }),
    areaOf: (given) => chordArea(given, 2),
    free: () => {},
    takesOverlaps: true,
    error: () => share * SIZE,
  }));
}

function pointsOf(list: Float64Array): Paths64[number] {
  const points: Paths64[number] = new Array(list.length / 2);
  for (let k = 0; k < points.length; k += 1) {
    points[k] = { x: Math.round(list[2 * k]! * GRID), y: Math.round(list[2 * k + 1]! * GRID) };
  }
  return points;
}
