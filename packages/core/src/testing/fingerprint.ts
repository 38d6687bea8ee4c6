import type { Region, RegionPart } from '../region/region.js';
import { areaOf, type Box, boxOf, edgesOf, extentOf, lengthOf, WELD } from './probe.js';

/** What two regions are compared by, part for part. */
export interface PartPrint {
  readonly area: number;
  readonly perimeter: number;
  readonly holes: number;
  readonly box: Box;
}

/** How far two regions may lie apart and still count as the same. */
export interface Closeness {
  /** Area of a part, as a share of the square of the extent. */
  readonly area: number;
  /** Sides of boxes, as a share of the extent; or so far as the tip of a wide arc and an edge tangent to it slides. */
  readonly box: number;
  /**
   * Parts of a mean thickness (twice the area over the perimeter) up to this share of the extent are left out:
   * they are a few weld tolerances thin, and rounding decides whether welding closes them. Twice what this kernel
   * drops, so that a part just at its limit is not compared. A thicker part may be the same as one up to it.
   */
  readonly thin: number;
  /** Compare the total area only: for cases at the weld tolerance, where pieces may come and go. */
  readonly areaOnly: boolean;
}

/** Well over rounding, well under anything a shop could measure. */
export const CLOSE: Closeness = { area: 1e-9, box: 4e-5, thin: 8e-9, areaOnly: false };

/** Area, perimeter, number of holes and box of every part. */
export function printsOf(region: Region): PartPrint[] {
  return region.map((part: RegionPart) => {
    const edges = edgesOf([part]);
    return {
      area: areaOf([part]),
      perimeter: edges.reduce((sum, edge) => sum + lengthOf(edge), 0),
      holes: part.holes.length,
      box: boxOf(edges),
    };
  });
}

/**
 * The first difference between two regions in words, or null if they are the same within `closeness`:
 * as many parts, and to each part one with the same holes, area and box.
 */
export function difference(
  x: Region,
  y: Region,
  extent: number,
  closeness: Closeness = CLOSE,
): string | null {
  const areaSlack = closeness.area * extent * extent;
  const [areaX, areaY] = [areaOf(x), areaOf(y)];
  if (!(Math.abs(areaX - areaY) <= areaSlack)) return `areas ${areaX} and ${areaY}`;
  if (closeness.areaOnly) return null;
  const left = sortedOut(x, closeness.thin * extent);
  const right = sortedOut(y, closeness.thin * extent);
  // Rounding may put a part just at the limit on the thick side in one region and on the thin side in the other: what
  // is thick must be in both, but one of the two may be thin. Thick ones are given away first.
  const boxSlack = Math.max(closeness.box * extent, tipSlide(widest(x, y), WELD * extent));
  const fault = withoutPartner(left.thick, right, areaSlack, boxSlack);
  return fault ?? withoutPartner(right.thick, { thick: [], thin: left.thin }, areaSlack, boxSlack);
}

/** How far before its end a tip between an arc and a line is two tolerances thick: each side may have been moved by one. */
function tipSlide(radius: number, tolerance: number): number {
  return Math.sqrt(2 * radius * 2 * tolerance);
}

/** The largest radius of an arc; 0 without arcs. */
function widest(...regions: readonly Region[]): number {
  let radius = 0;
  for (const edge of regions.flatMap(edgesOf)) {
    if (edge.kind === 'arc' && edge.radius > radius) radius = edge.radius;
  }
  return radius;
}

/** Parts over and up to a mean thickness. */
interface SortedOut {
  readonly thick: PartPrint[];
  readonly thin: PartPrint[];
}

function sortedOut(region: Region, limit: number): SortedOut {
  const prints = printsOf(region);
  const isThick = ({ area, perimeter }: PartPrint): boolean => (2 * area) / perimeter > limit;
  return { thick: prints.filter(isThick), thin: prints.filter((print) => !isThick(print)) };
}

/** Gives each of the wanted prints a partner, which is taken from the lists. The first without one in words, or null. */
function withoutPartner(
  wanted: readonly PartPrint[],
  { thick, thin }: SortedOut,
  areaSlack: number,
  boxSlack: number,
): string | null {
  for (const print of wanted) {
    const isPartner = (other: PartPrint): boolean => alike(print, other, areaSlack, boxSlack);
    const from = [thick, thin].find((prints) => prints.some(isPartner));
    if (from === undefined) return `no partner for ${describe(print)} among ${list([...thick, ...thin])}`;
    from.splice(from.findIndex(isPartner), 1);
  }
  return null;
}

/** The larger extent of some regions, a positive number even if they are empty. */
export function commonExtent(...regions: readonly Region[]): number {
  return extentOf(...regions) || 1;
}

function alike(x: PartPrint, y: PartPrint, areaSlack: number, boxSlack: number): boolean {
  return (
    x.holes === y.holes &&
    Math.abs(x.area - y.area) <= areaSlack &&
    Math.abs(x.box.minX - y.box.minX) <= boxSlack &&
    Math.abs(x.box.minY - y.box.minY) <= boxSlack &&
    Math.abs(x.box.maxX - y.box.maxX) <= boxSlack &&
    Math.abs(x.box.maxY - y.box.maxY) <= boxSlack
  );
}

function list(prints: readonly PartPrint[]): string {
  return `(${prints.length}) ${prints.map(describe).join('; ')}`;
}

function describe({ area, holes, box }: PartPrint): string {
  return `area ${area}, ${holes} holes, x ${box.minX} to ${box.maxX}, y ${box.minY} to ${box.maxY}`;
}
