import { disc, edgeLength, type Point, pointAlong, type Region } from '@edgebite/core';
import { boxRegion, filleted } from '@edgebite/core/testing';
import { slabsSubtract } from '../tools/slabs.js';

/** A region and cuts to be taken from it, at once or one after another. */
export interface CutProblem {
  readonly kind: 'cut';
  readonly name: string;
  readonly outline: Region;
  readonly cuts: readonly Region[];
  readonly inTurn: boolean;
  /** Whether cuts overlap each other. */
  readonly overlap: boolean;
  /** Beginnings of the names of the libraries that take part besides ours; all unless given. */
  readonly peers?: readonly string[];
  /** Area of what is left, by a route of its own. */
  readonly expected: () => number;
}

/** A region to be grown. */
export interface OffsetProblem {
  readonly kind: 'offset';
  readonly name: string;
  readonly outline: Region;
  readonly distance: number;
  readonly peers?: readonly string[];
  readonly expected: () => number;
}

/** Longer side of every part here, in mm; chord tolerances of the peers are shares of it. */
export const SIZE = 100;

/** Corner points of an L of 100 by 80, the third one reflex. */
const ELL: readonly Point[] = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 30 },
  { x: 35, y: 30 },
  { x: 35, y: 80 },
  { x: 0, y: 80 },
];

const ELL_RADIUS = 7;

/** The L with its corners rounded: twelve edges. */
export const ell: Region = [{ outer: filleted(ELL, ELL_RADIUS), holes: [] }];

/** Rows and columns of round holes in a plate. */
export interface HoleGrid {
  readonly plate: Region;
  readonly holes: readonly Region[];
  readonly left: number;
}

/** Holes take up this share of the pitch: between two of them three tenths of it stay. */
const HOLE_SHARE = 0.7;

/** A plate with `columns` by `rows` holes, `pitch` apart. */
export function holeGrid(columns: number, rows: number, pitch: number): HoleGrid {
  const radius = (HOLE_SHARE * pitch) / 2;
  const holes = Array.from({ length: columns * rows }, (_, k) =>
    disc(
      { x: ((k % columns) + 0.5) * pitch, y: (Math.floor(k / columns) + 0.5) * pitch },
      radius,
      `cut:${k}`,
    ),
  );
  const [width, height] = [columns * pitch, rows * pitch];
  const left = width * height - columns * rows * Math.PI * radius * radius;
  return { plate: boxRegion(0, 0, width, height), holes, left };
}

/** Sizes of the plates of holes, by their number. */
export const GRIDS: Readonly<Record<number, readonly [columns: number, rows: number, pitch: number]>> = {
  200: [20, 10, 5],
  2000: [50, 40, 2],
  10000: [100, 100, 1],
};

/** The plate with that many holes. */
export function platesOf(count: 200 | 2000 | 10000): HoleGrid {
  return holeGrid(...(GRIDS[count] as [number, number, number]));
}

/** Discs set evenly along the L, three ways deep, three sizes; none touches another. */
function cutsAlongEll(count: number): Region[] {
  const loop = ell[0]?.outer ?? [];
  const length = loop.reduce((sum, edge) => sum + edgeLength(edge), 0);
  return Array.from({ length: count }, (_, k) => {
    let rest = ((k + 0.4) / count) * length;
    const edge = loop.find((one) => {
      if (rest <= edgeLength(one)) return true;
      rest -= edgeLength(one);
      return false;
    });
    if (edge === undefined) throw new RangeError(`cutsAlongEll: no edge at cut ${k}`);
    const at = pointAlong(edge, rest / edgeLength(edge));
    return disc({ x: at.x + (k % 3) - 0.93, y: at.y + ((k * 2) % 3) - 1.07 }, 2 + (k % 3) * 0.75, `cut:${k}`);
  });
}

/** Discs along the lower edge of a plate of 100 by 50, each overlapping the next by a quarter of its radius. */
function bites(count: number): { readonly plate: Region; readonly discs: readonly Region[] } {
  const pitch = 98 / count;
  const radius = pitch / 1.75;
  const discs = Array.from({ length: count }, (_, k) =>
    disc({ x: 1 + (k + 0.5) * pitch, y: (k % 4) * 0.05 }, radius, `cut:${k}`),
  );
  return { plate: boxRegion(0, 0, SIZE, 50), discs };
}

/** A cutting case: all cuts in one call, apart from each other, unless more is said. */
export function cutting(
  name: string,
  outline: Region,
  cuts: readonly Region[],
  expected: () => number,
  more: Partial<Pick<CutProblem, 'inTurn' | 'overlap' | 'peers'>> = {},
): CutProblem {
  return { kind: 'cut', name, outline, cuts, expected, inTurn: false, overlap: false, ...more };
}

