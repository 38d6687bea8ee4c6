import {
  area,
  boundingCircle,
  checkRegion,
  circleLoop,
  contains,
  convexHull,
  disc,
  gapBetweenRegions,
  mirroredRegion,
  movedRegion,
  nearestOnRegion,
  outlineRegion,
  type Point,
  perimeter,
  polygonsOf,
  type Region,
  rectangle,
  regionFromGeoJson,
  regionFromWkt,
  relationOfRegions,
  ring,
  scaledRegion,
  secondMoments,
  slot,
  smallestWidth,
  splitByLine,
  subtract,
  toGeoJson,
  toSvgDocument,
  toWkt,
  turnedRegion,
  union,
} from '@edgebite/core';
import { areaOf, difference, edgesOf, extentOf, transformed } from '@edgebite/core/testing';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { chordStarts } from '../tools/chords.js';
import { evenly } from '../tools/evenly.js';
import { type GeosFigures, geosFigures } from '../tools/geos-figures.js';
import { runs } from '../tools/runs.js';
import { EACH, figuresAt, SCALES } from './figures.js';

const P = (x: number, y: number): Point => ({ x, y });
const square = (x: number, y: number, side: number) => outlineRegion(rectangle(side, side, { at: P(x, y) }));
const close = (value: number | null | undefined, wanted: number, by: number) =>
  expect(Math.abs((value ?? Number.NaN) - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(by);

let geos: GeosFigures;
beforeAll(async () => {
  geos = await geosFigures();
}, 300_000);

describe('transforms', () => {
  const number = evenly(-3, 3);

  it.each(SCALES)('are those of a second copy, at the scale %d, with names kept', (scale) => {
    fc.assert(
      fc.property(figuresAt(scale), number, number, number, (region, angle, x, y) => {
        const size = extentOf(region);
        const at = P(x * size, y * size);
        const turn = [Math.cos(angle), Math.sin(angle)] as const;
        const plain = { mirror: false, turn: [1, 0], scale: 1, shift: [0, 0] } as const;
        const to = (p: Point) => [p.x, p.y] as const;
        const cases: readonly (readonly [Region, Region])[] = [
          [movedRegion(region, { dx: at.x, dy: at.y }), transformed(region, { ...plain, shift: to(at) })],
          [turnedRegion(region, angle), transformed(region, { ...plain, turn })],
          [scaledRegion(region, 2 ** angle), transformed(region, { ...plain, scale: 2 ** angle })],
          [mirroredRegion(region, P(0, 0), P(size, 0)), transformed(region, { ...plain, mirror: true })],
          [
            turnedRegion(region, angle, at),
            movedRegion(turnedRegion(movedRegion(region, { dx: -at.x, dy: -at.y }), angle), {
              dx: at.x,
              dy: at.y,
            }),
          ],
          // Mirrored in a line is mirrored in the x axis and turned by twice the angle of the line.
          [
            mirroredRegion(region, P(0, 0), P(turn[0] * size, turn[1] * size)),
            turnedRegion(mirroredRegion(region, P(0, 0), P(1, 0)), 2 * angle),
          ],
        ];
        const named = (one: Region) =>
          edgesOf(one)
            .map(({ source }) => source)
            .sort();
        for (const [ours, theirs] of cases) {
          expect(difference(ours, theirs, 8 * size)).toBeNull();
          expect(checkRegion(JSON.parse(JSON.stringify(ours)))).toEqual([]);
          expect(named(ours)).toEqual(named(region));
        }
      }),
      { numRuns: runs(EACH / 4) },
    );
  });

  it('turn by quarters exactly, about any place', () => {
    const [part] = turnedRegion(square(1, 2, 3), Math.PI / 2, P(1, 2));
    expect(part?.outer.map(({ a }) => a)).toEqual([P(1, 2), P(1, 5), P(-2, 5), P(-2, 2)]);
  });
});

describe('polygonsOf', () => {
  it.each(SCALES)(
    'stays within the tolerance, with all corners on the boundary, at the scale %d',
    (scale) => {
      fc.assert(
        fc.property(figuresAt(scale), fc.integer({ min: 2, max: 5 }), (region, digits) => {
          const size = extentOf(region);
          const tolerance = 10 ** -digits * size;
          for (const { outer, holes } of polygonsOf(region, tolerance)) {
            for (const corners of [outer, ...holes]) {
              corners.forEach((p, k) => {
                const q = corners[(k + 1) % corners.length] as Point;
                close(nearestOnRegion(region, p)?.distance, 0, 1e-9 * size);
                const middle = P((p.x + q.x) / 2, (p.y + q.y) / 2);
                expect(nearestOnRegion(region, middle)?.distance).toBeLessThanOrEqual(
                  tolerance + 1e-9 * size,
                );
              });
            }
          }
        }),
        { numRuns: runs(EACH / 4) },
      );
    },
  );

  it('refuses a tolerance that takes too many chords', () => {
    expect(() => polygonsOf(disc(P(0, 0), 10), 1e-12)).toThrow('it must take 100000 at most');
    // Elementary: a circle of which nothing is asked is a square.
    expect(polygonsOf(disc(P(0, 0), 10), 100)[0]?.outer).toHaveLength(4);
  });
});

describe('secondMoments', () => {
  // Machinery's Handbook, 31st ed., moments of inertia: rectangle b h^3 / 12, circle pi d^4 / 64, and their differences.
  it('are those of a handbook, about the centroid and elsewhere', () => {
    const plate = outlineRegion(rectangle(6, 2, { at: P(10, 20) }));
    close(secondMoments(plate)?.xx, (6 * 8) / 12, 1e-12);
    close(secondMoments(plate)?.yy, (2 * 216) / 12, 1e-12);
    close(secondMoments(plate)?.xy, 0, 1e-12);
    close(secondMoments(plate, P(10, 20))?.xx, (6 * 8) / 3, 1e-11);
    close(secondMoments(plate, P(10, 20))?.xy, (36 * 4) / 4, 1e-11);
    for (const [region, wanted] of [
      [disc(P(3, -4), 5), (Math.PI * 10 ** 4) / 64],
      [ring(P(3, -4), 5, 4), (Math.PI * (10 ** 4 - 8 ** 4)) / 64],
    ] as const) {
      close(secondMoments(region)?.xx, wanted, 1e-10);
      close(secondMoments(region)?.yy, wanted, 1e-10);
    }
    // The same: half a circle about its own centroid, 0.1098 r^4, and its diameter, pi r^4 / 8.
    const half = splitByLine(disc(P(0, 0), 2), P(0, 0), P(1, 0)).left;
    close(secondMoments(half)?.xx, (Math.PI / 8 - 8 / (9 * Math.PI)) * 16, 1e-11);
    close(secondMoments(half, P(0, 0))?.xx, (Math.PI / 8) * 16, 1e-11);
    expect(secondMoments([])).toBeNull();
  });

  it('have their largest along the long side, however it is turned', () => {
    for (let k = -8; k <= 8; k++) {
      const angle = (k * Math.PI) / 17;
      const moments = secondMoments(turnedRegion(outlineRegion(rectangle(6, 2)), angle));
      // About a line along its short side it is the largest.
      close(moments?.largest, 36, 1e-10);
      close(moments?.smallest, 4, 1e-10);
      close(Math.abs(Math.sin((moments?.angle ?? 0) - angle)), 1, 1e-10);
    }
  });

  it.each(SCALES)('are those of a fine polygon, at the scale %d', (scale) => {
    fc.assert(
      fc.property(figuresAt(scale), (region) => {
        const size = extentOf(region);
        const about = region[0]?.outer[0]?.a ?? P(0, 0);
        const moments = secondMoments(region, about);
        // Sum over the corners of a polygon: Steger, "On the calculation of arbitrary moments of polygons" (1996).
        let [xx, yy, xy] = [0, 0, 0];
        for (const loop of region.flatMap(({ outer, holes }) => [outer, ...holes])) {
          const corners = loop.flatMap((edge) => chordStarts(edge, 1e-7 * size));
          corners.forEach((corner, k) => {
            const next = corners[(k + 1) % corners.length] as Point;
            const [px, py] = [corner.x - about.x, corner.y - about.y];
            const [qx, qy] = [next.x - about.x, next.y - about.y];
            const cross = px * qy - qx * py;
            xx += (cross * (py * py + py * qy + qy * qy)) / 12;
            yy += (cross * (px * px + px * qx + qx * qx)) / 12;
            xy += (cross * (px * qy + 2 * px * py + 2 * qx * qy + qx * py)) / 24;
          });
        }
        const slack = 4e-6 * size ** 4;
        close(moments?.xx, xx, slack);
        close(moments?.yy, yy, slack);
        close(moments?.xy, xy, slack);
      }),
      { numRuns: runs(EACH) },
    );
  });
});

describe('nearestOnRegion', () => {
  it.each(SCALES)('is as near as the nearest of many places of the boundary, at the scale %d', (scale) => {
    const share = evenly(-2, 2);
    fc.assert(
      fc.property(figuresAt(scale), share, share, (region, x, y) => {
        const size = extentOf(region);
        const from = region[0]?.outer[0]?.a ?? P(0, 0);
        const p = P(from.x + x * size, from.y + y * size);
        const nearest = nearestOnRegion(region, p);
        const places = edgesOf(region).flatMap((edge) => [
          ...chordStarts(edge, 1e-4 * size),
          ...(edge.kind === 'line'
            ? Array.from({ length: 150 }, (_, k) =>
                P(edge.a.x + ((edge.b.x - edge.a.x) * k) / 150, edge.a.y + ((edge.b.y - edge.a.y) * k) / 150),
              )
            : []),
        ]);
        const sampled = Math.min(...places.map((q) => Math.hypot(q.x - p.x, q.y - p.y)));
        expect(nearest?.distance).toBeLessThanOrEqual(sampled + 1e-12 * size);
        expect(nearest?.distance).toBeGreaterThan(sampled - 0.01 * size);
        close(
          nearest && Math.hypot(nearest.at.x - p.x, nearest.at.y - p.y),
          nearest?.distance ?? 0,
          1e-12 * size,
        );
        expect(nearest?.where).toBe(contains(region, p));
      }),
      { numRuns: runs(EACH) },
    );
  });

  it('names the edge', () => {
    expect(nearestOnRegion(square(0, 0, 10), P(5, -3))).toEqual({
      at: P(5, 0),
      distance: 3,
      where: 'outside',
      source: 'outline:0',
    });
    expect(nearestOnRegion([], P(0, 0))).toBeNull();
  });
});

describe('two regions', () => {
  it.each([
    ['same', square(0, 0, 4), square(0, 0, 4)],
    ['inside', square(1, 1, 2), square(0, 0, 4)],
    ['inside', square(0, 0, 2), square(0, 0, 4)],
    ['around', disc(P(0, 0), 5), disc(P(1, 0), 4)],
    ['overlap', square(0, 0, 4), square(3, 3, 4)],
    ['touch', square(0, 0, 4), square(4, 1, 4)],
    ['touch', disc(P(0, 0), 1), disc(P(3, 0), 2)],
    ['touch', disc(P(0, 0), 3), ring(P(0, 0), 5, 3)],
    ['apart', disc(P(0, 0), 1), disc(P(4, 0), 2)],
    ['apart', disc(P(0, 0), 1), ring(P(0, 0), 5, 3)],
    ['apart', square(0, 0, 4), []],
    ['same', [], []],
  ] as const)('are %s', (relation, first, second) => {
    expect(relationOfRegions(first, second)).toBe(relation);
    const other = { inside: 'around', around: 'inside' }[relation as string] ?? relation;
    expect(relationOfRegions(second, first)).toBe(other);
  });

  it('are as far apart as circles are', () => {
    const gap = gapBetweenRegions(disc(P(0, 0), 1), disc(P(3, 4), 2));
    close(gap?.distance, 2, 1e-14);
    close(gap?.onFirst.x, 0.6, 1e-14);
    close(gap?.onSecond.y, 2.4, 1e-14);
    close(gapBetweenRegions(disc(P(0, 0), 1), ring(P(0.5, 0), 5, 3))?.distance, 1.5, 1e-14);
    expect(gapBetweenRegions(disc(P(0, 0), 1), [])).toBeNull();
  });
});

describe('hulls, circles and widths', () => {
  it('are exact for circles and slots, and keep the names of edges', () => {
    const pair = union([disc(P(0, 0), 1, 'cut:a'), disc(P(6, 0), 1, 'cut:b')]);
    const hull = convexHull(pair);
    // Elementary: a slot 8 by 2.
    close(area(hull), 12 + Math.PI, 1e-12);
    close(perimeter(hull), 12 + 2 * Math.PI, 1e-12);
    expect(hull[0]?.outer.map(({ source }) => source ?? null).sort()).toEqual(['cut:a', 'cut:b', null, null]);
    close(boundingCircle(pair)?.radius, 4, 1e-13);
    close(smallestWidth(pair)?.width, 2, 1e-13);
    const one = convexHull(disc(P(3, 4), 5, 'cut:a'));
    close(area(one), 25 * Math.PI, 1e-12);
    const named = convexHull(outlineRegion(slot(9, 4, { angle: 0.3 })));
    expect(named[0]?.outer.map(({ source }) => source).sort()).toEqual(
      [0, 1, 2, 3].map((k) => `outline:${k}`),
    );
    // A triangle of sides 3, 4 and 5: its circle stands on the longest side; its smallest width is 12/5.
    const triangle = regionFromWkt('POLYGON ((0 0, 3 0, 0 4, 0 0))');
    close(boundingCircle(triangle)?.radius, 2.5, 1e-14);
    close(smallestWidth(triangle)?.width, 2.4, 1e-14);
    for (const empty of [convexHull([]), boundingCircle([]) ?? [], smallestWidth([]) ?? []])
      expect(empty).toEqual([]);
  });

  it('know the curve of constant width', () => {
    // Reuleaux triangle of width 2: area 2 (pi - sqrt 3) (Weisstein, MathWorld), circle round it of 2 / sqrt 3.
    const corners = [P(0, 0), P(2, 0), P(1, Math.sqrt(3))];
    const outer = corners.map((a, k) => ({
      kind: 'arc' as const,
      a,
      b: corners[(k + 1) % 3] as Point,
      center: corners[(k + 2) % 3] as Point,
      radius: 2,
      ccw: true,
    }));
    const region = [{ outer, holes: [] }];
    close(area(convexHull(region)), 2 * (Math.PI - Math.sqrt(3)), 1e-12);
    close(smallestWidth(region)?.width, 2, 1e-12);
    close(boundingCircle(region)?.radius, 2 / Math.sqrt(3), 1e-12);
  });
});

describe('forms', () => {
  it.each(SCALES)('WKT comes back, and GEOS reads it where there are no arcs, at the scale %d', (scale) => {
    fc.assert(
      fc.property(figuresAt(scale), (region) => {
        const size = extentOf(region);
        const two = [...region, ...movedRegion(region, { dx: 3 * size, dy: 0 })];
        close(area(regionFromWkt(toWkt(two))), area(two), 1e-9 * size * size);
        const straight = polygonsOf(two, 1e-3 * size).map(({ outer, holes }) => [outer, ...holes]);
        const text = toWkt(regionFromGeoJson(toGeoJson(two, 1e-3 * size)));
        close(geos.areaOfWkt(text), areaOf(regionFromWkt(text)), 1e-9 * size * size);
        expect(straight.length).toBe(two.length);
      }),
      { numRuns: runs(EACH) },
    );
  });

  it('GeoJSON is closed, several or empty, and faults are named by their pointer', () => {
    expect(toGeoJson(square(0, 0, 2), 0.1)).toEqual({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      ],
    });
    expect(toGeoJson([], 0.1)).toEqual({ type: 'MultiPolygon', coordinates: [] });
    expect(geos.areaOfGeoJson(JSON.stringify(toGeoJson([], 0.1)))).toBe(0);
    expect(regionFromGeoJson(toGeoJson([], 0.1))).toEqual([]);
    expect(() => regionFromGeoJson({ type: 'Point', coordinates: [0, 0] })).toThrow(
      '/type must be "Polygon"',
    );
    expect(() =>
      regionFromGeoJson({
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [1, 0],
            [1, 1],
            [0, 1],
          ],
        ],
      }),
    ).toThrow('/coordinates/0 does not end where it starts');
    expect(() =>
      regionFromGeoJson({
        type: 'MultiPolygon',
        coordinates: [
          [
            [
              [0, 0],
              ['x', 0],
            ],
          ],
        ],
      }),
    ).toThrow('/coordinates/0/0/1 must be two finite numbers');
  });

  it('a bare SVG is drawn by another program with the area of the region, the right way up', () => {
    const region = subtract(outlineRegion(rectangle(40, 20, { corner: 3 }), [circleLoop(P(10, 10), 4)]), [
      disc(P(40, 20), 8),
    ]);
    const svg = toSvgDocument(region, { margin: 0, unit: 'mm', digits: 6 });
    expect(svg).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="0 -20 40 20" width="40mm" height="20mm">/,
    );
    const image = new Resvg(svg, { fitTo: { mode: 'width', value: 1600 } }).render();
    // Each look at it copies the picture.
    const { pixels, width, height } = image;
    const inked = (x: number, y: number) => (pixels[4 * (y * width + x) + 3] as number) / 255;
    let sum = 0;
    for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) sum += inked(x, y);
    close(sum / 1600, area(region), 0.001 * 1600);
    // The bite is at the upper right, the hole at the left.
    expect([inked(1590, 10), inked(400, 400), inked(1590, 600)]).toEqual([0, 0, 1]);
    expect(toSvgDocument([])).not.toContain('path');
    expect(toSvgDocument(region, { fill: '"><b' })).toContain('fill="&quot;>&lt;b"');
  });
});
