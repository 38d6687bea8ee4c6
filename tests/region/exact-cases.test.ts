import {
  areaOf,
  extentOf,
  metalAngles,
  OBLIQUE_THIRDS,
  printsOf,
  validateRegion,
} from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { cutsOf, type ExactCase, type ExactPiece, exactCases, outlineOf } from '../tools/exact-cases.js';
import { area, type Region, type RegionPart, subtract } from './kernel.js';

/*
 * Source of every expected number here: CGAL, Boolean set operations on polygons of circle and line segments,
 * exact arithmetic (tests/cases/boolean-exact.jsonl).
 */

/** Points closer than this share of the extent are one to the kernel. */
const WELD = 1e-9;

const DEGREES = 180 / Math.PI;

/** A vertex nearer to straight than this is smooth, on both sides. */
const SMOOTH = 1e-7;

const cases = exactCases().map((exact) => [exact.id, exact] as const);

/** True if the data can move by more than the weld tolerance before the number of pieces changes. */
function isStable(exact: ExactCase): boolean {
  return exact.expect.topologyStableTo > WELD * extentOf(outlineOf(exact), ...cutsOf(exact));
}

/**
 * True if the case plants a gap that welding closes: the ends of a gap of 4e-11 become one joint, two corners of
 * 90 degrees one cusp. Pieces, areas and holes are compared all the same.
 */
function isWeldedShut(exact: ExactCase): boolean {
  return Math.abs(exact.meta.gap ?? Infinity) <= WELD * extentOf(outlineOf(exact), ...cutsOf(exact));
}

describe.each(cases)('exact case %s', (_, exact) => {
  const outline = outlineOf(exact);
  const cuts = cutsOf(exact);
  const extent = extentOf(outline, ...cuts);
  const scale = exact.expect.outlineArea;
  const stable = isStable(exact);
  const areaSlack = scale * (stable ? 1e-9 : 1e-6);

  it('leaves the area that is left, and takes the rest', () => {
    const left = subtract(outline, cuts);
    validateRegion(left, { extent });
    expect(Math.abs(area(outline) - scale)).toBeLessThanOrEqual(1e-9 * scale);
    expect(Math.abs(area(left) - exact.expect.remainingArea)).toBeLessThanOrEqual(areaSlack);
    expect(Math.abs(scale - area(left) - exact.expect.removedArea)).toBeLessThanOrEqual(areaSlack);
  });

  it('leaves the pieces that are left, also with circles of three arcs', () => {
    const expected = stable ? exact.expect.pieces : [];
    for (const written of [cuts, cutsOf(exact, OBLIQUE_THIRDS)]) {
      const left = subtract(outline, written);
      validateRegion(left, { extent });
      if (!stable) {
        expect(Math.abs(area(left) - exact.expect.remainingArea)).toBeLessThanOrEqual(areaSlack);
        continue;
      }
      expect(left.length).toBe(expected.length);
      const rest = [...left];
      for (const piece of expected) rest.splice(partnerOf(piece, rest, extent, isWeldedShut(exact)), 1);
    }
  });

  it('leaves the same cut by cut', () => {
    let left: Region = outline;
    const steps = exact.expect.steps ?? [];
    cuts.forEach((cut, k) => {
      left = subtract(left, [cut]);
      validateRegion(left, { extent });
      const step = steps[k];
      if (step === undefined) return;
      expect(Math.abs(areaOf(left) - step[0])).toBeLessThanOrEqual(areaSlack);
      if (stable) expect(left.length).toBe(step[1]);
    });
    expect(Math.abs(areaOf(left) - exact.expect.remainingArea)).toBeLessThanOrEqual(areaSlack);
  });
});

describe('the exact cases', () => {
  it('are read in full, and most of them have a stable topology', () => {
    expect(cases.length).toBe(89);
    expect(cases.filter(([, exact]) => isStable(exact)).length).toBe(68);
    expect(cases.filter(([, exact]) => isWeldedShut(exact)).map(([id]) => id)).toEqual([
      'near-1e-9-005',
      'near-1e-9-015',
      'near-1e-9-025',
    ]);
  });
});

/** Index of the part that matches an exact piece in area, perimeter, holes, box and angles. */
function partnerOf(
  piece: ExactPiece,
  parts: readonly RegionPart[],
  extent: number,
  weldedShut: boolean,
): number {
  const expected = cornersOf(piece.angles);
  const prints = printsOf(parts);
  const near = (value: number, wanted: number, slack: number): boolean => Math.abs(value - wanted) <= slack;
  const index = parts.findIndex((part, k) => {
    const print = prints[k] as (typeof prints)[number];
    const box = [print.box.minX, print.box.minY, print.box.maxX, print.box.maxY];
    const angles = cornersOf(metalAngles(part).map((angle) => angle * DEGREES));
    return (
      near(print.area, piece.area, 1e-9 * piece.area) &&
      near(print.perimeter, piece.perimeter, 1e-7 * extent) &&
      print.holes === piece.holes &&
      box.every((side, s) => near(side, piece.bbox[s] as number, 1e-7 * extent)) &&
      (weldedShut ||
        (angles.length === expected.length &&
          angles.every((angle, a) => near(angle, expected[a] as number, 1e-7))))
    );
  });
  if (index >= 0) return index;
  const found = parts.map((part, k) => ({
    ...prints[k],
    angles: cornersOf(metalAngles(part).map((a) => a * DEGREES)),
  }));
  throw new Error(`no part matches ${JSON.stringify(piece)}\namong ${JSON.stringify(found)}`);
}

/** Angles in order, without those of smooth vertices. */
function cornersOf(angles: readonly number[]): number[] {
  return angles.filter((angle) => Math.abs(angle - 180) > SMOOTH).sort((a, b) => a - b);
}