/** All cutting cases, simplest first. */
export function cutProblems(): CutProblem[] {
  const one = cutsAlongEll(20).slice(7, 8);
  const twenty = cutsAlongEll(20);
  const bitten = bites(200);
  const bySlabs = (outline: Region, cuts: readonly Region[]) => () => slabsSubtract(outline, cuts).area;
  const grid = (count: 200 | 2000 | 10000, name: string, inTurn = false): CutProblem => {
    const { plate, holes, left } = platesOf(count);
    return cutting(name, plate, holes, () => left, { inTurn });
  };
  return [
    cutting('one-cut', ell, one, bySlabs(ell, one)),
    cutting('20-cuts', ell, twenty, bySlabs(ell, twenty)),
    cutting('20-cuts-in-turn', ell, twenty, bySlabs(ell, twenty), { inTurn: true }),
    grid(200, '200-holes'),
    grid(200, '200-holes-in-turn', true),
    grid(2000, '2000-holes'),
    grid(10000, '10000-holes'),
    cutting('200-bites', bitten.plate, bitten.discs, bySlabs(bitten.plate, bitten.discs), { overlap: true }),
    cutting('200-bites-in-turn', bitten.plate, bitten.discs, bySlabs(bitten.plate, bitten.discs), {
      overlap: true,
      inTurn: true,
    }),
  ];
}

const TEETH = 500;
const TOOTH_RADIUS = 0.12;

/** A star of 500 low teeth, its 1,000 corners rounded: 2,000 edges. */
function toothed(): Point[] {
  return Array.from({ length: 2 * TEETH }, (_, k) => {
    const angle = (k * Math.PI) / TEETH;
    const reach = k % 2 === 0 ? SIZE / 2 : SIZE / 2 - 0.5;
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  });
}

/** All offset cases: in both the rounding of inner corners is used up, in none an edge. */
export function offsetProblems(): OffsetProblem[] {
  const star = toothed();
  return [
    {
      kind: 'offset',
      name: 'offset-12',
      outline: ell,
      distance: 10,
      expected: () => grownArea(ELL, ELL_RADIUS, 10),
    },
    {
      kind: 'offset',
      name: 'offset-2000',
      outline: [{ outer: filleted(star, TOOTH_RADIUS), holes: [] }],
      distance: 0.16,
      expected: () => grownArea(star, TOOTH_RADIUS, 0.16),
    },
  ];
}

/**
 * Area of a counter-clockwise polygon with all corners rounded, once it has grown by a distance, as long as no edge
 * is used up. Elementary: the mitred polygon has P + S d + d² sum tan(t/2) over its turning angles t; rounding a
 * corner with radius r takes away (tan(t/2) - t/2) r², an inner corner gains as much. Outer roundings grow by the
 * distance, inner ones shrink by it until they are sharp.
 */
export function grownArea(corners: readonly Point[], radius: number, distance: number): number {
  const n = corners.length;
  const around = (k: number): Point => corners[(k + n) % n] as Point;
  let sum = 0;
  corners.forEach((corner, k) => {
    const [before, after] = [around(k - 1), around(k + 1)];
    const [ux, uy] = [corner.x - before.x, corner.y - before.y];
    const [vx, vy] = [after.x - corner.x, after.y - corner.y];
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    const rounded = turn > 0 ? radius + distance : Math.max(radius - distance, 0);
    const lost = Math.tan(Math.abs(turn) / 2) - Math.abs(turn) / 2;
    sum += (corner.x * after.y - corner.y * after.x) / 2 + Math.hypot(vx, vy) * distance;
    sum += distance * distance * Math.tan(turn / 2) - Math.sign(turn) * lost * rounded * rounded;
  });
  return sum;
}

/** Metal under 1 mm is thin: all of what the plate of 2,000 holes has between neighbours, 0.6 mm, is. */
export const WEB_LIMIT = 1;

/** The plate of 2,000 holes as a job. */
export function sieve(): unknown {
  const cuts = Array.from({ length: 2000 }, (_, k) => ({
    id: `hole ${k + 1}`,
    kind: 'bore',
    center: [2 * (k % 50) + 1, 2 * Math.floor(k / 50) + 1],
    diameter: 1.4,
  }));
  const part = { outline: { rectangle: [100, 80] }, thickness: 5 };
  return { edgebite: 1, name: 'Sieve', units: 'mm', part, limits: { web: WEB_LIMIT }, cuts };
}
