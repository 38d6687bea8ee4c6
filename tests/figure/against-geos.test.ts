import {
  area,
  boundingCircle,
  checkRegion,
  convexHull,
  gapBetweenRegions,
  type Region,
  regionFromGeoJson,
  relationOfRegions,
  smallestWidth,
  splitByLine,
  subtract,
  toGeoJson,
} from '@edgebite/core';
import { extentOf } from '@edgebite/core/testing';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';
import { type GeosFigures, geosFigures } from '../tools/geos-figures.js';
import { runs } from '../tools/runs.js';
import { EACH, figuresAt, pairsAt, SCALES } from './figures.js';

/* Figures of lines and arcs against those that GEOS makes of chords: a thousand cases, at five scales. */

/** Height of the chords, as a share of the extent. */
const SAGITTA = 1e-5;

let geos: GeosFigures;
beforeAll(async () => {
  geos = await geosFigures();
}, 300_000);

describe.each(SCALES)('at the scale %d', (scale) => {
  const each = (use: (region: Region, size: number) => void) =>
    fc.assert(
      fc.property(figuresAt(scale), (region) => use(region, extentOf(region))),
      { numRuns: runs(EACH) },
    );
  const near = (value: number | undefined, wanted: number, by: number) =>
    expect(Math.abs((value ?? Number.NaN) - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(by);

  it('the hull has the area of theirs, is sound and convex, and has all of the region', () =>
    each((region, size) => {
      const hull = convexHull(region);
      expect(checkRegion(JSON.parse(JSON.stringify(hull)))).toEqual([]);
      near(area(hull), geos.hullArea(region, SAGITTA * size), 8 * SAGITTA * size * size);
      expect(area(subtract(region, [hull]))).toBeLessThan(1e-7 * size * size);
      expect(hull[0]?.outer.every((edge) => edge.kind === 'line' || edge.ccw)).toBe(true);
      near(area(convexHull(hull)), area(hull), 1e-9 * size * size);
    }));

  it('the circle round it has the radius of theirs', () =>
    each((region, size) => {
      near(boundingCircle(region)?.radius, geos.boundingRadius(region, SAGITTA * size), 4 * SAGITTA * size);
    }));

  it('the smallest width is theirs', () =>
    each((region, size) => {
      near(smallestWidth(region)?.width, geos.width(region, SAGITTA * size), 4 * SAGITTA * size);
    }));

  it('both sides of a line are the region, and nothing of them is on the other side', () =>
    fc.assert(
      fc.property(figuresAt(scale), evenly(-4, 4), (region, angle) => {
        const size = extentOf(region);
        const at = boundingCircle(region)?.center ?? { x: 0, y: 0 };
        const to = { x: at.x + size * Math.cos(angle), y: at.y + size * Math.sin(angle) };
        const { left, right } = splitByLine(region, at, to, 'split');
        near(area(left) + area(right), area(region), 1e-9 * size * size);
        const sideOf = (p: { x: number; y: number }) =>
          ((to.x - at.x) * (p.y - at.y) - (to.y - at.y) * (p.x - at.x)) / size;
        for (const [part, sense] of [
          [left, 1],
          [right, -1],
        ] as const) {
          const joints = part.flatMap(({ outer, holes }) => [outer, ...holes].flat()).map(({ a }) => a);
          for (const joint of joints) expect(sense * sideOf(joint)).toBeGreaterThan(-1e-8 * size);
        }
      }),
      { numRuns: runs(EACH) },
    ));

  it('two are as far apart as theirs, and lie to each other as their areas say', () =>
    fc.assert(
      fc.property(pairsAt(scale), ([first, second]) => {
        const size = Math.max(extentOf(first), extentOf(second));
        const distance = geos.distance(first, second, SAGITTA * size);
        const gap = gapBetweenRegions(first, second);
        near(gap?.distance, distance, 4 * SAGITTA * size);
        const between = gap && Math.hypot(gap.onFirst.x - gap.onSecond.x, gap.onFirst.y - gap.onSecond.y);
        near(between ?? undefined, gap?.distance ?? 0, 1e-9 * size);
        const shares = geos.shares(first, second, SAGITTA * size);
        const some = 20 * SAGITTA * size * size;
        const relation = relationOfRegions(first, second);
        // What is marginal by their chords may be either.
        if (distance > 4 * SAGITTA * size) expect(relation).toBe('apart');
        else if (shares.both > some && shares.first > some && shares.second > some)
          expect(relation).toBe('overlap');
        else if (shares.both > some && shares.first > some) expect(relation).toMatch(/around|overlap/);
        else if (shares.both > some && shares.second > some) expect(relation).toMatch(/inside|overlap/);
      }),
      { numRuns: runs(EACH) },
    ));

  it('GeoJSON is read by GEOS with its area, and comes back', () =>
    each((region, size) => {
      const tolerance = 1e-5 * size;
      const json = toGeoJson(region, tolerance);
      const wanted = area(region);
      // Chords lose no more than the tolerance all along the boundary.
      near(geos.areaOfGeoJson(JSON.stringify(json)), wanted, 8 * tolerance * size);
      near(area(regionFromGeoJson(json)), geos.areaOfGeoJson(JSON.stringify(json)), 1e-9 * size * size);
    }));
});
