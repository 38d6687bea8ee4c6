import { area, loopArea, loopLength, loopsOf, offset, type Region } from '@edgebite/core';
import { extentOf } from '@edgebite/core/testing';
import type { LoopMeasure, PolygonAnswer } from './chords.js';
import type { OffsetCase } from './offset-cases.js';

/**
 * With chords of this height the polygon of a region is off by as much, and so are the circles that a peer draws
 * round its corners: together an answer lies between the exact ones for distances that differ by twice the height.
 */
const HEIGHTS_OFF = 2;

/** Loops of a mean thickness of this many heights may come and go with the chords. */
const THIN_HEIGHTS = 16;

/** What rounding may do to an area, as a share of the squared size. */
const ROUNDING = 1e-10;

/** Height of the chords for a case, as fine as wanted and fine for the distance too. */
export function sagittaFor({ region, distance }: OffsetCase, share: number): number {
  return Math.min(share * sizeOf(region, distance), Math.abs(distance) / 20);
}

/** The first difference between an answer in chords and the exact one for the distance, or null if they agree. */
export function offsetDifference(
  { region, distance }: OffsetCase,
  theirs: PolygonAnswer,
  sagitta: number,
): string | null {
  const at = (by: number): Region => offset(region, distance + by * HEIGHTS_OFF * sagitta);
  return bracketed(at(-1), at(0), at(1), theirs, sagitta, sizeOf(region, distance));
}

/**
 * Holds an answer in chords against the exact one, given together with one that is surely smaller and one that is
 * surely larger. Numbers of pieces and holes are compared where they are the same for all three.
 */
export function bracketed(
  smaller: Region,
  exact: Region,
  larger: Region,
  theirs: PolygonAnswer,
  sagitta: number,
  size: number,
): string | null {
  const slack = ROUNDING * size * size;
  if (!(theirs.area >= area(smaller) - slack && theirs.area <= area(larger) + slack)) {
    return `area ${theirs.area}, not from ${area(smaller)} to ${area(larger)}, where ${area(exact)} is exact`;
  }
  const thin = THIN_HEIGHTS * sagitta;
  // The same however thin is meant, so that none of ours is near that limit.
  const counts = [smaller, exact, larger].flatMap((region) =>
    [thin / 4, thin, thin * 4].map((limit) => countsOf(measures(region), limit)),
  );
  if (counts.some((one) => one !== counts[0])) return null;
  const other = countsOf(theirs.loops, thin);
  return other === counts[0] ? null : `${other}, not ${counts[0]}`;
}

function measures(region: Region): LoopMeasure[] {
  return loopsOf(region).map((loop) => ({ signedArea: loopArea(loop), perimeter: loopLength(loop) }));
}

function countsOf(loops: readonly LoopMeasure[], thin: number): string {
  const thick = loops.filter(({ signedArea, perimeter }) => (2 * Math.abs(signedArea)) / perimeter > thin);
  const holes = thick.filter(({ signedArea }) => signedArea < 0).length;
  return `${thick.length - holes} pieces and ${holes} holes`;
}

function sizeOf(region: Region, distance: number): number {
  return extentOf(region) + 2 * Math.max(0, distance);
}
